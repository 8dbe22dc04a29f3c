//! `lammas rehearse`.
//!
//! - `basket` the plants, from a file
//! - `shown` the year for people
//! - `told` the same as JSON

mod basket;
mod shown;
mod told;

use std::io::Write;

use anyhow::Result;
use chrono::NaiveDate;
use clap::Args;
use lammas_agronomy::calendar::Day;
use lammas_engine::compile::set::Set;
use lammas_engine::rehearse::days::{self, Member, Stretch};
use lammas_engine::rehearse::plan::{self, Week};

use super::exit::Exit;
use super::{packs, request, side_by_side};
use basket::Basket;

const EXAMPLES: &str = "Examples:
  lammas rehearse basket.json                        a year from today
  lammas rehearse basket.json --from 2027-01-01 --packs my-draft
  lammas rehearse basket.json --json                 every stretch of days with its decision too

The basket is JSON: a climate, and plants told as to POST /v1/advice, each perhaps with a name:
  {\"climate\": {\"id\": \"hot-dry-valley\"},
   \"plants\": [{\"name\": \"the roses by the gate\", \"plant\": {\"type\": \"rose\", \"age_years\": 4}},
              {\"plant\": {\"type\": \"lawn\"}}]}
Each plant stays in the state that is told, and each of 366 days is decided as if it were asked.
A work is to be done in the first week in which it is due, and again as often as its repeat
allows while it still is.";

/// Rehearse a year: what some plants ask for week by week, what clashes, which weeks are empty
#[derive(Args, Debug)]
#[command(after_help = EXAMPLES)]
pub struct Rehearse {
    /// The basket as JSON: a file, or the standard input as `-`
    #[arg(value_name = "FILE", default_value = "-")]
    basket: String,
    /// First day of the year; today at the place when left out
    #[arg(long, value_name = "DATE")]
    from: Option<NaiveDate>,
    #[command(flatten)]
    packs: packs::Packs,
    /// Print JSON
    #[arg(long)]
    json: bool,
}

/// A year of a basket.
struct Year<'a> {
    set: &'a Set,
    from: Day,
    members: Vec<Member>,
    stretches: Vec<Vec<Stretch>>,
    weeks: Vec<Week>,
}

impl Rehearse {
    pub(super) fn run(self, out: &mut dyn Write) -> Result<Exit> {
        let basket: Basket = request::read(&self.basket)?;
        let set = std::sync::Arc::new(self.packs.draft()?);
        let (members, from) = basket::members(basket, &self.basket, &set, self.from)?;
        // The state of each plant was understood on the first day, so it is on the others.
        let stretches = side_by_side::run(members.len(), |at| days::of(&members[at], &set, from).unwrap_or_default());
        let weeks = plan::weeks(&stretches, &set);
        let year = Year { set: &set, from, members, stretches, weeks };
        if self.json {
            writeln!(out, "{:#}", told::all(&year))?;
        } else {
            out.write_all(shown::all(&year).as_bytes())?;
        }
        Ok(Exit::Well)
    }
}

impl Year<'_> {
    /// The id of a rule.
    fn rule(&self, number: u32) -> &str {
        self.set.rules.get(number as usize).map_or("", |info| &info.id)
    }

    /// Its title.
    fn title(&self, number: u32) -> &str {
        self.set.pack.rules.get(number as usize).map_or("", |filed| filed.entry.title.get("en"))
    }

    /// The name of a plant of the basket.
    fn plant(&self, at: usize) -> &str {
        self.members.get(at).map_or("", |member| &member.name)
    }
}
