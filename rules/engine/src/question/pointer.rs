//! What is wrong with a question, with a JSON pointer to the field.

use serde::Serialize;

/// One field that can't be used, and why.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
pub struct Trouble {
    /// JSON pointer into the request.
    pub pointer: String,
    /// Why, in the user's words.
    pub detail: String,
    /// The kind, where it is more than a bad value.
    #[serde(skip)]
    pub kind: TroubleKind,
}

/// What kind of trouble it is.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub enum TroubleKind {
    /// A value that can't be used.
    #[default]
    BadValue,
    /// A plant that no set knows.
    UnknownPlant,
    /// A climate that is not registered.
    UnknownClimate,
}

impl Trouble {
    /// A field that can't be used.
    #[must_use]
    pub fn new(pointer: impl Into<String>, detail: impl Into<String>) -> Self {
        Self { pointer: pointer.into(), detail: detail.into(), kind: TroubleKind::BadValue }
    }

    /// A word that is not known, with the nearest that is.
    #[must_use]
    pub fn unknown<'a>(
        pointer: impl Into<String>,
        what: &str,
        word: &str,
        known: impl IntoIterator<Item = &'a str>,
    ) -> Self {
        let known: Vec<&str> = known.into_iter().collect();
        let near = crate::nearest::nearest_names(word, known.iter().copied(), 3);
        let cure = if near.is_empty() {
            if known.len() <= 15 { format!(", expected one of {}", known.join(", ")) } else { String::new() }
        } else {
            format!(", did you mean `{}`?", near.join("`, `"))
        };
        Self::new(pointer, format!("unknown {what} `{word}`{cure}"))
    }

    /// A word that is not known, with the names that come nearest to it, if any do.
    #[must_use]
    pub fn unknown_near(pointer: impl Into<String>, what: &str, word: &str, near: &[&str]) -> Self {
        let cure = if near.is_empty() { String::new() } else { format!(", did you mean `{}`?", near.join("`, `")) };
        Self::new(pointer, format!("unknown {what} `{word}`{cure}"))
    }

    /// The same of another kind.
    #[must_use]
    pub const fn of_kind(mut self, kind: TroubleKind) -> Self {
        self.kind = kind;
        self
    }
}
