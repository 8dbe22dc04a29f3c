//! A question that came as a query: its faults point at the parameters.

use crate::problem::Problem;
use crate::problem::kinds::{BAD_QUERY, INVALID_REQUEST};
use crate::problem::wire::FieldError;

/// Where a place of the question stands in a query.
const PLACES: [(&str, &str); 4] =
    [("/climate", "/climate"), ("/plant/type", "/plant"), ("/plant/traits", "/traits"), ("/condition/signs", "/signs")];

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

/// The parts of a comma-separated list, without blanks around them; an empty text is an empty list.
pub(crate) fn listed(text: &str) -> Vec<String> {
    text.split(',').map(str::trim).filter(|part| !part.is_empty()).map(str::to_owned).collect()
}
