//! A fault with the line that it points at.

use std::fmt::Write as _;

use lammas_engine::fault::{Fault, Place, Weight};
use lammas_engine::read::PackFile;

/// The longest piece of a line that is shown, in characters.
const WIDEST: usize = 140;

/// A fault for people: place, code and message; the line with the place underlined; the cure; other places.
#[must_use]
pub fn shown(fault: &Fault, files: &[PackFile]) -> String {
    let weight = match fault.weight {
        Weight::Error => "error",
        Weight::Warning => "warning",
    };
    let mut out = format!("{}: {weight}[{}]: {}\n", fault.place, fault.code, fault.message);
    out.push_str(&underlined(&fault.place, files));
    if let Some(help) = &fault.help {
        let _ = writeln!(out, "  help: {help}");
    }
    for (place, remark) in &fault.related {
        let _ = writeln!(out, "  see {place}: {remark}");
    }
    if let Some(witness) = &fault.witness {
        let _ = writeln!(out, "  shown by a question: {}", witness.shows);
    }
    if let Some(proof) = &fault.certificate {
        let (climates, days, cells) = (proof.climates, proof.days, proof.cells);
        let _ = writeln!(out, "  certified: {}, in {climates} climates, {days} days, {cells} cells", proof.claim);
    }
    out
}

/// The line of a place with a mark under what is meant; nothing when the place is a whole file.
fn underlined(place: &Place, files: &[PackFile]) -> String {
    let line = files
        .iter()
        .find(|file| file.path == place.file)
        .and_then(|file| file.text.lines().nth(usize::try_from(place.line.checked_sub(1)?).ok()?));
    let Some(line) = line else { return String::new() };
    let column = usize::try_from(place.column).unwrap_or(0);
    // A long line is cut so that the mark is in sight.
    let skipped = column.saturating_sub(WIDEST / 2);
    let piece: String = line.chars().skip(skipped).take(WIDEST).map(|c| if c.is_control() { ' ' } else { c }).collect();
    let number = place.line.to_string();
    let margin = " ".repeat(number.len());
    let mut out = format!("  {margin} |\n  {number} | {}\n", piece.trim_end());
    if column > 0 {
        let before = column - 1 - skipped;
        let room = piece.trim_end().chars().count().saturating_sub(before).max(1);
        let width = usize::try_from(place.width).unwrap_or(1).clamp(1, room);
        let _ = writeln!(out, "  {margin} | {}{}", " ".repeat(before), "^".repeat(width));
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_place_is_underlined_and_the_cure_follows() {
        let files = [PackFile {
            path: "rules/rose.yaml".to_owned(),
            text: "- id: rose.cut\n  when: \"soil.pg > 7\"\n".to_owned(),
        }];
        let place = Place { file: "rules/rose.yaml".to_owned(), line: 2, column: 10, width: 7 };
        let fault = Fault::error("unknown-fact", place, "unknown fact `soil.pg`").help("did you mean `soil.ph`?");
        assert_eq!(
            shown(&fault, &files),
            "rules/rose.yaml:2:10: error[unknown-fact]: unknown fact `soil.pg`\n    |\n  2 |   when: \"soil.pg > 7\"\n    |          ^^^^^^^\n  \
             help: did you mean `soil.ph`?\n"
        );
    }

    #[test]
    fn a_fault_of_a_whole_file_has_no_excerpt() {
        let place = Place { file: "pack.yaml".to_owned(), ..Place::default() };
        assert_eq!(
            shown(&Fault::warning("unused-entry", place, "nothing here"), &[]),
            "pack.yaml: warning[unused-entry]: nothing here\n"
        );
    }
}
