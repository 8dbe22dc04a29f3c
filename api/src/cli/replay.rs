//! `lammas replay`.

use std::io::Write;

use anyhow::Result;
use clap::Args;
use serde_json::Value;

use super::exit::{BadInput, Exit};
use super::packs::Packs;
use super::{language, request, source, wrapped};
use crate::problem::extractors::body::parsed;
use crate::settings::limits::Limits;
use crate::v1::question::choices::Language;
use crate::v1::question::today;
use crate::v1::replay::again;
use crate::v1::replay::answer::{ReplayAnswer, ReplaySame};
use crate::v1::replay::request::ReplayRequest;

const EXAMPLES: &str = "Examples:
  lammas replay answer.json           an answer that was kept: `lammas advise FILE --json > answer.json`, asked for with
                                      \"recall\": true
  lammas replay recall.txt            the text behind `recall` in it, by itself
  lammas replay - --json < answer.json
  echo hot-dry-valley/rose/2026-09-15/core@2026.11.1 | lammas replay
                                      what stands behind `reference`, read over the telephone
  echo '{\"request\": {…}, \"digest\": \"…\"}' | lammas replay     the same JSON as POST /v1/replay takes

Ends with 1 when the answer of now is another.";

/// Give a past answer again, from what was kept of it, and say in which rules the answer of now differs
#[derive(Args, Debug)]
#[command(after_help = EXAMPLES)]
pub struct Replay {
    /// What was kept: an answer, a recall text, a reference, or a request with its digest; the standard input as `-`
    #[arg(value_name = "FILE", default_value = "-")]
    kept: String,
    /// Language, where what was kept does not say it
    #[arg(long, value_name = "en|es", value_parser = language::parse)]
    language: Option<Language>,
    #[command(flatten)]
    packs: Packs,
    /// Print JSON
    #[arg(long)]
    json: bool,
}

impl Replay {
    pub(super) fn run(self, out: &mut dyn Write) -> Result<Exit> {
        let asked = self.asked()?;
        let rules = self.packs.load()?;
        let (text, language) = again::replay(&asked, self.language, &rules, today::now())
            .map_err(|problem| request::refused(&self.kept, &problem))?;
        let answer: ReplayAnswer = serde_json::from_str(&text)?;
        if self.json {
            writeln!(out, "{text}")?;
        } else {
            out.write_all(shown(&answer, language).as_bytes())?;
        }
        Ok(if answer.same == ReplaySame::Differs { Exit::Found } else { Exit::Well })
    }

    /// What was kept, whichever of its forms it has.
    fn asked(&self) -> Result<ReplayRequest, BadInput> {
        let text = source::text(&self.kept)?;
        let kept = text.trim();
        if !kept.starts_with('{') {
            let text = Some(kept.to_owned());
            return Ok(match kept.contains('/') {
                true => ReplayRequest { reference: text, ..ReplayRequest::default() },
                false => ReplayRequest { recall: text, ..ReplayRequest::default() },
            });
        }
        let refused = |problem| request::refused(&self.kept, &problem);
        let value: Value = parsed(kept.as_bytes(), Limits::default().nesting).map_err(refused)?;
        if value.get("asked").is_some() && value.get("digest").is_some() {
            return Ok(ReplayRequest { answer: Some(value), ..ReplayRequest::default() });
        }
        parsed(kept.as_bytes(), Limits::default().nesting).map_err(refused)
    }
}

/// How the answer of now stands to the one that was given, for people.
fn shown(answer: &ReplayAnswer, language: Language) -> String {
    let pick = |en: &'static str, es: &'static str| if language == Language::Es { es } else { en };
    let sets: Vec<String> = answer.rule_sets.iter().map(|set| format!("{} {}", set.name, set.version)).collect();
    let said = match answer.same {
        ReplaySame::Same => pick("the same answer, byte for byte", "la misma respuesta, byte por byte"),
        ReplaySame::SameDecision => {
            pick("the same question to the same rule sets", "la misma pregunta a los mismos conjuntos de reglas")
        }
        ReplaySame::Differs => pick("another answer", "otra respuesta"),
        ReplaySame::NotCompared => pick(
            "given again; there is no answer to compare it with",
            "dada de nuevo; no hay respuesta con que compararla",
        ),
    };
    let mut shown = format!("{said} ({})\n", sets.join(" + "));
    if let Some(then) = answer.decision_version.then.filter(|then| *then != answer.decision_version.now) {
        let now = answer.decision_version.now;
        shown.push_str(&match language {
            Language::Es => format!("versión de decisión {now}, entonces {then}\n"),
            Language::En => format!("decision version {now}, then {then}\n"),
        });
    }
    for taken in &answer.withdrawn {
        let since = pick("taken back since", "retirado desde");
        let line = format!("{} {} ({since} {}): {}", taken.name, taken.version, taken.since, taken.because);
        shown.push_str(&wrapped::lines("", &line));
    }
    for differs in &answer.differs {
        let (then, now) = (pick("then", "entonces"), pick("now", "ahora"));
        let line = format!("{}: {then} {}, {now} {}. {}", differs.rule, differs.then, differs.now, differs.because);
        shown.push_str(&wrapped::lines("  - ", line.trim()));
    }
    for (place, task) in answer.answer.tasks.iter().enumerate() {
        shown.push_str(&wrapped::lines(&format!("{:>3}. ", place + 1), &format!("{} [{}]", task.title, task.id)));
    }
    if !answer.answer.held.is_empty() {
        shown.push_str(pick("held\n", "en espera\n"));
    }
    for held in &answer.answer.held {
        shown.push_str(&wrapped::lines("   - ", &format!("{}: {} [{}]", held.title, held.because, held.id)));
    }
    shown
}
