//! Real requests: which of their answers another set would change.

use std::collections::BTreeMap;

use super::change::How;
use super::pair::{Asked, Detail, compare};

/// What another set would change for some requests.
#[derive(Clone, Debug, Default)]
pub struct Requests {
    /// Requests that at least one of the sets could answer.
    pub answers: u64,
    /// The lines of those of which the decision is another.
    pub changed: Vec<u64>,
    /// By plant, rule (empty for what concerns the whole answer) and kind of change.
    pub found: BTreeMap<(String, String, How), Lines>,
}

/// The requests of one kind of change.
#[derive(Clone, Debug, Default)]
pub struct Lines {
    /// Their lines, in order.
    pub lines: Vec<u64>,
    /// Before and after in the first of them, where there is more to say.
    pub detail: Detail,
}

impl Requests {
    /// Answers a request by both sets; whether one of them could.
    pub fn look(&mut self, line: u64, plant: &str, before: Asked<'_>, after: Asked<'_>) -> bool {
        let found = &mut self.found;
        let differs = compare(before, after, &mut |change, detail| {
            let key = (plant.to_owned(), change.rule.to_owned(), change.how);
            let found = found.entry(key).or_default();
            if found.lines.is_empty() {
                found.detail = detail();
            }
            found.lines.push(line);
        });
        self.answers += u64::from(differs.is_some());
        if differs == Some(true) {
            self.changed.push(line);
        }
        differs.is_some()
    }

    /// Adds what came of later lines.
    pub fn add(&mut self, later: Self) {
        self.answers += later.answers;
        self.changed.extend(later.changed);
        for (key, more) in later.found {
            match self.found.get_mut(&key) {
                Some(known) => known.lines.extend(more.lines),
                None => {
                    self.found.insert(key, more);
                }
            }
        }
    }
}
