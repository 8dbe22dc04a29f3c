//! A profile for people.

use crate::cli::wrapped::lines;
use crate::v1::climate_profiles::answer::{ProfileAnswer, ProfileFrostDays, ProfileFrostError};
use crate::v1::question::choices::Language;
use crate::v1::question::climate::{ClimateFrostDays, ClimateGiven};

/// The profile for people.
pub(super) fn shown(made: &ProfileAnswer, language: Language) -> String {
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
    out += &lines(pick("Read as: ", "Leído como: "), &made.layout.words);
    if let Some(station) = &made.layout.station {
        out += &format!("{} {station}\n", pick("Station", "Estación"));
    }
    out += &lines(pick("Whole years: ", "Años enteros: "), &years(&quality.years_used, language));
    if !quality.suspicions.is_empty() {
        out += &format!("\n{}\n", pick("LOOKS WRONG", "PARECE MAL"));
    }
    for suspicion in quality.suspicions.iter().take(MOST_SUSPICIONS) {
        let days =
            suspicion.first.zip(suspicion.last).map_or_else(String::new, |(first, last)| format!("{first} – {last}: "));
        out += &lines("  * ", &(days + &suspicion.words));
    }
    let more = quality.suspicion_count as usize - quality.suspicions.len().min(MOST_SUSPICIONS);
    if more > 0 {
        out += &format!("  {} {more} {}\n", pick("and", "y"), pick("more", "más"));
    }
    months(&made.climate, language, &mut out);
    frost(&made.climate, made.frost_error.as_ref(), language, &mut out);
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

/// Suspicions that are shown.
const MOST_SUSPICIONS: usize = 5;

/// Years in runs: `2006–2012, 2014`.
fn years(used: &[i32], language: Language) -> String {
    let mut runs: Vec<(i32, i32)> = Vec::new();
    for year in used.iter().copied() {
        match runs.last_mut() {
            Some((_, last)) if *last + 1 == year => *last = year,
            _ => runs.push((year, year)),
        }
    }
    if runs.is_empty() {
        return if language == Language::Es { "ninguno".to_owned() } else { "none".to_owned() };
    }
    let shown =
        |(first, last): &(i32, i32)| if first == last { first.to_string() } else { format!("{first}–{last}") };
    runs.iter().map(shown).collect::<Vec<_>>().join(", ")
}

/// The monthly normals of a climate.
pub(super) fn months(climate: &ClimateGiven, language: Language, out: &mut String) {
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

/// Its frost dates, where they were counted or given, and how sure counted ones are.
pub(super) fn frost(climate: &ClimateGiven, error: Option<&ProfileFrostError>, language: Language, out: &mut String) {
    let pick = |en: &'static str, es: &'static str| if language == Language::Es { es } else { en };
    // What is given wins; a side that is not given is reckoned, while a counted one that is left out does not come.
    let sides = match (&climate.frost, &climate.counted_frost) {
        (Some(given), _) => [given.last.clone(), given.first.clone()],
        (None, Some(counted)) => [&counted.last, &counted.first].map(|days| Some(days.clone().unwrap_or_default())),
        (None, None) => return,
    };
    *out += &format!("\n{:24}10 %     50 %     90 %\n", pick("FROST (0 °C), by", "HELADA (0 °C), hasta"));
    let names = [pick("last", "última"), pick("first", "primera")];
    let errors = error.map(|error| [error.last, error.first]);
    for (at, (name, days)) in names.into_iter().zip(sides).enumerate() {
        let Some(ClimateFrostDays { early, median, late }) = days else { continue };
        let cell = |day: Option<crate::v1::question::date::DayOfYear>| {
            day.map_or_else(|| pick("none", "no hay").to_owned(), |day| day.to_string())
        };
        *out += &format!("  {name:22}{:9}{:9}{}\n", cell(early), cell(median), cell(late));
        if let Some(days) = errors.and_then(|errors| errors.get(at).copied()) {
            let ProfileFrostDays { early_days, median_days, late_days } = days;
            let within = |days: u16| format!("± {days}");
            *out += &format!(
                "  {:22}{:9}{:9}{}\n",
                pick("  days, 90 %", "  días, 90 %"),
                within(early_days),
                within(median_days),
                within(late_days)
            );
        }
    }
    if let Some(extreme) = climate.extreme_min_c {
        *out += &format!("  {:22}{extreme:.1} °C\n", pick("coldest night", "noche más fría"));
    }
    if let Some(error) = error {
        *out += &lines("  ± ", &error.method);
    }
}
