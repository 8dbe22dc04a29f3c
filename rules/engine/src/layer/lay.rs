//! One set laid over those below it, entry by entry.

use std::collections::{BTreeMap, BTreeSet};

use serde::Serialize;
use serde_json::to_value;

use super::loosened::loosened;
use super::reword::Reworded;
use super::tighten::{self, Names};
use crate::fault::{Fault, Place};
use crate::pack::expression::place;
use crate::pack::layer::{Change, EntryKind, Spoken, Touched, What};
use crate::pack::rule::Kind;
use crate::pack::{
    At, CautionEntry, Filed, MaterialEntry, Pack, PlantEntry, ProblemEntry, RuleEntry, SignEntry, SourceEntry,
    WordEntry,
};
use crate::text::Text;
use crate::version::hash;

/// How much of an entry's hash is written behind `expects`, in hexadecimal digits.
const DIGITS: usize = 16;

/// The hash by which a set above names what it saw of an entry.
#[must_use]
pub fn seen<T: Serialize>(entry: &T) -> String {
    let mut whole = hash::of_value(&to_value(entry).unwrap_or_default());
    whole.truncate(DIGITS);
    whole
}

/// One set being laid over those below it.
pub(super) struct Laying<'f> {
    /// Its number among the layers.
    pub(super) number: usize,
    pub(super) faults: &'f mut Vec<Fault>,
}

/// An entry of any kind.
trait Entry: Reworded + Serialize {
    fn id(&self) -> &At<String>;
}

macro_rules! entries {
    ($($entry:ident),*) => {$(
        impl Entry for $entry {
            fn id(&self) -> &At<String> {
                &self.id
            }
        }
    )*};
}

entries!(WordEntry, SignEntry, CautionEntry, SourceEntry, MaterialEntry, ProblemEntry, PlantEntry, RuleEntry);

impl Laying<'_> {
    /// Lays it over the sets below.
    pub(super) fn over(&mut self, below: &mut Pack, above: &Pack) {
        let Pack { header, changes, .. } = above;
        let languages = below.header.languages.clone();
        for Filed { file, entry } in changes {
            self.grounds(file, entry, &languages);
        }
        // The vocabularies first: what is said of rules and materials may name new words.
        macro_rules! lay {
            ($($list:ident $kind:ident),*) => {$(
                self.list(EntryKind::$kind, &mut below.$list, &above.$list, changes, &mut below.laid.touched);
            )*};
        }
        lay!(jobs Job, classes Class, stages Stage, outlooks Outlook, signs Sign, cautions Caution, sources Source,
            materials Material, problems Problem, plants Plant, rules Rule);
        let names = Names::of(below);
        for Filed { file, entry: change } in changes {
            match &change.what {
                What::Tighten(more) => {
                    let (faults, id) = (&mut *self.faults, change.id.value.as_str());
                    match change.kind {
                        EntryKind::Rule => {
                            if let Some(found) = below.rules.iter_mut().find(|f| f.entry.id.value == id) {
                                tighten::rule(file, more, &mut found.entry, &names, faults);
                            }
                        }
                        EntryKind::Material => {
                            if let Some(found) = below.materials.iter_mut().find(|f| f.entry.id.value == id) {
                                tighten::material(file, more, &mut found.entry, &names, faults);
                            }
                        }
                        kind => {
                            let message = format!("a {} can't be tightened, only rules and materials can", kind.word());
                            faults.push(Fault::error("not-a-tightening", place(file, &change.id), message));
                        }
                    }
                }
                What::Withhold => self.withhold(file, change, below),
                What::Replace | What::Reword(_) => {}
            }
            if change.kind == EntryKind::Rule {
                self.spoken(change, below);
            }
        }
        for Filed { entry, .. } in &above.rules {
            let is_changed =
                changes.iter().any(|c| c.entry.kind == EntryKind::Rule && c.entry.id.value == entry.id.value);
            if !is_changed {
                below.laid.spoken.insert(entry.id.value.clone(), Spoken { by: self.number, also: Vec::new() });
            }
        }
        below.climates.extend(above.climates.iter().cloned());
        // What the sets below promise of themselves is theirs; this set has its own scenarios.
        below.scenarios.clone_from(&above.scenarios);
        below.files.extend(above.files.clone());
        if let Some(more) = &header.plain {
            match &mut below.header.plain {
                Some(plain) => plain.waive.extend(more.waive.iter().cloned()),
                None => below.header.plain = Some(more.clone()),
            }
        }
    }

    /// Why an entry below is spoken of must be said, in every language.
    fn grounds(&mut self, file: &str, change: &Change, languages: &[String]) {
        let because = &change.grounds.because;
        let word = change.what.word();
        let here = place(file, &change.id);
        if because.is_empty() {
            if !matches!(change.what, What::Reword(_)) {
                let message = format!("a `{word}` says why: the field `because` is missing");
                self.faults.push(Fault::error("missing-field", here, message));
            }
            return;
        }
        self.worded(&here, "because", because, languages);
        if let What::Tighten(more) = &change.what {
            for hold in &more.hold {
                self.worded(&place(file, &hold.condition.0), "because", &hold.because, languages);
            }
        }
    }

    fn worded(&mut self, here: &Place, field: &str, text: &Text, languages: &[String]) {
        let missing: Vec<&str> = languages
            .iter()
            .filter(|language| text.0.get(*language).is_none_or(|said| said.trim().is_empty()))
            .map(String::as_str)
            .collect();
        if !missing.is_empty() {
            let message = format!("the text `{field}` is not there in {}", missing.join(", "));
            self.faults.push(Fault::error("missing-translation", here.clone(), message));
        }
    }

    fn list<T: Entry + Clone + 'static>(
        &mut self,
        kind: EntryKind,
        below: &mut Vec<Filed<T>>,
        above: &[Filed<T>],
        changes: &[Filed<Change>],
        touched: &mut Vec<Touched>,
    ) {
        let mut replaced = BTreeSet::new();
        // All that this set says is said of the entries as they are below it.
        let spoken: BTreeSet<&str> =
            changes.iter().filter(|c| c.entry.kind == kind).map(|c| c.entry.id.value.as_str()).collect();
        let now: BTreeMap<String, String> = below
            .iter()
            .filter(|filed| spoken.contains(filed.entry.id().value.as_str()))
            .map(|filed| (filed.entry.id().value.clone(), seen(&filed.entry)))
            .collect();
        for Filed { file, entry: change } in changes.iter().filter(|filed| filed.entry.kind == kind) {
            let here = place(file, &change.id);
            let Some(found) = below.iter_mut().find(|filed| filed.entry.id().value == change.id.value) else {
                let message = format!("no set below has a {} `{}`", kind.word(), change.id.value);
                let fault = Fault::error("nothing-below", here, message);
                let known = below.iter().map(|filed| filed.entry.id().value.as_str());
                self.faults.push(fault.nearest(&change.id.value, known));
                if matches!(change.what, What::Replace) {
                    replaced.insert(change.id.value.as_str());
                }
                continue;
            };
            self.expects(&here, change, now.get(&change.id.value).map_or("", String::as_str));
            let entry_at = place(&found.file, found.entry.id());
            self.twice(&here, change, &entry_at, touched);
            match &change.what {
                What::Replace => {
                    let of_change = |filed: &&Filed<T>| place(&filed.file, filed.entry.id()) == here;
                    if let Some(new) = above.iter().find(of_change) {
                        loosened(&here, change, &found.entry, &new.entry, self.faults);
                        *found = new.clone();
                        replaced.insert(change.id.value.as_str());
                    }
                }
                What::Reword(words) => found.entry.reword(&here, words, self.faults),
                What::Tighten(_) | What::Withhold => {}
            }
            touched.push(Touched { entry: entry_at, by: here, word: change.what.word() });
        }
        for new in above {
            let id = new.entry.id();
            if replaced.contains(id.value.as_str()) {
                continue;
            }
            if let Some(known) = below.iter().find(|filed| filed.entry.id().value == id.value) {
                let message = format!("a set below has the {} `{}` already", kind.word(), id.value);
                let help = "give it another id, or write `replace` for `id` to put it in the place of that one";
                let mut fault = Fault::error("exists-below", place(&new.file, id), message).help(help);
                fault.related.push((place(&known.file, known.entry.id()), "it stands here below".to_owned()));
                self.faults.push(fault);
            }
        }
        let is_new = |new: &&Filed<T>| !replaced.contains(new.entry.id().value.as_str());
        below.extend(above.iter().filter(is_new).cloned());
    }

    /// The entry below must be the one that was seen.
    fn expects(&mut self, here: &Place, change: &Change, now: &str) {
        let word = change.what.word();
        match &change.grounds.expects {
            None if matches!(change.what, What::Withhold) => {}
            None => {
                let message = format!("a `{word}` names what it saw below: the field `expects` is missing");
                let fault = Fault::error("missing-field", here.clone(), message);
                self.faults.push(fault.help(format!("as it is now: `expects: \"{now}\"`")));
            }
            Some(expects) if expects.value == now => {}
            Some(expects) => {
                let message = format!(
                    "the {} `{}` below is not the one that this `{word}` saw (`{}`)",
                    change.kind.word(),
                    change.id.value,
                    expects.value
                );
                let help = format!("look at it again; where this still fits it, write `expects: \"{now}\"`");
                self.faults.push(Fault::error("stale-expects", place(&here.file, expects), message).help(help));
            }
        }
    }

    /// Two sets above that speak of one entry: the upper one wins, and somebody should know. One set may reword and tighten
    /// the same entry.
    fn twice(&mut self, here: &Place, change: &Change, entry: &Place, touched: &[Touched]) {
        let set = |place: &Place| place.file.split('/').next().map(str::to_owned);
        let word = change.what.word();
        let is_other = |known: &&Touched| {
            let goes_together = known.word != word && known.word != "replace" && word != "replace";
            (known.entry == *entry || known.by == *entry) && !(set(&known.by) == set(here) && goes_together)
        };
        let Some(earlier) = touched.iter().find(is_other) else { return };
        let message = if set(&earlier.by) == set(here) {
            format!("this set speaks of the {} `{}` twice", change.kind.word(), change.id.value)
        } else {
            format!("two sets speak of the {} `{}`: this one has the last word", change.kind.word(), change.id.value)
        };
        let mut fault = Fault::warning("changed-twice", here.clone(), message);
        fault.related.push((earlier.by.clone(), "it is spoken of here as well".to_owned()));
        self.faults.push(fault);
    }

    fn withhold(&mut self, file: &str, change: &Change, below: &mut Pack) {
        let here = place(file, &change.id);
        if change.kind != EntryKind::Rule {
            let message = format!("a {} can't be withheld, only rules can", change.kind.word());
            self.faults.push(Fault::error("wrong-shape", here, message));
            return;
        }
        let id = &change.id.value;
        let Some(rule) = below.rules.iter().find(|filed| filed.entry.id.value == *id) else { return };
        if rule.entry.kind == Kind::Avoid {
            let message =
                format!("`{id}` is something to leave alone: it binds through all sets and can't be withheld");
            let help = "put a rule in its place with `replace` where it says too much";
            self.faults.push(Fault::error("loosened", here, message).help(help));
            return;
        }
        below.laid.withheld.insert(id.clone(), change.grounds.because.clone());
    }

    /// Who speaks in a rule from now on.
    fn spoken(&self, change: &Change, below: &mut Pack) {
        if !below.rules.iter().any(|filed| filed.entry.id.value == change.id.value) {
            return;
        }
        let spoken = below.laid.spoken.entry(change.id.value.clone()).or_default();
        match change.what {
            What::Replace => {
                *spoken = Spoken { by: self.number, also: Vec::new() };
                below.laid.withheld.remove(&change.id.value);
            }
            What::Reword(_) | What::Tighten(_) | What::Withhold => {
                if !spoken.also.contains(&self.number) {
                    spoken.also.push(self.number);
                }
            }
        }
    }
}
