//! What a fact is called that an answer names as rules write it: `plant.age`, `signs has webbing`, `wants(transplant)`.

use lammas_engine::compile::set::Set;
use lammas_engine::explain::number::unit_behind;
use lammas_engine::fact::catalogue::{CATALOGUE, FactType};
use lammas_engine::fact::choice_names::choice_name;
use lammas_engine::fact::wording;

use crate::v1::question::choices::Language;

/// The names of facts, in a language.
#[derive(Clone, Copy)]
pub(super) struct Called<'s> {
    pub(super) set: &'s Set,
    pub(super) language: Language,
}

impl Called<'_> {
    /// Several names in a row.
    pub(super) fn all(self, names: &[String]) -> String {
        names.iter().map(|name| self.one(name)).collect::<Vec<_>>().join(", ")
    }

    /// A choice by its name: one of a trait of the plant, or of a fact's own list; as it is written where it has none.
    pub(super) fn choice(self, fact: &str, plant: &str, value: &str) -> String {
        let language = self.language.word();
        let name = match fact.strip_prefix("plant.trait(").and_then(|rest| rest.strip_suffix(')')) {
            Some(id) => {
                let plants = self.set.pack.plants.iter().filter(|filed| filed.entry.id.value == plant);
                let values = plants.flat_map(|filed| &filed.entry.traits).filter(|of| of.id.value == id);
                let mut values = values.flat_map(|of| &of.values);
                values.find(|of| of.id.value == value).map(|of| of.name.get(language))
            }
            None => CATALOGUE.iter().find(|entry| entry.name == fact).and_then(|entry| match entry.ty {
                FactType::Choice(list) => choice_name(list.name, value).map(|words| words.get(language)),
                _ => None,
            }),
        };
        name.unwrap_or(value).to_owned()
    }

    /// A unit behind a number.
    pub(super) fn unit(self, unit: &str, value: f64) -> String {
        unit_behind(unit, value, self.language.word()).to_owned()
    }

    /// What one is called; as it is written where it has no name.
    fn one(self, name: &str) -> String {
        let (pack, language) = (&self.set.pack, self.language.word());
        if name == "history" {
            return match self.language {
                Language::En => "what was done before",
                Language::Es => "lo que se ha hecho antes",
            }
            .to_owned();
        }
        if let Some(id) = name.strip_prefix("signs has ") {
            let sign = pack.signs.iter().find(|filed| filed.entry.id.value == id);
            return sign.map_or(name, |filed| filed.entry.name.get(language)).to_owned();
        }
        if let Some(id) = name.strip_prefix("problem ") {
            let problem = pack.problems.iter().find(|filed| filed.entry.id.value == id);
            return problem.map_or(name, |filed| filed.entry.name.get(language)).to_owned();
        }
        let (base, argument) = match name.strip_suffix(')').and_then(|open| open.split_once('(')) {
            Some((base, argument)) => (base, argument),
            None => (name, ""),
        };
        let Some(entry) = CATALOGUE.iter().find(|entry| entry.name == base) else { return name.to_owned() };
        let called = wording::words(entry.fact).name.get(language);
        let job = pack.jobs.iter().find(|filed| filed.entry.id.value == argument);
        let argument = job.map_or(argument, |filed| filed.entry.name.get(language));
        match called.split_once('{').and_then(|(before, rest)| Some((before, rest.split_once('}')?.1))) {
            Some((before, after)) => format!("{before}{argument}{after}"),
            None => called.to_owned(),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::cli::packs::Packs;

    #[test]
    fn facts_signs_and_works_are_called_as_people_call_them() {
        let set = Packs::default().load().unwrap().set();
        for (name, en, es) in [
            ("signs has soil-stays-wet", "Soil stays wet", "La tierra sigue empapada"),
            ("soil.ph", "soil pH", "pH del suelo"),
            ("history", "what was done before", "lo que se ha hecho antes"),
            ("shortest_day - 2 weeks", "shortest_day - 2 weeks", "shortest_day - 2 weeks"),
        ] {
            let called = |language| Called { set: &set, language }.one(name);
            assert_eq!((called(Language::En).as_str(), called(Language::Es).as_str()), (en, es));
        }
        let called = Called { set: &set, language: Language::Es };
        assert_eq!(called.choice("site.planting", "rose", "ground"), "suelo");
        assert_ne!(called.choice("plant.trait(form)", "rose", "bush"), "bush");
        assert_eq!(called.choice("plant.trait(form)", "rose", "mat"), "mat");
        assert_eq!((called.unit("days", 10.0), called.unit("day", 1.0)), ("días".to_owned(), "día".to_owned()));
        assert_eq!(called.unit("mm/day", 3.2), "mm/día");
        let wish = Called { set: &set, language: Language::Es }.one("wants(transplant)");
        assert!(!wish.contains('{') && !wish.contains("transplant"), "{wish}");
    }
}
