//! The folder says which kind of entry a file holds.

use std::collections::BTreeMap;
use std::sync::Arc;

use serde::de::DeserializeOwned;

use super::in_words;
use crate::fault::{Fault, Place, Weight, in_order};
use crate::pack::{Filed, Header, Pack};

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
            ("words", Some("jobs")) => list(file, &path, &mut pack.jobs),
            ("words", Some("classes")) => list(file, &path, &mut pack.classes),
            ("words", Some("stages")) => list(file, &path, &mut pack.stages),
            ("words", Some("outlooks")) => list(file, &path, &mut pack.outlooks),
            ("words", Some("signs")) => list(file, &path, &mut pack.signs),
            ("words", Some("cautions")) => list(file, &path, &mut pack.cautions),
            ("words", Some("sources")) => list(file, &path, &mut pack.sources),
            ("materials", Some(_)) => list(file, &path, &mut pack.materials),
            ("problems", Some(_)) => list(file, &path, &mut pack.problems),
            ("plants", Some(_)) => list(file, &path, &mut pack.plants),
            ("rules", Some(_)) => list(file, &path, &mut pack.rules),
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
