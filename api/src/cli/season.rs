//! `lammas season`.

use std::io::Write;

use anyhow::Result;
use clap::Args;
use serde_json::Value;

use super::exit::Exit;
use super::packs::Packs;
use super::wrapped::lines;
use super::{differing, request};
use crate::v1::climate_error::ClimateGrade;
use crate::v1::question::choices::Language;
use crate::v1::question::today;
use crate::v1::season::answer::{SeasonAnswer, SeasonMarker, SeasonMarkerState};
use crate::v1::season::compute;
use crate::v1::season::request::SeasonRequest;
use crate::v1::weather::{AnswerWeather, AnswerWeatherSpan};

const EXAMPLES: &str = "Examples:
  echo '{\"climate\": {\"id\": \"cold-inland\"}, \"date\": \"2026-09-15\"}' | lammas season
  echo '{\"climate\": {\"latitude\": 52.1, \"longitude\": 5.18}}' | lammas season
  lammas season place.json --svg > year.svg     a picture of the year, for a browser
  lammas season place.json --json     the same JSON as POST /v1/season
  lammas season place.json --differ nights=-2,frost-pocket     and which markers move by that";

/// Show the season of a climate on a day: every marker, every fact
#[derive(Args, Debug)]
#[command(after_help = EXAMPLES)]
pub struct Season {
    /// The question as JSON, as POST /v1/season takes it: a file, or the standard input as `-`
    #[arg(value_name = "FILE", default_value = "-")]
    question: String,
    /// Language, when the question names none
    #[arg(long, value_name = "en|es", value_parser = super::language::parse)]
    language: Option<Language>,
    #[command(flatten)]
    climate: request::Climate,
    #[command(flatten)]
    packs: Packs,
    /// Print JSON
    #[arg(long)]
    json: bool,
    /// Draw the year: SVG
    #[arg(long, conflicts_with = "json")]
    svg: bool,
}

impl Season {
    pub(super) fn run(self, out: &mut dyn Write) -> Result<Exit> {
        let asked: SeasonRequest = request::read_with_climate(&self.question, &self.climate)?;
        let rules = self.packs.load()?;
        let found = compute::find(asked, self.language, &rules, today::now())
            .map_err(|problem| request::refused(&self.question, &problem))?;
        if self.svg {
            out.write_all(found.picture().as_bytes())?;
            return Ok(Exit::Well);
        }
        let text = found.json().map_err(|problem| request::refused(&self.question, &problem))?;
        if self.json {
            writeln!(out, "{text}")?;
        } else {
            write(&serde_json::from_str(&text)?, found.language, out)?;
        }
        Ok(Exit::Well)
    }
}

fn write(season: &SeasonAnswer, language: Language, out: &mut dyn Write) -> Result<()> {
    let pick = |en, es| if language == Language::Es { es } else { en };
    writeln!(out, "{} {}\n", pick("Season on", "Estación el"), season.date)?;
    writeln!(out, "{}", pick("MARKERS", "HITOS"))?;
    let width = season.markers.iter().map(|marker| marker.words.chars().count()).max().unwrap_or_default();
    for marker in &season.markers {
        write!(out, "  {:width$}  {}", marker.words, when(marker, language))?;
        if let Some(error) = marker.likely_error_days {
            write!(out, "  ± {error} {}", pick("days", "días"))?;
        }
        if let Some(remark) = &marker.remark {
            write!(out, "  ({remark})")?;
        }
        writeln!(out)?;
    }
    writeln!(out, "\n{}", pick("FACTS", "DATOS"))?;
    let width = season.facts.iter().map(|fact| fact.words.chars().count()).max().unwrap_or_default();
    for fact in &season.facts {
        let value = match &fact.value {
            Value::Null => pick("not known", "no se sabe").to_owned(),
            Value::Bool(yes) => if *yes { pick("yes", "sí") } else { "no" }.to_owned(),
            Value::String(text) => text.clone(),
            other => other.to_string(),
        };
        let unit = if fact.value.is_null() { "" } else { &fact.unit };
        writeln!(out, "{}", format!("  {:width$}  {value} {unit}", fact.words).trim_end())?;
    }
    writeln!(
        out,
        "\n{} {}; {} {}",
        pick("Hardiness zone", "Zona de rusticidad"),
        season.hardiness_zone.as_deref().unwrap_or("?"),
        pick("heat zone", "zona de calor"),
        season.heat_zone
    )?;
    writeln!(
        out,
        "{} {} °Cd; {} {} K",
        pick("Warmth over 5 °C still to come:", "Calor sobre 5 °C que queda por llegar:"),
        season.heat_left_cd,
        pick("the daily curve is within", "la curva diaria queda a menos de"),
        season.curve_error_k
    )?;
    if let Some(weather) = season.weather.as_ref().filter(|weather| weather.used) {
        writeln!(out, "{} {}", pick("Weather:", "Tiempo:"), told(weather, language))?;
    }
    if let Some(note) = &season.weather_note {
        writeln!(out, "\n{}\n{note}", pick("The weather at hand is not used.", "El tiempo disponible no se usa."))?;
    }
    if let Some(differences) = &season.climate_differences {
        write!(out, "\n{}", differing::shown(differences, language))?;
    }
    if let Some(error) = &season.climate_error {
        writeln!(
            out,
            "\n{} {}",
            pick(
                "The climate is estimated from coordinates; as an estimate it is",
                "El clima está estimado por las coordenadas; como estimación es"
            ),
            grade(error.grade, language)
        )?;
        for doubt in &error.doubts {
            writeln!(out, "  {}", doubt.text)?;
        }
        writeln!(out, "  {}", error.better)?;
        if let Some(ask) = &error.ask {
            write!(out, "{}", lines("  ", &format!("{} {} ({})", ask.text, ask.look, ask.narrows)))?;
        }
    }
    for source in season.climate_sources.iter().flatten() {
        writeln!(out, "\n{}", source.title)?;
    }
    Ok(())
}

/// Which days are known.
fn told(weather: &AnswerWeather, language: Language) -> String {
    let pick = |en: &'static str, es: &'static str| if language == Language::Es { es } else { en };
    let spans = [(pick("observed", "observado"), &weather.observed), (pick("forecast", "previsto"), &weather.forecast)];
    let each = spans.into_iter().filter_map(|(word, span)| {
        let AnswerWeatherSpan { from, to, .. } = span.as_ref()?;
        Some(format!("{word} {from} – {to}"))
    });
    let issued = weather.issued_on.map(|issued| format!("{} {issued}", pick("issued", "emitido")));
    each.chain(issued).collect::<Vec<_>>().join(", ")
}

fn grade(grade: ClimateGrade, language: Language) -> &'static str {
    match (grade, language == Language::Es) {
        (ClimateGrade::Good, false) => "good",
        (ClimateGrade::Good, true) => "buena",
        (ClimateGrade::Fair, false) => "fair",
        (ClimateGrade::Fair, true) => "regular",
        (ClimateGrade::Poor, false) => "poor",
        (ClimateGrade::Poor, true) => "mala",
    }
}

fn when(marker: &SeasonMarker, language: Language) -> String {
    let pick = |en: &'static str, es: &'static str| if language == Language::Es { es } else { en };
    match (marker.nearest, marker.days) {
        (Some(date), Some(0)) => format!("{date}  {}", pick("today", "hoy")),
        (Some(date), Some(days)) if days > 0 => format!("{date}  {} {days} {}", pick("in", "en"), pick("days", "días")),
        (Some(date), Some(days)) if language == Language::Es => format!("{date}  hace {} días", -days),
        (Some(date), Some(days)) => format!("{date}  {} days ago", -days),
        _ => match marker.state {
            SeasonMarkerState::Never => pick("its season never comes", "su época nunca llega"),
            SeasonMarkerState::Always => pick("its season never ends", "su época nunca acaba"),
            SeasonMarkerState::Even => {
                pick("the year is too even to have it", "el año es demasiado parejo para tenerlo")
            }
            SeasonMarkerState::Seasonal | SeasonMarkerState::Unknown => pick("not known", "no se sabe"),
        }
        .to_owned(),
    }
}
