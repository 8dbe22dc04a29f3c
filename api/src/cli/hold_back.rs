//! `lammas hold-back`.

use std::io::Write;

use anyhow::Result;
use clap::{Args, ValueEnum};
use serde_json::json;

use super::exit::{BadInput, Exit};
use super::publish::told;
use super::store::{StoreArgs, moment};
use crate::publishing::NotDone;
use crate::publishing::held::{HeldKind, Words};
use crate::publishing::hold_back::Asked;
use crate::store::tables::held_back;

/// What kind of entry is held back
#[derive(Clone, Copy, Debug, ValueEnum)]
enum Kind {
    /// One rule
    Rule,
    /// Every work with a material
    Material,
    /// Every rule that rests on a source
    Source,
}

/// Hold back a rule, a material or a source at once, or add a caution
#[derive(Args, Debug)]
#[command(after_help = "Examples:
  lammas hold-back rule rose.aphid-oil --because \"Burnt buds were seen.\" --because \"es=Se vieron yemas quemadas.\" --store garden
  lammas hold-back material horticultural-oil --because \"A batch was recalled.\" --store garden
  lammas hold-back rule rose.aphid-oil --caution \"Try one shoot first.\" --because \"Two reports.\" --store garden
  lammas hold-back --list --store garden
  lammas hold-back --review 3 --lift --because \"The batch is gone.\" --as BO --store garden

One publisher alone may do it, since it only makes the advice safer; readers see the reason. Another one reviews it: --keep or --lift.")]
pub struct HoldBack {
    /// What kind of entry
    #[arg(value_enum, required_unless_present_any = ["list", "review"])]
    kind: Option<Kind>,
    /// Its id
    #[arg(value_name = "ID", required_unless_present_any = ["list", "review"])]
    entry: Option<String>,
    /// The set
    #[arg(long, value_name = "SET", default_value = "core")]
    set: String,
    /// Why, for readers: a text for every language, or LANGUAGE=TEXT; may be repeated
    #[arg(long, value_name = "TEXT", required_unless_present = "list")]
    because: Vec<String>,
    /// Add this caution instead of holding back; written like --because
    #[arg(long, value_name = "TEXT")]
    caution: Vec<String>,
    /// List what was held back
    #[arg(long, conflicts_with_all = ["kind", "review"])]
    list: bool,
    /// Review what was held back under this number
    #[arg(long, value_name = "NUMBER", conflicts_with = "kind", requires = "verdict")]
    review: Option<i64>,
    /// The review: it stays held back
    #[arg(long, group = "verdict", requires = "review")]
    keep: bool,
    /// The review: it is given again
    #[arg(long, group = "verdict", requires = "review")]
    lift: bool,
    /// Print JSON
    #[arg(long)]
    json: bool,
    #[command(flatten)]
    store: StoreArgs,
}

impl HoldBack {
    pub(super) fn run(self, out: &mut dyn Write) -> Result<Exit> {
        if self.list {
            return self.list(out);
        }
        let who = self.store.who().to_owned();
        if let Some(id) = self.review {
            let (lift, because) = (self.lift, self.because.join(" "));
            let done = self.store.work(|desk| async move { desk.review(id, lift, &because, &who).await })?;
            return match done {
                Some(release) => told(&release, self.json, out),
                None => {
                    writeln!(out, "number {id} is reviewed")?;
                    Ok(Exit::Well)
                }
            };
        }
        let (Some(kind), Some(entry)) = (self.kind, self.entry.clone()) else {
            return Err(BadInput("what is to be held back?".to_owned()).into());
        };
        let kind = match kind {
            Kind::Rule => HeldKind::Rule,
            Kind::Material => HeldKind::Material,
            Kind::Source => HeldKind::Source,
        };
        let caution = if self.caution.is_empty() { None } else { Some(words(&self.caution)) };
        let asked = Asked { kind, entry, because: words(&self.because), caution };
        let set = self.set.clone();
        let (release, id) = self.store.work(|desk| async move { desk.hold_back(&set, &asked, &who, None).await })?;
        if !self.json {
            writeln!(out, "held back as number {id}; it waits for a review")?;
        }
        told(&release, self.json, out)
    }

    fn list(&self, out: &mut dyn Write) -> Result<Exit> {
        let all = self.store.work(|desk| async move {
            let mut work = desk.store.read().await?;
            held_back::list(&mut *work).await.map_err(NotDone::from)
        })?;
        if self.json {
            let each: Vec<_> = all
                .iter()
                .map(|h| json!({"number": h.id, "rule_set": h.rule_set, "kind": h.kind, "entry": h.entry, "because": h.because,
                                "caution": h.caution, "by": h.made_by, "at_ms": h.made_ms, "verdict": h.verdict}))
                .collect();
            writeln!(out, "{:#}", json!(each))?;
            return Ok(Exit::Well);
        }
        for h in &all {
            let state = match h.verdict.as_deref() {
                None => "waits for a review",
                Some("keep") => "reviewed, stays",
                Some(_) => "lifted",
            };
            let what = if h.caution.is_empty() { "held back" } else { "caution" };
            writeln!(
                out,
                "{:4}  {what} {} {} ({})  {}  by {}: {state}",
                h.id,
                h.kind,
                h.entry,
                h.rule_set,
                moment(h.made_ms),
                h.made_by
            )?;
        }
        if all.is_empty() {
            writeln!(out, "nothing was held back")?;
        }
        Ok(Exit::Well)
    }
}

/// `LANGUAGE=TEXT` for that language; a text without it for every other. English stands for the rest.
fn words(given: &[String]) -> Words {
    let mut words = Words::new();
    for text in given {
        match text.split_once('=') {
            Some((tag, text)) if tag.len() == 2 && tag.bytes().all(|b| b.is_ascii_lowercase()) => {
                words.insert(tag.to_owned(), text.to_owned());
            }
            _ => {
                words.insert("en".to_owned(), text.clone());
            }
        }
    }
    words
}
