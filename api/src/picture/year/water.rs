//! The panel of water: what comes as rain in a week, what evaporation would take, and the rain of single weeks.

use lammas_agronomy::calendar::Day;
use lammas_agronomy::curve::Series;

use super::scale::Scale;
use super::sheet::{KeyEntry, Sheet};
use super::span::{RIGHT, Span};
use super::told::{Kin, Told};
use super::weather::Weather;
use super::words::{pick, tenth, whole};
use super::{Year, axis, names};

/// Height of the panel, units.
const HEIGHT: f64 = 88.0;
/// Millimetres of an inch, exactly (international yard and pound agreement of 1959).
const MM_IN_INCH: f64 = 25.4;
/// Days of a week.
const WEEK: f64 = 7.0;

pub(super) fn draw(year: &Year<'_>, span: Span, weather: &Weather, told: &Told, sheet: &mut Sheet) {
    let say = |en, es| pick(year.language, en, es);
    let season = &year.climate.season;
    let a_week = |series: Series, day: Day| season.curve(series, day.climate_day()).map(|mm| mm * WEEK);
    let et0_mm: Vec<(Day, f64)> = span.sampled().filter_map(|day| Some((day, a_week(Series::Et0, day)?))).collect();
    let rain_mm = weeks_of_rain(year, span);

    sheet.gap(8.0);
    for sentence in &told.water {
        sheet.say("", sentence);
    }
    let mut key: Vec<KeyEntry<'_>> = Vec::new();
    if !rain_mm.is_empty() {
        key.push((
            Some(|canvas, (x, y)| canvas.rect("step rain", (x - 6.0, y - 4.0), 12.0, 8.0)),
            say("usual rain", "lluvia habitual"),
        ));
    }
    key.push((Some(|canvas, (x, y)| canvas.path("line drawn", &[(x - 7.0, y), (x + 7.0, y)])), "ET0"));
    if !weather.seven_days_mm.is_empty() {
        key.push((
            Some(|canvas, (x, y)| canvas.path("told", &[(x - 7.0, y), (x + 7.0, y)])),
            say("rain of 7 days, observed", "lluvia de 7 días, observada"),
        ));
        if weather.seven_days_mm.keys().any(|day| *day >= year.day) {
            key.push((
                Some(|canvas, (x, y)| canvas.path("ahead", &[(x - 7.0, y), (x + 7.0, y)])),
                say("and forecast", "y prevista"),
            ));
        }
    }
    key.push((None, say("left mm a week, right in", "izq. mm por semana, der. in")));
    sheet.key(&key);

    let (top, bottom) = axis::panel(sheet, HEIGHT);
    let all = et0_mm.iter().map(|(_, mm)| *mm).chain(rain_mm.iter().map(|(_, mm)| *mm));
    let most = all.chain(weather.seven_days_mm.values().copied()).fold(1.0, f64::max);
    let scale = Scale::holding(0.0, most, top, bottom);
    if !rain_mm.is_empty() {
        let mut steps = vec![(span.x(span.first()), scale.y(0.0))];
        let ends = rain_mm.iter().skip(1).map(|(day, _)| span.x(*day)).chain([RIGHT]);
        for ((day, mm), end) in rain_mm.iter().zip(ends) {
            steps.push((span.x(*day), scale.y(*mm)));
            steps.push((end, scale.y(*mm)));
        }
        steps.push((RIGHT, scale.y(0.0)));
        sheet.canvas.area("step rain", &steps);
    }
    axis::frame(year, span, &scale, (&whole, Some(&|mm| tenth(mm / MM_IN_INCH))), sheet);
    let et0: Vec<_> = et0_mm.iter().map(|(day, mm)| (span.middle(*day), scale.y(*mm))).collect();
    sheet.canvas.path("under", &et0);
    sheet.canvas.path("line drawn", &et0);
    let single: Vec<(Day, f64)> = weather.seven_days_mm.iter().map(|(day, mm)| (*day, *mm)).collect();
    let (seen, ahead): (Vec<_>, Vec<_>) = single.into_iter().partition(|(day, _)| *day < year.day);
    for (class, days) in [("told", seen), ("ahead", ahead)] {
        for run in days.chunk_by(|one, next| next.0 - one.0 == 1) {
            let points: Vec<_> = run
                .iter()
                .flat_map(|(day, mm)| [(span.x(*day), scale.y(*mm)), (span.x(*day) + span.day_width(), scale.y(*mm))])
                .collect();
            sheet.canvas.path(class, &points);
        }
    }
    let below = sheet.y;
    axis::today(year, span, &scale, sheet);
    sheet.y = below;
    names::draw(year, span, Kin::Rain, &scale, told, sheet);
}

/// The usual rain of each week of the year, by its first day, mm; the day or two after the last whole week count as a week
/// of such days. Empty where rain is not known.
pub(super) fn weeks_of_rain(year: &Year<'_>, span: Span) -> Vec<(Day, f64)> {
    let days: Option<Vec<(Day, f64)>> =
        span.days().map(|day| Some((day, year.climate.season.curve(Series::Rain, day.climate_day())?))).collect();
    let days = days.unwrap_or_default();
    let week = |days: &[(Day, f64)]| {
        let sum_mm: f64 = days.iter().map(|(_, mm)| mm).sum();
        let count = days.iter().fold(0.0, |count, _| count + 1.0);
        days.first().map(|(first, _)| (*first, sum_mm / count * WEEK))
    };
    days.chunks(7).filter_map(week).collect()
}
