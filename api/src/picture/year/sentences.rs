//! The sentences of the picture, each a fact of the season in words.

use lammas_agronomy::calendar::{ClimateDay, Day};
use lammas_agronomy::curve::Series;
use lammas_agronomy::marker::Marker;
use lammas_agronomy::profile::DailyWeather;
use lammas_engine::explain::number::plain;
use lammas_engine::explain::words::date;

use super::Year;
use super::span::Span;
use super::told::Dated;
use super::water::weeks_of_rain;
use super::weather::Weather;
use super::words::{depth, pick, temperature, tenth};
use crate::picture::measure::NO_BREAK;

/// The numbers of the day asked.
pub(super) fn today(year: &Year<'_>) -> String {
    let brief = &year.season.brief;
    let say = |en, es| pick(year.language, en, es);
    let rain_mm = year.climate.season.curve(Series::Rain, year.day.climate_day());
    let rain = rain_mm.map(|mm| format!("{} {} mm, ", say("rain", "lluvia"), tenth(mm))).unwrap_or_default();
    format!(
        "{}{}: {} {}, {} {}; {rain}ET0 {} mm {}; {} {}.",
        if year.is_today { say("Today, ", "Hoy, ") } else { "" },
        date(year.day, year.language),
        say("usual minimum", "mínima habitual"),
        temperature(brief.tmin_c),
        say("maximum", "máxima"),
        temperature(brief.tmax_c),
        tenth(brief.et0_mm_day),
        say("a day", "al día"),
        tenth(brief.daylength_h),
        say("h of daylight", "h de luz"),
    )
}

/// The first day with the lowest value of a curve and the first with the highest.
fn extremes(year: &Year<'_>, span: Span, series: Series) -> Option<[(Day, f64); 2]> {
    let mut found: Option<[(Day, f64); 2]> = None;
    for day in span.days() {
        let value = year.climate.season.curve(series, day.climate_day())?;
        let [low, high] = found.get_or_insert([(day, value); 2]);
        if value < low.1 {
            *low = (day, value);
        }
        if value > high.1 {
            *high = (day, value);
        }
    }
    found
}

/// The extremes of the usual temperatures.
pub(super) fn temperatures(year: &Year<'_>, span: Span) -> String {
    let say = |en, es| pick(year.language, en, es);
    let coldest = extremes(year, span, Series::Tmin).map(|[low, _]| low);
    let warmest = extremes(year, span, Series::Tmax).map(|[_, high]| high);
    let told = |name: &str, found: Option<(Day, f64)>| {
        found.map(|(day, value)| {
            format!("{name} {}, {} {}", temperature(value), say("about", "hacia el"), date(day, year.language))
        })
    };
    let both = [
        told(say("Temperature: coldest usual night", "Temperatura: la noche más fría"), coldest),
        told(say("warmest usual day", "el día más cálido"), warmest),
    ];
    format!("{}.", both.into_iter().flatten().collect::<Vec<_>>().join("; "))
}

/// The year's rain and evapotranspiration.
pub(super) fn water(year: &Year<'_>, span: Span) -> Vec<String> {
    let say = |en, es| pick(year.language, en, es);
    let season = &year.climate.season;
    let a_year = |series: Series| ClimateDay::all().map(|day| season.curve(series, day)).sum::<Option<f64>>();
    let rain = a_year(Series::Rain).map(|mm| {
        let weeks = weeks_of_rain(year, span);
        // A week's rain is a month's share: nearer than a tenth of a millimetre it says nothing.
        let round = |mm: f64| (mm * 10.0).round();
        let wettest = weeks.iter().copied().reduce(|a, b| if round(b.1) > round(a.1) { b } else { a });
        let driest = weeks.iter().copied().reduce(|a, b| if round(b.1) < round(a.1) { b } else { a });
        let week = |name: &str, found: Option<(Day, f64)>| {
            found.map_or(String::new(), |(day, mm)| {
                format!("; {name} {}, {}{NO_BREAK}mm", date(day, year.language), tenth(mm))
            })
        };
        format!(
            "{} {} {}{}{}.",
            say("Rain:", "Lluvia:"),
            depth(mm),
            say("a year", "al año"),
            week(say("wettest week from", "semana más lluviosa desde el"), wettest),
            week(say("driest from", "más seca desde el"), driest),
        )
    });
    let rain = rain.unwrap_or_else(|| say("Rain is not known here.", "La lluvia no se conoce aquí.").to_owned());
    let et0 = a_year(Series::Et0).zip(extremes(year, span, Series::Et0)).map(|(mm, [low, high])| {
        format!(
            "{} (ET0): {} {}; {}{NO_BREAK}mm {} {} {}, {}{NO_BREAK}mm {} {}.",
            say("Reference evapotranspiration", "Evapotranspiración de referencia"),
            depth(mm),
            say("a year", "al año"),
            tenth(low.1),
            say("a day", "al día"),
            say("about", "hacia el"),
            date(low.0, year.language),
            tenth(high.1),
            say("about", "hacia el"),
            date(high.0, year.language),
        )
    });
    [Some(rain), et0].into_iter().flatten().collect()
}

/// The extremes of daylight.
pub(super) fn daylight(year: &Year<'_>, span: Span, dated: &[Dated]) -> String {
    let say = |en, es| pick(year.language, en, es);
    let known = |wanted: Marker| dated.iter().find(|dated| dated.marker == wanted).map(|dated| dated.day);
    let Some([low, high]) = extremes(year, span, Series::Daylength) else { return String::new() };
    // Where the sun stays up or down for weeks its marker is the middle of them.
    let (shortest, longest) =
        (known(Marker::ShortestDay).unwrap_or(low.0), known(Marker::LongestDay).unwrap_or(high.0));
    format!(
        "{} {} h {} {}, {} h {} {}.",
        say("Daylight:", "Luz del día:"),
        tenth(low.1),
        say("on", "el"),
        date(shortest, year.language),
        tenth(high.1),
        say("on", "el"),
        date(longest, year.language),
    )
}

/// What was observed and what is forecast, of the days that are drawn.
pub(super) fn weather(year: &Year<'_>, days: &Weather) -> Vec<String> {
    let say = |en, es| pick(year.language, en, es);
    let told = |name: &str, days: &[DailyWeather]| {
        let (first, last) = (days.first()?, days.last()?);
        let lowest = days.iter().filter_map(|day| day.tmin_c).reduce(f64::min);
        let highest = days.iter().filter_map(|day| day.tmax_c).reduce(f64::max);
        let rain_mm = days.iter().filter_map(|day| day.rain_mm).reduce(|sum, mm| sum + mm);
        let parts = [
            lowest.map(|value| format!("{} {}", say("minimum down to", "mínima hasta"), temperature(value))),
            highest.map(|value| format!("{} {}", say("maximum up to", "máxima hasta"), temperature(value))),
            rain_mm.map(|mm| format!("{} {}", say("rain", "lluvia"), depth(mm))),
        ];
        let parts: Vec<String> = parts.into_iter().flatten().collect();
        let span = if first.day == last.day {
            date(first.day, year.language)
        } else {
            format!("{} {} {}", date(first.day, year.language), say("to", "a"), date(last.day, year.language))
        };
        Some(format!("{name} {span}: {}.", if parts.is_empty() { "-".to_owned() } else { parts.join(", ") }))
    };
    let unused = days.foretold.is_empty().then_some(year.season.forecast).flatten();
    [
        told(say("Observed", "Observado"), &days.observed),
        told(say("Forecast", "Previsto"), &days.foretold),
        unused.map(|state| format!("{} {state}.", say("Forecast:", "Previsión:"))),
    ]
    .into_iter()
    .flatten()
    .collect()
}

/// How good it is, how it was reckoned, whose data.
pub(super) fn ends(year: &Year<'_>) -> Vec<String> {
    let say = |en, es| pick(year.language, en, es);
    let mut sentences = Vec::new();
    if let Some(error) = &year.season.climate_error {
        let grade = match error.grade {
            "good" => say("good", "buena"),
            "fair" => say("fair", "regular"),
            _ => say("poor", "mala"),
        };
        let doubts: String = error.doubts.iter().map(|doubt| format!(" {}", doubt.text)).collect();
        let frost = error.frost_days.map(|days| {
            format!(", {} {} {}", say("frost dates", "fechas de helada"), plain(days), say("days", "días"))
        });
        sentences.push(format!(
            "{} {grade}.{doubts} {} {} K{}.",
            say(
                "The climate is estimated from coordinates; as an estimate it is",
                "El clima está estimado por las coordenadas; como estimación es"
            ),
            say("Likely error: temperatures", "Error probable: temperaturas"),
            plain(error.extremes_k),
            frost.unwrap_or_default(),
        ));
    }
    let method = &year.season.brief.et0_method;
    let by = match method.method {
        "penman-monteith" => "ET0: FAO-56 Penman-Monteith",
        _ => "ET0: Hargreaves-Samani",
    };
    let assumed: Vec<&str> = method
        .assumed
        .iter()
        .map(|input| match *input {
            "elevation" => say("elevation", "altitud"),
            "humidity" => say("humidity", "humedad"),
            "wind" => say("wind", "viento"),
            _ => say("radiation", "radiación"),
        })
        .collect();
    let assumed = if assumed.is_empty() {
        String::new()
    } else {
        format!(" ({}: {})", say("by its rules", "por sus reglas"), assumed.join(", "))
    };
    sentences.push(format!(
        "{by}{assumed}. {} {} K {}.",
        say("The curves keep within", "Las curvas quedan a menos de"),
        plain(year.season.curve_error_k),
        say("of the monthly normals", "de las medias mensuales"),
    ));
    sentences.extend(
        year.season.climate_sources.iter().flat_map(|sources| sources.iter().map(|source| source.title.clone())),
    );
    sentences
}
