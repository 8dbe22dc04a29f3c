//! Files, or the standard input as `-`.

use std::fs::{self, File};
use std::io::{self, Read};

use super::exit::BadInput;
use crate::problem::extractors::not_utf8;

/// No file of checks, rules or records is larger.
const MOST_BYTES: u64 = 64 * 1024 * 1024;
/// So many bytes are read at once.
const PIECE: u64 = 64 * 1024;

/// The text of the file at `path`, or of the standard input for `-`.
///
/// # Errors
/// [`BadInput`], naming the path: it can't be read, is larger than 64 MB, or is not UTF-8.
pub fn text(path: &str) -> Result<String, BadInput> {
    text_with(path, |_| {})
}

/// The same; `read` is told how many bytes have been read so far.
///
/// # Errors
/// As [`text`].
pub fn text_with(path: &str, mut read: impl FnMut(u64)) -> Result<String, BadInput> {
    let bad = |reason: &dyn std::fmt::Display| BadInput(format!("cannot read `{path}`: {reason}"));
    let mut source: Box<dyn Read> =
        if path == "-" { Box::new(io::stdin().lock()) } else { Box::new(File::open(path).map_err(|e| bad(&e))?) };
    let mut bytes = Vec::new();
    while source.by_ref().take(PIECE).read_to_end(&mut bytes).map_err(|e| bad(&e))? > 0 {
        let length = bytes.len() as u64;
        if length > MOST_BYTES {
            return Err(bad(&format_args!("expected at most {MOST_BYTES} bytes")));
        }
        read(length);
    }
    String::from_utf8(bytes).map_err(|e| bad(&not_utf8(e.as_bytes(), e.utf8_error().valid_up_to())))
}

/// How long a file is, in bytes; none where nobody can tell.
#[must_use]
pub fn length(path: &str) -> Option<u64> {
    if path == "-" { None } else { fs::metadata(path).ok().map(|about| about.len()) }
}
