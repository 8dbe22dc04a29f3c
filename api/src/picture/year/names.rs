//! The markers below a panel: a line down from the day, a dot, the name beside it. Those without a day are said in words.

use super::Year;
use super::scale::Scale;
use super::sheet::{LINE, MARGIN, Sheet};
use super::span::{LEFT, RIGHT, Span};
use super::told::{Kin, Told};
use super::words::{short_date, short_name};
use crate::picture::canvas::{Anchor, WIDTH};
use crate::picture::label::{self, DOT, Side, Wanted};
use crate::picture::measure;
use crate::picture::palette::TEXT_SIZE;

/// Names the markers of a kin below their panel.
pub(super) fn draw(year: &Year<'_>, span: Span, kin: Kin, scale: &Scale, told: &Told, sheet: &mut Sheet) {
    let markers: Vec<_> = told.dated.iter().filter(|marker| Kin::of(marker.marker) == kin).collect();
    let texts: Vec<String> = markers
        .iter()
        .map(|marker| format!("{} {}", short_name(marker.marker, year.language), short_date(marker.day, year.language)))
        .collect();
    let wanted: Vec<Wanted> = markers
        .iter()
        .zip(&texts)
        .map(|(marker, text)| {
            let at = span.middle(marker.day);
            // The likely error is drawn to both sides; at the edges of the year only as far as the plot goes.
            let error = marker.likely_error_days.unwrap_or(0.0) * span.day_width();
            let reach = (error - DOT).clamp(0.0, (at - LEFT).min(RIGHT - at).max(0.0));
            Wanted { at, reach, width: measure::width(text, TEXT_SIZE) }
        })
        .collect();
    let places = label::place(&wanted, MARGIN, WIDTH - MARGIN);
    let top = sheet.y;
    let middle_of = |row: usize| top + f64::from(u32::try_from(row).unwrap_or(u32::MAX)) * LINE + LINE / 2.0;
    for (name, place) in wanted.iter().zip(&places) {
        sheet.canvas.line("lead", (name.at, scale.top), (name.at, middle_of(place.row)));
    }
    for (((marker, text), name), place) in markers.iter().zip(&texts).zip(&wanted).zip(&places) {
        let hue = Kin::hue(marker.marker);
        let middle = middle_of(place.row);
        let y = if place.side == Side::Under { middle - LINE / 2.0 } else { middle };
        if name.reach > 0.0 {
            let reach = name.reach + DOT;
            sheet.canvas.line(&format!("reach {hue}"), (name.at - reach, y), (name.at + reach, y));
        }
        sheet.canvas.text("named", Anchor::Start, (place.left, middle + 4.0), text);
        sheet.canvas.dot(hue, (name.at, y), DOT);
    }
    let rows = places.iter().map(|place| place.row + 1).max().unwrap_or(0);
    sheet.y = top + f64::from(u32::try_from(rows).unwrap_or(u32::MAX)) * LINE;
    for sentence in told.absent_in_brief(kin, year.language) {
        sheet.say("soft", &sentence);
    }
    sheet.gap(4.0);
}
