//! A request from a file or the standard input, read as the service reads a body.

use serde::de::DeserializeOwned;

use super::exit::BadInput;
use super::source;
use crate::problem::Problem;
use crate::problem::extractors::body::parsed;
use crate::settings::limits::Limits;

/// The request in a file, or in the standard input for `-`.
///
/// # Errors
/// [`BadInput`], naming every place that does not fit.
pub(super) fn read<T: DeserializeOwned>(path: &str) -> Result<T, BadInput> {
    let text = source::text(path)?;
    parsed(text.as_bytes(), Limits::default().nesting).map_err(|problem| refused(path, &problem))
}

/// A problem in the words of the command line.
pub(super) fn refused(path: &str, problem: &Problem) -> BadInput {
    let mut words = format!("`{path}`: {}", problem.kind());
    if problem.errors().is_empty() {
        words = format!("`{path}`: {problem}");
    }
    for error in problem.errors() {
        let at = if error.pointer.is_empty() { "the whole" } else { &error.pointer };
        words.push_str(&format!("\n  {at}: {}", error.detail));
    }
    BadInput(words)
}
