//! The panel of daylight.

use lammas_agronomy::curve::Series;

use super::scale::Scale;
use super::sheet::Sheet;
use super::span::Span;
use super::told::{Kin, Told};
use super::words::{pick, whole};
use super::{Year, axis, names};
use crate::picture::canvas::Canvas;

/// Height of the panel, units.
const HEIGHT: f64 = 64.0;

pub(super) fn draw(year: &Year<'_>, span: Span, told: &Told, sheet: &mut Sheet) {
    sheet.gap(8.0);
    sheet.say("", &told.daylight);
    let line: fn(&mut Canvas, (f64, f64)) = |canvas, (x, y)| canvas.path("line light", &[(x - 7.0, y), (x + 7.0, y)]);
    sheet.key(&[(Some(line), pick(year.language, "hours of daylight", "horas de luz"))]);
    let (top, bottom) = axis::panel(sheet, HEIGHT);
    let scale = Scale::of(0.0, 24.0, 6.0, top, bottom);
    axis::frame(year, span, &scale, (&whole, None), sheet);
    let hours = span.sampled().filter_map(|day| {
        let hours = year.climate.season.curve(Series::Daylength, day.climate_day())?;
        Some((span.middle(day), scale.y(hours)))
    });
    sheet.canvas.path("line light", &hours.collect::<Vec<_>>());
    let below = sheet.y;
    axis::today(year, span, &scale, sheet);
    sheet.y = below;
    names::draw(year, span, Kin::Sun, &scale, told, sheet);
}
