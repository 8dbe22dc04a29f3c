//! What is wrong with a value, in the words of someone who fills in a form.
//!
//! `serde` describes a mismatch by Rust's types. [`Misfit`] takes its parts apart instead of its text.

use std::fmt;

use serde::de::{self, Expected, Unexpected};

use lammas_engine::nearest::nearest;

/// Why a value does not fit the place it stands in.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum Misfit {
    /// The object has no such member.
    UnknownField { name: String, known: &'static [&'static str] },
    /// The value is not one of the fixed choices.
    UnknownValue { value: String, known: &'static [&'static str] },
    /// A member that must be there is not.
    Missing(&'static str),
    /// A member stands twice.
    Twice(String),
    /// Anything else, already in words.
    Said(String),
}

impl fmt::Display for Misfit {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::UnknownField { name, known } => {
                write!(f, "unknown field `{name}`")?;
                suggest(f, name, known)
            }
            Self::UnknownValue { value, known } => {
                write!(f, "unknown value `{value}`")?;
                suggest(f, value, known)
            }
            Self::Missing(name) => write!(f, "missing field `{name}`"),
            Self::Twice(name) => write!(f, "the field `{name}` stands twice"),
            Self::Said(words) => f.write_str(words),
        }
    }
}

fn suggest(f: &mut fmt::Formatter<'_>, found: &str, known: &[&str]) -> fmt::Result {
    if let Some(meant) = nearest(found, known.iter().copied()) {
        return write!(f, ", did you mean `{meant}`?");
    }
    match known {
        [] => Ok(()),
        [only] => write!(f, ", expected `{only}`"),
        more => {
            f.write_str(", expected one of ")?;
            for (place, name) in more.iter().enumerate() {
                write!(f, "{}`{name}`", if place == 0 { "" } else { ", " })?;
            }
            Ok(())
        }
    }
}

impl std::error::Error for Misfit {}

impl de::Error for Misfit {
    fn custom<T: fmt::Display>(words: T) -> Self {
        Self::Said(words.to_string())
    }

    fn invalid_type(found: Unexpected<'_>, expected: &dyn Expected) -> Self {
        Self::Said(format!("expected {}, found {}", in_plain_words(expected), shown(found)))
    }

    fn invalid_value(found: Unexpected<'_>, expected: &dyn Expected) -> Self {
        Self::invalid_type(found, expected)
    }

    fn invalid_length(length: usize, expected: &dyn Expected) -> Self {
        Self::Said(format!("expected {}, found {length} entries", in_plain_words(expected)))
    }

    fn unknown_variant(value: &str, known: &'static [&'static str]) -> Self {
        Self::UnknownValue { value: value.to_owned(), known }
    }

    fn unknown_field(name: &str, known: &'static [&'static str]) -> Self {
        Self::UnknownField { name: name.to_owned(), known }
    }

    fn missing_field(name: &'static str) -> Self {
        Self::Missing(name)
    }

    fn duplicate_field(name: &'static str) -> Self {
        Self::Twice(name.to_owned())
    }
}

fn in_plain_words(expected: &dyn Expected) -> String {
    let said = expected.to_string();
    match said.as_str() {
        "f64" | "f32" => "a number".to_owned(),
        "u8" => "a whole number from 0 to 255".to_owned(),
        "u16" => "a whole number from 0 to 65535".to_owned(),
        "u32" | "u64" | "usize" => "a whole number, not negative".to_owned(),
        "i8" | "i16" | "i32" | "i64" => "a whole number".to_owned(),
        "a boolean" => "`true` or `false`".to_owned(),
        "a string" | "a borrowed string" | "a character" => "text".to_owned(),
        "a sequence" => "a list".to_owned(),
        "a map" => "an object".to_owned(),
        "unit" => "`null`".to_owned(),
        said if said.starts_with("struct ") => "an object".to_owned(),
        said if said.starts_with("enum ") || said.starts_with("variant ") => "text".to_owned(),
        said => match said.strip_prefix("an array of length ") {
            Some(length) => format!("a list of {length} entries"),
            None => said.to_owned(),
        },
    }
}

fn shown(found: Unexpected<'_>) -> String {
    match found {
        Unexpected::Bool(value) => format!("`{value}`"),
        Unexpected::Unsigned(value) => format!("`{value}`"),
        Unexpected::Signed(value) => format!("`{value}`"),
        Unexpected::Float(value) => format!("`{value}`"),
        Unexpected::Str(text) => format!("the text `{}`", clipped(text)),
        Unexpected::Unit | Unexpected::Option => "`null`".to_owned(),
        Unexpected::Seq => "a list".to_owned(),
        Unexpected::Map => "an object".to_owned(),
        _ => "something else".to_owned(),
    }
}

/// The user's own text, not longer than a line.
pub(crate) fn clipped(text: &str) -> String {
    const LINE: usize = 60;
    if text.chars().count() <= LINE {
        return text.to_owned();
    }
    let mut short: String = text.chars().take(LINE).collect();
    short.push('…');
    short
}

#[cfg(test)]
mod tests {
    use de::Error;

    use super::*;

    #[test]
    fn the_likely_name_is_offered_and_else_all_of_them() {
        let known: &[&str] = &["plant", "site"];
        assert_eq!(Misfit::unknown_field("plnt", known).to_string(), "unknown field `plnt`, did you mean `plant`?");
        assert_eq!(
            Misfit::unknown_variant("roof", known).to_string(),
            "unknown value `roof`, expected one of `plant`, `site`"
        );
    }

    #[test]
    fn no_rust_type_is_named() {
        assert_eq!(
            Misfit::invalid_type(Unexpected::Str("warm"), &"f64").to_string(),
            "expected a number, found the text `warm`"
        );
        assert_eq!(
            Misfit::invalid_type(Unexpected::Seq, &"struct Plant").to_string(),
            "expected an object, found a list"
        );
        assert_eq!(
            Misfit::invalid_length(11, &"an array of length 12").to_string(),
            "expected a list of 12 entries, found 11 entries"
        );
    }
}
