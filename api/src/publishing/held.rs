//! What is held back, put on top of the files of a set. It can only make the advice safer: works are held, cautions added.
//!
//! A rule, a material, or every rule that rests on a source is held by a guard that is written here, in a file of its own; a caution is
//! added to the list of a rule or a material. Nothing else of the files changes, but the version, which names the holds:
//! `2026.11.1+held.3`. What a hold names and the files don't have any more is passed over.

use lammas_engine::pack::expression::place;
use lammas_engine::pack::rule::Kind;
use lammas_engine::pack::shapes::AllOr;
use lammas_engine::pack::{At, Pack};
use lammas_engine::read::{PackFile, read};
use lammas_engine::text::Language;
use serde::{Deserialize, Serialize};
use serde_json::json;

/// The file with the guards.
const GUARDS: &str = "rules/held-back.yaml";
/// The file with the cautions.
const CAUTIONS: &str = "words/cautions-held-back.yaml";
/// The file with the source of both.
const SOURCES: &str = "words/sources-held-back.yaml";

/// What kind of entry is held back.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum HeldKind {
    /// One rule.
    Rule,
    /// Every work with a material.
    Material,
    /// Every rule that rests on a source.
    Source,
}

impl HeldKind {
    /// As it is written.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Self::Rule => "rule",
            Self::Material => "material",
            Self::Source => "source",
        }
    }
}

/// Texts by language, as `en`, `es`.
pub type Words = std::collections::BTreeMap<String, String>;

/// One hold, as a release carries it.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Hold {
    /// Its number.
    pub id: i64,
    /// What is held back.
    pub kind: HeldKind,
    /// The id of the entry.
    pub entry: String,
    /// Why, as readers see it.
    pub because: Words,
    /// The caution that is added; without one the entry is held back.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub caution: Option<Words>,
}

/// Holds as they stand in a release.
///
/// # Errors
/// The text is not a list of holds.
pub fn parse(text: &str) -> Result<Vec<Hold>, String> {
    serde_json::from_str(text).map_err(|error| format!("the list of holds can't be read: {error}"))
}

/// The files with the holds on top of them.
///
/// # Errors
/// A file of the set has a name that is kept for holds, or a caution can't be put to its entry.
pub fn apply(files: &[PackFile], holds: &[Hold]) -> Result<Vec<PackFile>, String> {
    let mut out = files.to_vec();
    for kept in [GUARDS, CAUTIONS, SOURCES] {
        if out.iter().any(|file| file.path == kept) {
            return Err(format!("the name `{kept}` is kept for what is held back; give the file another name"));
        }
    }
    if holds.is_empty() {
        return Ok(out);
    }
    let pack = read(files).map_err(|faults| faults.first().map_or_else(String::new, |fault| fault.message.clone()))?;
    let (mut guards, mut cautions) = (String::new(), String::new());
    let mut applied = Vec::new();
    for hold in holds {
        let Some(target) = Target::of(&pack, hold) else { continue };
        if let Some(caution) = &hold.caution {
            let id = format!("held-back-{}", hold.id);
            let text = words(&pack.header.languages, caution);
            cautions.push_str(&format!("- {{id: {id}, kind: person, text: {text}}}\n"));
            for (file, id_line) in &target.places {
                add_caution(&mut out, file, *id_line, &id)?;
            }
        } else {
            guards.push_str(&guard(&pack.header.languages, hold, &target));
        }
        applied.push(hold.id.to_string());
    }
    if applied.is_empty() {
        return Ok(out);
    }
    named(&mut out, &pack, &applied.join("."))?;
    let mut add = |path: &str, text: String| {
        if !text.is_empty() {
            out.push(PackFile { path: path.to_owned(), text });
        }
    };
    let source = "- {id: held-back, title: \"Held back by the publisher\", how_read: \"decided by the publisher\"}\n";
    add(SOURCES, if guards.is_empty() { String::new() } else { source.to_owned() });
    add(GUARDS, guards);
    add(CAUTIONS, cautions);
    Ok(out)
}

/// What a hold bears on.
struct Target {
    rules: Vec<String>,
    plants: Option<Vec<String>>,
    /// File and line of each entry.
    places: Vec<(String, u32)>,
}

impl Target {
    fn of(pack: &Pack, hold: &Hold) -> Option<Self> {
        let place = |file: &str, id: &At<String>| (file.to_owned(), place(file, id).line);
        if hold.kind == HeldKind::Material {
            let found = pack.materials.iter().find(|filed| filed.entry.id.value == hold.entry)?;
            return Some(Self { rules: vec![], plants: None, places: vec![place(&found.file, &found.entry.id)] });
        }
        let wanted = |filed: &&lammas_engine::pack::Filed<lammas_engine::pack::RuleEntry>| match hold.kind {
            HeldKind::Rule => filed.entry.id.value == hold.entry,
            _ => filed.entry.sources.iter().any(|source| source.value == hold.entry),
        };
        let found: Vec<_> = pack.rules.iter().filter(|filed| filed.entry.kind == Kind::Task).filter(wanted).collect();
        if found.is_empty() {
            return None;
        }
        let mut plants = Some(Vec::new());
        for filed in &found {
            let whom = &filed.entry.whom;
            match (&whom.plant, &whom.plants, &mut plants) {
                (Some(one), None, Some(list)) => list.push(one.value.clone()),
                (None, Some(AllOr::These(some)), Some(list)) => list.extend(some.iter().map(|one| one.value.clone())),
                _ => plants = None,
            }
        }
        if let Some(list) = &mut plants {
            list.sort();
            list.dedup();
        }
        let rules = found.iter().map(|filed| filed.entry.id.value.clone()).collect();
        let places = found.iter().map(|filed| place(&filed.file, &filed.entry.id)).collect();
        Some(Self { rules, plants, places })
    }
}

/// Whether a set has something that this hold bears on.
#[must_use]
pub fn bears_on_something(pack: &Pack, hold: &Hold) -> bool {
    Target::of(pack, hold).is_some()
}

/// Texts in every language of the set, as YAML; a language that was not given has the words of the first that was.
fn words(languages: &[Language], given: &Words) -> String {
    let any = given.values().next().cloned().unwrap_or_default();
    let each: serde_json::Map<String, serde_json::Value> = languages
        .iter()
        .map(|language| {
            let tag = language.clone();
            let text = given.get(&tag).unwrap_or(&any);
            (tag, json!(text))
        })
        .collect();
    serde_json::Value::Object(each).to_string()
}

fn guard(languages: &[Language], hold: &Hold, target: &Target) -> String {
    let plants = target.plants.as_ref().map_or_else(|| "all".to_owned(), |list| format!("[{}]", list.join(", ")));
    let blocks = match hold.kind {
        HeldKind::Material => format!("materials: [{}]", hold.entry),
        _ => format!("rules: [{}]", target.rules.join(", ")),
    };
    let title: Words = [("en", "Held back by the publisher"), ("es", "Retenido por el editor")]
        .map(|(tag, text)| (tag.to_owned(), text.to_owned()))
        .into();
    format!(
        "- id: guard.held-back-{}\n  kind: avoid\n  title: {}\n  for: {{plants: {plants}}}\n  blocks: {{{blocks}}}\n  \
         rank: {{urgency: 3, impact: 3}}\n  evidence: common-practice\n  strength: avoid\n  why: {}\n  sources: [held-back]\n",
        hold.id,
        words(languages, &title),
        words(languages, &hold.because),
    )
}

/// Puts a caution into the entry whose id stands at this line.
fn add_caution(files: &mut [PackFile], path: &str, id_line: u32, caution: &str) -> Result<(), String> {
    let unfit = || format!("a caution can't be added to the entry at {path}:{id_line}: `lammas tidy` its file first");
    let file = files.iter_mut().find(|file| file.path == path).ok_or_else(unfit)?;
    let mut lines: Vec<String> = file.text.lines().map(str::to_owned).collect();
    let start = usize::try_from(id_line).map_err(|_| unfit())?.checked_sub(1).ok_or_else(unfit)?;
    if !lines.get(start).ok_or_else(unfit)?.starts_with("- id:") {
        return Err(unfit());
    }
    let end = lines
        .iter()
        .enumerate()
        .skip(start + 1)
        .find(|(_, line)| line.starts_with("- "))
        .map_or(lines.len(), |(at, _)| at);
    let list = (start..end).find(|at| lines.get(*at).is_some_and(|line| line.starts_with("  cautions:")));
    match list {
        None => lines.insert(start + 1, format!("  cautions: [{caution}]")),
        Some(at) => {
            let line = lines.get_mut(at).ok_or_else(unfit)?;
            let open = line.find('[').ok_or_else(unfit)?;
            let empty = line.get(open + 1..).is_some_and(|rest| rest.trim_start().starts_with(']'));
            line.insert_str(open + 1, &format!("{caution}{}", if empty { "" } else { ", " }));
        }
    }
    file.text = lines.join("\n") + "\n";
    Ok(())
}

/// Gives the set a version that names the holds.
fn named(files: &mut [PackFile], pack: &Pack, ids: &str) -> Result<(), String> {
    let unfit = || "the version in `pack.yaml` is expected on a line of its own".to_owned();
    let file = files.iter_mut().find(|file| file.path == "pack.yaml").ok_or_else(unfit)?;
    let mut lines: Vec<String> = file.text.lines().map(str::to_owned).collect();
    let line = lines.iter_mut().find(|line| line.starts_with("version:")).ok_or_else(unfit)?;
    *line = format!("version: \"{}+held.{ids}\"", pack.header.version.value);
    file.text = lines.join("\n") + "\n";
    Ok(())
}
