//! The weather behind an answer: which days it has, when it was issued, and whether it counts.

use std::sync::LazyLock;

use chrono::{DateTime, Datelike as _, NaiveDate, Utc};
use lammas_agronomy::calendar::Day;
use lammas_agronomy::season::ForecastState;
use serde::Serialize;

use super::answer::{Note, Said, SourceShown};
use super::rendered::Rendered;
use super::words::{date, is_spanish, pick};
use crate::question::Climate;
use crate::question::registered_weather::{WeatherSpan, WeatherState};

/// Days before the day asked that [`days`] tells of.
const BACK_DAYS: i32 = 14;
/// Days from the day asked on that [`days`] tells of: as many as a forecast may have.
const AHEAD_DAYS: i32 = 16;

static TITLES: LazyLock<[Rendered<String>; 2]> = LazyLock::new(|| {
    ["The weather at hand is not used", "El tiempo disponible no se usa"].map(|title| Rendered::of(title.to_owned()))
});

static NO_SOURCES: LazyLock<Rendered<Vec<SourceShown>>> = LazyLock::new(|| Rendered::of(Vec::new()));

/// The weather behind an answer.
#[derive(Clone, Debug, Serialize)]
pub struct WeatherShown<'a> {
    /// `registered`: kept for the climate; `request`: it came with the question.
    pub from: &'static str,
    /// Hash of its content, if it was kept.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub sha256: Option<&'a str>,
    /// The moment at which it was issued, if it was kept.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub issued: Option<DateTime<Utc>>,
    /// The date at the place on which it was issued; none for observed days alone that came with the question.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub issued_on: Option<NaiveDate>,
    /// Its observed days.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub observed: Option<SpanShown>,
    /// Its days to come.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub forecast: Option<SpanShown>,
    /// Whether it counts. Observed days that came with the question always do.
    pub used: bool,
    /// Why it does not.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub why: Option<&'static str>,
}

/// Days from one to another.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct SpanShown {
    /// The first.
    pub from: NaiveDate,
    /// The last.
    pub to: NaiveDate,
    /// How many there are; fewer than from the first to the last where some are missing.
    pub days: usize,
}

/// Days in a row whose temperatures are told by the same.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct DaysShown {
    /// The first.
    pub from: NaiveDate,
    /// The last.
    pub to: NaiveDate,
    /// measured, forecast, computed, estimated.
    pub origin: &'static str,
}

impl From<WeatherSpan> for SpanShown {
    fn from(WeatherSpan { from, to, days }: WeatherSpan) -> Self {
        Self { from, to, days }
    }
}

/// Why weather does not count.
#[derive(Clone, Copy, PartialEq, Eq)]
enum NotUsed {
    OverThreeDays,
    Over36Hours,
    IssuedLater,
}

impl NotUsed {
    fn of(climate: &Climate, day: Day) -> Option<Self> {
        match climate.weather.as_ref().map(|weather| weather.state) {
            Some(WeatherState::Used) => None,
            Some(WeatherState::TooOld) => Some(Self::Over36Hours),
            Some(WeatherState::IssuedLater) => Some(Self::IssuedLater),
            None => match climate.season.forecast_state(day) {
                ForecastState::None | ForecastState::Used => None,
                ForecastState::Stale { .. } => Some(Self::OverThreeDays),
                ForecastState::FromTheFuture => Some(Self::IssuedLater),
            },
        }
    }

    fn words(self, language: &str) -> &'static str {
        match self {
            Self::OverThreeDays => pick(
                language,
                "not used: issued more than 3 days before the day asked",
                "no se usa: emitido más de 3 días antes del día preguntado",
            ),
            Self::Over36Hours => pick(
                language,
                "not used: issued more than 36 hours before the moment asked about",
                "no se usa: emitido más de 36 horas antes del momento por el que se pregunta",
            ),
            Self::IssuedLater => {
                pick(language, "not used: issued after the day asked", "no se usa: emitido después del día preguntado")
            }
        }
    }

    /// A sentence that begins with the day of issue.
    fn sentence(self, issued: &str, language: &str) -> String {
        if is_spanish(language) {
            let than = match self {
                Self::OverThreeDays => "más de 3 días antes del día por el que se pregunta",
                Self::Over36Hours => "más de 36 horas antes del momento por el que se pregunta",
                Self::IssuedLater => "después del día por el que se pregunta",
            };
            format!("Se emitió el {issued}, {than}, y cuenta como si no lo hubiera.")
        } else {
            let than = match self {
                Self::OverThreeDays => "more than 3 days before the day asked about",
                Self::Over36Hours => "more than 36 hours before the moment asked about",
                Self::IssuedLater => "after the day asked about",
            };
            format!("It was issued on {issued}, {than}, and so counts as not there.")
        }
    }
}

/// What became of the forecast in the profile, in words.
#[must_use]
pub fn forecast(climate: &Climate, day: Day, language: &str) -> Option<&'static str> {
    match climate.season.forecast_state(day) {
        ForecastState::None => None,
        ForecastState::Used => Some(pick(language, "used", "se usa")),
        ForecastState::Stale { .. } => Some(NotUsed::OverThreeDays.words(language)),
        ForecastState::FromTheFuture => Some(NotUsed::IssuedLater.words(language)),
    }
}

/// The weather behind an answer about this day; none where there is none.
#[must_use]
pub fn shown<'a>(climate: &'a Climate, day: Day, language: &str) -> Option<WeatherShown<'a>> {
    let not_used = NotUsed::of(climate, day);
    let (used, why) = (not_used.is_none(), not_used.map(|why| why.words(language)));
    if let Some(weather) = &climate.weather {
        return Some(WeatherShown {
            from: "registered",
            sha256: Some(&weather.sha256),
            issued: Some(weather.issued),
            issued_on: Some(weather.issued_on),
            observed: weather.observed.map(Into::into),
            forecast: weather.forecast.map(Into::into),
            used,
            why,
        });
    }
    let span = |(from, to): (Day, Day), days| SpanShown { from: from.date(), to: to.date(), days };
    let foretold = climate.season.foretold();
    let observed = climate.season.recorded().map(|extent| span(extent, climate.profile.observations.len()));
    let days = climate.profile.forecast.as_ref().map_or(0, |forecast| forecast.days.len());
    (observed.is_some() || foretold.is_some()).then(|| WeatherShown {
        from: "request",
        sha256: None,
        issued: None,
        issued_on: foretold.map(|(issued, ..)| issued.date()),
        observed,
        forecast: foretold.map(|(_, from, to)| span((from, to), days)),
        used,
        why,
    })
}

/// The note that stands in an answer whose weather does not count.
#[must_use]
pub fn note<'a>(climate: &Climate, day: Day, language: &str) -> Option<Note<'a>> {
    let text = not_used(climate, day, language)?;
    let [english, spanish] = &*TITLES;
    Some(Note {
        id: "climate.weather-not-used",
        title: if is_spanish(language) { spanish } else { english },
        text: Said::Made(text),
        facts: Vec::new(),
        sources: &NO_SOURCES,
    })
}

/// Why the weather does not count, and what is taken in its place, in sentences; none where it counts or there is none.
#[must_use]
pub fn not_used(climate: &Climate, day: Day, language: &str) -> Option<String> {
    let why = NotUsed::of(climate, day)?;
    let kept = climate.weather.as_ref().map(|weather| Day::from_date(weather.issued_on));
    let issued = kept.or_else(|| climate.season.foretold().map(|(issued, ..)| issued))?;
    let year = issued.date().year();
    let day = format!("{}{} {year}", date(issued, language), pick(language, "", " de"));
    let mut text = why.sentence(&day, language);
    text.push(' ');
    text.push_str(pick(
        language,
        "Heat, frost and rain to come are taken as usual for these days: look at a forecast before you start.",
        "El calor, la helada y la lluvia por venir se toman como es usual en estas fechas: mire un pronóstico antes de empezar.",
    ));
    Some(text)
}

/// What tells the days around this one, from two weeks before it to as far as a forecast may reach, as runs in order.
#[must_use]
pub fn days(climate: &Climate, day: Day) -> Vec<DaysShown> {
    let mut runs: Vec<DaysShown> = Vec::new();
    for at in -BACK_DAYS..AHEAD_DAYS {
        let (here, origin) = (day + at, climate.season.told_by(day + at, day).as_str());
        match runs.last_mut().filter(|run| run.origin == origin) {
            Some(run) => run.to = here.date(),
            None => runs.push(DaysShown { from: here.date(), to: here.date(), origin }),
        }
    }
    runs
}

#[cfg(test)]
mod tests;
