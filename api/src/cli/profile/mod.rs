//! `lammas profile`.
//!
//! - `table` a profile for people
//! - `progress` how far a long record has been read
//! - `registered` a profile that differs from a registered climate

mod progress;
mod registered;
mod table;

use std::io::Write;

use anyhow::Result;
use clap::Args;

use super::exit::{BadInput, Exit};
use super::packs::Packs;
use super::request;
use crate::problem::Problem;
use crate::problem::extractors::body::parsed;
use crate::settings::limits::Limits;
use crate::v1::climate_profiles::build;
use crate::v1::climate_profiles::request::{ProfileQuery, ProfileRequest, RecordUnits};
use crate::v1::question::choices::Language;

const EXAMPLES: &str = "Examples:
  lammas profile station.csv --latitude 40.4                     what the record tells, and what not
  lammas profile station.csv --latitude 40.4 --json > here.json  the climate, as a question takes it
  lammas advise rose.json --climate here.json                    advice for it
  lammas profile --from cold-inland --differ nights=-2,first-frost=-21 --json > colder.json

The file has a header with `date`, `tmin_c`, `tmax_c` and, if known, `precip_mm`, and a day a line; or it is a station
export with `STATION`, `DATE`, `TMAX`, `TMIN`, `PRCP`; or JSON as POST /v1/climate-profiles takes it.";

/// Make a climate from a daily record: normals, frost dates, gaps, and what the record does not tell
#[derive(Args, Debug)]
#[command(after_help = EXAMPLES)]
pub struct Profile {
    /// The record, CSV or JSON: a file, or the standard input as `-`
    #[arg(value_name = "FILE", default_value = "-")]
    record: String,
    /// Degrees, south negative; a CSV file has none of its own
    #[arg(long, value_name = "DEG", allow_negative_numbers = true)]
    latitude: Option<f64>,
    /// Degrees, west negative
    #[arg(long, value_name = "DEG", allow_negative_numbers = true)]
    longitude: Option<f64>,
    /// Metres above the sea
    #[arg(long, value_name = "M", allow_negative_numbers = true)]
    elevation: Option<f64>,
    /// At most so many of the last days go along as recent weather
    #[arg(long, value_name = "DAYS")]
    recent_days: Option<u16>,
    /// Units of a station export; detected from its values, and said, when left out
    #[arg(long, value_name = "metric|tenths", value_parser = units)]
    units: Option<RecordUnits>,
    /// A registered climate instead of a record: the profile that differs from it
    #[arg(long, value_name = "CLIMATE", conflicts_with_all = ["record", "latitude", "longitude", "elevation", "recent_days", "units"])]
    from: Option<String>,
    /// In what the place differs from that climate, with commas between: nights=K, afternoons=K,
    /// summer-afternoons=K, last-frost=DAYS, first-frost=DAYS, frost-pocket, warm-wall, roof; minus is colder or earlier
    #[arg(long, value_name = "DIFFERENCE", value_delimiter = ',')]
    differ: Vec<String>,
    #[command(flatten)]
    packs: Packs,
    /// Language
    #[arg(long, value_name = "en|es", value_parser = super::language::parse)]
    language: Option<Language>,
    /// Print JSON: the climate, as a question takes it
    #[arg(long)]
    json: bool,
}

impl Profile {
    pub(super) fn run(self, out: &mut dyn Write) -> Result<Exit> {
        let Self { record, latitude, longitude, elevation, recent_days, units, from, differ, packs, language, json } =
            self;
        let language = language.unwrap_or(Language::En);
        if let Some(id) = from {
            registered::run(&id, &differ, packs, language, json, out)?;
            return Ok(Exit::Well);
        }
        if !differ.is_empty() {
            let words = "`--differ` goes with `--from`; for a record, give it to `lammas advise` or `lammas season`";
            return Err(BadInput(words.to_owned()).into());
        }
        let text = progress::text(&record, language)?;
        let query = ProfileQuery { latitude, longitude, elevation_m: elevation, recent_days, units, language: None };
        let made = if text.trim_start().starts_with('{') {
            parsed::<ProfileRequest>(text.as_bytes(), Limits::default().nesting)
                .and_then(|asked| build::of_json(asked, &query, language))
        } else {
            build::of_csv(&text, &query, language)
        };
        let made = made.map_err(|problem| refused(&record, &problem))?;
        if json {
            writeln!(out, "{}", serde_json::to_string(&made.climate)?)?;
        } else {
            out.write_all(table::shown(&made, language).as_bytes())?;
        }
        Ok(Exit::Well)
    }
}

/// The problem, with the flag that gives the latitude named where it is what is missing.
fn refused(record: &str, problem: &Problem) -> BadInput {
    let BadInput(words) = request::refused(record, problem);
    BadInput(
        words
            .replace("/latitude: expected the latitude of the place", "--latitude: expected the latitude of the place"),
    )
}

/// Units as they are typed.
fn units(typed: &str) -> Result<RecordUnits, String> {
    RecordUnits::ALL
        .iter()
        .copied()
        .find(|units| units.word() == typed)
        .ok_or_else(|| "expected `metric` or `tenths`".to_owned())
}
