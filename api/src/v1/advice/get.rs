//! `GET /v1/advice`.

use std::collections::BTreeMap;

use actix_web::web::Data;
use actix_web::{HttpRequest, HttpResponse};
use serde::Deserialize;

use super::answer::AdviceAnswer;
use super::request::AdviceRequest;
use super::{example, reply};
use crate::problem::Problem;
use crate::problem::extractors::Query;
use crate::problem::faults::Faults;
use crate::problem::kinds::BAD_QUERY;
use crate::sets::rules::Rules;
use crate::v1::language;
use crate::v1::question::choices::{Detail, Language, UnitSystem};
use crate::v1::question::condition::{ConditionGiven, ConditionSign};
use crate::v1::question::date::{AsOf, Date};
use crate::v1::question::plant::PlantGiven;
use crate::v1::question::query::{self, in_query, listed};
use crate::v1::question::today;
use crate::v1::sent::{self, Keep};

/// A question that fits into an address.
#[derive(Clone, Debug, Deserialize, utoipa::IntoParams)]
#[serde(deny_unknown_fields)]
#[into_params(parameter_in = Query)]
pub struct AdviceQuery {
    /// A registered climate, by its id.
    #[param(max_length = 100, example = "hot-dry-valley")]
    climate: String,
    /// In what the place differs from that climate, with commas between: `nights:-2` (degrees), `afternoons`,
    /// `summer-afternoons`, `first-frost:-21` (days), `last-frost`, `frost-pocket`, `warm-wall`, `roof`.
    #[param(required = false, nullable = false, max_length = 500, example = "nights:-2,frost-pocket")]
    differ: Option<String>,
    /// The plant, by its id or one of its names.
    #[param(max_length = 100, example = "rose")]
    plant: String,
    /// When; today at the place when left out.
    #[param(required = false, nullable = false, example = "2026-09-15")]
    date: Option<Date>,
    /// The signs that are seen, by their ids, with commas between them. Left out: nothing is known of any; given and
    /// empty: none is seen.
    #[param(required = false, nullable = false, max_length = 2000, example = "spent-blooms,crowded-centre")]
    signs: Option<String>,
    /// Traits of the plant as `name:value`, with commas between them.
    #[param(required = false, nullable = false, max_length = 2000, example = "flowering:repeat")]
    traits: Option<String>,
    /// The language of the answer; else the header `accept-language` decides.
    #[param(required = false, nullable = false, example = "en")]
    language: Option<Language>,
    /// In which units amounts are said; both when left out.
    #[param(required = false, nullable = false, example = "both")]
    units: Option<UnitSystem>,
    /// How much is said about each task; standard when left out.
    #[param(required = false, nullable = false, example = "brief")]
    detail: Option<Detail>,
    /// At most so many tasks. What is for safety stays.
    #[param(required = false, nullable = false, minimum = 1, maximum = 200, example = 3)]
    limit: Option<u16>,
    /// The rule sets in layers, lowest first, with commas between them, each perhaps pinned as `name@version`; the operator's
    /// when left out.
    #[param(required = false, nullable = false, max_length = 1000, example = "core")]
    rule_sets: Option<String>,
    /// Answer with the rule sets as they were then; not together with a pinned version.
    #[param(required = false, nullable = false)]
    as_of: Option<AsOf>,
}

impl AdviceQuery {
    /// The question as `POST /v1/advice` takes it.
    fn question(self) -> Result<AdviceRequest, Problem> {
        let Self { climate, differ, plant, date, signs, traits, language, units, detail, limit, rule_sets, as_of } =
            self;
        let signs = signs.map(|signs| {
            listed(&signs).into_iter().map(|sign| ConditionSign { sign, ..ConditionSign::default() }).collect()
        });
        Ok(AdviceRequest {
            climate: query::climate(climate, differ.as_deref())?,
            date,
            plant: PlantGiven { kind: plant, traits: pairs(traits.as_deref())?, ..PlantGiven::default() },
            condition: signs.map(|signs| ConditionGiven { signs: Some(signs), ..ConditionGiven::default() }),
            language,
            units,
            detail,
            limit,
            rule_sets: rule_sets.as_deref().map(listed).unwrap_or_default(),
            as_of,
            ..AdviceRequest::default()
        })
    }
}

/// `flowering:repeat,form:bush` by name.
fn pairs(traits: Option<&str>) -> Result<BTreeMap<String, String>, Problem> {
    let mut faults = Faults::default();
    let mut found = BTreeMap::new();
    for pair in listed(traits.unwrap_or_default()) {
        match pair.split_once(':') {
            Some((name, value)) => {
                if found.insert(name.trim().to_owned(), value.trim().to_owned()).is_some() {
                    faults.add("/traits", format!("the trait `{}` stands twice", crate::problem::clipped(name)));
                }
            }
            None => faults.add(
                "/traits",
                format!(
                    "expected `name:value`, such as `flowering:repeat`, found `{}`",
                    crate::problem::clipped(&pair)
                ),
            ),
        }
    }
    faults.or_problem(BAD_QUERY)?;
    Ok(found)
}

/// What should be done now, in a registered climate?
///
/// The same answer as `POST /v1/advice` to a question that fits into an address, for pages that embed it: it may be kept
/// (`cache-control`) for an hour at most, not past the last day on which the decision is the same, and without a `date` not
/// past midnight at the place. A reader who has it already gets 304 for its `etag`.
///
/// # Errors
/// The problems `bad-query`, `unknown-plant`, `unknown-climate` and `unknown-rule-set`.
#[utoipa::path(
    get, path = "/v1/advice", operation_id = "get_advice", tag = "advice", params(AdviceQuery),
    responses(
        (status = 200, description = "The advice.", body = AdviceAnswer, example = json!(example::answer())),
        (status = 304, description = "What the reader has is still right.")
    )
)]
pub async fn get_advice(
    request: HttpRequest,
    Query(query): Query<AdviceQuery>,
    rules: Data<Rules>,
) -> Result<HttpResponse, Problem> {
    let asked = query.question()?;
    let said = reply::to(asked, language::accepted(&request), &rules, today::now()).map_err(in_query)?;
    Ok(sent::hashed(&request, said.text, &said.sha256, said.language, Keep::For(said.keep_s)))
}
