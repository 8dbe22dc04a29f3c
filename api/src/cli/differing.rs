//! How a climate differs from another, for people.

use super::wrapped::lines;
use crate::v1::climate_differences::{ClimateDiffering, MarkerMoved};
use crate::v1::question::choices::Language;

/// What was taken, and a line for each marker that moved.
pub(super) fn shown(differing: &ClimateDiffering, language: Language) -> String {
    let pick = |en: &'static str, es: &'static str| if language == Language::Es { es } else { en };
    let mut out = brief(differing, language);
    if differing.markers.is_empty() {
        out += &lines("  ", pick("no marker moves by that", "con eso no se mueve ningún hito"));
        return out;
    }
    let width = differing.markers.iter().map(|marker| marker.words.chars().count()).max().unwrap_or_default();
    for MarkerMoved { words, from, to, text, .. } in &differing.markers {
        let day = |day: &Option<_>| day.as_ref().map_or_else(|| "  -  ".to_owned(), ToString::to_string);
        out += &format!("  {words:width$}  {} → {}  {text}\n", day(from), day(to));
    }
    out
}

/// What was taken, in a sentence.
pub(super) fn brief(differing: &ClimateDiffering, language: Language) -> String {
    let label = if language == Language::Es { "DIFERENCIAS: " } else { "DIFFERENCES: " };
    let taken: Vec<&str> = differing.taken.iter().map(|taken| taken.text.as_str()).collect();
    let none = if language == Language::Es { "ninguna" } else { "none" };
    lines(label, &if taken.is_empty() { none.to_owned() } else { taken.join("; ") })
}
