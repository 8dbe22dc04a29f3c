//! Files, or the standard input as `-`.

use std::fs::File;
use std::io::{self, Read};

use super::exit::BadInput;

/// No file of checks, rules or records is larger.
const MOST_BYTES: u64 = 64 * 1024 * 1024;

/// The text of the file at `path`, or of the standard input for `-`.
///
/// # Errors
/// [`BadInput`], naming the path: it can't be read, is larger than 64 MB, or is not UTF-8.
pub fn text(path: &str) -> Result<String, BadInput> {
    let bad = |reason: &dyn std::fmt::Display| BadInput(format!("cannot read `{path}`: {reason}"));
    let mut source: Box<dyn Read> =
        if path == "-" { Box::new(io::stdin().lock()) } else { Box::new(File::open(path).map_err(|e| bad(&e))?) };
    let mut text = String::new();
    source.by_ref().take(MOST_BYTES + 1).read_to_string(&mut text).map_err(|e| bad(&e))?;
    if text.len() as u64 > MOST_BYTES {
        return Err(bad(&format_args!("expected at most {MOST_BYTES} bytes")));
    }
    Ok(text)
}
