//! The marks of a picture, written as SVG. A picture is so many units wide and as high as it gets; everything is drawn in
//! these units, and the reader's browser scales it.

use super::palette;

/// Units across. At 320 px a unit is 0.8 px.
pub const WIDTH: f64 = 400.0;
/// Pixels across where nobody says how wide.
const NATURAL_PX: f64 = 480.0;

/// Where a text hangs on its point.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Anchor {
    /// It begins there.
    Start,
    /// Its middle is there.
    Middle,
    /// It ends there.
    End,
}

/// A picture in the making. `class` names what the style knows.
#[derive(Debug, Default)]
pub struct Canvas {
    marks: String,
}

impl Canvas {
    /// A straight line.
    pub fn line(&mut self, class: &str, from: (f64, f64), to: (f64, f64)) {
        let [x1, y1, x2, y2] = [from.0, from.1, to.0, to.1].map(number);
        self.marks.push_str(&format!("<line class=\"{class}\" x1=\"{x1}\" y1=\"{y1}\" x2=\"{x2}\" y2=\"{y2}\"/>"));
    }

    /// A rectangle from its upper left corner.
    pub fn rect(&mut self, class: &str, corner: (f64, f64), width: f64, height: f64) {
        let [x, y, width, height] = [corner.0, corner.1, width, height].map(number);
        self.marks
            .push_str(&format!("<rect class=\"{class}\" x=\"{x}\" y=\"{y}\" width=\"{width}\" height=\"{height}\"/>"));
    }

    /// A dot.
    pub fn dot(&mut self, class: &str, at: (f64, f64), radius: f64) {
        let [x, y, radius] = [at.0, at.1, radius].map(number);
        self.marks.push_str(&format!("<circle class=\"dot {class}\" cx=\"{x}\" cy=\"{y}\" r=\"{radius}\"/>"));
    }

    /// Straight lines from point to point.
    pub fn path(&mut self, class: &str, points: &[(f64, f64)]) {
        self.drawn(class, points, "");
    }

    /// An area with straight edges.
    pub fn area(&mut self, class: &str, points: &[(f64, f64)]) {
        self.drawn(class, points, "z");
    }

    fn drawn(&mut self, class: &str, points: &[(f64, f64)], end: &str) {
        if points.is_empty() {
            return;
        }
        let mut way = String::new();
        for (place, (x, y)) in points.iter().enumerate() {
            way.push_str(&format!("{}{} {}", if place == 0 { "M" } else { "L" }, number(*x), number(*y)));
        }
        self.marks.push_str(&format!("<path class=\"{class}\" d=\"{way}{end}\"/>"));
    }

    /// A text, by the left, middle or right end of its base line; plain text has no class.
    pub fn text(&mut self, class: &str, anchor: Anchor, at: (f64, f64), text: &str) {
        let hangs = match anchor {
            Anchor::Start => "",
            Anchor::Middle => " text-anchor=\"middle\"",
            Anchor::End => " text-anchor=\"end\"",
        };
        let [x, y] = [at.0, at.1].map(number);
        let text = escaped(text);
        let class = if class.is_empty() { String::new() } else { format!(" class=\"{class}\"") };
        self.marks.push_str(&format!("<text{class} x=\"{x}\" y=\"{y}\"{hangs}>{text}</text>"));
    }

    /// The whole picture, so many units high, with what it is called and the text that says the same.
    #[must_use]
    pub fn finished(self, height: f64, language: &str, title: &str, description: &str) -> String {
        let (width, high) = (number(WIDTH), number(height));
        let [wide_px, high_px] = [NATURAL_PX, height * NATURAL_PX / WIDTH].map(number);
        format!(
            "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {width} {high}\" width=\"{wide_px}\" height=\"{high_px}\" \
             class=\"picture\" role=\"img\" lang=\"{language}\" aria-labelledby=\"lammas-title lammas-desc\">\
             <title id=\"lammas-title\">{}</title><desc id=\"lammas-desc\">{}</desc><style>{}</style>\
             <rect class=\"paper\" width=\"{width}\" height=\"{high}\"/>{}</svg>\n",
            escaped(title),
            escaped(description),
            palette::style(),
            self.marks
        )
    }
}

/// To a tenth of a unit, without needless digits.
fn number(value: f64) -> String {
    let tenths = (value * 10.0).round() / 10.0;
    (tenths + 0.0).to_string()
}

/// Text as it stands in XML: markup is taken apart, and what XML 1.0 has no sign for (section 2.2) is left out.
fn escaped(text: &str) -> String {
    let mut safe = String::with_capacity(text.len());
    for sign in text.chars() {
        match sign {
            '&' => safe.push_str("&amp;"),
            '<' => safe.push_str("&lt;"),
            '>' => safe.push_str("&gt;"),
            '"' => safe.push_str("&quot;"),
            '\t' | '\n' | '\r' => safe.push(' '),
            '\u{0}'..='\u{1f}' | '\u{fffe}' | '\u{ffff}' => {}
            other => safe.push(other),
        }
    }
    safe
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn text_is_never_markup() {
        let mut canvas = Canvas::default();
        canvas.text("x", Anchor::Start, (1.0, 2.0), "<script>\"&\u{1}\n");
        let picture = canvas.finished(10.0, "en", "</title><b>", "a & b");
        let read = roxmltree::Document::parse(&picture).expect("XML");
        let text = |name: &str| read.descendants().find(|node| node.has_tag_name(("http://www.w3.org/2000/svg", name)));
        assert_eq!(text("text").and_then(|node| node.text()), Some("<script>\"& "));
        assert_eq!(text("title").and_then(|node| node.text()), Some("</title><b>"));
        assert!(text("script").is_none() && text("b").is_none());
    }

    #[test]
    fn numbers_are_short() {
        for (value, text) in [(1.0, "1"), (-0.01, "0"), (2.26, "2.3"), (-3.5, "-3.5")] {
            assert_eq!(number(value), text);
        }
    }
}
