//! `POST /v1/diagnosis`.

use actix_web::web::Data;
use actix_web::{HttpRequest, HttpResponse};
use chrono::{DateTime, Utc};
use lammas_engine::decide::causes::Weather;
use lammas_engine::explain::diagnosis;
use serde_json::Value;

use super::answer::DiagnosisAnswer;
use super::request::DiagnosisRequest;
use crate::problem::Problem;
use crate::problem::extractors::Body;
use crate::sets::pick::{Picked, Wanted, pick};
use crate::sets::rules::Rules;
use crate::v1::advice::reply;
use crate::v1::language;
use crate::v1::question::choices::Language;
use crate::v1::question::today;
use crate::v1::sent::{self, Keep};

/// What may be wrong with a plant?
///
/// Problems of the plant ranked by its signs, each with what speaks for and against it, from when on it is worth acting and
/// what answers it, gentlest first; and the one sign to look at next, with what each answer leads to. With a climate, what
/// the weather favours counts, and the works that are due now are given as tasks.
///
/// # Errors
/// Those of any JSON body, and of what it names.
#[utoipa::path(
    post, path = "/v1/diagnosis", operation_id = "diagnose_plant", tag = "advice",
    request_body(content = DiagnosisRequest, description = "The plant and its signs.", example = json!({
        "plant": {"type": "rose"}, "climate": {"id": "hot-dry-valley"}, "date": "2026-09-15",
        "condition": {"signs": [{"sign": "scorched-petals"}, {"sign": "browned-petal-streaks"}]}
    })),
    responses((status = 200, description = "The diagnosis.", body = DiagnosisAnswer, example = json!(example())))
)]
pub async fn diagnose_plant(
    request: HttpRequest,
    Body(asked): Body<DiagnosisRequest>,
    rules: Data<Rules>,
) -> Result<HttpResponse, Problem> {
    let (text, language) = reply(asked, language::accepted(&request), &rules, today::now())?;
    Ok(sent::json(&request, text, language, Keep::No))
}

/// The text of a diagnosis at this moment, in its language. `accepted` is the language when the request names none.
///
/// # Errors
/// The problem that names every wrong place.
pub fn reply(
    asked: DiagnosisRequest,
    accepted: Option<Language>,
    rules: &Rules,
    now: DateTime<Utc>,
) -> Result<(String, Language), Problem> {
    let language = asked.language.or(accepted).unwrap_or(Language::En);
    let (request, has_climate, mut faults) = asked.into_advice();
    let climate = has_climate.then_some(&request.climate);
    let Picked { set, .. } = pick(Wanted { sets: &request.rule_sets, as_of: None, climate }, rules, now, &mut faults);
    let weather = if has_climate { Weather::Counts } else { Weather::IsUnknown };
    let (question, _) = reply::question(request, faults, has_climate, rules, &set, now)?;
    let found = diagnosis::of(&set, &question, weather, language.word());
    let found = found.ok_or_else(|| Problem::broken("the plant of an understood question has no book"))?;
    Ok((serde_json::to_string(&found).map_err(Problem::broken)?, language))
}

/// The example of the document.
fn example() -> Value {
    serde_json::from_str(include_str!("example.json")).unwrap_or_default()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_example_is_a_diagnosis() {
        let read: DiagnosisAnswer = serde_json::from_value(example()).expect("it fits");
        assert_eq!(serde_json::to_value(read).expect("JSON"), example());
    }
}
