//! `lammas weather`.

use std::io::Write;
use std::path::{Path, PathBuf};

use anyhow::Result;
use chrono::{DateTime, SecondsFormat, Utc};
use clap::Args;
use lammas_engine::question::registered_weather::WeatherSpan;
use serde_json::{Map, Value, json};

use super::exit::{BadInput, Exit};
use super::packs::Packs;
use super::{request, source};
use crate::v1::question::choices::Language;
use crate::v1::question::today;
use crate::weather::folder::{self, Put};
use crate::weather::kept::Weather;
use crate::weather::{age, sent};

const EXAMPLES: &str = "Examples:
  lammas weather valley.json                           what it holds, or all that is wrong with it
  lammas weather valley.json --into /var/lib/weather   put it where `lammas serve` finds it
  fetch-forecast | lammas weather - --into /var/lib/weather --json

The file is JSON: the climate by its id, the moment of issue, the days observed or forecast:
  {\"climate\": \"hot-dry-valley\", \"issued\": \"2026-09-15T06:00:00-07:00\",
   \"observed\": [{\"date\": \"2026-09-14\", \"tmin_c\": 18.5, \"tmax_c\": 35.5, \"rain_mm\": 0}],
   \"forecast\": [{\"date\": \"2026-09-15\", \"tmin_c\": 20, \"tmax_c\": 39, \"rain_mm\": 0, \"wind_kmh\": 9}]}

At most 400 observed and 16 forecast days; what was not read is left out. It counts for 36 hours
after its issue. With --into the folder keeps the newest issue of each climate: older ones that
this command put there are taken away, and an issue older than what lies there is refused (exit
code 1).";

/// Check recent and forecast weather of a registered climate, and put it where the service finds it
#[derive(Args, Debug)]
#[command(after_help = EXAMPLES)]
pub struct WeatherFile {
    /// The weather as JSON: a file, or the standard input as `-`
    #[arg(value_name = "FILE", default_value = "-")]
    file: String,
    /// Folder to put it into, whole or not at all
    #[arg(long, value_name = "DIR")]
    into: Option<PathBuf>,
    /// Language
    #[arg(long, value_name = "en|es", value_parser = super::language::parse)]
    language: Option<Language>,
    #[command(flatten)]
    packs: Packs,
    /// Print JSON
    #[arg(long)]
    json: bool,
}

impl WeatherFile {
    pub(super) fn run(self, out: &mut dyn Write) -> Result<Exit> {
        let Self { file, into, language, packs, json } = self;
        let text = source::text(&file)?;
        let set = packs.load()?.set();
        let weather = sent::read(text.as_bytes(), &set).map_err(|problem| request::refused(&file, &problem))?;
        let put = match &into {
            Some(folder) => Some(
                folder::put(&weather, folder, &set, today::now())
                    .map_err(|error| BadInput(format!("cannot write into `{}`: {error}", folder.display())))?,
            ),
            None => None,
        };
        let language = language.unwrap_or(Language::En);
        if put == Some(Put::FromTheFuture) {
            let issued = shown(weather.issued);
            return Err(BadInput(format!("`{file}`: /issued: {issued} lies in the future; nothing was written")).into());
        }
        if json {
            writeln!(out, "{}", as_json(&weather, put.as_ref()))?;
        } else {
            out.write_all(for_people(&weather, put.as_ref(), language).as_bytes())?;
        }
        Ok(if matches!(put, Some(Put::Older(..))) { Exit::Found } else { Exit::Well })
    }
}

fn shown(moment: DateTime<Utc>) -> String {
    moment.to_rfc3339_opts(SecondsFormat::AutoSi, true)
}

fn as_json(weather: &Weather, put: Option<&Put>) -> Value {
    let mut members = Map::new();
    let mut add = |name: &str, value: Value| members.insert(name.to_owned(), value);
    let span = |span: WeatherSpan| json!({"from": span.from, "to": span.to, "days": span.days});
    add("climate", json!(weather.climate));
    add("issued", json!(shown(weather.issued)));
    add("issued_on", json!(weather.issued_on));
    add("counts_until", json!(shown(age::counts_until(weather.issued))));
    for (name, days) in [("observed", weather.observed), ("forecast", weather.forecast)] {
        if let Some(days) = days {
            add(name, span(days));
        }
    }
    add("sha256", json!(weather.sha256));
    let (put, file) = match put {
        Some(Put::New(path, _)) => ("new", path),
        Some(Put::Same(path)) => ("same", path),
        Some(Put::Older(path, _)) => ("older", path),
        Some(Put::FromTheFuture) | None => return Value::Object(members),
    };
    add("put", json!(put));
    add("file", json!(file.display().to_string()));
    Value::Object(members)
}

fn for_people(weather: &Weather, put: Option<&Put>, language: Language) -> String {
    let pick = |en: &'static str, es: &'static str| if language == Language::Es { es } else { en };
    let mut out = format!("{} {}\n", pick("Weather of", "Tiempo de"), weather.climate);
    let mut row = |label: &str, text: &str| out += &format!("  {label:14}{text}\n");
    let issued = format!("{} ({} {})", shown(weather.issued), weather.issued_on, pick("there", "allí"));
    row(pick("issued", "emitido"), &issued);
    row(pick("counts until", "vale hasta"), &shown(age::counts_until(weather.issued)));
    for (label, days) in
        [(pick("observed", "observado"), weather.observed), (pick("forecast", "previsto"), weather.forecast)]
    {
        let text = match days {
            Some(WeatherSpan { from, to, days: 1 }) if from == to => format!("{} {from}", pick("1 day,", "1 día,")),
            Some(WeatherSpan { from, to, days }) => {
                format!("{days} {}, {from} {} {to}", pick("days", "días"), pick("to", "a"))
            }
            None => pick("no day", "ningún día").to_owned(),
        };
        row(label, &text);
    }
    row("sha256", &weather.sha256);
    let path = |path: &Path| path.display().to_string();
    match put {
        Some(Put::New(file, gone)) => {
            out += &format!("{} `{}`", pick("Put into", "Puesto en"), path(file));
            if *gone > 0 {
                out += &format!("; {} {gone}", pick("older issues taken away:", "emisiones anteriores quitadas:"));
            }
            out.push('\n');
        }
        Some(Put::Same(file)) => {
            out += &format!("{} `{}`\n", pick("It lies there already:", "Ya está ahí:"), path(file));
        }
        Some(Put::Older(file, issued)) => {
            out += &format!(
                "{} `{}` {} {}\n",
                pick("Not put there:", "No se puso:"),
                path(file),
                pick("has a newer issue,", "tiene una emisión más nueva,"),
                shown(*issued)
            );
        }
        Some(Put::FromTheFuture) | None => {}
    }
    out
}
