//! `lammas coverage`.
//!
//! - `shown` the map for people
//! - `told` the same as JSON

mod shown;
mod told;

use std::io::Write;
use std::path::PathBuf;

use anyhow::Result;
use clap::Args;
use lammas_engine::compile::set::Set;
use lammas_engine::coverage::map::{Map, Plant};
use lammas_engine::coverage::row;
use lammas_engine::typical::{cases, places};

use super::exit::{BadInput, Exit};
use super::{packs, side_by_side};
use crate::picture;

const EXAMPLES: &str = "Examples:
  lammas coverage rules/packs/core            where a rule set advises, and where it is silent
  lammas coverage --plant citrus              one plant of the rule set inside the program
  lammas coverage my-rules --json             every cell: rules by outcome, evidence, scenarios, next opening
  lammas coverage my-rules --svg > map.svg    the same as a picture

A cell is a plant at a place in a week, looked at under conditions that are typical of the plant
(lammas impact --help says which): a rule counts once however many of them it comes out under.";

/// Show where a rule set advises and where it is silent: plants, places, weeks
#[derive(Args, Debug)]
#[command(after_help = EXAMPLES)]
pub struct Coverage {
    /// Folders of the rule sets, lowest first; without any, the one inside the program
    #[arg(value_name = "DIR")]
    folders: Vec<PathBuf>,
    /// Only this plant
    #[arg(long, value_name = "ID")]
    plant: Option<String>,
    /// All 57 reference places too
    #[arg(long)]
    all_places: bool,
    /// Print JSON
    #[arg(long, conflicts_with = "svg")]
    json: bool,
    /// Print a picture
    #[arg(long)]
    svg: bool,
}

impl Coverage {
    pub(super) fn run(self, out: &mut dyn Write) -> Result<Exit> {
        let set = packs::draft(&self.folders)?;
        let map = map(&set, self.plant.as_deref(), self.all_places)?;
        if self.json {
            writeln!(out, "{:#}", told::all(&map))?;
        } else if self.svg {
            out.write_all(picture::coverage::drawn(&map).as_bytes())?;
        } else {
            out.write_all(shown::all(&map).as_bytes())?;
        }
        Ok(Exit::Well)
    }
}

/// The map of a set, or of one of its plants.
fn map<'a>(set: &'a Set, plant: Option<&str>, all_places: bool) -> Result<Map<'a>, BadInput> {
    let known: Vec<&str> = set.names.plants.names().collect();
    plant.map(|id| packs::plant(id, &known)).transpose()?;
    let places = places::of(&[set], all_places);
    let wanted = known.iter().filter(|id| plant.is_none_or(|wanted| wanted == **id));
    let mut plants: Vec<Plant> =
        wanted.map(|id| Plant { id: (*id).to_owned(), cases: cases::of(&[set], id), rows: Vec::new() }).collect();
    let bar = side_by_side::bar((plants.len() * places.len()) as u64, "rows");
    let rows = side_by_side::run(plants.len() * places.len(), |at| {
        let (plant, spot) = (&plants[at / places.len()], &places[at % places.len()]);
        let row = row::of(set, &plant.id, &plant.cases, spot);
        bar.inc(1);
        row
    });
    bar.finish_and_clear();
    let mut rows = rows.into_iter();
    plants.iter_mut().for_each(|plant| plant.rows = rows.by_ref().take(places.len()).collect());
    Ok(Map { set, places, plants })
}
