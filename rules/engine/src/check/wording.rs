//! Every text of a pack, with what it belongs to and where it stands.

use super::locate::Stretch;
use crate::fault::Place;
use crate::pack::expression::place;
use crate::pack::rule::{Kind, RuleEntry};
use crate::pack::{At, Filed, Pack, PlantEntry};
use crate::text::{Text, Texts};

/// One text or a list of them.
#[derive(Clone, Copy, Debug)]
pub(super) enum Words<'p> {
    /// One.
    One(&'p Text),
    /// Several.
    Many(&'p Texts),
}

/// A text of the pack in every language.
#[derive(Clone, Debug)]
pub(super) struct Wording<'p> {
    /// What it belongs to: `rule`, `sign`.
    pub(super) owner: &'static str,
    /// The id of that.
    pub(super) id: &'p str,
    /// The field: `why`, `hold.because`.
    pub(super) field: &'static str,
    /// The text.
    pub(super) words: Words<'p>,
    /// Whether it must be there.
    pub(super) needed: bool,
    /// Words that people say, for finding things; not shown as ours.
    pub(super) lay: bool,
    /// The rule, when it is one of a rule.
    pub(super) rule: Option<&'p RuleEntry>,
    source: Source<'p>,
}

/// From what the place of a text is found, when a fault asks for it.
#[derive(Clone, Debug)]
struct Source<'p> {
    pack: &'p Pack,
    file: &'p str,
    id: &'p At<String>,
    /// The value from which on the keys are looked for; none: the whole entry.
    from: Option<&'p At<String>>,
    /// Keys from the outer to the inner, each with how many of its name stand before it.
    keys: Vec<(&'static str, usize)>,
}

impl<'p> Source<'p> {
    fn find(&self) -> Option<Stretch<'p>> {
        let entry = Stretch::entry(self.pack, self.file, self.id);
        let start = self.from.map_or(entry, |from| entry.starting_at(from));
        self.keys.iter().try_fold(start, |at, (key, nth)| at.key(key, *nth))
    }
}

impl<'p> Wording<'p> {
    /// Languages in which it is there, with the texts.
    #[must_use]
    pub(super) fn languages(&self) -> Vec<(&'p str, Vec<&'p str>)> {
        match self.words {
            Words::One(text) => text.0.iter().map(|(l, t)| (l.as_str(), vec![t.as_str()])).collect(),
            Words::Many(texts) => {
                texts.0.iter().map(|(l, t)| (l.as_str(), t.iter().map(String::as_str).collect())).collect()
            }
        }
    }

    /// Where the field stands; the entry when the field is not written.
    #[must_use]
    pub(super) fn place(&self) -> Place {
        self.source.find().map_or_else(|| place(self.source.file, self.source.id), Stretch::place)
    }

    /// Where the text of a language stands.
    #[must_use]
    pub(super) fn place_of(&self, language: &str) -> Place {
        self.source.find().and_then(|at| at.key(language, 0)).map_or_else(|| self.place(), Stretch::place)
    }

    /// Where these words stand in the text of a language.
    #[must_use]
    pub(super) fn place_in(&self, language: &str, words: &str) -> Place {
        let found = self.source.find().and_then(|at| at.key(language, 0)).and_then(|at| at.words(words));
        let width = u32::try_from(words.chars().count()).unwrap_or(0);
        found.map_or_else(|| self.place_of(language), |at| Place { width, ..at.place() })
    }
}

/// The texts of one entry.
struct Collector<'p> {
    owner: &'static str,
    source: Source<'p>,
    rule: Option<&'p RuleEntry>,
    found: Vec<Wording<'p>>,
}

impl<'p> Collector<'p> {
    fn of(pack: &'p Pack, owner: &'static str, file: &'p str, id: &'p At<String>) -> Self {
        let source = Source { pack, file, id, from: None, keys: Vec::new() };
        Self { owner, source, rule: None, found: Vec::new() }
    }

    fn put(&mut self, field: &'static str, keys: &[(&'static str, usize)], words: Words<'p>, needed: bool) {
        let source = Source { keys: keys.to_vec(), ..self.source.clone() };
        let (owner, id, rule) = (self.owner, self.source.id.value.as_str(), self.rule);
        self.found.push(Wording { owner, id, field, words, needed, lay: false, rule, source });
    }

    fn one(&mut self, field: &'static str, text: &'p Text, needed: bool) {
        self.put(field, &[(field, 0)], Words::One(text), needed);
    }
}

/// Every text of a pack, entry by entry.
#[must_use]
pub(super) fn all(pack: &Pack) -> Vec<Wording<'_>> {
    let mut out = header(pack);
    for (owner, list) in
        [("job", &pack.jobs), ("class", &pack.classes), ("stage", &pack.stages), ("outlook", &pack.outlooks)]
    {
        for Filed { file, entry } in list {
            let mut of = Collector::of(pack, owner, file, &entry.id);
            of.one("name", &entry.name, true);
            of.one("about", &entry.about, false);
            out.append(&mut of.found);
        }
    }
    for Filed { file, entry } in &pack.signs {
        let mut of = Collector::of(pack, "sign", file, &entry.id);
        of.one("name", &entry.name, true);
        of.one("look", &entry.look, true);
        of.put("words", &[("words", 0)], Words::Many(&entry.words), false);
        of.found.last_mut().into_iter().for_each(|words| words.lay = true);
        out.append(&mut of.found);
    }
    for Filed { file, entry } in &pack.cautions {
        let mut of = Collector::of(pack, "caution", file, &entry.id);
        of.one("text", &entry.text, true);
        out.append(&mut of.found);
    }
    for Filed { file, entry } in &pack.materials {
        let mut of = Collector::of(pack, "material", file, &entry.id);
        of.one("name", &entry.name, true);
        of.one("analysis", &entry.analysis, false);
        out.append(&mut of.found);
    }
    for Filed { file, entry } in &pack.problems {
        let mut of = Collector::of(pack, "problem", file, &entry.id);
        of.one("name", &entry.name, true);
        of.one("about", &entry.about, true);
        out.append(&mut of.found);
    }
    pack.plants.iter().for_each(|filed| out.append(&mut plant(pack, filed)));
    pack.rules.iter().for_each(|filed| out.append(&mut rule(pack, filed)));
    for Filed { file, entry } in &pack.climates {
        let mut of = Collector::of(pack, "climate", file, &entry.id);
        of.one("name", &entry.name, true);
        of.one("tell", &entry.tell, true);
        out.append(&mut of.found);
    }
    out
}

fn header(pack: &Pack) -> Vec<Wording<'_>> {
    let mut of = Collector::of(pack, "pack", "pack.yaml", &pack.header.name);
    of.one("title", &pack.header.title, true);
    of.one("review", &pack.header.review, false);
    of.found
}

fn plant<'p>(pack: &'p Pack, Filed { file, entry }: &'p Filed<PlantEntry>) -> Vec<Wording<'p>> {
    let mut of = Collector::of(pack, "plant", file, &entry.id);
    of.one("name", &entry.name, true);
    for (nth, part) in entry.traits.iter().enumerate() {
        of.put("traits.ask", &[("traits", 0), ("ask", nth)], Words::One(&part.ask), true);
        for value in &part.values {
            of.source.from = Some(&value.id);
            of.put("traits.values.name", &[("name", 0)], Words::One(&value.name), true);
            of.source.from = None;
        }
    }
    for (nth, quiet) in entry.quiet.iter().enumerate() {
        of.put("quiet.because", &[("quiet", 0), ("because", nth)], Words::One(&quiet.because), true);
    }
    of.found
}

fn rule<'p>(pack: &'p Pack, Filed { file, entry }: &'p Filed<RuleEntry>) -> Vec<Wording<'p>> {
    let mut of = Collector::of(pack, "rule", file, &entry.id);
    of.rule = Some(entry);
    of.one("title", &entry.title, true);
    of.one("why", &entry.why, true);
    of.put("steps", &[("steps", 0)], Words::Many(&entry.steps), entry.kind == Kind::Task);
    for (nth, hold) in entry.hold.iter().enumerate() {
        of.put("hold.because", &[("hold", 0), ("because", nth)], Words::One(&hold.because), true);
    }
    for (field, key, text) in [
        ("outside.early", "early", &entry.outside.early),
        ("outside.late", "late", &entry.outside.late),
        ("outside.never", "never", &entry.outside.never),
    ] {
        of.put(field, &[("outside", 0), (key, 0)], Words::One(text), false);
    }
    for (nth, amount) in entry.amount.iter().enumerate() {
        of.put("amount.what", &[("amount", 0), ("what", nth)], Words::One(&amount.what), true);
    }
    of.one("professional", &entry.professional, false);
    if let Some(emergency) = &entry.emergency {
        of.put("emergency.call", &[("emergency", 0), ("call", 0)], Words::One(&emergency.call), true);
    }
    of.found
}
