//! The hues of the pictures, for light and for dark, and the style that carries them. Marks that mean different things
//! also differ in form: a filled step, a line, a hollow outline, a dot with its name.

/// A hue in both schemes, as `#rrggbb`.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Hue {
    /// On light paper.
    pub light: &'static str,
    /// On dark paper.
    pub dark: &'static str,
}

const fn hue(light: &'static str, dark: &'static str) -> Hue {
    Hue { light, dark }
}

/// What everything stands on.
pub const PAPER: Hue = hue("#fbfaf6", "#17191d");
/// Text, what was observed or is foretold, today.
pub const INK: Hue = hue("#23211d", "#eeebe4");
/// Text that stands back, axes, the lines that lead to a name.
pub const SOFT: Hue = hue("#5b574f", "#b4afa5");
/// Usual days between their minimum and their maximum.
pub const BAND: Hue = hue("#eddfd0", "#39322d");
/// Warmth: the maximum, the hot season.
pub const WARM: Hue = hue("#933f17", "#f2a880");
/// Cold: the minimum, frost.
pub const COLD: Hue = hue("#36508f", "#a3baf4");
/// Rain.
pub const RAIN: Hue = hue("#3a778b", "#3f8298");
/// Evapotranspiration.
pub const DRAWN: Hue = hue("#76397f", "#dda6e6");
/// Daylight.
pub const LIGHT: Hue = hue("#7d5f06", "#dcbc55");

/// Sizes of text, in units of a picture that is [`super::canvas::WIDTH`] wide.
pub const TEXT_SIZE: f64 = 11.6;
/// The size of a heading.
pub const HEADING_SIZE: f64 = 17.0;

/// Form: what is the same in both schemes.
const FORM: &str = ".picture{max-width:100%;height:auto}text{font-family:system-ui,sans-serif;font-size:11.6px}.heading{font-size:17px}\
    .line{fill:none;stroke-width:1.6;stroke-linejoin:round}.under{fill:none;stroke-width:4}\
    .named{paint-order:stroke;stroke-width:3px;stroke-linejoin:round}.axis{stroke-width:.8}\
    .lead{stroke-width:.7;stroke-dasharray:1 2}.today{stroke-width:1.8}.seen{stroke-width:.7}\
    .told{fill:none;stroke-width:1.1}.ahead{fill:none;stroke-width:1.1;stroke-dasharray:2 1.4}.reach{stroke-width:1.2}";

/// The style of a picture: light, and dark for those who prefer it.
#[must_use]
pub fn style() -> String {
    let light = colours(|hue| hue.light);
    let dark = colours(|hue| hue.dark);
    format!("{FORM}{light}@media (prefers-color-scheme:dark){{{dark}}}")
}

fn colours(of: fn(Hue) -> &'static str) -> String {
    let mut style = String::new();
    for (marks, property, hue) in [
        ("text", "fill", INK),
        (".soft", "fill", SOFT),
        (".named,.under", "stroke", PAPER),
        (".paper", "fill", PAPER),
        (".band", "fill", BAND),
        (".axis,.lead", "stroke", SOFT),
        (".today,.seen,.told,.ahead", "stroke", INK),
        (".line.warm,.reach.warm", "stroke", WARM),
        (".line.cold,.reach.cold", "stroke", COLD),
        (".line.rain,.reach.rain", "stroke", RAIN),
        (".line.drawn", "stroke", DRAWN),
        (".line.light,.reach.light", "stroke", LIGHT),
        (".reach.ink", "stroke", INK),
        (".dot.warm", "fill", WARM),
        (".dot.cold", "fill", COLD),
        (".dot.rain,.step.rain", "fill", RAIN),
        (".dot.light", "fill", LIGHT),
        (".dot.ink", "fill", INK),
    ] {
        style.push_str(&format!("{marks}{{{property}:{}}}", of(hue)));
    }
    style
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Relative luminance (WCAG 2.2, definition of "relative luminance").
    fn luminance(colour: &str) -> f64 {
        let channel = |at: usize| {
            let share = f64::from(u8::from_str_radix(&colour[at..at + 2], 16).expect("two digits")) / 255.0;
            if share <= 0.04045 { share / 12.92 } else { ((share + 0.055) / 1.055).powf(2.4) }
        };
        0.2126 * channel(1) + 0.7152 * channel(3) + 0.0722 * channel(5)
    }

    /// Contrast ratio (WCAG 2.2, definition of "contrast ratio").
    fn contrast(one: &str, other: &str) -> f64 {
        let (a, b) = (luminance(one), luminance(other));
        (a.max(b) + 0.05) / (a.min(b) + 0.05)
    }

    #[test]
    fn black_on_white_has_the_contrast_of_the_standard() {
        // WCAG 2.2: contrast ratios can range from 1 to 21.
        assert!((contrast("#000000", "#ffffff") - 21.0).abs() < 1e-9);
        assert!((contrast("#777777", "#777777") - 1.0).abs() < 1e-9);
        // From memory: the lightest grey that passes 4.5:1 on white.
        assert!(contrast("#767676", "#ffffff") >= 4.5 && contrast("#777777", "#ffffff") < 4.5);
    }

    #[test]
    fn text_and_lines_stand_out_in_both_schemes() {
        // WCAG 2.2, success criteria 1.4.3 (text 4.5:1) and 1.4.11 (graphics 3:1).
        for (scheme, of) in [("light", (|hue| hue.light) as fn(Hue) -> &'static str), ("dark", |hue| hue.dark)] {
            for (name, text) in [("ink", INK), ("soft", SOFT)] {
                let ratio = contrast(of(text), of(PAPER));
                assert!(ratio >= 4.5, "{scheme} {name}: {ratio}");
            }
            for (name, line) in [
                ("ink", INK),
                ("soft", SOFT),
                ("warm", WARM),
                ("cold", COLD),
                ("rain", RAIN),
                ("drawn", DRAWN),
                ("light", LIGHT),
            ] {
                let ratio = contrast(of(line), of(PAPER));
                assert!(ratio >= 3.0, "{scheme} {name}: {ratio}");
            }
            // The edges of the band, days on it, and the lines that lead through it.
            for (name, line) in [("ink", INK), ("soft", SOFT), ("warm", WARM), ("cold", COLD)] {
                let ratio = contrast(of(line), of(BAND));
                assert!(ratio >= 3.0, "{scheme} {name} on the band: {ratio}");
            }
            // Today and seven days of rain are drawn over the steps of the usual rain.
            let ratio = contrast(of(INK), of(RAIN));
            assert!(ratio >= 3.0, "{scheme} ink on rain: {ratio}");
        }
    }

    #[test]
    fn the_sizes_of_the_style_are_those_that_are_reckoned_with() {
        assert!(style().contains(&format!("font-size:{TEXT_SIZE}px")));
        assert!(style().contains(&format!("font-size:{HEADING_SIZE}px")));
    }

    #[test]
    fn the_style_loads_nothing() {
        for word in ["url(", "@import", "http", "<", "&"] {
            assert!(!style().contains(word), "{word}");
        }
    }
}
