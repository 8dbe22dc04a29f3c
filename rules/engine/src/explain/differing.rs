//! How a climate differs from another, in words: what was taken, and which markers moved.

use lammas_agronomy::marker::{Marker, MarkerState};
use lammas_agronomy::profile::Differences;
use serde::Serialize;

use super::number::plain;
use super::words::{is_spanish, marker, told};
use crate::question::Climate;
use crate::question::differing::Moved;

/// How a climate differs from another.
#[derive(Clone, Debug, Serialize)]
pub struct DifferingShown {
    /// The hash of the climate from which it differs.
    pub from_sha256: String,
    /// The differences that were taken.
    pub taken: Vec<TakenShown>,
    /// Markers that moved, came or went.
    pub markers: Vec<MovedShown>,
    /// How many more of them there are.
    pub markers_more: usize,
}

/// A difference that was taken.
#[derive(Clone, Debug, Serialize)]
pub struct TakenShown {
    /// As a request names it.
    pub id: &'static str,
    /// In words.
    pub text: String,
}

/// A marker that moved.
#[derive(Clone, Debug, Serialize)]
pub struct MovedShown {
    /// As rules write it.
    pub name: &'static str,
    /// In words.
    pub words: String,
    /// moved, came, went, changed.
    pub change: &'static str,
    /// Its state where it differs from.
    pub from_state: &'static str,
    /// Its day there, MM-DD.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub from: Option<String>,
    /// Its state here.
    pub to_state: &'static str,
    /// Its day here, MM-DD.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub to: Option<String>,
    /// Days from the one to the other; negative is earlier.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub days: Option<i32>,
    /// What became of it, in words.
    pub text: String,
}

/// How the climate differs from another, if it was said so: of the markers those alone that `wanted` names.
#[must_use]
pub fn shown(climate: &Climate, wanted: &[Marker], language: &str) -> Option<DifferingShown> {
    let differing = climate.differing.as_ref()?;
    let markers: Vec<MovedShown> = differing
        .moved
        .iter()
        .filter(|moved| wanted.contains(&moved.marker))
        .filter_map(|moved| self::moved(moved, language))
        .collect();
    Some(DifferingShown {
        from_sha256: differing.from_sha256.clone(),
        taken: taken(&differing.differences, language),
        markers_more: differing.moved.len() - markers.len(),
        markers,
    })
}

fn moved(Moved { marker: named, from, to }: &Moved, language: &str) -> Option<MovedShown> {
    let days = from.day().zip(to.day()).map(|(from, to)| to.days_from(from));
    let change = match (from.day(), to.day()) {
        (Some(_), Some(_)) => "moved",
        (None, Some(_)) => "came",
        (Some(_), None) => "went",
        (None, None) => "changed",
    };
    let name = named.name()?;
    Some(MovedShown {
        name,
        words: marker(name, language),
        change,
        from_state: from.as_str(),
        from: from.day().map(|day| day.to_string()),
        to_state: to.as_str(),
        to: to.day().map(|day| day.to_string()),
        days,
        text: match days {
            Some(days) => self::days(days, language),
            None => became(*to, language).to_owned(),
        },
    })
}

fn became(to: MarkerState, language: &str) -> &'static str {
    match to {
        MarkerState::Seasonal(_) => told(language, "comes here", "aquí llega"),
        MarkerState::Never => told(language, "its season does not come here", "su época no llega aquí"),
        MarkerState::Always => told(language, "its season does not end here", "su época no acaba aquí"),
        MarkerState::Even => told(language, "the year is too even to have it here", "aquí el año es demasiado parejo"),
        MarkerState::Unknown => told(language, "not known here", "aquí no se sabe"),
    }
}

/// `21 days earlier`.
fn days(days: i32, language: &str) -> String {
    let count = days.unsigned_abs();
    match (is_spanish(language), count) {
        (false, 0) => "on the same day".to_owned(),
        (true, 0) => "el mismo día".to_owned(),
        (false, _) => {
            format!("{count} day{} {}", if count == 1 { "" } else { "s" }, if days < 0 { "earlier" } else { "later" })
        }
        (true, _) => {
            format!("{count} día{} {}", if count == 1 { "" } else { "s" }, if days < 0 { "antes" } else { "después" })
        }
    }
}

fn taken(differences: &Differences, language: &str) -> Vec<TakenShown> {
    let Differences {
        nights_k,
        afternoons_k,
        summer_afternoons_k,
        last_frost_days,
        first_frost_days,
        frost_pocket,
        warm_wall,
        roof,
    } = *differences;
    let spanish = is_spanish(language);
    let by = |k: f64, [warmer, cooler]: [&str; 2]| {
        format!("{} °C {}", plain(libm::fabs(k)), if k < 0.0 { cooler } else { warmer })
    };
    let nights_by = |k: f64| by(k, if spanish { ["más cálidas", "más frías"] } else { ["warmer", "colder"] });
    let afternoons_by = |k: f64| by(k, if spanish { ["más cálidas", "más frescas"] } else { ["warmer", "cooler"] });
    let pick = |english: String, spanish_text: String| if spanish { spanish_text } else { english };
    let mut taken = Vec::new();
    let mut add = |id: &'static str, text: String| taken.push(TakenShown { id, text });
    if nights_k != 0.0 {
        add("nights_k", format!("{} {}", if spanish { "noches" } else { "nights" }, nights_by(nights_k)));
    }
    for (id, value_k, english, espanol) in [
        ("afternoons_k", afternoons_k, "afternoons", "tardes"),
        ("summer_afternoons_k", summer_afternoons_k, "summer afternoons", "tardes de verano"),
    ] {
        if value_k != 0.0 {
            add(id, format!("{} {}", if spanish { espanol } else { english }, afternoons_by(value_k)));
        }
    }
    for (id, said, english, espanol) in [
        ("last_frost_days", last_frost_days, "last frosts", "últimas heladas"),
        ("first_frost_days", first_frost_days, "first frosts", "primeras heladas"),
    ] {
        if let Some(said) = said {
            add(id, format!("{} {}", if spanish { espanol } else { english }, days(said.into(), language)));
        }
    }
    if frost_pocket {
        let nights = nights_by(Differences::POCKET_NIGHTS_K);
        add(
            "frost_pocket",
            pick(format!("a frost pocket: nights {nights}"), format!("una hondonada de heladas: noches {nights}")),
        );
    }
    if warm_wall {
        let (nights, afternoons) =
            (nights_by(Differences::WALL_NIGHTS_K), afternoons_by(Differences::WALL_AFTERNOONS_K));
        add(
            "warm_wall",
            pick(
                format!("before a wall in the sun: nights {nights}, afternoons {afternoons}"),
                format!("ante un muro al sol: noches {nights}, tardes {afternoons}"),
            ),
        );
    }
    if roof {
        let (summer, times) = (afternoons_by(Differences::ROOF_SUMMER_K), plain(Differences::ROOF_WIND));
        add(
            "roof",
            pick(
                format!("on a roof: summer afternoons {summer}, wind, where it is known, {times} times"),
                format!("en una azotea: tardes de verano {summer}, viento, si se conoce, {times} veces"),
            ),
        );
    }
    taken
}
