//! Values with their place, and expressions as fields.

use serde::{Deserialize, Serialize, Serializer};

use crate::fault::Place;
use crate::lang::ast::Span;
use crate::lang::{parse, print};

/// A value and where it stands in its file.
pub type At<T> = serde_saphyr::Spanned<T>;

/// The place of a value in its file.
#[must_use]
pub fn place<T>(file: &str, at: &At<T>) -> Place {
    Place {
        file: file.to_owned(),
        line: u32::try_from(at.referenced.line()).unwrap_or(0),
        column: u32::try_from(at.referenced.column()).unwrap_or(0),
        width: 0,
    }
}

/// An expression as a field: a single-line scalar.
#[derive(Clone, Debug, Deserialize)]
#[serde(transparent)]
pub struct Expression(pub At<String>);

impl Expression {
    /// The text as written.
    #[must_use]
    pub fn text(&self) -> &str {
        &self.0.value
    }

    /// The place of a stretch of it. `quoted` says whether the scalar stands in quotes.
    #[must_use]
    pub fn place(&self, file: &str, span: Span, quoted: bool) -> Place {
        let mut place = place(file, &self.0);
        let chars = |to: usize| self.text().get(..to).map_or(0, |t| t.chars().count());
        place.column += u32::try_from(chars(span.start)).unwrap_or(0) + u32::from(quoted);
        place.width = u32::try_from(chars(span.end).saturating_sub(chars(span.start))).unwrap_or(0).max(1);
        place
    }
}

impl Serialize for Expression {
    /// The one printed form, so that spaces do not change the hash of a set.
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        match parse::condition(self.text()) {
            Ok(expr) => serializer.serialize_str(&print::expr(&expr)),
            Err(_) => serializer.serialize_str(self.text()),
        }
    }
}
