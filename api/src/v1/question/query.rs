//! A question that came as a query: its faults point at the parameters.

use super::climate::ClimateGiven;
use super::differences::ClimateDifferences;
use crate::problem::Problem;
use crate::problem::faults::Faults;
use crate::problem::kinds::{BAD_QUERY, INVALID_REQUEST};
use crate::problem::wire::FieldError;

/// Where a place of the question stands in a query.
const PLACES: [(&str, &str); 6] = [
    ("/climate/differences", "/differ"),
    ("/climate", "/climate"),
    ("/plant/type", "/plant"),
    ("/plant/traits", "/traits"),
    ("/condition/signs", "/signs"),
    ("/rule_sets", "/rule_sets"),
];

/// The same problem, pointing at the parameters of the query.
pub(crate) fn in_query(problem: Problem) -> Problem {
    if problem.errors().is_empty() {
        return problem;
    }
    let kind = if problem.kind() == INVALID_REQUEST { BAD_QUERY } else { problem.kind() };
    let moved = |error: &FieldError| {
        let found = PLACES.iter().find(|(place, _)| error.pointer.starts_with(place));
        let pointer = found.map_or_else(|| error.pointer.clone(), |(_, parameter)| (*parameter).to_owned());
        FieldError { pointer, detail: error.detail.clone() }
    };
    Problem::invalid(kind, problem.errors().iter().map(moved).collect())
}

/// A registered climate, with what differs from it as it is typed in an address.
///
/// # Errors
/// The problem `bad-query`, with every difference that can't be taken.
pub(crate) fn climate(id: String, differ: Option<&str>) -> Result<ClimateGiven, Problem> {
    let mut differences = ClimateDifferences::default();
    let mut faults = Faults::default();
    for typed in listed(differ.unwrap_or_default()) {
        if let Err(words) = differences.take(&typed) {
            faults.add("/differ", words);
        }
    }
    faults.or_problem(BAD_QUERY)?;
    let differences = differ.map(|_| differences);
    Ok(ClimateGiven { id: Some(id), differences, ..ClimateGiven::default() })
}

/// The parts of a comma-separated list, without blanks around them; an empty text is an empty list.
pub(crate) fn listed(text: &str) -> Vec<String> {
    text.split(',').map(str::trim).filter(|part| !part.is_empty()).map(str::to_owned).collect()
}
