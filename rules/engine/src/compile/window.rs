//! Windows: sides as markers with days, ready to be put on a calendar.

use super::marker;
use super::term::MarkerAt;
use super::typing::{Mistake, Scope};
use crate::lang::parse;
use crate::pack::At;
use crate::pack::rule::{IfAbsent, WindowEntry};

/// One side: the first marker that is not absent.
pub type Side = Vec<MarkerAt>;

/// A window; at least one of `opens` and `closes` is there.
#[derive(Clone, Debug, PartialEq)]
pub struct Window {
    /// Its first day.
    pub opens: Option<Side>,
    /// Its best day.
    pub best: Option<Side>,
    /// Its last day.
    pub closes: Option<Side>,
    /// Open on all days when a marker is absent.
    pub all_year_if_absent: bool,
}

/// A side.
///
/// # Errors
/// Syntax, or a name that is no marker.
pub fn side(text: &str, scope: Scope<'_>) -> Result<Side, Mistake> {
    let side = parse::side(text).map_err(unreadable)?;
    side.choices.iter().map(|choice| marker::at(choice, scope)).collect()
}

/// What can't be read, as a mistake.
#[must_use]
pub fn unreadable(fault: crate::lang::token::Unreadable) -> Mistake {
    Mistake { code: "unreadable-expression", span: fault.span, message: fault.message, help: fault.help }
}

/// A window, or the side that is wrong and why.
///
/// # Errors
/// As [`side`].
pub fn window<'e>(entry: &'e WindowEntry, scope: Scope<'_>) -> Result<Window, (&'e At<String>, Mistake)> {
    let read = |field: &'e Option<At<String>>| match field {
        None => Ok(None),
        Some(text) => side(&text.value, scope).map(Some).map_err(|mistake| (text, mistake)),
    };
    Ok(Window {
        opens: read(&entry.opens)?,
        best: read(&entry.best)?,
        closes: read(&entry.closes)?,
        all_year_if_absent: entry.if_absent == Some(IfAbsent::AllYear),
    })
}
