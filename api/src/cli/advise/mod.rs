//! `lammas advise`.
//!
//! - `table` an answer for people
//! - `called` what a fact is called that the answer names as rules write it
//! - `headings` the words around it, in every language

mod called;
mod headings;
mod table;

use std::io::Write;

use anyhow::Result;
use clap::Args;

use super::exit::Exit;
use super::packs::Packs;
use super::{language, request};
use crate::v1::advice::reply;
use crate::v1::advice::request::AdviceRequest;
use crate::v1::question::choices::Language;
use crate::v1::question::today;

const EXAMPLES: &str = "Examples:
  lammas advise garden.json           tasks in order, what must wait, what to ask
  echo '{\"climate\": {\"id\": \"hot-dry-valley\"}, \"date\": \"2026-09-15\", \"plant\": {\"type\": \"rose\", \"age_years\": 4}}' | lammas advise
  lammas advise garden.json --json    the same JSON as POST /v1/advice
  lammas advise garden.json --plant \"lemon tree\"    for another plant, as people call it
  lammas advise - --language es < garden.json
  lammas advise garden.json --differ nights=-2,first-frost=-21    for a colder garden than its climate tells";

/// Advise on a plant: what to do now, in what order and why, and what to leave alone
#[derive(Args, Debug)]
#[command(after_help = EXAMPLES)]
pub struct Advise {
    /// The question as JSON, as POST /v1/advice takes it: a file, or the standard input as `-`
    #[arg(value_name = "FILE", default_value = "-")]
    question: String,
    /// Language, when the question names none
    #[arg(long, value_name = "en|es", value_parser = language::parse)]
    language: Option<Language>,
    /// The plant, as people call it, in the place of that in the question
    #[arg(long, value_name = "NAME")]
    plant: Option<String>,
    #[command(flatten)]
    climate: request::Climate,
    #[command(flatten)]
    packs: Packs,
    /// Print JSON
    #[arg(long)]
    json: bool,
}

impl Advise {
    pub(super) fn run(self, out: &mut dyn Write) -> Result<Exit> {
        let mut asked: AdviceRequest = request::read_with_climate(&self.question, &self.climate)?;
        if let Some(plant) = self.plant {
            asked.plant.kind = plant;
        }
        let rules = self.packs.load()?;
        let said = reply::to(asked, self.language, &rules, today::now())
            .map_err(|problem| request::refused(&self.question, &problem))?;
        if self.json {
            writeln!(out, "{}", said.text)?;
        } else {
            let answer = serde_json::from_str(&said.text)?;
            out.write_all(table::shown(&answer, said.language, &said.set).as_bytes())?;
        }
        Ok(Exit::Well)
    }
}
