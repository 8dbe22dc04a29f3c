//! Days along the bottom of a panel: a tick for each of the 52 weeks, plain dates at some, today across all.

use lammas_agronomy::calendar::ClimateDay;

use super::Year;
use super::scale::Scale;
use super::sheet::{LINE, Sheet};
use super::span::{LEFT, RIGHT, Span};
use super::words::{pick, short_date};
use crate::picture::canvas::{Anchor, WIDTH};
use crate::picture::measure;
use crate::picture::palette::TEXT_SIZE;

/// Where dates stand: every two months or so there is room for one.
const DATED: [u32; 6] = [1, 3, 5, 7, 9, 11];
/// Weeks of a year.
const WEEKS: i32 = 52;

/// How a value is written at a side of a panel.
type Numbers<'a> = &'a dyn Fn(f64) -> String;

/// The place of a panel of this height, below a line for the word "today".
pub(super) fn panel(sheet: &mut Sheet, height: f64) -> (f64, f64) {
    let top = sheet.y + LINE;
    (top, top + height)
}

/// The frame of a panel: steps of the scale with their numbers on both sides, weeks and dates below. What is below starts
/// at the sheet's new edge.
pub(super) fn frame(
    year: &Year<'_>,
    span: Span,
    scale: &Scale,
    sides: (Numbers<'_>, Option<Numbers<'_>>),
    sheet: &mut Sheet,
) {
    let canvas = &mut sheet.canvas;
    for value in scale.steps() {
        let y = scale.y(value);
        canvas.line("lead", (LEFT, y), (RIGHT, y));
        canvas.text("soft", Anchor::End, (LEFT - 3.0, y + 4.0), &sides.0(value));
        if let Some(right) = sides.1 {
            canvas.text("soft", Anchor::Start, (RIGHT + 3.0, y + 4.0), &right(value));
        }
    }
    let bottom = scale.bottom;
    canvas.line("axis", (LEFT, bottom), (RIGHT, bottom));
    for week in 0..=WEEKS {
        let x = span.x(span.first() + 7 * week);
        canvas.line("axis", (x, bottom), (x, bottom + 3.0));
    }
    for month in DATED {
        let Some(first) = ClimateDay::from_month_day(month, 1) else { continue };
        let day = span.on(first);
        let x = span.x(day);
        canvas.line("axis", (x, bottom), (x, bottom + 5.5));
        let text = short_date(day, year.language);
        let half = measure::width(&text, TEXT_SIZE) / 2.0;
        let middle = x.clamp(LEFT + half - 8.0, RIGHT - half + 8.0);
        canvas.text("soft named", Anchor::Middle, (middle, bottom + 16.5), &text);
    }
    sheet.y = bottom + 19.0;
}

/// Today: a line across a panel with its name above.
pub(super) fn today(year: &Year<'_>, span: Span, scale: &Scale, sheet: &mut Sheet) {
    let x = span.middle(year.day);
    sheet.canvas.line("today", (x, scale.top - 2.0), (x, scale.bottom));
    let name = if year.is_today { pick(year.language, "today,", "hoy,") } else { pick(year.language, "on", "el") };
    let text = format!("{name} {}", short_date(year.day, year.language));
    let half = measure::width(&text, TEXT_SIZE) / 2.0;
    let middle = x.clamp(LEFT + half, WIDTH - LEFT - half);
    sheet.canvas.text("named", Anchor::Middle, (middle, scale.top - 5.0), &text);
}
