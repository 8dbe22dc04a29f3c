//! `lammas profile`.

use std::io::Write;

use anyhow::Result;
use clap::Args;

use super::exit::{BadInput, Exit};
use super::wrapped::lines;
use super::{request, source};
use crate::problem::Problem;
use crate::problem::extractors::body::parsed;
use crate::settings::limits::Limits;
use crate::v1::climate_profiles::answer::ProfileAnswer;
use crate::v1::climate_profiles::build;
use crate::v1::climate_profiles::request::{ProfileQuery, ProfileRequest};
use crate::v1::question::choices::Language;
use crate::v1::question::climate::{ClimateFrostDays, ClimateGiven};

const EXAMPLES: &str = "Examples:
  lammas profile station.csv --latitude 40.4                     what the record tells, and what not
  lammas profile station.csv --latitude 40.4 --json > here.json  the climate, as a question takes it
  lammas advise rose.json --climate here.json                    advice for it

The file has a header with `date`, `tmin_c`, `tmax_c` and, if known, `precip_mm`, and a day a line; or it is JSON as
POST /v1/climate-profiles takes it.";

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
    /// Language
    #[arg(long, value_name = "en|es", value_parser = super::language::parse)]
    language: Option<Language>,
    /// Print JSON: the climate, as a question takes it
    #[arg(long)]
    json: bool,
}

impl Profile {
    pub(super) fn run(self, out: &mut dyn Write) -> Result<Exit> {
        let Self { record, latitude, longitude, elevation, recent_days, language, json } = self;
        let text = source::text(&record)?;
        let query = ProfileQuery { latitude, longitude, elevation_m: elevation, recent_days, language: None };
        let language = language.unwrap_or(Language::En);
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
            out.write_all(shown(&made, language).as_bytes())?;
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

/// The profile for people.
fn shown(made: &ProfileAnswer, language: Language) -> String {
    let pick = |en: &'static str, es: &'static str| if language == Language::Es { es } else { en };
    let quality = &made.quality;
    let mut out = format!(
        "{} {} {} {}: {} {}, {} {}, {} {}\n",
        pick("Record from", "Registro del"),
        quality.first,
        pick("to", "al"),
        quality.last,
        quality.years,
        pick("years", "años"),
        quality.recorded_days,
        pick("days with both temperatures", "días con ambas temperaturas"),
        quality.gap_count,
        pick("gaps", "huecos"),
    );
    for gap in quality.gaps.iter().take(5) {
        out += &format!("  {} – {}  {} {}\n", gap.first, gap.last, gap.days, pick("days missing", "días sin datos"));
    }
    months(&made.climate, language, &mut out);
    frost(&made.climate, language, &mut out);
    for (heading, remarks) in
        [(pick("KNOWN", "SE SABE"), &made.known), (pick("NOT KNOWN", "NO SE SABE"), &made.unknown)]
    {
        if !remarks.is_empty() {
            out += &format!("\n{heading}\n");
        }
        for remark in remarks {
            out += &lines("  * ", &remark.words);
        }
    }
    if !made.ignored_columns.is_empty() {
        out += &format!("\n{}: {}\n", pick("Columns not read", "Columnas no leídas"), made.ignored_columns.join(", "));
    }
    out
}

fn months(climate: &ClimateGiven, language: Language, out: &mut String) {
    let pick = |en: &'static str, es: &'static str| if language == Language::Es { es } else { en };
    let Some(normals) = &climate.normals else { return };
    let names = pick("J F M A M J J A S O N D", "E F M A M J J A S O N D");
    let row = |name: &str, cells: Vec<String>| {
        let cells: String = cells.iter().map(|cell| format!("{cell:>6}")).collect();
        format!("  {name:22}{cells}\n")
    };
    let numbers = |year: &[f64; 12], places: usize| year.iter().map(|value| format!("{value:.places$}")).collect();
    *out += &format!("\n{}\n", pick("MONTHLY NORMALS", "VALORES MENSUALES"));
    *out += &row("", names.split(' ').map(str::to_owned).collect());
    *out += &row(pick("minimum, °C", "mínima, °C"), numbers(&normals.tmin_c, 1));
    *out += &row(pick("maximum, °C", "máxima, °C"), numbers(&normals.tmax_c, 1));
    if let Some(rain) = &normals.rain_mm {
        *out += &row(pick("rain, mm", "lluvia, mm"), numbers(rain, 0));
    }
    if let Some(spread) = &climate.tmin_sd_k {
        *out += &row(pick("spread of minimum, K", "variación mínima, K"), numbers(spread, 1));
    }
    if let Some(days) = climate.heat_days_a_year {
        let (name, a_year) = (pick("days above 30 °C", "días sobre 30 °C"), pick("a year", "al año"));
        *out += &format!("  {name:22}{days:>6.0} {a_year}\n");
    }
}

fn frost(climate: &ClimateGiven, language: Language, out: &mut String) {
    let pick = |en: &'static str, es: &'static str| if language == Language::Es { es } else { en };
    let Some(frost) = &climate.counted_frost else { return };
    *out += &format!("\n{:24}10 %     50 %     90 %\n", pick("FROST (0 °C), by", "HELADA (0 °C), hasta"));
    for (name, days) in [(pick("last", "última"), &frost.last), (pick("first", "primera"), &frost.first)] {
        let days = days.clone().unwrap_or_default();
        let ClimateFrostDays { early, median, late } = days;
        let cell = |day: Option<crate::v1::question::date::DayOfYear>| {
            day.map_or_else(|| pick("none", "no hay").to_owned(), |day| day.to_string())
        };
        *out += &format!("  {name:22}{:9}{:9}{}\n", cell(early), cell(median), cell(late));
    }
    if let Some(extreme) = climate.extreme_min_c {
        *out += &format!("  {:22}{extreme:.1} °C\n", pick("coldest night", "noche más fría"));
    }
}
