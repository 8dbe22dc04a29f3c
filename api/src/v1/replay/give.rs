//! `POST /v1/replay`.

use actix_web::web::Data;
use actix_web::{HttpRequest, HttpResponse};
use serde_json::{Value, json};

use super::again;
use super::answer::ReplayAnswer;
use super::request::ReplayRequest;
use crate::problem::Problem;
use crate::problem::extractors::Body;
use crate::sets::embedded;
use crate::sets::rules::Rules;
use crate::v1::language;
use crate::v1::question::today;
use crate::v1::sent::{self, Keep};

/// What was answered then?
///
/// A past answer, given again from what its reader kept: its `recall` text, the answer as a whole, its request with its `digest`, or
/// its spoken `reference`. The same question to the same rule sets gives the same bytes, whatever was published since. Where the
/// engine decides in another way now, the answer of now comes with the rules that differ and why. Nothing of it is kept.
///
/// # Errors
/// Those of any JSON body, of what the request names, and `unknown-rule-set` where a release is not kept here.
#[utoipa::path(
    post, path = "/v1/replay", operation_id = "replay_advice", tag = "advice",
    request_body(content = ReplayRequest, description = "What was kept.", example = json!(request_example())),
    responses((status = 200, description = "The answer, given again.", body = ReplayAnswer, example = json!(example())))
)]
pub async fn replay_advice(
    request: HttpRequest,
    Body(asked): Body<ReplayRequest>,
    rules: Data<Rules>,
) -> Result<HttpResponse, Problem> {
    let accepted = language::accepted(&request);
    let (text, language) = again::replay(&asked, accepted, &rules, today::now())?;
    Ok(sent::json(&request, text, language, Keep::No))
}

/// A reference to the rule set inside the program, whichever version that is.
fn request_example() -> Value {
    let version = embedded::set().map_or_else(|_| String::new(), |set| set.pack.header.version.value.clone());
    json!({"reference": format!("hot-dry-valley/rose/2026-09-15/core@{version}")})
}

/// The example of the document.
fn example() -> Value {
    serde_json::from_str(include_str!("example.json")).unwrap_or_default()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_example_is_an_answer_given_again() {
        let read: ReplayAnswer = serde_json::from_value(example()).expect("it fits");
        assert_eq!(serde_json::to_value(read).expect("JSON"), example());
    }
}
