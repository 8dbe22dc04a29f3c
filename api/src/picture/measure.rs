//! How wide a text is. A picture is drawn without knowing the reader's font, so the widths are those of a wide one (the
//! advance widths of DejaVu Sans, read from its file): in most fonts a text takes less.

/// Widths of the signs from the space to `~`, thousandths of the size.
const ASCII: [u16; 95] = [
    318, 401, 460, 838, 636, 950, 780, 275, 390, 390, 500, 838, 318, 361, 318, 337, 636, 636, 636, 636, 636, 636, 636,
    636, 636, 636, 337, 337, 838, 838, 838, 531, 1000, 684, 686, 698, 770, 632, 575, 775, 752, 295, 295, 656, 557, 863,
    748, 787, 603, 787, 695, 635, 611, 732, 684, 989, 685, 611, 685, 390, 337, 390, 838, 500, 500, 613, 635, 550, 635,
    615, 352, 635, 634, 278, 278, 579, 278, 974, 634, 612, 635, 635, 411, 521, 392, 634, 592, 818, 592, 592, 525, 636,
    337, 636, 838,
];

/// Width of a text of this size, in its unit.
#[must_use]
pub fn width(text: &str, size: f64) -> f64 {
    text.chars().map(|sign| f64::from(thousandths(sign))).sum::<f64>() / 1000.0 * size
}

/// A space at which no line breaks.
pub const NO_BREAK: char = '\u{a0}';

fn thousandths(sign: char) -> u16 {
    let plain = match sign {
        'á' => 'a',
        'é' => 'e',
        'í' => 'i',
        'ó' => 'o',
        'ú' | 'ü' | 'ñ' => 'u',
        '°' | '–' => return 500,
        '·' | NO_BREAK => return 318,
        other => other,
    };
    let place = u32::from(plain).checked_sub(32).and_then(|place| usize::try_from(place).ok());
    // What is not listed counts as wide as the widest.
    place.and_then(|place| ASCII.get(place)).copied().unwrap_or(1000)
}

/// A text in lines no wider than `most`: broken between words, and within a word that is wider than a line.
#[must_use]
pub fn lines(text: &str, size: f64, most: f64) -> Vec<String> {
    let mut lines = Vec::new();
    let mut line = String::new();
    for word in text.split(' ').filter(|word| !word.is_empty()) {
        let longer = if line.is_empty() { word.to_owned() } else { format!("{line} {word}") };
        if width(&longer, size) <= most {
            line = longer;
            continue;
        }
        if !line.is_empty() {
            lines.push(std::mem::take(&mut line));
        }
        for sign in word.chars() {
            line.push(sign);
            if width(&line, size) > most && line.chars().count() > 1 {
                line.pop();
                lines.push(std::mem::take(&mut line));
                line.push(sign);
            }
        }
    }
    if !line.is_empty() {
        lines.push(line);
    }
    lines
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn a_text_is_as_wide_as_its_signs() {
        // Three digits at 0.636 of the size.
        assert!((width("123", 10.0) - 19.08).abs() < 1e-9);
        assert!((width("á", 10.0) - width("a", 10.0)).abs() < 1e-9);
        assert!(width("", 10.0).abs() < 1e-9);
    }

    proptest! {
        #[test]
        fn lines_fit_and_lose_nothing(text in "[a-zñ° ]{0,200}") {
            let broken = lines(&text, 10.0, 60.0);
            for line in &broken {
                prop_assert!(width(line, 10.0) <= 60.0, "{line}");
            }
            let signs = |text: &str| text.chars().filter(|sign| !sign.is_whitespace()).collect::<String>();
            prop_assert_eq!(signs(&broken.concat()), signs(&text));
        }
    }
}
