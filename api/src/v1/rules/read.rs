//! `GET /v1/rules/{id}`.

use actix_web::web::Data;
use actix_web::{HttpRequest, HttpResponse};
use lammas_engine::compile::set::Set;
use lammas_engine::explain::rule;
use lammas_engine::explain::rule_answer::RuleShown;
use lammas_engine::nearest::nearest_names;
use serde::Deserialize;
use serde_json::Value;

use super::answer::RuleAnswer;
use crate::problem::extractors::{PathParts, Query};
use crate::problem::kinds::RULE_NOT_FOUND;
use crate::problem::{Problem, clipped};
use crate::sets::rules::Rules;
use crate::v1::language;
use crate::v1::question::choices::Language;
use crate::v1::sent::{self, Keep};
use crate::v1::vocabulary::list::EntryQuery;

/// How many near ids are named when there is no such rule.
const MOST_NEAR: usize = 3;

/// Which rule.
#[derive(Debug, Deserialize, utoipa::IntoParams)]
#[into_params(parameter_in = Path)]
pub struct RuleId {
    /// The rule's id, as an answer names it.
    #[param(example = "rose.renewal-cut", max_length = 100)]
    pub(crate) id: String,
}

/// What does a rule say, and on what grounds?
///
/// One rule in plain words: whom it is for, when in the season, on what condition, what holds it back, the guards that bind
/// it, how it is done, how well it is founded, how strongly it is advised, and its sources; with each expression beside its
/// words as the rule writes it.
///
/// # Errors
/// The problems `bad-query`, `bad-path` and `rule-not-found`.
#[utoipa::path(
    get, path = "/v1/rules/{id}", operation_id = "get_rule", tag = "vocabulary", params(RuleId, EntryQuery),
    responses(
        (status = 200, description = "The rule.", body = RuleAnswer, example = json!(example())),
        (status = 304, description = "What the reader has is still right.")
    )
)]
pub async fn get_rule(
    request: HttpRequest,
    PathParts(asked): PathParts<RuleId>,
    Query(query): Query<EntryQuery>,
    rules: Data<Rules>,
) -> Result<HttpResponse, Problem> {
    let language = language::of(query.language, &request);
    let set = rules.set();
    let found = find(&asked.id, &set, language)?;
    let text = serde_json::to_string(&found).map_err(Problem::broken)?;
    Ok(sent::json(&request, text, language, Keep::Hour))
}

/// A rule of a set in words.
///
/// # Errors
/// The problem `rule-not-found`, with the nearest ids.
pub fn find<'a>(id: &str, set: &'a Set, language: Language) -> Result<RuleShown<'a>, Problem> {
    rule::shown(set, id, language.word()).ok_or_else(|| {
        let near = near(id, set);
        let meant = match near.as_slice() {
            [] => "the `id` of each task of an answer is one".to_owned(),
            near => {
                format!("did you mean {}?", near.iter().map(|id| format!("`{id}`")).collect::<Vec<_>>().join(" or "))
            }
        };
        Problem::new(RULE_NOT_FOUND, format!("unknown rule `{}`, {meant}", clipped(id)))
    })
}

/// Ids near to one that is none: by spelling, else those in which it stands.
fn near<'a>(id: &str, set: &'a Set) -> Vec<&'a str> {
    let ids = || set.rules.iter().map(|info| info.id.as_str());
    let spelt = nearest_names(id, ids(), MOST_NEAR);
    let part = id.trim().to_lowercase();
    if !spelt.is_empty() || part.len() < 3 {
        return spelt;
    }
    ids().filter(|known| known.contains(&part)).take(MOST_NEAR).collect()
}

/// The example of the document.
fn example() -> Value {
    serde_json::from_str(include_str!("example.json")).unwrap_or_default()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_example_is_a_rule() {
        let read: RuleAnswer = serde_json::from_value(example()).expect("it fits");
        assert_eq!(serde_json::to_value(read).expect("JSON"), example());
    }
}
