//! The lines of a text of daily rows, bounded, with what is wrong with them.

use std::fmt;

use crate::profile::DailyWeather;

/// Lines that are read at most: 200 years and the header.
const MOST_LINES: usize = 73_051;
/// Bytes of a line that are read at most.
const MOST_BYTES: usize = 1_000;
/// Faults that are named at once.
pub(super) const MOST_FAULTS: usize = 20;

/// One thing that is wrong with the text.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub struct CsvFault {
    /// Line, from 1 (the header).
    pub line: usize,
    /// Column by its name; none where the whole line is wrong.
    pub column: Option<String>,
    /// What is wrong.
    pub words: String,
}

impl fmt::Display for CsvFault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match &self.column {
            Some(column) => write!(f, "line {}, column `{column}`: {}", self.line, self.words),
            None => write!(f, "line {}: {}", self.line, self.words),
        }
    }
}

/// The header, cut to what a line may have, and the rest of the text.
pub(super) fn header(text: &str) -> (&str, &str) {
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    let (header, rest) = text.split_once('\n').unwrap_or((text, ""));
    let header = header.trim_end_matches('\r');
    let end = (0..=MOST_BYTES.min(header.len())).rev().find(|end| header.is_char_boundary(*end));
    (header.get(..end.unwrap_or(0)).unwrap_or_default(), rest)
}

/// The rows below the header, one a line; empty lines are passed over. `row` reads a line by its number.
///
/// # Errors
/// The first 20 faults: those of `row`, too long a line, too many lines.
pub(super) fn rows(
    rest: &str,
    mut row: impl FnMut(usize, &str) -> Result<DailyWeather, Vec<CsvFault>>,
) -> Result<Vec<DailyWeather>, Vec<CsvFault>> {
    let mut faults = Vec::new();
    let mut rows = Vec::new();
    for (line, content) in (2..).zip(rest.lines()) {
        if faults.len() >= MOST_FAULTS {
            break;
        }
        if line > MOST_LINES {
            faults.push(whole(line, format!("more than {MOST_LINES} lines")));
            break;
        }
        if content.trim().is_empty() {
            continue;
        }
        if content.len() > MOST_BYTES {
            faults.push(whole(line, format!("longer than {MOST_BYTES} bytes")));
            continue;
        }
        match row(line, content) {
            Ok(weather) => rows.push(weather),
            Err(found) => faults.extend(found),
        }
    }
    faults.truncate(MOST_FAULTS);
    if faults.is_empty() { Ok(rows) } else { Err(faults) }
}

/// A fault of a whole line.
pub(super) fn whole(line: usize, words: String) -> CsvFault {
    CsvFault { line, column: None, words }
}

/// The user's own text, cut to what fits in a message.
pub(super) fn quoted(text: &str) -> String {
    let mut quoted: String =
        text.chars().take(40).map(|c| if c.is_control() { char::REPLACEMENT_CHARACTER } else { c }).collect();
    if text.chars().nth(40).is_some() {
        quoted.push('…');
    }
    format!("`{quoted}`")
}
