//! The panel of temperatures: usual days as a band, observed days as bars, forecast days as a hollow band.

use lammas_agronomy::calendar::Day;
use lammas_agronomy::curve::Series;

use super::scale::Scale;
use super::sheet::{KeyEntry, Sheet};
use super::span::Span;
use super::told::{Kin, Told};
use super::weather::{Weather, range_c};
use super::words::{fahrenheit, pick, whole};
use super::{Year, axis, names};
use crate::picture::canvas::Canvas;
use crate::picture::label::DOT;

/// Height of the panel, units.
const HEIGHT: f64 = 124.0;
/// A bar is at least so high.
const LEAST: f64 = 1.6;

pub(super) fn draw(year: &Year<'_>, span: Span, weather: &Weather, told: &Told, sheet: &mut Sheet) {
    let say = |en, es| pick(year.language, en, es);
    sheet.gap(8.0);
    sheet.say("", &told.temperature);
    let mut key: Vec<KeyEntry<'_>> = vec![
        (
            Some(|canvas, (x, y)| canvas.path("line warm", &[(x - 7.0, y), (x + 7.0, y)])),
            say("usual maximum", "máxima habitual"),
        ),
        (
            Some(|canvas, (x, y)| canvas.path("line cold", &[(x - 7.0, y), (x + 7.0, y)])),
            say("usual minimum", "mínima habitual"),
        ),
    ];
    if !weather.observed.is_empty() {
        key.push((Some(bars), say("observed", "observado")));
    }
    if !weather.foretold.is_empty() {
        key.push((Some(|canvas, (x, y)| canvas.area("told", &box_around(x, y))), say("forecast", "previsto")));
    }
    if told.dated.iter().any(|dated| dated.likely_error_days.is_some()) {
        key.push((Some(likely_error), say("likely error", "error probable")));
    }
    key.push((None, say("left °C, right °F", "izq. °C, der. °F")));
    sheet.key(&key);

    let curve = |series: Series, day: Day| year.climate.season.curve(series, day.climate_day()).unwrap_or(0.0);
    let (top, bottom) = axis::panel(sheet, HEIGHT);
    let mut extent_c = (f64::INFINITY, f64::NEG_INFINITY);
    let usual = span.days().map(|day| (curve(Series::Tmin, day), curve(Series::Tmax, day)));
    for (low, high) in usual.chain(weather.observed.iter().chain(&weather.foretold).filter_map(range_c)) {
        extent_c = (extent_c.0.min(low), extent_c.1.max(high));
    }
    let scale = Scale::holding(extent_c.0, extent_c.1, top, bottom);

    let along = |series: Series| -> Vec<(f64, f64)> {
        span.sampled().map(|day| (span.middle(day), scale.y(curve(series, day)))).collect()
    };
    let (maximum, minimum) = (along(Series::Tmax), along(Series::Tmin));
    let band: Vec<_> = maximum.iter().chain(minimum.iter().rev()).copied().collect();
    sheet.canvas.area("band", &band);
    axis::frame(year, span, &scale, (&whole, Some(&fahrenheit)), sheet);
    sheet.canvas.path("line warm", &maximum);
    sheet.canvas.path("line cold", &minimum);
    for day in &weather.observed {
        let Some((low, high)) = range_c(day) else { continue };
        let (upper, lower) = (scale.y(high), scale.y(low));
        let middle = (upper + lower) / 2.0;
        let half = ((lower - upper) / 2.0).max(LEAST / 2.0);
        let x = span.middle(day.day);
        sheet.canvas.line("seen", (x, middle - half), (x, middle + half));
    }
    foretold(span, weather, &scale, sheet);
    let below = sheet.y;
    axis::today(year, span, &scale, sheet);
    sheet.y = below;
    names::draw(year, span, Kin::Temperature, &scale, told, sheet);
}

/// Forecast days as one hollow outline a run of days.
fn foretold(span: Span, weather: &Weather, scale: &Scale, sheet: &mut Sheet) {
    let days: Vec<_> = weather.foretold.iter().filter_map(|weather| Some((weather.day, range_c(weather)?))).collect();
    for run in days.chunk_by(|one, next| next.0 - one.0 == 1) {
        let step =
            |day: Day, value: f64| [(span.x(day), scale.y(value)), (span.x(day) + span.day_width(), scale.y(value))];
        let mut outline: Vec<(f64, f64)> = run.iter().flat_map(|(day, (_, high))| step(*day, *high)).collect();
        outline.extend(run.iter().rev().flat_map(|(day, (low, _))| {
            let [from, to] = step(*day, *low);
            [to, from]
        }));
        sheet.canvas.area("told", &outline);
    }
}

fn bars(canvas: &mut Canvas, (x, y): (f64, f64)) {
    for place in [-4.0, -2.0, 0.0, 2.0, 4.0] {
        canvas.line("seen", (x + place, y - 4.0), (x + place, y + 4.0));
    }
}

fn likely_error(canvas: &mut Canvas, (x, y): (f64, f64)) {
    canvas.line("reach cold", (x - 7.0, y), (x + 7.0, y));
    canvas.dot("cold", (x, y), DOT);
}

fn box_around(x: f64, y: f64) -> [(f64, f64); 4] {
    [(x - 6.0, y - 4.0), (x + 6.0, y - 4.0), (x + 6.0, y + 4.0), (x - 6.0, y + 4.0)]
}
