//! The folder says which kind of entry a file holds.

use std::collections::BTreeMap;
use std::sync::Arc;

use serde::de::DeserializeOwned;

use super::in_words;
use super::written::Written;
use crate::fault::{Fault, Place, Weight, in_order};
use crate::pack::layer::{Change, Changes, EntryKind, Grounds, Laid, What};
use crate::pack::{At, Filed, Header, Pack};

/// A file of a pack: its path inside it, with forward slashes, and its text.
#[derive(Clone, Debug)]
pub struct PackFile {
    /// `rules/rose-cuts.yaml`.
    pub path: String,
    /// Its text.
    pub text: String,
}

/// The largest file that is read, in bytes: repetition by aliases costs time before it is refused.
pub const MOST_BYTES: usize = 1 << 20;

/// Reads the files of a pack, in any order.
///
/// # Errors
/// Every file that is no YAML, or does not have the shape of its kind: one fault a file, the first.
pub fn read(files: &[PackFile]) -> Result<Pack, Vec<Fault>> {
    let mut sorted: Vec<&PackFile> = files.iter().collect();
    sorted.sort_by(|a, b| a.path.cmp(&b.path));
    let mut faults = Vec::new();
    let mut header: Option<Header> = None;
    let mut pack = Lists::default();
    for file in &sorted {
        let mut parts = file.path.split('/');
        let (first, second) = (parts.next().unwrap_or_default(), parts.next());
        let path: Arc<str> = Arc::from(file.path.as_str());
        let kind = if first == "words" { second.and_then(word_kind) } else { second };
        let outcome = match (first, kind) {
            ("pack.yaml", None) => one(file).map(|h| header = Some(h)),
            ("words", Some("jobs")) => written(file, &path, EntryKind::Job, &mut pack.jobs, &mut pack.changes),
            ("words", Some("classes")) => written(file, &path, EntryKind::Class, &mut pack.classes, &mut pack.changes),
            ("words", Some("stages")) => written(file, &path, EntryKind::Stage, &mut pack.stages, &mut pack.changes),
            ("words", Some("outlooks")) => {
                written(file, &path, EntryKind::Outlook, &mut pack.outlooks, &mut pack.changes)
            }
            ("words", Some("signs")) => written(file, &path, EntryKind::Sign, &mut pack.signs, &mut pack.changes),
            ("words", Some("cautions")) => {
                written(file, &path, EntryKind::Caution, &mut pack.cautions, &mut pack.changes)
            }
            ("words", Some("sources")) => written(file, &path, EntryKind::Source, &mut pack.sources, &mut pack.changes),
            ("materials", Some(_)) => written(file, &path, EntryKind::Material, &mut pack.materials, &mut pack.changes),
            ("problems", Some(_)) => written(file, &path, EntryKind::Problem, &mut pack.problems, &mut pack.changes),
            ("plants", Some(_)) => written(file, &path, EntryKind::Plant, &mut pack.plants, &mut pack.changes),
            ("rules", Some(_)) => written(file, &path, EntryKind::Rule, &mut pack.rules, &mut pack.changes),
            ("climates", Some(_)) => list(file, &path, &mut pack.climates),
            ("scenarios", Some(_)) => {
                one(file).map(|entry| pack.scenarios.push(Filed { file: Arc::clone(&path), entry }))
            }
            _ => Err(Box::new(
                Fault::error("wrong-shape", whole(file), "the folder of this file means nothing in a pack")
                    .help("the folders are words, materials, problems, plants, rules, climates, scenarios"),
            )),
        };
        if let Err(fault) = outcome {
            faults.push(*fault);
        }
    }
    if header.is_none() && !faults.iter().any(|f| f.place.file == "pack.yaml") {
        let place = Place { file: "pack.yaml".to_owned(), ..Place::default() };
        faults.push(
            Fault::error("wrong-shape", place, "the pack has no `pack.yaml`")
                .help("it gives name, version, languages and title"),
        );
    }
    match header {
        Some(header) if !faults.iter().any(|f| f.weight == Weight::Error) => Ok(Pack {
            header,
            jobs: pack.jobs,
            classes: pack.classes,
            stages: pack.stages,
            outlooks: pack.outlooks,
            signs: pack.signs,
            cautions: pack.cautions,
            sources: pack.sources,
            materials: pack.materials,
            problems: pack.problems,
            plants: pack.plants,
            rules: pack.rules,
            climates: pack.climates,
            scenarios: pack.scenarios,
            changes: pack.changes,
            laid: Laid::default(),
            root: String::new(),
            files: sorted.iter().map(|f| (f.path.clone(), Arc::from(f.text.as_str()))).collect::<BTreeMap<_, _>>(),
        }),
        _ => Err(in_order(faults)),
    }
}

#[derive(Default)]
struct Lists {
    jobs: Vec<Filed<crate::pack::WordEntry>>,
    classes: Vec<Filed<crate::pack::WordEntry>>,
    stages: Vec<Filed<crate::pack::WordEntry>>,
    outlooks: Vec<Filed<crate::pack::WordEntry>>,
    signs: Vec<Filed<crate::pack::SignEntry>>,
    cautions: Vec<Filed<crate::pack::CautionEntry>>,
    sources: Vec<Filed<crate::pack::SourceEntry>>,
    materials: Vec<Filed<crate::pack::MaterialEntry>>,
    problems: Vec<Filed<crate::pack::ProblemEntry>>,
    plants: Vec<Filed<crate::pack::PlantEntry>>,
    rules: Vec<Filed<crate::pack::RuleEntry>>,
    climates: Vec<Filed<crate::pack::ClimateEntry>>,
    scenarios: Vec<Filed<crate::pack::scenario::ScenarioEntry>>,
    changes: Changes,
}

/// `signs` of `signs.yaml` and of `signs-citrus.yaml`: a vocabulary may be spread over files.
fn word_kind(name: &str) -> Option<&str> {
    name.strip_suffix(".yaml")?.split('-').next()
}

fn whole(file: &PackFile) -> Place {
    Place { file: file.path.clone(), ..Place::default() }
}

fn list<T: DeserializeOwned>(file: &PackFile, path: &Arc<str>, out: &mut Vec<Filed<T>>) -> Result<(), Box<Fault>> {
    let entries: Vec<T> = one(file)?;
    out.extend(entries.into_iter().map(|entry| Filed { file: Arc::clone(path), entry }));
    Ok(())
}

/// Entries, and what is said of entries of the sets below.
fn written<T: DeserializeOwned + HasId>(
    file: &PackFile,
    path: &Arc<str>,
    kind: EntryKind,
    out: &mut Vec<Filed<T>>,
    changes: &mut Changes,
) -> Result<(), Box<Fault>> {
    let entries: Vec<Written<T>> = one(file)?;
    for entry in entries {
        let (id, grounds, what) = match entry {
            Written::New(entry) => {
                out.push(Filed { file: Arc::clone(path), entry });
                continue;
            }
            Written::Replaced(entry, grounds) => {
                let id = entry.id().clone();
                out.push(Filed { file: Arc::clone(path), entry });
                (id, grounds, What::Replace)
            }
            Written::Reword(entry) => {
                let grounds = grounds(&entry.because, entry.expects.as_ref());
                (entry.reword.clone(), grounds, What::Reword(Box::new(entry)))
            }
            Written::Tighten(entry) => {
                let grounds = grounds(&entry.because, entry.expects.as_ref());
                (entry.tighten.clone(), grounds, What::Tighten(Box::new(entry)))
            }
            Written::Withhold(entry) => (
                entry.withhold,
                Grounds { because: entry.because, expects: entry.expects, ..Grounds::default() },
                What::Withhold,
            ),
        };
        changes.push(Filed { file: Arc::clone(path), entry: Change { kind, id, grounds, what } });
    }
    Ok(())
}

fn grounds(because: &crate::text::Text, expects: Option<&At<String>>) -> Grounds {
    Grounds { because: because.clone(), expects: expects.cloned(), ..Grounds::default() }
}

/// An entry that has an id.
trait HasId {
    fn id(&self) -> &At<String>;
}

macro_rules! has_id {
    ($($entry:ident),*) => {$(
        impl HasId for crate::pack::$entry {
            fn id(&self) -> &At<String> {
                &self.id
            }
        }
    )*};
}

has_id!(WordEntry, SignEntry, CautionEntry, SourceEntry, MaterialEntry, ProblemEntry, PlantEntry, RuleEntry);

fn one<T: DeserializeOwned>(file: &PackFile) -> Result<T, Box<Fault>> {
    if file.text.len() > MOST_BYTES {
        let message = format!("the file has {} bytes, the most is {MOST_BYTES}", file.text.len());
        return Err(Box::new(
            Fault::error("wrong-shape", whole(file), message).help("spread its entries over several files"),
        ));
    }
    serde_saphyr::from_str(&file.text).map_err(|error| {
        let location = error.location();
        let place = Place {
            file: file.path.clone(),
            line: location.map_or(0, |l| u32::try_from(l.line()).unwrap_or(0)),
            column: location.map_or(0, |l| u32::try_from(l.column()).unwrap_or(0)),
            width: 0,
        };
        Box::new(in_words::fault(place, &file.text, &error.without_snippet().to_string()))
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn file(path: &str, text: &str) -> PackFile {
        PackFile { path: path.to_owned(), text: text.to_owned() }
    }

    #[test]
    fn a_vocabulary_may_be_spread_over_files() {
        let header = file("pack.yaml", "{name: core, version: '2026.1.1', languages: [en], title: {en: T}}");
        let jobs = file("words/jobs.yaml", "- {id: prune, name: {en: Prune}}");
        let more = file("words/jobs-citrus.yaml", "- {id: graft, name: {en: Graft}}");
        let pack = read(&[header.clone(), more, jobs]).unwrap();
        let ids: Vec<&str> = pack.jobs.iter().map(|j| j.entry.id.value.as_str()).collect();
        assert_eq!(ids, ["graft", "prune"]);
        let faults = read(&[header, file("words/jobsite.yaml", "[]")]).unwrap_err();
        assert_eq!(faults[0].code, "wrong-shape");
    }
}
