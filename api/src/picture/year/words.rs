//! Names and numbers of the picture, in English and Spanish.

use chrono::Datelike as _;
use lammas_agronomy::calendar::Day;
use lammas_agronomy::marker::{Marker, Share};
use lammas_engine::explain::number::{plain, shown, to_us};
use lammas_engine::explain::words::is_spanish;

use crate::picture::measure::NO_BREAK;

/// One of two texts.
#[must_use]
pub fn pick<'a>(language: &str, en: &'a str, es: &'a str) -> &'a str {
    if is_spanish(language) { es } else { en }
}

/// What a marker is called beside its dot.
#[must_use]
pub fn short_name(marker: Marker, language: &str) -> &'static str {
    let (en, es) = match marker {
        Marker::LastFrost(Share::Early) => ("last frost, early year", "última helada, año temprano"),
        Marker::LastFrost(Share::Median) => ("usual last frost", "última helada habitual"),
        Marker::LastFrost(Share::Late) => ("last frost, late year", "última helada, año tardío"),
        Marker::FirstFrost(Share::Early) => ("first frost, early year", "primera helada, año temprano"),
        Marker::FirstFrost(Share::Median) => ("usual first frost", "primera helada habitual"),
        Marker::FirstFrost(Share::Late) => ("first frost, late year", "primera helada, año tardío"),
        Marker::LastKillingFrost => ("last killing frost", "última helada fuerte"),
        Marker::FirstKillingFrost => ("first killing frost", "primera helada fuerte"),
        Marker::GrowingStart => ("growth starts", "comienza a crecer"),
        Marker::GrowingEnd => ("growth ends", "deja de crecer"),
        Marker::HotSeasonStart => ("hot season starts", "comienza el calor fuerte"),
        Marker::HotSeasonEnd => ("hot season ends", "acaba el calor fuerte"),
        Marker::WarmestWeek => ("warmest week", "semana más cálida"),
        Marker::ColdestWeek => ("coldest week", "semana más fría"),
        Marker::LongestDay => ("longest day", "día más largo"),
        Marker::ShortestDay => ("shortest day", "día más corto"),
        Marker::SpringEquinox => ("spring equinox", "equinoccio de primavera"),
        Marker::AutumnEquinox => ("autumn equinox", "equinoccio de otoño"),
        Marker::RainsStart => ("rains start", "comienzan las lluvias"),
        Marker::RainsEnd => ("rains end", "acaban las lluvias"),
        Marker::SecondRainsStart => ("second rains start", "comienzan las segundas lluvias"),
        Marker::SecondRainsEnd => ("second rains end", "acaban las segundas lluvias"),
        Marker::Rises(..) | Marker::Falls(..) => ("", ""),
    };
    if is_spanish(language) { es } else { en }
}

/// What markers are called together, where all of them are absent in the same way.
pub(super) const TOGETHER: &[(&[Marker], &str, &str)] = &[
    (
        &[
            Marker::LastFrost(Share::Early),
            Marker::LastFrost(Share::Median),
            Marker::LastFrost(Share::Late),
            Marker::FirstFrost(Share::Early),
            Marker::FirstFrost(Share::Median),
            Marker::FirstFrost(Share::Late),
            Marker::LastKillingFrost,
            Marker::FirstKillingFrost,
        ],
        "frost",
        "heladas",
    ),
    (&[Marker::LastKillingFrost, Marker::FirstKillingFrost], "killing frost", "heladas fuertes"),
    (&[Marker::GrowingStart, Marker::GrowingEnd], "growing season", "temporada de crecimiento"),
    (&[Marker::HotSeasonStart, Marker::HotSeasonEnd], "hot season", "temporada de calor fuerte"),
    (&[Marker::WarmestWeek, Marker::ColdestWeek], "warmest and coldest week", "semana más cálida y más fría"),
    (&[Marker::LongestDay, Marker::ShortestDay], "longest and shortest day", "día más largo y más corto"),
    (&[Marker::SpringEquinox, Marker::AutumnEquinox], "equinoxes", "equinoccios"),
    (&[Marker::RainsStart, Marker::RainsEnd], "rains", "lluvias"),
    (&[Marker::SecondRainsStart, Marker::SecondRainsEnd], "second rains", "segundas lluvias"),
];

/// A date without its year, short.
#[must_use]
pub fn short_date(day: Day, language: &str) -> String {
    const EN: [&str; 12] = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];
    const ES: [&str; 12] = ["ene", "feb", "mar", "abr", "may", "jun", "jul", "ago", "sep", "oct", "nov", "dic"];
    let date = day.date();
    let names = if is_spanish(language) { ES } else { EN };
    let name = usize::try_from(date.month0()).ok().and_then(|month| names.get(month)).copied();
    format!("{} {}", date.day(), name.unwrap_or_default())
}

/// To a tenth, half away from zero, as the season itself is rounded; never `-0.0`.
#[must_use]
pub fn tenth(value: f64) -> String {
    format!("{:.1}", (value * 10.0).round() / 10.0 + 0.0)
}

/// A temperature: °C to a tenth, and whole °F.
#[must_use]
pub fn temperature(celsius: f64) -> String {
    format!("{}{NO_BREAK}°C ({}{NO_BREAK}°F)", tenth(celsius), fahrenheit(celsius))
}

/// Whole °F.
#[must_use]
pub fn fahrenheit(celsius: f64) -> String {
    whole(to_us(celsius, "°C").map_or(celsius, |(value, _)| value))
}

/// A depth of water: mm, and inches.
#[must_use]
pub fn depth(mm: f64) -> String {
    let inches = to_us(mm, "mm").map_or(0.0, |(value, _)| value);
    format!("{}{NO_BREAK}mm ({}{NO_BREAK}in)", plain(shown(mm)), plain(shown(inches)))
}

/// A whole number, never `-0`.
#[must_use]
pub fn whole(value: f64) -> String {
    format!("{:.0}", value.round() + 0.0)
}

/// Where a place is, by its coordinates.
#[must_use]
pub fn coordinates(latitude_deg: f64, longitude_deg: Option<f64>, language: &str) -> String {
    let half = |value: f64, positive: &str, negative: &str| {
        format!("{}° {}", plain(value.abs()), if value < 0.0 { negative } else { positive })
    };
    let latitude = half(latitude_deg, "N", "S");
    match longitude_deg {
        Some(longitude) => format!("{latitude}, {}", half(longitude, "E", pick(language, "W", "O"))),
        None => latitude,
    }
}
