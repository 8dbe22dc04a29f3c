//! `POST /v1/rules/{id}/why-not`.

use actix_web::web::Data;
use actix_web::{HttpRequest, HttpResponse};
use chrono::{DateTime, Utc};
use lammas_engine::question::said::Said;
use lammas_engine::why_not::{Reach, why_not};
use serde_json::{Value, json};

use super::read::{self, RuleId};
use super::why_not_answer::WhyNotAnswer;
use crate::problem::Problem;
use crate::problem::extractors::{Body, PathParts};
use crate::sets::pick::{Picked, Wanted, pick};
use crate::sets::rules::Rules;
use crate::v1::advice::reply;
use crate::v1::advice::request::AdviceRequest;
use crate::v1::language;
use crate::v1::question::choices::Language;
use crate::v1::question::today;
use crate::v1::sent::{self, Keep};

/// Why is this rule not in the answer, and what would it take?
///
/// The question is that for advice. The answer says what stands in the rule's way and the smallest changes of facts that
/// bring it: each by its name, in words, and by its place in the request with the value to put there. Every change was
/// tried. The climate and the place can't be changed by who asks: where they alone stand in the way the answer is the
/// day on which it comes, or that it does not. A change is no advice: tell what is true.
///
/// # Errors
/// Those of a question for advice, and the problem `rule-not-found`.
#[utoipa::path(
    post, path = "/v1/rules/{id}/why-not", operation_id = "explain_absence", tag = "advice", params(RuleId),
    request_body(content = AdviceRequest, description = "The question.", example = json!(request_example())),
    responses((status = 200, description = "Why, and what it would take.", body = WhyNotAnswer, example = json!(example())))
)]
pub async fn explain_absence(
    request: HttpRequest,
    PathParts(asked): PathParts<RuleId>,
    Body(question): Body<AdviceRequest>,
    rules: Data<Rules>,
) -> Result<HttpResponse, Problem> {
    let accepted = language::accepted(&request);
    let (text, language) = told(&asked.id, question, accepted, &rules, today::now())?;
    Ok(sent::json(&request, text, language, Keep::No))
}

/// The answer as JSON, and its language: the same over HTTP and from the command line.
///
/// # Errors
/// The problem `rule-not-found` with the nearest ids, or the one that names every wrong place of the question.
pub fn told(
    id: &str,
    mut request: AdviceRequest,
    accepted: Option<Language>,
    rules: &Rules,
    now: DateTime<Utc>,
) -> Result<(String, Language), Problem> {
    let language = request.language.or(accepted).unwrap_or(Language::En);
    request.language = Some(language);
    let mut faults = request.faults();
    let wanted = Wanted { sets: &request.rule_sets, as_of: request.as_of, climate: Some(&request.climate) };
    let Picked { set, .. } = pick(wanted, rules, now, &mut faults);
    let _ = read::find(id, &set, language)?;
    let mut said = Said::from(request.clone());
    let (question, _) = reply::question(request, faults, true, rules, &set, now)?;
    set.names.plants.name(question.plant).clone_into(&mut said.plant.kind);
    let answer = why_not(&set, &said, &question, id, language.word(), Reach::USUAL);
    let answer = answer.ok_or_else(|| Problem::broken("a rule that was found is not there"))?;
    Ok((serde_json::to_string(&answer).map_err(Problem::broken)?, language))
}

fn request_example() -> Value {
    json!({
        "climate": {"id": "hot-dry-valley"},
        "date": "2026-09-15",
        "plant": {"type": "rose", "traits": {"flowering": "repeat"}, "age_years": 0.5},
        "condition": {"signs": [{"sign": "spent-blooms"}]}
    })
}

fn example() -> Value {
    serde_json::from_str(include_str!("why_not_example.json")).unwrap_or_default()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::settings::rules::RuleSettings;

    #[test]
    fn the_example_is_what_comes_of_its_question() {
        let rules = Rules::load(&RuleSettings::default()).expect("it loads");
        let question = serde_json::from_value(request_example()).expect("a question");
        let now = "2026-09-15T12:00:00Z".parse().expect("a moment");
        let (text, _) = told("rose.renewal-cut", question, None, &rules, now).expect("an answer");
        assert_eq!(serde_json::from_str::<Value>(&text).expect("JSON"), example(), "{text}");
        let read: WhyNotAnswer = serde_json::from_value(example()).expect("it fits");
        assert_eq!(serde_json::to_value(read).expect("JSON"), example());
    }
}
