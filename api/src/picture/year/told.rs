//! What the picture says, in words: the same facts for those who see it and for those who hear it.

use lammas_agronomy::calendar::Day;
use lammas_agronomy::marker::Marker;
use lammas_engine::explain::number::{plain, unit_behind};
use lammas_engine::explain::words::date;

use super::Year;
use super::sentences;
use super::span::Span;
use super::weather::Weather;
use super::words::{TOGETHER, pick, short_name};
use crate::picture::measure::NO_BREAK;

/// To which panel a marker belongs.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kin {
    /// Frost, growth, heat.
    Temperature,
    /// The rains.
    Rain,
    /// Daylength.
    Sun,
}

impl Kin {
    /// The panel of a marker.
    #[must_use]
    pub const fn of(marker: Marker) -> Self {
        match marker {
            Marker::RainsStart | Marker::RainsEnd | Marker::SecondRainsStart | Marker::SecondRainsEnd => Self::Rain,
            Marker::LongestDay | Marker::ShortestDay | Marker::SpringEquinox | Marker::AutumnEquinox => Self::Sun,
            _ => Self::Temperature,
        }
    }

    /// The hue of a marker's dot.
    pub(super) const fn hue(marker: Marker) -> &'static str {
        match marker {
            Marker::LastFrost(_)
            | Marker::FirstFrost(_)
            | Marker::LastKillingFrost
            | Marker::FirstKillingFrost
            | Marker::ColdestWeek => "cold",
            Marker::HotSeasonStart | Marker::HotSeasonEnd | Marker::WarmestWeek => "warm",
            _ => match Self::of(marker) {
                Self::Rain => "rain",
                Self::Sun => "light",
                Self::Temperature => "ink",
            },
        }
    }
}

/// A marker that has a day.
#[derive(Clone, Debug)]
pub struct Dated {
    /// The marker.
    pub marker: Marker,
    /// In words.
    pub words: String,
    /// Its day in the drawn year.
    pub day: Day,
    /// Its likely error, days.
    pub likely_error_days: Option<f64>,
}

/// A marker that has none.
#[derive(Clone, Debug)]
pub struct Absent {
    /// The marker.
    pub marker: Marker,
    /// In words.
    pub words: String,
    /// `never`, `always`, `even`, `unknown`.
    pub state: &'static str,
    /// Whether it comes in some years.
    pub in_some_years: bool,
}

/// What the picture says.
#[derive(Clone, Debug)]
pub struct Told {
    /// What it is called.
    pub title: String,
    /// The day asked, in numbers.
    pub today: String,
    /// What was observed, what is forecast.
    pub weather: Vec<String>,
    /// Extremes of the usual temperatures.
    pub temperature: String,
    /// The year's water.
    pub water: Vec<String>,
    /// Extremes of daylight.
    pub daylight: String,
    /// Markers with a day, in the order of rules.
    pub dated: Vec<Dated>,
    /// Markers without one.
    pub absent: Vec<Absent>,
    /// How good it is, how it was reckoned, whose data.
    pub ends: Vec<String>,
}

impl Told {
    pub(super) fn of(year: &Year<'_>, span: Span, weather: &Weather) -> Self {
        let (mut dated, mut absent) = (Vec::new(), Vec::new());
        for shown in &year.season.brief.markers {
            let Some(marker) = Marker::named(&shown.name) else { continue };
            let words = shown.words.clone();
            match shown.nearest {
                Some(nearest) => dated.push(Dated {
                    marker,
                    words,
                    day: span.on(Day::from_date(nearest).climate_day()),
                    likely_error_days: shown.likely_error_days,
                }),
                None => {
                    absent.push(Absent { marker, words, state: shown.state, in_some_years: shown.remark.is_some() });
                }
            }
        }
        Self {
            title: format!("{} {}", pick(year.language, "A year in:", "Un año en:"), year.place),
            today: sentences::today(year),
            weather: sentences::weather(year, weather),
            temperature: sentences::temperatures(year, span),
            water: sentences::water(year, span),
            daylight: sentences::daylight(year, span, &dated),
            dated,
            absent,
            ends: sentences::ends(year),
        }
    }

    /// The markers of a kin that have no day, in few words: those of one season together.
    #[must_use]
    pub fn absent_in_brief(&self, kin: Kin, language: &str) -> Vec<String> {
        let mut sentences = Vec::new();
        for (state, in_some_years, says) in [
            ("never", true, pick(language, "In some years only", "Solo algunos años")),
            ("never", false, pick(language, "Never here", "Aquí nunca")),
            ("always", false, pick(language, "Here without end", "Aquí sin fin")),
            ("even", false, pick(language, "The year is too even for", "El año es demasiado parejo para")),
            ("unknown", false, pick(language, "Not known", "No se sabe")),
        ] {
            let is_so = |absent: &&Absent| {
                absent.state == state && absent.in_some_years == in_some_years && Kin::of(absent.marker) == kin
            };
            let mut left: Vec<Marker> = self.absent.iter().filter(is_so).map(|absent| absent.marker).collect();
            let mut named = Vec::new();
            for (markers, en, es) in TOGETHER {
                if markers.iter().all(|marker| left.contains(marker)) {
                    left.retain(|marker| !markers.contains(marker));
                    named.push(pick(language, en, es));
                }
            }
            named.extend(left.into_iter().map(|marker| short_name(marker, language)));
            if !named.is_empty() {
                sentences.push(format!("{says}: {}.", named.join("; ")));
            }
        }
        sentences
    }

    /// The same, each marker by its own words.
    fn absent_in_full(&self, language: &str) -> Vec<String> {
        let some_years = pick(language, "frost in some years", "helada en algunos años");
        let mut sentences = Vec::new();
        for (state, says) in [
            ("never", pick(language, "Its season never comes here", "Su época nunca llega aquí")),
            ("always", pick(language, "Its season never ends here", "Su época nunca acaba aquí")),
            ("even", pick(language, "The year is too even to have it", "El año es demasiado parejo para tenerlo")),
            ("unknown", pick(language, "Not known", "No se sabe")),
        ] {
            let of_state = self.absent.iter().filter(|absent| absent.state == state);
            let named: Vec<String> = of_state
                .map(
                    |Absent { words, in_some_years, .. }| {
                        if *in_some_years { format!("{words} ({some_years})") } else { words.clone() }
                    },
                )
                .collect();
            if !named.is_empty() {
                sentences.push(format!("{says}: {}.", named.join("; ")));
            }
        }
        sentences
    }

    /// The text that says the same as the picture.
    #[must_use]
    pub fn description(&self, language: &str) -> String {
        let mut sentences = vec![self.today.clone()];
        sentences.extend(self.weather.iter().cloned());
        sentences.push(self.temperature.clone());
        sentences.extend(self.water.iter().cloned());
        sentences.push(self.daylight.clone());
        let marked: Vec<String> = self
            .dated
            .iter()
            .map(|dated| {
                let day = date(dated.day, language);
                let error = dated
                    .likely_error_days
                    .map(|days| format!(" (± {} {})", plain(days), unit_behind("d", days, language)));
                format!("{}: {day}{}", dated.words, error.unwrap_or_default())
            })
            .collect();
        if !marked.is_empty() {
            sentences.push(format!("{}: {}.", pick(language, "Markers", "Hitos"), marked.join("; ")));
        }
        sentences.extend(self.absent_in_full(language));
        sentences.extend(self.ends.iter().cloned());
        sentences.join(" ").replace(NO_BREAK, " ")
    }
}
