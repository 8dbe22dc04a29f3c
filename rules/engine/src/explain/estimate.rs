//! An estimate from coordinates in words: its grade, why it is not better, what would be, and where it comes from.

use std::sync::LazyLock;

use lammas_agronomy::climatology::{Doubt, Grade};
use lammas_agronomy::profile::Limits;
use serde::Serialize;

use super::answer::{Note, Said, SourceShown};
use super::number::shown;
use super::rendered::Rendered;
use super::words::{is_spanish, pick, told};
use crate::question::Climate;
use crate::question::estimated::Estimated;

/// The notice that stands with whatever is taken from the climate grid.
pub const ATTRIBUTION: &str = "Contains modified Copernicus Climate Change Service information 2026 (ERA5 monthly averaged \
    data on single levels, Hersbach et al. 2023, doi 10.24381/cds.f17050d7). Neither the European Commission nor ECMWF is \
    responsible for any use that may be made of the Copernicus information or data it contains.";

static TITLES: LazyLock<[Rendered<String>; 2]> = LazyLock::new(|| {
    ["The climate is estimated from coordinates", "El clima está estimado por las coordenadas"]
        .map(|title| Rendered::of(title.to_owned()))
});

static SOURCES: LazyLock<Rendered<Vec<SourceShown>>> = LazyLock::new(|| {
    Rendered::of(vec![SourceShown {
        id: "climate-grid".to_owned(),
        title: ATTRIBUTION.to_owned(),
        publisher: Some("Copernicus Climate Change Service, ECMWF".to_owned()),
        year: Some(2026),
        how_read: "the data themselves, 0.25°, means of 2000 to 2025".to_owned(),
    }])
});

/// How good an estimated climate is.
#[derive(Clone, Debug, Serialize)]
pub struct EstimateShown {
    /// good, fair, poor.
    pub grade: &'static str,
    /// Why it is not better.
    pub doubts: Vec<DoubtShown>,
    /// What would be better.
    pub better: &'static str,
    /// Mean error of a month's mean temperature, K.
    pub tmean_k: f64,
    /// Mean error of a month's minimum or maximum, K.
    pub extremes_k: f64,
    /// Mean error of a month's rain, mm.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub rain_mm: Option<f64>,
    /// Mean error of a frost date, days.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub frost_days: Option<f64>,
    /// Mean error of the mean annual extreme minimum, K.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub extreme_min_k: Option<f64>,
    /// Mean error of a month's reference evapotranspiration, mm a day.
    pub et0_mm_day: f64,
    /// The elevation, where it was not said and would narrow what matters here.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub ask: Option<ElevationAsked>,
}

/// The elevation asked for: no fact that a rule reads, but a number from which all others follow.
#[derive(Clone, Debug, Serialize)]
pub struct ElevationAsked {
    /// Where the number goes.
    pub pointer: &'static str,
    /// The question.
    pub text: &'static str,
    /// How to find out.
    pub look: &'static str,
    /// m.
    pub unit: &'static str,
    /// The least that can be said.
    pub least: f64,
    /// The most.
    pub most: f64,
    /// rough-ground, near-edge.
    pub because: &'static str,
    /// What it narrows, in words.
    pub narrows: String,
    /// Mean error of a month's mean temperature that is left, K.
    pub tmean_k: f64,
    /// Mean error of a frost date that is left, days.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub frost_days: Option<f64>,
    /// Mean error of the mean annual extreme minimum that is left, K.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub extreme_min_k: Option<f64>,
}

/// One reason for doubt.
#[derive(Clone, Debug, Serialize)]
pub struct DoubtShown {
    /// Its name.
    pub id: &'static str,
    /// In words.
    pub text: String,
}

/// How good the climate is, if it was estimated. `near_edge`: what is said of the day would be another within the likely
/// error of its dates.
#[must_use]
pub fn error(climate: &Climate, near_edge: bool, language: &str) -> Option<EstimateShown> {
    let estimated = climate.estimated.as_ref()?;
    let Estimated { grade, doubts, errors, .. } = estimated;
    Some(EstimateShown {
        ask: ask(estimated, near_edge, language),
        grade: grade.as_str(),
        doubts: doubts.iter().map(|doubt| DoubtShown { id: doubt.id(), text: doubt_words(doubt, language) }).collect(),
        better: better(doubts, language),
        tmean_k: shown(errors.tmean_k),
        extremes_k: shown(errors.extremes_k),
        rain_mm: errors.rain_mm,
        frost_days: errors.frost_days,
        extreme_min_k: errors.extreme_min_k,
        et0_mm_day: errors.et0_mm_day,
    })
}

/// Where the ground is rough, or the day near an edge: the elevation, if it was not said.
fn ask(estimated: &Estimated, near_edge: bool, language: &str) -> Option<ElevationAsked> {
    let left = estimated.errors_with_elevation.as_ref()?;
    let is_rough = estimated.doubts.iter().any(|doubt| matches!(doubt, Doubt::ElevationNotSaid { .. }));
    let because = match (is_rough, near_edge) {
        (true, _) => "rough-ground",
        (false, true) => "near-edge",
        (false, false) => return None,
    };
    let now = &estimated.errors;
    let spanish = is_spanish(language);
    let narrower = |now: f64, then: f64, en: &str, es: &str, unit: &str| {
        let words =
            if spanish { format!("{es}: {now} → {then} {unit}") } else { format!("{en}: {now} → {then} {unit}") };
        (then < now).then_some(words)
    };
    let both = |now: Option<f64>, then: Option<f64>| now.zip(then);
    let narrows: Vec<String> = [
        both(now.frost_days, left.frost_days).and_then(|(now, then)| {
            narrower(
                now,
                then,
                "error of frost dates",
                "error de las fechas de helada",
                if spanish { "días" } else { "days" },
            )
        }),
        narrower(now.tmean_k, left.tmean_k, "of monthly means", "de las medias mensuales", "K"),
        both(now.extreme_min_k, left.extreme_min_k)
            .and_then(|(now, then)| narrower(now, then, "of the coldest night", "de la noche más fría", "K")),
    ]
    .into_iter()
    .flatten()
    .collect();
    let limits = Limits::ELEVATION;
    Some(ElevationAsked {
        pointer: "/climate/elevation_m",
        text: told(language, "How many metres above the sea is it?", "¿A cuántos metros sobre el mar está?"),
        look: told(
            language,
            "On a map with heights, or from a navigation device; to some 50 m is enough.",
            "En un mapa con alturas o con un navegador; basta con unos 50 m de precisión.",
        ),
        unit: "m",
        least: limits.min,
        most: limits.max,
        because,
        narrows: narrows.join("; "),
        tmean_k: left.tmean_k,
        frost_days: left.frost_days,
        extreme_min_k: left.extreme_min_k,
    })
}

/// Where an estimated climate comes from; nothing for any other.
#[must_use]
pub fn sources(climate: &Climate) -> Option<&'static Rendered<Vec<SourceShown>>> {
    climate.estimated.as_ref().map(|_| &*SOURCES)
}

/// The note that stands in every answer from an estimated climate.
#[must_use]
pub fn note<'a>(climate: &Climate, language: &str) -> Option<Note<'a>> {
    let estimated = climate.estimated.as_ref()?;
    let [english, spanish] = &*TITLES;
    let grade = match estimated.grade {
        Grade::Good => pick(
            language,
            "Nobody has measured it; as such estimates go, it is a good one.",
            "Nadie lo ha medido; como estimación es buena.",
        ),
        Grade::Fair => pick(
            language,
            "Nobody has measured it, and the estimate is only fair.",
            "Nadie lo ha medido, y la estimación es solo regular.",
        ),
        Grade::Poor => pick(
            language,
            "Nobody has measured it, and the estimate is poor: do not trust it without better numbers.",
            "Nadie lo ha medido, y la estimación es mala: no confíe en ella sin mejores datos.",
        ),
    };
    let mut text = grade.to_owned();
    for doubt in &estimated.doubts {
        text.push(' ');
        text.push_str(&doubt_words(doubt, language));
    }
    if let Some(days) = estimated.errors.frost_days {
        text.push_str(&if is_spanish(language) {
            format!(" Las fechas de helada pueden errar unos {days} días: no garantiza que no hiele.")
        } else {
            format!(" Frost dates may be off by some {days} days: it promises no frost-free night.")
        });
    }
    text.push(' ');
    text.push_str(better(&estimated.doubts, language));
    text.push_str(pick(
        language,
        " A hollow, a wall, a city or a lake shore make nights colder or milder than this.",
        " Una hondonada, un muro, una ciudad o la orilla de un lago hacen las noches más frías o más suaves.",
    ));
    Some(Note {
        id: "climate.estimated",
        title: if is_spanish(language) { spanish } else { english },
        text: Said::Made(text),
        facts: Vec::new(),
        sources: &SOURCES,
    })
}

fn doubt_words(doubt: &Doubt, language: &str) -> String {
    let spanish = is_spanish(language);
    match doubt {
        Doubt::ElevationNotSaid { spread_m } if spanish => {
            format!("El terreno alrededor difiere en {} m y no se ha dicho la altitud.", tens(*spread_m))
        }
        Doubt::ElevationNotSaid { spread_m } => {
            format!("The ground around differs by {} m and the elevation was not said.", tens(*spread_m))
        }
        Doubt::FarAboveOrBelow { apart_m } if spanish => {
            format!("La altitud está a {} m de la del terreno alrededor.", tens(apart_m.abs()))
        }
        Doubt::FarAboveOrBelow { apart_m } => {
            format!("The elevation is {} m away from that of the ground around.", tens(apart_m.abs()))
        }
        Doubt::CoolCoast => pick(
            language,
            "On a dry coast by a cold current the days may be far cooler and more even than this.",
            "En una costa seca junto a una corriente fría los días pueden ser mucho más frescos y parejos.",
        )
        .to_owned(),
        Doubt::RainNotBelieved => pick(
            language,
            "The rain of the map is not to be believed here, so none is counted.",
            "La lluvia del mapa no es creíble aquí, así que no se cuenta ninguna.",
        )
        .to_owned(),
        Doubt::ColdNotTold => pick(
            language,
            "In so cold a winter, or so near the pole, frost dates and the coldest night can't be told.",
            "Con un invierno tan frío, o tan cerca del polo, no se pueden estimar las heladas ni la noche más fría.",
        )
        .to_owned(),
        Doubt::HardlyAnyLand => pick(
            language,
            "The map has no land within 25 km: check the coordinates.",
            "El mapa no tiene tierra a menos de 25 km: revise las coordenadas.",
        )
        .to_owned(),
    }
}

/// What would be better.
fn better(doubts: &[Doubt], language: &str) -> &'static str {
    if doubts.iter().any(|doubt| matches!(doubt, Doubt::ElevationNotSaid { .. })) {
        pick(
            language,
            "Say the elevation in `climate.elevation_m`; monthly normals of a station nearby are better still.",
            "Diga la altitud en `climate.elevation_m`; mejor aún son las normales mensuales de una estación cercana.",
        )
    } else {
        pick(
            language,
            "Monthly normals of a station nearby in `climate.normals` are better, and so are frost dates in `climate.frost`.",
            "Son mejores las normales mensuales de una estación cercana en `climate.normals` y las heladas en `climate.frost`.",
        )
    }
}

fn tens(metres: f64) -> f64 {
    libm::round(metres / 10.0) * 10.0
}
