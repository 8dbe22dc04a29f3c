//! Faults found while compiling, each with its place.

use super::marker::whole_days;
use super::names::{Index, Names};
use super::typing::Mistake;
use super::window::unreadable;
use crate::fault::{Fault, Place, in_order};
use crate::lang::parse;
use crate::pack::expression::place;
use crate::pack::{At, Pack};
use crate::unit::Unit;

/// Collects faults.
#[derive(Debug)]
pub struct Report<'p> {
    pack: &'p Pack,
    found: Vec<Fault>,
}

impl<'p> Report<'p> {
    /// Nothing found yet.
    #[must_use]
    pub const fn new(pack: &'p Pack) -> Self {
        Self { pack, found: Vec::new() }
    }

    /// What was found, sorted by place, each once.
    #[must_use]
    pub fn faults(self) -> Vec<Fault> {
        in_order(self.found)
    }

    /// An error at a value.
    pub fn at<T>(&mut self, file: &str, at: &At<T>, code: &'static str, message: impl Into<String>) {
        self.found.push(Fault::error(code, place(file, at), message));
    }

    /// A mistake in an expression.
    pub fn mistake(&mut self, file: &str, text: &At<String>, mistake: &Mistake) {
        let quoted = self.pack.is_quoted(file, text);
        let place = if self.stands_as_read(file, text, quoted) {
            crate::pack::Expression(text.clone()).place(file, mistake.span, quoted)
        } else {
            // Folded over several lines, or with escapes: a column inside it would point at the wrong thing.
            place(file, text)
        };
        let mut fault = Fault::error(mistake.code, place, mistake.message.clone());
        fault.help.clone_from(&mistake.help);
        self.found.push(fault);
    }

    /// Where a field stands behind an entry's id; the id itself where it can't be found.
    fn key_after(&self, file: &str, id: &At<String>, key: &str) -> Place {
        let here = place(file, id);
        let (skipped, key) = (usize::try_from(here.line).unwrap_or(0), format!("{key}:"));
        let lines = self.pack.files.get(file).into_iter().flat_map(|text| text.lines()).zip(1_u32..).skip(skipped);
        let found = lines
            .take_while(|(line, _)| !line.starts_with("- "))
            .find_map(|(line, number)| Some((line.split_once(&key)?.0, number)));
        match found {
            Some((before, line)) => {
                Place { line, column: u32::try_from(before.chars().count() + 1).unwrap_or(0), ..here }
            }
            None => here,
        }
    }

    /// Whether a scalar stands in its file, on one line, letter by letter as it was read.
    fn stands_as_read(&self, file: &str, text: &At<String>, quoted: bool) -> bool {
        let index = |n: u64| usize::try_from(n).ok()?.checked_sub(1);
        let line = index(text.referenced.line()).and_then(|n| self.pack.files.get(file)?.lines().nth(n));
        let from = index(text.referenced.column()).and_then(|n| line?.char_indices().nth(n + usize::from(quoted)));
        from.and_then(|(at, _)| line?.get(at..)).is_some_and(|rest| rest.starts_with(text.value.as_str()))
    }

    /// The number of an id.
    pub fn id(&mut self, file: &str, id: &At<String>, index: &Index, what: &str) -> Option<u16> {
        let number = index.number(&id.value);
        if number.is_none() {
            let fault = Fault::error("unknown-name", place(file, id), format!("there is no {what} `{}`", id.value));
            self.found.push(nearest_or_all(fault, &id.value, index));
        }
        number
    }

    /// The numbers of ids.
    pub fn ids(&mut self, file: &str, ids: &[At<String>], index: &Index, what: &str) -> Vec<u16> {
        ids.iter().filter_map(|id| self.id(file, id, index, what)).collect()
    }

    /// The number of a rule.
    pub fn rule<T>(&mut self, file: &str, at: &At<T>, id: &str, names: &Names) -> Option<u32> {
        let number = names.rules.wide(id);
        if number.is_none() {
            let fault = Fault::error("unknown-name", place(file, at), format!("there is no rule `{id}`"));
            self.found.push(fault.nearest(id, names.rules.names()));
        }
        number
    }

    /// A number with its unit.
    pub fn literal(&mut self, file: &str, text: &At<String>) -> Option<(f64, &'static Unit)> {
        let read = parse::after(&text.value).map_err(unreadable).and_then(|read| {
            Unit::find(&read.unit)
                .map(|unit| (read.from, unit))
                .ok_or_else(|| Mistake::new("wrong-unit", read.span, format!("`{}` is no unit", read.unit)))
        });
        read.map_err(|mistake| self.mistake(file, text, &mistake)).ok()
    }

    /// `7..10 days`, `14 days`.
    pub fn days(&mut self, file: &str, text: &At<String>) -> Option<(u16, u16)> {
        let read = parse::after(&text.value).map_err(unreadable).and_then(|read| {
            let days = |value: f64| {
                let days = whole_days(value, &read.unit, read.span)?;
                u16::try_from(days).map_err(|_| Mistake::new("wrong-unit", read.span, "days can't be negative here"))
            };
            Ok((days(read.from)?, days(read.to)?))
        });
        read.map_err(|mistake| self.mistake(file, text, &mistake)).ok()
    }

    /// A grade from 0 to 3.
    pub fn grade(&mut self, file: &str, at: &At<String>, what: &str, grade: u8) -> u8 {
        if grade > 3 {
            let message = format!("`{what}` runs from 0 to 3, found {grade}");
            self.found.push(Fault::error("number-out-of-range", self.key_after(file, at, what), message));
        }
        grade.min(3)
    }
}

/// The nearest known name as the cure; where none is near and there are few, all of them.
fn nearest_or_all(fault: Fault, word: &str, index: &Index) -> Fault {
    let fault = fault.nearest(word, index.names());
    if fault.help.is_some() || index.is_empty() || index.len() > 8 {
        return fault;
    }
    fault.help(format!("there are: {}", index.names().collect::<Vec<_>>().join(", ")))
}
