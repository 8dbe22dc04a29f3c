//! Other texts for an entry below: only those that it has, with the same placeholders.

use std::collections::BTreeMap;

use crate::fault::{Fault, Place};
use crate::pack::layer::RewordEntry;
use crate::pack::{
    CautionEntry, MaterialEntry, PlantEntry, ProblemEntry, RuleEntry, SignEntry, SourceEntry, WordEntry,
};
use crate::text::{Text, Texts};

/// An entry whose texts may be said in other words.
pub(super) trait Reworded {
    /// Takes the given texts of the given languages.
    fn reword(&mut self, here: &Place, words: &RewordEntry, faults: &mut Vec<Fault>);
}

/// Where the words go, and what may not be said.
struct Taking<'f> {
    kind: &'static str,
    here: &'f Place,
    faults: &'f mut Vec<Fault>,
    taken: usize,
}

macro_rules! reworded {
    ($($entry:ident $kind:literal: $($text:ident)* ; $($texts:ident)*;)*) => {$(
        impl Reworded for $entry {
            fn reword(&mut self, here: &Place, words: &RewordEntry, faults: &mut Vec<Fault>) {
                let mut taking = Taking { kind: $kind, here, faults, taken: 0 };
                $(taking.text(stringify!($text), &mut self.$text, &words.$text);)*
                $(taking.texts(stringify!($texts), &mut self.$texts, &words.$texts);)*
                taking.rest(words, &[$(stringify!($text),)* $(stringify!($texts)),*]);
            }
        }
    )*};
}

reworded! {
    WordEntry "word": name about; ;
    SignEntry "sign": name look; words;
    CautionEntry "caution": text; ;
    SourceEntry "source": ; ;
    MaterialEntry "material": name analysis; ;
    ProblemEntry "problem": name about; ;
}

impl Reworded for PlantEntry {
    fn reword(&mut self, here: &Place, words: &RewordEntry, faults: &mut Vec<Fault>) {
        let mut taking = Taking { kind: "plant", here, faults, taken: 0 };
        taking.text("name", &mut self.name, &words.name);
        for (language, names) in &words.names {
            taking.taken += 1;
            self.names.insert(language.clone(), names.clone());
        }
        taking.rest(words, &["name", "names"]);
    }
}

impl Reworded for RuleEntry {
    fn reword(&mut self, here: &Place, words: &RewordEntry, faults: &mut Vec<Fault>) {
        let mut taking = Taking { kind: "rule", here, faults, taken: 0 };
        taking.text("title", &mut self.title, &words.title);
        taking.text("why", &mut self.why, &words.why);
        taking.text("professional", &mut self.professional, &words.professional);
        taking.text("early", &mut self.outside.early, &words.outside.early);
        taking.text("late", &mut self.outside.late, &words.outside.late);
        taking.text("never", &mut self.outside.never, &words.outside.never);
        taking.texts("steps", &mut self.steps, &words.steps);
        taking.rest(words, &["title", "why", "professional", "early", "late", "never", "steps"]);
    }
}

impl Taking<'_> {
    fn text(&mut self, field: &str, own: &mut Text, new: &Text) {
        for (language, said) in &new.0 {
            self.taken += 1;
            if own.is_empty() {
                self.nothing(field);
                continue;
            }
            self.same_placeholders(field, language, &[own.get(language)], &[said]);
            own.0.insert(language.clone(), said.clone());
        }
    }

    fn texts(&mut self, field: &str, own: &mut Texts, new: &Texts) {
        for (language, said) in &new.0 {
            self.taken += 1;
            if own.is_empty() && field != "words" {
                self.nothing(field);
                continue;
            }
            let (before, after): (Vec<&str>, Vec<&str>) =
                (own.get(language).iter().map(String::as_str).collect(), said.iter().map(String::as_str).collect());
            self.same_placeholders(field, language, &before, &after);
            own.0.insert(language.clone(), said.clone());
        }
    }

    fn nothing(&mut self, field: &str) {
        let message = format!("the {} below has no `{field}` that could be said in other words", self.kind);
        self.faults.push(Fault::error("wrong-shape", self.here.clone(), message).help("use `replace` to add a text"));
    }

    /// Texts that this kind of entry does not have.
    fn rest(&mut self, words: &RewordEntry, own: &[&str]) {
        let outside = &words.outside;
        let given = [
            ("name", words.name.is_empty()),
            ("names", words.names.is_empty()),
            ("about", words.about.is_empty()),
            ("look", words.look.is_empty()),
            ("words", words.words.is_empty()),
            ("text", words.text.is_empty()),
            ("analysis", words.analysis.is_empty()),
            ("title", words.title.is_empty()),
            ("why", words.why.is_empty()),
            ("steps", words.steps.is_empty()),
            ("professional", words.professional.is_empty()),
            ("early", outside.early.is_empty()),
            ("late", outside.late.is_empty()),
            ("never", outside.never.is_empty()),
        ];
        for (field, _) in given.iter().filter(|(field, empty)| !empty && !own.contains(field)) {
            self.taken += 1;
            self.nothing(field);
        }
        if self.taken == 0 {
            let fault = Fault::error("wrong-shape", self.here.clone(), "a `reword` gives at least one text");
            self.faults.push(fault.help(format!("the texts of a {} are: {}", self.kind, own.join(", "))));
        }
    }

    fn same_placeholders(&mut self, field: &str, language: &str, before: &[&str], after: &[&str]) {
        let (was, is) = (placeholders(before), placeholders(after));
        if was == is {
            return;
        }
        let only = |these: &BTreeMap<String, usize>, those: &BTreeMap<String, usize>| -> Vec<String> {
            these
                .iter()
                .filter(|(name, count)| those.get(*name) != Some(count))
                .map(|(name, _)| format!("`{{{name}}}`"))
                .collect()
        };
        let (gone, new) = (only(&was, &is), only(&is, &was));
        let said = [("below", gone), ("here", new)]
            .into_iter()
            .filter(|(_, list)| !list.is_empty())
            .map(|(side, list)| format!("{side} {}", list.join(", ")))
            .collect::<Vec<_>>()
            .join("; ");
        let message = format!("other words with other placeholders in `{field}`, `{language}`: {said}");
        let help = "quote in the new text what the text below quotes, each as often as there";
        self.faults.push(Fault::error("placeholders-differ", self.here.clone(), message).help(help));
    }
}

/// What stands in braces, and how often.
fn placeholders(texts: &[&str]) -> BTreeMap<String, usize> {
    let mut found = BTreeMap::new();
    for text in texts {
        for piece in text.split('{').skip(1) {
            if let Some((inner, _)) = piece.split_once('}') {
                *found.entry(inner.trim().to_owned()).or_default() += 1;
            }
        }
    }
    found
}
