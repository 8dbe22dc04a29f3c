//! `lammas rule`.

use std::io::Write;

use anyhow::Result;
use clap::Args;

use super::exit::{BadInput, Exit};
use super::packs::Packs;
use super::wrapped::lines;
use crate::v1::question::choices::Language;
use crate::v1::rules::answer::{RuleAnswer, RuleNamed, RuleWorded};
use crate::v1::rules::read;

const EXAMPLES: &str = "Examples:
  lammas rule rose.renewal-cut                 what it says, and on what grounds
  lammas rule rose.renewal-cut --language es
  lammas rule rose.renewal-cut --json          the same JSON as GET /v1/rules/{id}";

/// Show a rule in plain words, with its conditions, guards and sources
#[derive(Args, Debug)]
#[command(after_help = EXAMPLES)]
pub struct Rule {
    /// The rule's id, as an answer names it
    #[arg(value_name = "ID")]
    id: String,
    /// Language
    #[arg(long, value_name = "en|es", value_parser = super::language::parse)]
    language: Option<Language>,
    #[command(flatten)]
    packs: Packs,
    /// Print JSON
    #[arg(long)]
    json: bool,
}

impl Rule {
    pub(super) fn run(self, out: &mut dyn Write) -> Result<Exit> {
        let language = self.language.unwrap_or(Language::En);
        let rules = self.packs.load()?;
        let set = rules.set();
        let found = read::find(&self.id, &set, language).map_err(|problem| BadInput(problem.to_string()))?;
        let text = serde_json::to_string(&found)?;
        if self.json {
            writeln!(out, "{text}")?;
        } else {
            out.write_all(shown(&serde_json::from_str(&text)?, language).as_bytes())?;
        }
        Ok(Exit::Well)
    }
}

/// The rule for people.
fn shown(rule: &RuleAnswer, language: Language) -> String {
    let pick = |en: &'static str, es: &'static str| if language == Language::Es { es } else { en };
    let mut out = format!("{}\n{} · {} {}\n\n", rule.title, rule.id, rule.rule_set.name, rule.rule_set.version);
    let mut row = |label: &str, text: &str| {
        if !text.is_empty() {
            out.push_str(&lines(&format!("{label:14}"), text));
        }
    };
    let names = |list: &[RuleNamed]| list.iter().map(|one| one.name.as_str()).collect::<Vec<_>>().join(", ");
    let plants = match rule.whom.every_plant {
        true if rule.whom.problem.is_none() => pick("every plant", "todas las plantas").to_owned(),
        _ => names(&rule.whom.plants),
    };
    row(pick("For", "Para"), &plants);
    row(pick("Against", "Contra"), rule.whom.problem.as_ref().map_or("", |problem| &problem.name));
    row("", words(rule.whom.traits.as_ref()));
    row(pick("Season", "Época"), &rule.season);
    row(pick("When", "Cuándo"), words(rule.when.as_ref()));
    row(pick("Why", "Por qué"), &rule.why);
    for (place, step) in rule.steps.iter().enumerate() {
        row(if place == 0 { pick("How", "Cómo") } else { "" }, &format!("{}) {step}", place + 1));
    }
    for amount in &rule.amounts {
        let usual = amount.typical.as_ref().map_or_else(String::new, |typical| {
            format!(" ({} {}–{} {})", pick("usually", "lo usual"), typical.min, typical.max, typical.unit)
        });
        row(pick("How much", "Cuánto"), &format!("{}{usual}", amount.what));
    }
    for material in &rule.materials {
        row(pick("With", "Con"), &material.name);
    }
    for hold in &rule.holds {
        row(pick("Held when", "Espera si"), &format!("{}. {}", hold.condition.words, hold.because));
    }
    for guard in &rule.guards {
        let when = words(guard.when.as_ref());
        let when = if when.is_empty() { String::new() } else { format!(" ({when})") };
        row(pick("Guarded by", "La frena"), &format!("{}{when}: {} [{}]", guard.title, guard.why, guard.id));
    }
    if let Some(blocks) = &rule.blocks {
        let all = [&blocks.jobs, &blocks.materials, &blocks.classes, &blocks.rules, &blocks.plants];
        let said: Vec<String> = all.iter().filter(|list| !list.is_empty()).map(|list| names(list)).collect();
        row(pick("Blocks", "Frena"), &said.join(" · "));
    }
    for (label, others) in [(pick("After", "Después de"), &rule.after), (pick("Before", "Antes de"), &rule.before)] {
        for other in others {
            row(label, &format!("{} [{}]", other.rule.name, other.rule.id));
        }
    }
    for apart in &rule.keep_apart {
        row(pick("Keep apart", "Separe"), &format!("{}, {} {}", apart.name, apart.days, pick("days", "días")));
    }
    for caution in &rule.cautions {
        row(pick("Mind", "Cuidado"), &caution.text);
    }
    row(pick("Call", "Llame"), rule.professional.as_deref().unwrap_or_default());
    row(pick("Grounds", "Base"), &format!("{}; {}", rule.evidence_words, rule.strength_words));
    for source in &rule.sources {
        let year = source.year.map_or_else(String::new, |year| format!(", {year}"));
        let by = source.publisher.as_ref().map_or_else(String::new, |by| format!(", {by}"));
        row(pick("Source", "Fuente"), &format!("{}{by}{year} ({})", source.title, source.how_read));
    }
    out.push('\n');
    out.push_str(&lines("", &rule.notice));
    out
}

fn words(worded: Option<&RuleWorded>) -> &str {
    worded.map_or("", |worded| &worded.words)
}
