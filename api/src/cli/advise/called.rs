//! What a fact is called that an answer names as rules write it: `plant.age`, `signs has webbing`, `wants(transplant)`.

use lammas_engine::compile::set::Set;
use lammas_engine::fact::catalogue::CATALOGUE;
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
        let wish = Called { set: &set, language: Language::Es }.one("wants(transplant)");
        assert!(!wish.contains('{') && !wish.contains("transplant"), "{wish}");
    }
}
