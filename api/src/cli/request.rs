//! A request from a file or the standard input, read as the service reads a body.

use serde::de::DeserializeOwned;
use serde_json::{Map, Value};

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

/// The same, with the climate in another file put into it: that of a `lammas profile … --json`.
///
/// # Errors
/// [`BadInput`], naming the file and every place that does not fit; also when the request has a climate of its own.
pub(super) fn read_with_climate<T: DeserializeOwned>(path: &str, climate: Option<&str>) -> Result<T, BadInput> {
    let Some(file) = climate else { return read(path) };
    if path == "-" && file == "-" {
        return Err(BadInput("the question and its climate can't both be the standard input".to_owned()));
    }
    let climate: Value = read(file)?;
    let mut question: Map<String, Value> = read(path)?;
    if question.contains_key("climate") {
        return Err(BadInput(format!("`{path}` has a climate of its own, and `--climate` gives another")));
    }
    question.insert("climate".to_owned(), climate);
    let text = Value::Object(question).to_string();
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

/// A problem in one line.
pub(super) fn in_words(problem: &Problem) -> String {
    if problem.errors().is_empty() {
        return problem.to_string();
    }
    let each = problem.errors().iter().map(|error| {
        let at = if error.pointer.is_empty() { "the whole" } else { &error.pointer };
        format!("{at}: {}", error.detail)
    });
    each.collect::<Vec<String>>().join("; ")
}
