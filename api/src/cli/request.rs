//! A request from a file or the standard input, read as the service reads a body.

use clap::Args;
use serde::de::DeserializeOwned;
use serde_json::{Map, Value};

use super::exit::BadInput;
use super::source;
use crate::problem::Problem;
use crate::problem::extractors::body::parsed;
use crate::settings::limits::Limits;
use crate::v1::question::differences::ClimateDifferences;

/// What the command line says of the climate of a question.
#[derive(Args, Debug)]
pub(super) struct Climate {
    /// The climate of the question, from a file that `lammas profile --json` made
    #[arg(long, value_name = "FILE")]
    climate: Option<String>,
    /// In what the place differs from the climate of the question, with commas between: nights=K, afternoons=K,
    /// summer-afternoons=K, last-frost=DAYS, first-frost=DAYS, frost-pocket, warm-wall, roof; minus is colder or earlier
    #[arg(long, value_name = "DIFFERENCE", value_delimiter = ',')]
    differ: Vec<String>,
}

/// The differences as they were typed; none where none were.
///
/// # Errors
/// [`BadInput`], naming every one that can't be taken.
pub(super) fn differences(typed: &[String]) -> Result<Option<ClimateDifferences>, BadInput> {
    let mut differences = ClimateDifferences::default();
    let refused: Vec<String> = typed.iter().filter_map(|typed| differences.take(typed).err()).collect();
    match (typed.is_empty(), refused.is_empty()) {
        (true, _) => Ok(None),
        (_, true) => Ok(Some(differences)),
        _ => Err(BadInput(refused.iter().map(|words| format!("--differ: {words}")).collect::<Vec<_>>().join("\n"))),
    }
}

/// The request in a file, or in the standard input for `-`.
///
/// # Errors
/// [`BadInput`], naming every place that does not fit.
pub(super) fn read<T: DeserializeOwned>(path: &str) -> Result<T, BadInput> {
    let text = source::text(path)?;
    parsed(text.as_bytes(), Limits::default().nesting).map_err(|problem| refused(path, &problem))
}

/// The same, with what the command line says of its climate put into it.
///
/// # Errors
/// [`BadInput`], naming the file and every place that does not fit; also when the request says the same itself.
pub(super) fn read_with_climate<T: DeserializeOwned>(path: &str, told: &Climate) -> Result<T, BadInput> {
    let Climate { climate, differ } = told;
    if climate.is_none() && differ.is_empty() {
        return read(path);
    }
    if path == "-" && climate.as_deref() == Some("-") {
        return Err(BadInput("the question and its climate can't both be the standard input".to_owned()));
    }
    let climate: Option<Value> = climate.as_deref().map(read).transpose()?;
    let mut question: Map<String, Value> = read(path)?;
    if let Some(climate) = climate {
        if question.contains_key("climate") {
            return Err(BadInput(format!("`{path}` has a climate of its own, and `--climate` gives another")));
        }
        question.insert("climate".to_owned(), climate);
    }
    if let Some(differences) = differences(differ)? {
        // A climate that is missing, or is none, is named where the question is read.
        if let Some(climate) = question.entry("climate").or_insert_with(|| Value::Object(Map::new())).as_object_mut() {
            if climate.contains_key("differences") {
                return Err(BadInput("the climate has `differences` of its own, and `--differ` gives more".to_owned()));
            }
            let differences = serde_json::to_value(differences).map_err(|error| BadInput(error.to_string()))?;
            climate.insert("differences".to_owned(), differences);
        }
    }
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
