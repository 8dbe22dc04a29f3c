//! Expressions of a rule in plain words, in every language the engine speaks: no question is needed, so no values stand
//! in them.
//!
//! - `condition`: conditions and the terms in them
//! - `marker`: markers, and the sides of a window
//! - `number`: literals with their unit, in both unit systems

mod condition;
mod marker;
mod number;

use crate::compile::set::Set;
use crate::lang::ast::Expr;
use crate::lang::parse;
use crate::pack::{Expression, PlantEntry};

/// What the words of an expression are taken from.
#[derive(Clone, Copy, Debug)]
pub struct Plain<'a> {
    /// The set whose names are used.
    pub set: &'a Set,
    /// The plant whose traits a `where` speaks of.
    pub plant: Option<&'a PlantEntry>,
    /// en, es.
    pub language: &'a str,
}

impl Plain<'_> {
    /// A condition. One that can't be read stands as it is written; a set that was compiled has none.
    #[must_use]
    pub fn condition(&self, written: &Expression) -> String {
        parse::condition(written.text()).map_or_else(|_| written.text().to_owned(), |expr| condition::of(&expr, self))
    }

    /// A condition that has been read, or a part of one.
    #[must_use]
    pub fn expr(&self, expr: &Expr) -> String {
        condition::of(expr, self)
    }

    /// One side of a window: `4 weeks before the end of the hot season, or where that never comes: …`.
    #[must_use]
    pub fn side(&self, written: &str) -> String {
        parse::side(written).map_or_else(|_| written.to_owned(), |side| marker::side(&side, self))
    }

    /// A fact by its printed name, with its arguments.
    #[must_use]
    pub fn term(&self, written: &str) -> String {
        parse::sum(written).map_or_else(|_| written.to_owned(), |expr| condition::term(&expr, self))
    }

    /// A text with the name of the fact where an answer has its value: `at [soil pH]`.
    #[must_use]
    pub fn text(&self, text: &str) -> String {
        let mut out = String::with_capacity(text.len());
        let mut rest = text;
        while let Some((before, (name, after))) =
            rest.split_once('{').and_then(|(before, tail)| Some((before, tail.split_once('}')?)))
        {
            out.push_str(before);
            out.push('[');
            out.push_str(&self.term(name));
            out.push(']');
            rest = after;
        }
        out.push_str(rest);
        out
    }

    fn pick<'t>(&self, en: &'t str, es: &'t str) -> &'t str {
        super::words::pick(self.language, en, es)
    }
}

/// The first letter small, so that a name can stand inside a sentence; `USDA zone` stays as it is.
fn inside(name: &str) -> String {
    let mut letters = name.chars();
    match (letters.next(), letters.clone().next()) {
        (Some(first), Some(second)) if !second.is_uppercase() => first.to_lowercase().chain(letters).collect(),
        _ => name.to_owned(),
    }
}
