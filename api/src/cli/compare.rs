//! `lammas compare`.

use std::io::Write;
use std::path::{Path, PathBuf};

use anyhow::Result;
use clap::Args;
use lammas_engine::compare::{Change, Comparison, compare};
use lammas_engine::compile::set::Set;
use serde_json::json;

use super::exit::{BadInput, Exit};
use super::{packs, source, wrapped};
use crate::sets::embedded;
use crate::v1::question::choices::Language;

const EXAMPLES: &str = "Examples:
  lammas compare rules-before rules-after             what changed, rule by rule, in sentences
  lammas compare core my-rules --language es          against the rule set inside the program
  lammas compare old/rules/rose-cuts.yaml new/rules/rose-cuts.yaml   one file, each inside its rule set
  lammas compare before after --json

The order of entries, files, spaces and comments, and the units of numbers, are no change of meaning; neither is the version.
Scenarios and climates are not compared. Ends with 0 when nothing changed its meaning, words or sources, with 1 when
something did.";

/// Say what changed between two rule sets by meaning, not by text
#[derive(Args, Debug)]
#[command(after_help = EXAMPLES)]
pub struct Compare {
    /// Folder of a rule set, a file of one, or `core` for the one inside the program
    #[arg(value_name = "BEFORE")]
    before: PathBuf,
    /// The same, as it is after
    #[arg(value_name = "AFTER")]
    after: PathBuf,
    /// Language
    #[arg(long, value_name = "en|es", value_parser = super::language::parse)]
    language: Option<Language>,
    /// Print JSON
    #[arg(long)]
    json: bool,
}

impl Compare {
    pub(super) fn run(self, out: &mut dyn Write) -> Result<Exit> {
        let language = self.language.unwrap_or(Language::En);
        let (before, only_before) = side(&self.before)?;
        let (after, only_after) = side(&self.after)?;
        // Of a single file only its own entries count, whichever side has them.
        let only: Option<Vec<String>> = match (only_before, only_after) {
            (None, None) => None,
            (b, a) => Some(b.into_iter().chain(a).flatten().collect()),
        };
        let compared = compare(&before, &after, language.word(), only.as_deref());
        if self.json {
            let each = |set: &Set| json!({"name": set.pack.header.name.value, "version": set.pack.header.version.value, "sha256": set.sha256});
            let mut whole = serde_json::to_value(&compared)?;
            if let Some(fields) = whole.as_object_mut() {
                fields.insert("before".to_owned(), each(&before));
                fields.insert("after".to_owned(), each(&after));
            }
            writeln!(out, "{whole:#}")?;
        } else {
            out.write_all(shown(&compared, language).as_bytes())?;
        }
        Ok(if compared.same_meaning { Exit::Well } else { Exit::Found })
    }
}

/// A set and, where a single file was named, the ids of its entries.
fn side(path: &Path) -> Result<(Set, Option<Vec<String>>)> {
    if path == Path::new(embedded::NAME) && !path.exists() {
        return Ok((packs::draft(&[])?, None));
    }
    if path.is_dir() {
        return Ok((packs::draft(&[path.to_owned()])?, None));
    }
    let text = source::text(&path.display().to_string())?;
    let root = path.ancestors().skip(1).find(|folder| folder.join("pack.yaml").is_file());
    let Some(root) = root else {
        return Err(BadInput(format!(
            "`{}` is a file outside a rule set: expected a `pack.yaml` in a folder above it",
            path.display()
        ))
        .into());
    };
    let set = packs::draft(&[root.to_owned()])?;
    let inside = path.strip_prefix(root).unwrap_or(path);
    let mut name = inside.iter().map(|part| part.to_string_lossy()).collect::<Vec<_>>().join("/");
    // Of several sets in layers the folder is the uppermost.
    if let [_, .., top] = set.layers.as_slice() {
        name = format!("{}/{name}", top.name);
    }
    let ids = ids_of(&set, &name);
    if ids.is_empty() {
        let entries = if text.trim().is_empty() { "it is empty" } else { "it holds no entries that can be compared" };
        return Err(BadInput(format!("cannot compare `{}`: {entries}", path.display())).into());
    }
    Ok((set, Some(ids)))
}

fn ids_of(set: &Set, file: &str) -> Vec<String> {
    let pack = &set.pack;
    let mut out = Vec::new();
    macro_rules! ids {
        ($($list:ident),*) => {
            $(out.extend(pack.$list.iter().filter(|filed| &*filed.file == file).map(|filed| filed.entry.id.value.clone()));)*
        };
    }
    ids!(rules, materials, problems, plants, signs, cautions, sources, jobs, classes, stages, outlooks);
    out
}

fn shown(compared: &Comparison, language: Language) -> String {
    let pick = |en: &'static str, es: &'static str| if language == Language::Es { es } else { en };
    if compared.same_meaning {
        let how = match compared.same_form {
            true => pick("no change of meaning\n", "sin cambio de sentido\n"),
            false => pick(
                "no change of meaning: only written in another way\n",
                "sin cambio de sentido: solo está escrito de otra manera\n",
            ),
        };
        return how.to_owned();
    }
    let mut out = String::new();
    for change in &compared.changes {
        out.push_str(&entry(change));
    }
    let rules = compared.changes.iter().filter(|change| change.entry == "rule").count();
    let others = compared.changes.len() - rules;
    let is_wording = |change: &&Change| change.sentences.iter().all(|sentence| sentence.kind.leaves_advice());
    let wordings = compared.changes.iter().filter(is_wording).count();
    let count = |n: usize, one: &str, many: &str| format!("{n} {}", if n == 1 { one } else { many });
    let mut said = vec![count(rules, pick("rule changed", "regla cambia"), pick("rules changed", "reglas cambian"))];
    if others > 0 {
        said.push(count(
            others,
            pick("other entry changed", "otra entrada cambia"),
            pick("other entries changed", "otras entradas cambian"),
        ));
    }
    if wordings > 0 {
        let only = pick("of them in words, sources or name only", "solo en palabras, fuentes o nombre");
        said.push(format!("{wordings} {only}"));
    }
    let same = compared.rules_unchanged;
    said.push(count(
        same,
        pick("rule is the same", "regla sigue igual"),
        pick("rules are the same", "reglas siguen igual"),
    ));
    out.push_str(&said.join(", "));
    out.push('\n');
    out
}

fn entry(change: &Change) -> String {
    let kind = if change.entry == "rule" { String::new() } else { format!("{} ", change.entry) };
    let mut out = format!("{kind}{}  {}  ({})\n", change.id, change.name, change.place);
    for sentence in &change.sentences {
        out.push_str(&wrapped::lines("  - ", &sentence.text));
    }
    out.push('\n');
    out
}
