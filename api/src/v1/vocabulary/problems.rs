//! `GET /v1/problems`.

use actix_web::web::Data;
use actix_web::{HttpRequest, HttpResponse};
use lammas_engine::pack::problem::ProblemKind;
use lammas_engine::pack::shapes::AllOr;
use lammas_engine::pack::{At, ProblemEntry};
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

use super::list::{self, ListQuery, pages};
use crate::problem::Problem;
use crate::problem::extractors::Query;
use crate::sets::rules::Rules;
use crate::v1::question::choices::choices;

choices! {
    /// What a plant's problem is.
    PlantProblemKind {
        Pest "pest" "An animal.",
        Disease "disease" "A fungus, bacterium or virus.",
        Disorder "disorder" "Weather, soil, water, salt, a want of something.",
    }
}

/// A pest, disease or disorder.
#[derive(Debug, Serialize, ToSchema)]
pub struct PlantProblemItem {
    /// Its id, as a request names it.
    id: String,
    /// What it is.
    kind: PlantProblemKind,
    /// Its name.
    name: String,
    /// What it is, in two sentences.
    about: String,
    /// The plants that get it, by their ids; left out: all.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    plants: Option<Vec<String>>,
    /// Its signs, by their ids.
    signs: PlantProblemSigns,
    /// How bad it gets: 0 cosmetic to 3 plant lost.
    #[schema(minimum = 0, maximum = 3)]
    impact: u8,
    /// The groups of the materials that are used against it, if there are any.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    resistance: Option<ResistanceCodes>,
    /// The ids of its sources.
    sources: Vec<String>,
}

/// How regularly signs come with a problem.
#[derive(Debug, Serialize, ToSchema)]
pub struct PlantProblemSigns {
    /// With every case.
    always: Vec<String>,
    /// With most.
    often: Vec<String>,
    /// With some.
    sometimes: Vec<String>,
    /// With none: it speaks against the problem.
    never: Vec<String>,
}

/// Groups of the materials that are used against a problem, as labels print them. Who treats again takes another group.
#[derive(Clone, Debug, Default, PartialEq, Deserialize, Serialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct ResistanceCodes {
    /// Against insects and mites, by the Insecticide Resistance Action Committee.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    irac: Vec<String>,
    /// Against fungi, by the Fungicide Resistance Action Committee.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    frac: Vec<String>,
}

pages! {
    PlantProblemPage of PlantProblemItem by id, "One page of the plants' problems.";
}

fn item(problem: &ProblemEntry, language: &str) -> PlantProblemItem {
    let ids = |list: &[At<String>]| list.iter().map(|id| id.value.clone()).collect::<Vec<_>>();
    PlantProblemItem {
        id: problem.id.value.clone(),
        kind: match problem.kind {
            ProblemKind::Pest => PlantProblemKind::Pest,
            ProblemKind::Disease => PlantProblemKind::Disease,
            ProblemKind::Disorder => PlantProblemKind::Disorder,
        },
        name: problem.name.get(language).to_owned(),
        about: problem.about.get(language).to_owned(),
        plants: match &problem.plants {
            AllOr::All => None,
            AllOr::These(plants) => Some(ids(plants)),
        },
        signs: PlantProblemSigns {
            always: ids(&problem.signs.always),
            often: ids(&problem.signs.often),
            sometimes: ids(&problem.signs.sometimes),
            never: ids(&problem.signs.never),
        },
        impact: problem.impact,
        resistance: (!problem.resistance.is_empty())
            .then(|| ResistanceCodes { irac: ids(&problem.resistance.irac), frac: ids(&problem.resistance.frac) }),
        sources: ids(&problem.sources),
    }
}

/// What can be wrong with a plant?
///
/// Every pest, disease and disorder that the rules know, with its signs, by id, page by page.
///
/// # Errors
/// The problem `bad-query`.
#[utoipa::path(
    get, path = "/v1/problems", operation_id = "list_problems", tag = "vocabulary", params(ListQuery),
    responses((status = 200, description = "A page of them.", body = PlantProblemPage, example = json!({"items": [{"id": "rose-heat-scorch",
        "kind": "disorder", "name": "Heat scorch", "about": "Sun and dry heat burn petals and leaf edges. It is not a disease.", "plants": ["rose"],
        "signs": {"always": ["scorched-petals"], "often": [], "sometimes": [], "never": []}, "impact": 0, "sources": ["common-practice"]}]})))
)]
pub async fn list_problems(
    request: HttpRequest,
    Query(query): Query<ListQuery>,
    rules: Data<Rules>,
) -> Result<HttpResponse, Problem> {
    let set = rules.set();
    list::answer::<_, PlantProblemPage>(&request, query, |language| {
        set.pack.problems.iter().map(|filed| item(&filed.entry, language)).collect()
    })
}
