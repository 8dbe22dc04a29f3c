//! The colours of the coverage, light and dark, and what is told by a pattern.

/// Hatch and cross, in the colour of the marks.
pub(super) const PATTERNS: &str = r#"<defs>
<pattern id="hatch" width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><rect class="bare" width="5" height="5"/><rect class="stroke" width="1.2" height="5"/></pattern>
<pattern id="cross" width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><rect class="bare" width="5" height="5"/><rect class="stroke" width="1.2" height="5"/><rect class="stroke" width="5" height="1.2"/></pattern>
</defs>
"#;

/// Ground, ink, faint ink, bare cell, stroke of a pattern, mark of a scenario, mark of doubt; then five tones, each with the
/// ink of its number and its frame.
struct Tones {
    named: [(&'static str, &'static str); 7],
    levels: [(&'static str, &'static str); 5],
}

const LIGHT: Tones = Tones {
    named: [
        ("ground", "#fdfcf8"),
        ("ink", "#22261f"),
        ("faint", "#545a4e"),
        ("bare", "#f4f0e6"),
        ("stroke", "#b3a68c"),
        ("asks", "#8a2b57"),
        ("doubt", "#a33d12"),
    ],
    levels: [
        ("#e3ecd9", "#22261f"),
        ("#bcd6ab", "#22261f"),
        ("#8cb981", "#182013"),
        ("#3f7a4a", "#ffffff"),
        ("#1c4a30", "#ffffff"),
    ],
};

const DARK: Tones = Tones {
    named: [
        ("ground", "#171a16"),
        ("ink", "#ecebe2"),
        ("faint", "#b7b9ab"),
        ("bare", "#22251f"),
        ("stroke", "#6d6653"),
        ("asks", "#ff9cc7"),
        ("doubt", "#ff9a66"),
    ],
    levels: [
        ("#26352a", "#ecebe2"),
        ("#2f4c37", "#ecebe2"),
        ("#3b6a48", "#ffffff"),
        ("#74b182", "#0f1a12"),
        ("#b9e3bd", "#0f1a12"),
    ],
};

/// The style, which follows the reader's screen.
pub(super) fn style() -> String {
    format!(
        "<style>\ntext {{ font-family: system-ui, sans-serif; font-size: 12px; }}\n.heading {{ font-size: 18px; font-weight: 600; }}\n\
         .plant {{ font-size: 14px; font-weight: 600; }}\n.place {{ text-anchor: end; }}\n.week {{ font-size: 10px; text-anchor: middle; }}\n\
         .n1, .n2, .n3, .n4, .n5 {{ font-size: 9px; text-anchor: middle; }}\n.untold {{ fill: none; stroke-opacity: 0.6; }}\n.due {{ fill: url(#hatch); }}\n.silent {{ fill: url(#cross); }}\n\
         {}@media (prefers-color-scheme: dark) {{\n{}}}\n</style>\n",
        rules(&LIGHT),
        rules(&DARK)
    )
}

fn rules(tones: &Tones) -> String {
    let mut out = String::new();
    for (name, colour) in tones.named {
        let selector = match name {
            "ink" => ".heading, .plant, .place".to_owned(),
            "faint" => ".small, .week".to_owned(),
            other => format!(".{other}"),
        };
        if name == "ground" {
            // A dot is seen on every tone, with a line of the ground around it.
            out.push_str(&format!(".asks {{ stroke: {colour}; stroke-width: 0.8px; }}\n"));
        }
        out.push_str(&format!("{selector} {{ fill: {colour}; }}\n"));
    }
    for (level, (tone, ink)) in (1..).zip(tones.levels) {
        out.push_str(&format!(
            ".l{level} {{ fill: {tone}; }}\n.n{level} {{ fill: {ink}; }}\n.f{level} {{ stroke: {ink}; }}\n"
        ));
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    /// WCAG 2.2, relative luminance.
    fn luminance(colour: &str) -> f64 {
        let channel = |at: usize| {
            let value = f64::from(u8::from_str_radix(&colour[at..at + 2], 16).expect("hexadecimal")) / 255.0;
            if value <= 0.040_45 { value / 12.92 } else { ((value + 0.055) / 1.055).powf(2.4) }
        };
        0.2126 * channel(1) + 0.7152 * channel(3) + 0.0722 * channel(5)
    }

    fn contrast(one: &str, other: &str) -> f64 {
        let (a, b) = (luminance(one), luminance(other));
        (a.max(b) + 0.05) / (a.min(b) + 0.05)
    }

    #[test]
    fn every_number_and_word_stands_out_from_its_ground() {
        // WCAG 2.2, success criterion 1.4.3: 4.5 to 1 for text; 1.4.11: 3 to 1 for marks.
        for tones in [LIGHT, DARK] {
            let of = |wanted: &str| tones.named.iter().find(|(name, _)| *name == wanted).expect("it is there").1;
            for (tone, ink) in tones.levels {
                assert!(contrast(tone, ink) >= 4.5, "{ink} on {tone}");
            }
            for ink in ["ink", "faint"] {
                assert!(contrast(of(ink), of("ground")) >= 4.5, "{ink}");
            }
            for mark in ["asks", "doubt"] {
                assert!(contrast(of(mark), of("ground")) >= 3.0, "{mark}");
            }
            // Each tone is darker (or, in the dark, lighter) than the one before.
            let rising: Vec<f64> = tones.levels.iter().map(|(tone, _)| contrast(tone, of("ground"))).collect();
            assert!(rising.is_sorted(), "{rising:?}");
        }
    }
}
