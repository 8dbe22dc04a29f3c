//! Everything that is wrong with a request, collected so that one answer names it all.

use super::kinds::{Kind, NOT_ON_LAND, UNKNOWN_CLIMATE, UNKNOWN_PLANT, UNKNOWN_RULE_SET};
use super::wire::FieldError;
use super::{Problem, pointer};

/// No more than this many are listed: a form has fewer fields, and a hostile body has more.
pub const MOST: usize = 50;

const LONGEST_ID: usize = 100;

/// Kinds that say more than that a value is wrong, the most telling first. What is only not available yet comes last:
/// it is named as the kind when nothing else is wrong.
const TELLING: [Kind; 4] = [UNKNOWN_PLANT, UNKNOWN_CLIMATE, NOT_ON_LAND, UNKNOWN_RULE_SET];

/// The wrong places found so far.
#[derive(Debug, Default)]
pub struct Faults {
    found: Vec<FieldError>,
    /// Kinds of their own that were met.
    own: Vec<Kind>,
    /// Whether any place is simply wrong.
    plain: bool,
}

impl Faults {
    /// Notes what is wrong at `at` (a JSON pointer).
    pub fn add(&mut self, at: impl Into<String>, detail: impl Into<String>) {
        self.plain = true;
        self.push(at.into(), detail.into());
    }

    /// Notes what is wrong at `at` where that is a kind of problem of its own.
    pub fn add_as(&mut self, kind: Kind, at: impl Into<String>, detail: impl Into<String>) {
        self.own.push(kind);
        self.push(at.into(), detail.into());
    }

    /// Notes what is wrong at `at`, unless something is noted there already: a place is judged by its form first.
    pub fn add_if_new(&mut self, kind: Option<Kind>, at: String, detail: String) {
        if self.found.iter().any(|known| known.pointer == at) {
            return;
        }
        match kind {
            Some(kind) => self.add_as(kind, at, detail),
            None => self.add(at, detail),
        }
    }

    fn push(&mut self, pointer: String, detail: String) {
        if self.found.len() < MOST {
            self.found.push(FieldError { pointer, detail });
        }
    }

    /// Notes a number outside `least..=most`. `unit` is as people write it, or empty.
    pub fn in_range(&mut self, at: &str, name: &str, value: Option<f64>, (least, most): (f64, f64), unit: &str) {
        let Some(value) = value else { return };
        if !(least..=most).contains(&value) {
            let unit = if unit.is_empty() { String::new() } else { format!(" {unit}") };
            self.add(
                pointer::below(at, name),
                format!("expected a number from {least} to {most}{unit}, found `{value}`"),
            );
        }
    }

    /// Notes a list that is longer than `most`.
    pub fn at_most(&mut self, at: &str, name: &str, length: usize, most: usize) {
        if length > most {
            self.add(pointer::below(at, name), format!("expected at most {most} entries, found {length}"));
        }
    }

    /// Notes a text with more than `most` characters.
    pub fn text_at_most(&mut self, at: &str, name: &str, text: &str, most: usize) {
        let length = text.chars().count();
        if length > most {
            self.add(pointer::below(at, name), format!("expected at most {most} characters, found {length}"));
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

    /// How many places were found.
    #[must_use]
    pub fn len(&self) -> usize {
        self.found.len()
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

    /// Nothing, or the problem that lists what was found: of this kind, unless a place has a more telling one.
    ///
    /// # Errors
    /// The problem, when anything was found.
    pub fn or_problem(self, kind: Kind) -> Result<(), Problem> {
        if self.found.is_empty() {
            Ok(())
        } else {
            let telling = TELLING.into_iter().find(|kind| self.own.contains(kind));
            let only = self.own.first().copied().filter(|_| !self.plain);
            Err(Problem::invalid(telling.or(only).unwrap_or(kind), self.found))
        }
    }
}
