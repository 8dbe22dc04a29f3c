//! Everything that is wrong with a request, collected so that one answer names it all.

use super::kinds::Kind;
use super::wire::FieldError;
use super::{Problem, pointer};

/// No more than this many are listed: a form has fewer fields, and a hostile body has more.
pub const MOST: usize = 50;

const LONGEST_ID: usize = 100;

/// The wrong places found so far.
#[derive(Debug, Default)]
pub struct Faults {
    found: Vec<FieldError>,
}

impl Faults {
    /// Notes what is wrong at `at` (a JSON pointer).
    pub fn add(&mut self, at: impl Into<String>, detail: impl Into<String>) {
        if self.found.len() < MOST {
            self.found.push(FieldError {
                pointer: at.into(),
                detail: detail.into(),
            });
        }
    }

    /// Notes a number outside `least..=most`. `unit` is as people write it, or empty.
    pub fn in_range(
        &mut self,
        at: &str,
        name: &str,
        value: Option<f64>,
        (least, most): (f64, f64),
        unit: &str,
    ) {
        let Some(value) = value else { return };
        if !(least..=most).contains(&value) {
            let unit = if unit.is_empty() {
                String::new()
            } else {
                format!(" {unit}")
            };
            self.add(
                pointer::below(at, name),
                format!("expected a number from {least} to {most}{unit}, found `{value}`"),
            );
        }
    }

    /// Notes a list that is longer than `most`.
    pub fn at_most(&mut self, at: &str, name: &str, length: usize, most: usize) {
        if length > most {
            self.add(
                pointer::below(at, name),
                format!("expected at most {most} entries, found {length}"),
            );
        }
    }

    /// Notes a text with more than `most` characters.
    pub fn text_at_most(&mut self, at: &str, name: &str, text: &str, most: usize) {
        let length = text.chars().count();
        if length > most {
            self.add(
                pointer::below(at, name),
                format!("expected at most {most} characters, found {length}"),
            );
        }
    }

    /// Notes a name that is empty or longer than any name is.
    pub fn id(&mut self, at: &str, name: &str, id: &str) {
        if id.trim().is_empty() {
            self.add(pointer::below(at, name), "expected an id, found no text");
        }
        self.text_at_most(at, name, id, LONGEST_ID);
    }

    /// Notes a list of names that is too long, and each name that is empty or too long.
    pub fn ids(&mut self, at: &str, name: &str, ids: &[String], most: usize) {
        self.at_most(at, name, ids.len(), most);
        let list = pointer::below(at, name);
        for (place, id) in ids.iter().enumerate() {
            self.id(&list, &place.to_string(), id);
        }
    }

    /// Whether nothing was found.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.found.is_empty()
    }

    /// What was found, in the order it was found in.
    #[must_use]
    pub fn into_errors(self) -> Vec<FieldError> {
        self.found
    }

    /// Nothing, or the problem of this kind that lists what was found.
    ///
    /// # Errors
    /// The problem, when anything was found.
    pub fn or_problem(self, kind: Kind) -> Result<(), Problem> {
        if self.found.is_empty() {
            Ok(())
        } else {
            Err(Problem::invalid(kind, self.found))
        }
    }
}
