//! How far down the page is filled.

use crate::picture::canvas::{Anchor, Canvas, WIDTH};
use crate::picture::measure;
use crate::picture::palette::{HEADING_SIZE, TEXT_SIZE};

/// Free space at the sides of text, units.
pub(super) const MARGIN: f64 = 6.0;
/// From one base line to the next.
pub(super) const LINE: f64 = 14.6;

/// A mark, drawn around its middle, and what it means; without a mark, only words.
pub(super) type KeyEntry<'a> = (Option<fn(&mut Canvas, (f64, f64))>, &'a str);

/// A picture that grows downwards.
#[derive(Debug)]
pub(super) struct Sheet {
    pub(super) canvas: Canvas,
    /// The lower edge of what is there.
    pub(super) y: f64,
}

impl Sheet {
    pub(super) fn new() -> Self {
        Self { canvas: Canvas::default(), y: 4.0 }
    }

    /// Free space.
    pub(super) fn gap(&mut self, height: f64) {
        self.y += height;
    }

    /// A heading, in as many lines as it takes.
    pub(super) fn heading(&mut self, text: &str) {
        for line in measure::lines(text, HEADING_SIZE, WIDTH - 2.0 * MARGIN) {
            self.y += HEADING_SIZE + 3.0;
            self.canvas.text("heading", Anchor::Start, (MARGIN, self.y - 3.0), &line);
        }
        self.gap(3.0);
    }

    /// A text, in as many lines as it takes.
    pub(super) fn say(&mut self, class: &str, text: &str) {
        for line in measure::lines(text, TEXT_SIZE, WIDTH - 2.0 * MARGIN) {
            self.y += LINE;
            self.canvas.text(class, Anchor::Start, (MARGIN, self.y - 3.5), &line);
        }
    }

    /// What the marks of a panel mean, side by side: each a drawing, given its middle, and its words.
    pub(super) fn key(&mut self, entries: &[KeyEntry<'_>]) {
        const MARK: f64 = 18.0;
        let mut x = MARGIN;
        self.y += LINE;
        for (mark, words) in entries {
            let mark_width = if mark.is_some() { MARK } else { 0.0 };
            let width = mark_width + measure::width(words, TEXT_SIZE);
            if x > MARGIN && x + width > WIDTH - MARGIN {
                x = MARGIN;
                self.y += LINE;
            }
            if let Some(draw) = mark {
                draw(&mut self.canvas, (x + MARK / 2.0 - 2.0, self.y - 7.5));
            }
            self.canvas.text("soft", Anchor::Start, (x + mark_width, self.y - 3.5), words);
            x += width + 10.0;
        }
    }

    /// The picture, and how high it is.
    pub(super) fn finished(self) -> (Canvas, f64) {
        (self.canvas, (self.y + MARGIN).ceil())
    }
}
