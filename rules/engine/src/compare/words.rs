//! The words of a comparison: two sets, one language.

use serde::Serialize;

use super::Kind;
use crate::compile::set::Set;
use crate::explain::number::plain;
use crate::explain::plain::Plain;
use crate::explain::words::is_spanish;
use crate::pack::rule::RuleEntry;
use crate::pack::shapes::AllOr;
use crate::text::Text;

/// One thing that changed.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Sentence {
    /// Of which kind.
    pub kind: Kind,
    /// In words: lower-case start, no full stop.
    pub text: String,
}

/// What the words are taken from.
#[derive(Clone, Copy, Debug)]
pub struct Words<'a> {
    /// The set before.
    pub before: &'a Set,
    /// The set after.
    pub after: &'a Set,
    /// en, es.
    pub language: &'a str,
    /// Ids of rules that only have another name now: before, after.
    pub renamed: &'a [(String, String)],
}

impl<'a> Words<'a> {
    /// Words for two versions of an entry in one set.
    #[must_use]
    pub const fn within(set: &'a Set, language: &'a str) -> Self {
        Self { before: set, after: set, language, renamed: &[] }
    }

    /// English or Spanish.
    pub(super) fn pick(&self, en: impl Into<String>, es: impl Into<String>) -> String {
        if is_spanish(self.language) { es.into() } else { en.into() }
    }

    /// The plain words of a rule, with the traits of the first plant that it names: before, after.
    pub(super) fn plain(&self, before: &RuleEntry, after: &RuleEntry) -> (Plain<'a>, Plain<'a>) {
        (self.of(self.before, before), self.of(self.after, after))
    }

    fn of(&self, set: &'a Set, rule: &RuleEntry) -> Plain<'a> {
        let listed = match &rule.whom.plants {
            Some(AllOr::These(ids)) => ids.first(),
            _ => None,
        };
        let id = rule.whom.plant.as_ref().or(listed);
        let plant = id.and_then(|id| set.pack.plants.iter().find(|plant| plant.entry.id.value == id.value));
        Plain { set, plant: plant.map(|plant| &plant.entry), language: self.language }
    }

    /// The id of a rule of the set before, as the set after calls it.
    pub(super) fn now<'i>(&'i self, id: &'i str) -> &'i str {
        self.renamed.iter().find(|(before, _)| before == id).map_or(id, |(_, after)| after)
    }

    /// A text in the language.
    pub(super) fn text<'t>(&self, text: &'t Text) -> &'t str {
        text.get(self.language)
    }

    /// `2 weeks`, `9 days`, `1 day`.
    pub(super) fn days(&self, days: f64) -> String {
        let days = days.abs();
        if days >= 7.0 && days % 7.0 == 0.0 {
            let weeks = days / 7.0;
            let one = (weeks - 1.0).abs() < 1e-9;
            return match is_spanish(self.language) {
                true => format!("{} {}", plain(weeks), if one { "semana" } else { "semanas" }),
                false => format!("{} {}", plain(weeks), if one { "week" } else { "weeks" }),
            };
        }
        let one = (days - 1.0).abs() < 1e-9;
        match is_spanish(self.language) {
            true => format!("{} {}", plain(days), if one { "día" } else { "días" }),
            false => format!("{} {}", plain(days), if one { "day" } else { "days" }),
        }
    }
}
