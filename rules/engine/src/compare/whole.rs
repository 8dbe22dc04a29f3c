//! Two whole sets: entry by entry. Scenarios and climates have no part in the meaning of a set and are left out.

use std::collections::BTreeMap;

use serde::Serialize;
use serde_json::Value;

use super::{Kind, Sentence, Words, effect, material, other, rule};
use crate::compile::set::Set;
use crate::fault::Place;
use crate::pack::expression::place;
use crate::pack::{At, Filed, MaterialEntry, RuleEntry};

/// An entry that changed.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Change {
    /// rule, material, problem, plant, sign, caution, source, job, class, stage, outlook, pack.
    pub entry: &'static str,
    /// Its id, after if it is still there.
    pub id: String,
    /// What it is called.
    pub name: String,
    /// Where it stands: after, or before if it is gone.
    pub place: Place,
    /// What changed.
    pub sentences: Vec<Sentence>,
}

/// What changed from one set to another.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Comparison {
    /// Nothing changed but, perhaps, how it is written.
    pub same_meaning: bool,
    /// Not a byte of the canonical form changed.
    pub same_form: bool,
    /// Entries whose meaning, words or sources changed, rules first.
    pub changes: Vec<Change>,
    /// Rules that are the same on both sides.
    pub rules_unchanged: usize,
}

/// Compares these rules and materials only; none: everything.
pub type Only<'a> = Option<&'a [String]>;

/// Compares two sets, in a language; `only` names the entries that count.
#[must_use]
pub fn compare(before: &Set, after: &Set, language: &str, only: Only<'_>) -> Comparison {
    let alone = Words { before, after, language, renamed: &[] };
    let renamed = renamed(&before.pack.rules, &after.pack.rules, alone);
    let words = Words { renamed: &renamed, ..alone };
    let mut changes = Vec::new();
    let unchanged = rules(words, &mut changes);
    let counts = |id: &String| only.is_none_or(|ids| ids.contains(id));
    let rules_unchanged = unchanged.into_iter().filter(|id| counts(id)).count();
    materials(words, &mut changes);
    others(words, &mut changes);
    if let Some(ids) = only {
        changes.retain(|change| ids.contains(&change.id));
    }
    Comparison { same_meaning: changes.is_empty(), same_form: before.sha256 == after.sha256, changes, rules_unchanged }
}

fn by_id(list: &[Filed<RuleEntry>]) -> BTreeMap<&str, &Filed<RuleEntry>> {
    list.iter().map(|filed| (filed.entry.id.value.as_str(), filed)).collect()
}

/// Rules that are gone and rules that are new with the same meaning.
fn renamed(before: &[Filed<RuleEntry>], after: &[Filed<RuleEntry>], words: Words<'_>) -> Vec<(String, String)> {
    let (known, now) = (by_id(before), by_id(after));
    let mut fresh: Vec<&Filed<RuleEntry>> =
        after.iter().filter(|filed| !known.contains_key(filed.entry.id.value.as_str())).collect();
    let mut out = Vec::new();
    for gone in before.iter().filter(|filed| !now.contains_key(filed.entry.id.value.as_str())) {
        let same = fresh.iter().position(|new| rule::differences(&gone.entry, &new.entry, words).is_empty());
        if let Some(at) = same {
            out.push((gone.entry.id.value.clone(), fresh.remove(at).entry.id.value.clone()));
        }
    }
    out
}

fn change(entry: &'static str, id: &At<String>, name: &str, file: &str, sentences: Vec<Sentence>) -> Change {
    Change { entry, id: id.value.clone(), name: name.to_owned(), place: place(file, id), sentences }
}

fn one(kind: Kind, text: String) -> Vec<Sentence> {
    vec![Sentence { kind, text }]
}

/// Returns those that are unchanged.
fn rules<'a>(words: Words<'a>, out: &mut Vec<Change>) -> Vec<&'a String> {
    let (before, after) = (&words.before.pack.rules, &words.after.pack.rules);
    let (known, now) = (by_id(before), by_id(after));
    let mut unchanged = Vec::new();
    for filed in after {
        let Filed { file, entry } = filed;
        let title = words.text(&entry.title);
        let was = words.renamed.iter().find(|(_, id)| *id == entry.id.value).map(|(was, _)| was);
        if let Some(was) = was {
            let text =
                words.pick(format!("was called `{was}`, same meaning"), format!("se llamaba `{was}`, mismo sentido"));
            out.push(change("rule", &entry.id, title, file, one(Kind::Renamed, text)));
            continue;
        }
        let Some(earlier) = known.get(entry.id.value.as_str()) else {
            let text = words.pick("new", "nueva");
            out.push(change("rule", &entry.id, title, file, one(Kind::Added, text)));
            continue;
        };
        let (mut sentences, moved) = rule::with_moved(&earlier.entry, entry, words);
        effect::add(&entry.id.value, &moved, words, &mut sentences);
        if sentences.is_empty() {
            unchanged.push(&entry.id.value);
        } else {
            out.push(change("rule", &entry.id, title, file, sentences));
        }
    }
    for Filed { file, entry } in before {
        let id = &entry.id;
        if !now.contains_key(id.value.as_str()) && !words.renamed.iter().any(|(was, _)| *was == id.value) {
            let text = words.pick("gone", "ya no está");
            out.push(change("rule", id, words.text(&entry.title), file, one(Kind::Removed, text)));
        }
    }
    unchanged
}

fn materials(words: Words<'_>, out: &mut Vec<Change>) {
    let find = |list: &'_ [Filed<MaterialEntry>], id: &str| list.iter().position(|filed| filed.entry.id.value == id);
    let (before, after) = (&words.before.pack.materials, &words.after.pack.materials);
    for Filed { file, entry } in after {
        let name = words.text(&entry.name);
        match find(before, &entry.id.value).and_then(|at| before.get(at)) {
            None => {
                out.push(change("material", &entry.id, name, file, one(Kind::Added, words.pick("new", "nuevo"))));
            }
            Some(earlier) => {
                let sentences = material::differences(&earlier.entry, entry, words);
                if !sentences.is_empty() {
                    out.push(change("material", &entry.id, name, file, sentences));
                }
            }
        }
    }
    for Filed { file, entry } in before {
        if find(after, &entry.id.value).is_none() {
            let sentences = one(Kind::Removed, words.pick("gone", "ya no está"));
            out.push(change("material", &entry.id, words.text(&entry.name), file, sentences));
        }
    }
}

/// An entry of any other kind: its id, its name, its place, its fields.
type Row = (String, String, Place, Value);

fn others(words: Words<'_>, out: &mut Vec<Change>) {
    macro_rules! compared {
        ($kind:literal, $list:ident, $name:expr) => {{
            let rows = |set: &Set| -> Vec<Row> {
                set.pack
                    .$list
                    .iter()
                    .map(|filed| {
                        let entry = &filed.entry;
                        let name: String = $name(entry);
                        let fields = serde_json::to_value(entry).unwrap_or_default();
                        (entry.id.value.clone(), name, place(&filed.file, &entry.id), fields)
                    })
                    .collect()
            };
            fields($kind, &rows(words.before), &rows(words.after), words, out);
        }};
    }
    use crate::pack::{CautionEntry, PlantEntry, ProblemEntry, SignEntry, SourceEntry, WordEntry};
    compared!("problem", problems, |e: &ProblemEntry| words.text(&e.name).to_owned());
    compared!("plant", plants, |e: &PlantEntry| words.text(&e.name).to_owned());
    compared!("sign", signs, |e: &SignEntry| words.text(&e.name).to_owned());
    compared!("caution", cautions, |e: &CautionEntry| words.text(&e.text).to_owned());
    compared!("source", sources, |e: &SourceEntry| e.title.clone());
    compared!("job", jobs, |e: &WordEntry| words.text(&e.name).to_owned());
    compared!("class", classes, |e: &WordEntry| words.text(&e.name).to_owned());
    compared!("stage", stages, |e: &WordEntry| words.text(&e.name).to_owned());
    compared!("outlook", outlooks, |e: &WordEntry| words.text(&e.name).to_owned());
    let header = |set: &Set| {
        let place = place("pack.yaml", &set.pack.header.name);
        let mut fields = serde_json::to_value(&set.pack.header).unwrap_or_default();
        // That it is another version is no change of what it says.
        fields.as_object_mut().map(|fields| fields.remove("version"));
        vec![("pack".to_owned(), set.pack.header.name.value.clone(), place, fields)]
    };
    fields("pack", &header(words.before), &header(words.after), words, out);
}

fn fields(kind: &'static str, before: &[Row], after: &[Row], words: Words<'_>, out: &mut Vec<Change>) {
    let find = |list: &'_ [Row], id: &str| list.iter().position(|row| row.0 == id);
    let mut push = |(id, name, place, _): &Row, sentences: Vec<Sentence>| {
        out.push(Change { entry: kind, id: id.clone(), name: name.clone(), place: place.clone(), sentences });
    };
    for row in after {
        match find(before, &row.0).and_then(|at| before.get(at)) {
            None => push(row, one(Kind::Added, words.pick("new", "nuevo"))),
            Some(earlier) => {
                let sentences = other::differences(&earlier.3, &row.3, words);
                if !sentences.is_empty() {
                    push(row, sentences);
                }
            }
        }
    }
    for row in before.iter().filter(|row| find(after, &row.0).is_none()) {
        push(row, one(Kind::Removed, words.pick("gone", "ya no está")));
    }
}
