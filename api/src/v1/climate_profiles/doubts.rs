//! How a record was read, how sure its frost dates are, and what looks wrong in it, in words.

use lammas_agronomy::record::{
    Extreme, FrostSampling, Layout, Quality, StationUnits, Stuck, Suspicions, UnitSuspicion,
};

use super::answer::{
    ProfileFrostDays, ProfileFrostError, ProfileLayout, ProfileSuspicion, RecordLayout, RecordSuspicion,
};
use super::request::RecordUnits;
use crate::v1::question::choices::Language;
use crate::v1::question::date::Date;

fn pick(language: Language, en: &'static str, es: &'static str) -> &'static str {
    if language == Language::Es { es } else { en }
}

impl From<RecordUnits> for StationUnits {
    fn from(units: RecordUnits) -> Self {
        match units {
            RecordUnits::Metric => Self::Metric,
            RecordUnits::Tenths => Self::Tenths,
        }
    }
}

/// How the record was written; `None` is JSON.
pub(super) fn layout(read: Option<&Layout>, language: Language) -> ProfileLayout {
    let (form, words) = match read {
        None => (RecordLayout::Json, pick(language, "JSON, in °C and mm.", "JSON, en °C y mm.")),
        Some(Layout::Plain) => (
            RecordLayout::Plain,
            pick(language, "CSV whose columns name °C and mm.", "CSV cuyas columnas dicen °C y mm."),
        ),
        Some(Layout::Station { station, units, declared, .. }) => {
            let (unit, words) = match (units, declared) {
                (StationUnits::Metric, true) => {
                    (RecordUnits::Metric, ("°C and mm, as declared", "°C y mm, como se declaró"))
                }
                (StationUnits::Tenths, true) => (
                    RecordUnits::Tenths,
                    ("tenths of °C and mm, as declared", "décimas de °C y de mm, como se declaró"),
                ),
                (StationUnits::Metric, false) => (
                    RecordUnits::Metric,
                    (
                        "°C and mm, detected: the values have points or none is beyond 60",
                        "°C y mm, detectado: los valores llevan punto o ninguno pasa de 60",
                    ),
                ),
                (StationUnits::Tenths, false) => (
                    RecordUnits::Tenths,
                    (
                        "tenths of °C and mm, detected: whole numbers throughout, some beyond 60",
                        "décimas de °C y de mm, detectado: solo números enteros, algunos de más de 60",
                    ),
                ),
            };
            let words = pick(language, words.0, words.1);
            return ProfileLayout {
                form: RecordLayout::Station,
                station: station.clone(),
                units: Some(unit),
                units_declared: Some(*declared),
                words: format!("{} {words}.", pick(language, "Station export in", "Registro de estación en")),
            };
        }
    };
    ProfileLayout { form, station: None, units: None, units_declared: None, words: words.to_owned() }
}

/// How sure the counted frost dates are.
pub(super) fn frost_error(sampling: &FrostSampling, language: Language) -> ProfileFrostError {
    let wide = sampling.within_90();
    // Whole days, and never none: a date is not known better than to a day.
    let days = |days: [f64; 3]| {
        let [early_days, median_days, late_days] = days.map(|days| days.round().max(1.0) as u16);
        ProfileFrostDays { early_days, median_days, late_days }
    };
    ProfileFrostError {
        level_pct: 90,
        last: days(wide.last_days),
        first: days(wide.first_days),
        method: pick(
            language,
            "large-sample error of a quantile, the dates taken as normal (Kendall and Stuart, The Advanced Theory of Statistics, volume 1): chance alone, not a change of climate",
            "error de un cuantil en muestras grandes, con fechas de distribución normal (Kendall y Stuart, The Advanced Theory of Statistics, volumen 1): solo el azar, no un cambio del clima",
        )
        .to_owned(),
    }
}

/// What looks wrong, and how many such things there are.
pub(super) fn suspicions(quality: &Quality, read: Option<&Layout>, language: Language) -> (Vec<ProfileSuspicion>, u32) {
    let Suspicions { stuck, stuck_count, units, .. } = &quality.suspicions;
    let whole = |kind: RecordSuspicion, words: &str| ProfileSuspicion {
        kind,
        words: words.to_owned(),
        first: None,
        last: None,
    };
    let mut found: Vec<ProfileSuspicion> = Vec::new();
    found.extend(contradiction(read, language).map(|words| whole(RecordSuspicion::Declared, words)));
    found.extend(units.iter().map(|unit| whole(RecordSuspicion::Unit, unit_words(*unit, language))));
    let count = u32::try_from(found.len()).unwrap_or(u32::MAX).saturating_add(*stuck_count);
    found.extend(stuck.iter().map(|run| self::stuck(run, language)));
    (found, count)
}

/// What is said of a declared unit that the values do not look like.
pub(super) fn contradiction(read: Option<&Layout>, language: Language) -> Option<&'static str> {
    let Some(Layout::Station { units, detected, declared: true, .. }) = read else { return None };
    match (units, detected) {
        (StationUnits::Tenths, StationUnits::Metric) => Some(pick(
            language,
            "Declared as tenths, but the values have points or none is beyond 60: they look like °C.",
            "Se declararon décimas, pero los valores llevan punto o ninguno pasa de 60: parecen °C.",
        )),
        (StationUnits::Metric, StationUnits::Tenths) => Some(pick(
            language,
            "Declared as °C, but the values are whole numbers, some beyond 60: they look like tenths.",
            "Se declararon °C, pero los valores son enteros y algunos pasan de 60: parecen décimas.",
        )),
        _ => None,
    }
}

pub(super) fn unit_words(unit: UnitSuspicion, language: Language) -> &'static str {
    match unit {
        UnitSuspicion::TooWarm => pick(
            language,
            "The temperatures are too high for °C: they may be °F, or tenths of °C.",
            "Las temperaturas son demasiado altas para °C: pueden ser °F o décimas de °C.",
        ),
        UnitSuspicion::TooWet => pick(
            language,
            "The rain is too much for mm: it may be tenths of mm.",
            "La lluvia es demasiada para mm: pueden ser décimas de mm.",
        ),
    }
}

fn stuck(run: &Stuck, language: Language) -> ProfileSuspicion {
    let of = match run.of {
        Extreme::Tmin => pick(language, "minimum", "mínima"),
        Extreme::Tmax => pick(language, "maximum", "máxima"),
    };
    let (value, days) = (run.value_c, run.days);
    let words = if language == Language::Es {
        format!("La {of} se quedó en {value} °C durante {days} días registrados: puede ser un aparato atascado.")
    } else {
        format!("The {of} stayed at {value} °C for {days} recorded days: the instrument may have stuck.")
    };
    let (first, last) = (Date(run.first.date()), Date(run.last.date()));
    ProfileSuspicion { kind: RecordSuspicion::Stuck, words, first: Some(first), last: Some(last) }
}
