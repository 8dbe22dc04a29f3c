//! `lammas why-not`.

use std::io::Write;

use anyhow::Result;
use clap::Args;

use super::exit::{BadInput, Exit};
use super::packs::Packs;
use super::wrapped::lines;
use super::{language, request};
use crate::problem::kinds::RULE_NOT_FOUND;
use crate::v1::advice::request::AdviceRequest;
use crate::v1::question::choices::Language;
use crate::v1::question::today;
use crate::v1::rules::why_not;
use crate::v1::rules::why_not_answer::{WhyNotAnswer, WhyNotWay};

const EXAMPLES: &str = "Examples:
  lammas why-not rose.renewal-cut garden.json      what stands in its way, and the least that brings it
  echo '{\"climate\": {\"id\": \"hot-dry-valley\"}, \"date\": \"2026-01-15\", \"plant\": {\"type\": \"rose\"}}' | lammas why-not rose.mound
  lammas why-not rose.mound garden.json --json     the same JSON as POST /v1/rules/{id}/why-not";

/// Say why a rule is not in an answer, and the smallest change of facts that brings it
#[derive(Args, Debug)]
#[command(after_help = EXAMPLES)]
pub struct WhyNot {
    /// The rule's id, as an answer names it
    #[arg(value_name = "RULE")]
    rule: String,
    /// The question as JSON, as POST /v1/advice takes it: a file, or the standard input as `-`
    #[arg(value_name = "FILE", default_value = "-")]
    question: String,
    /// Language, when the question names none
    #[arg(long, value_name = "en|es", value_parser = language::parse)]
    language: Option<Language>,
    #[command(flatten)]
    climate: request::Climate,
    #[command(flatten)]
    packs: Packs,
    /// Print JSON
    #[arg(long)]
    json: bool,
}

impl WhyNot {
    pub(super) fn run(self, out: &mut dyn Write) -> Result<Exit> {
        let asked: AdviceRequest = request::read_with_climate(&self.question, &self.climate)?;
        let rules = self.packs.load()?;
        let (text, language) =
            why_not::told(&self.rule, asked, self.language, &rules, today::now()).map_err(|problem| {
                if problem.kind() == RULE_NOT_FOUND {
                    BadInput(problem.to_string())
                } else {
                    request::refused(&self.question, &problem)
                }
            })?;
        if self.json {
            writeln!(out, "{text}")?;
        } else {
            out.write_all(shown(&serde_json::from_str(&text)?, language).as_bytes())?;
        }
        Ok(Exit::Well)
    }
}

/// The answer for people.
fn shown(answer: &WhyNotAnswer, language: Language) -> String {
    let pick = |en: &'static str, es: &'static str| if language == Language::Es { es } else { en };
    let mut out = format!("{}\n{} · {}\n\n", answer.rule.name, answer.rule.id, answer.plant.name);
    out.push_str(&lines("", &answer.words));
    if !answer.because.is_empty() {
        out.push_str(&format!("\n{}\n", pick("In its way", "Lo que lo impide")));
    }
    for reason in &answer.because {
        let by = reason.rule.as_ref().map_or_else(String::new, |rule| format!(" [{rule}]"));
        out.push_str(&lines("  - ", &format!("{}{by}", reason.text)));
    }
    if !answer.ways.is_empty() {
        out.push_str(&format!("\n{}\n", pick("What would bring it", "Lo que lo traería")));
    }
    for (place, way) in answer.ways.iter().enumerate() {
        out.push_str(&way_shown(place + 1, way, pick("put", "ponga"), pick("take away", "quite")));
    }
    out
}

fn way_shown(place: usize, way: &WhyNotWay, put: &str, take: &str) -> String {
    let mut out = String::new();
    for (at, change) in way.changes.iter().enumerate() {
        let first = if at == 0 { format!("  {place}) ") } else { "     ".to_owned() };
        out.push_str(&lines(&first, &change.text));
        let what = if change.to.is_null() {
            format!("{take} {}", change.pointer)
        } else {
            format!("{put} {} = {}", change.pointer, change.to)
        };
        out.push_str(&lines("       ", &what));
    }
    out
}
