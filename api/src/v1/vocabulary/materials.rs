//! `GET /v1/materials`.

use actix_web::web::Data;
use actix_web::{HttpRequest, HttpResponse};
use lammas_engine::pack::material::{Hazard, Per};
use lammas_engine::pack::{At, MaterialEntry, Pack};
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

use super::list::{self, ListQuery, pages};
use crate::problem::Problem;
use crate::problem::extractors::Query;
use crate::sets::rules::Rules;
use crate::v1::advice::words::MaterialHazard;
use crate::v1::question::choices::choices;

choices! {
    /// What a maximum is counted on.
    MaterialPer {
        Area "area" "An area of ground.",
        Plant "plant" "A plant.",
        Litre "litre" "A litre of spray or drench.",
    }
}

/// Something that is spread, sprayed or laid.
#[derive(Debug, Serialize, ToSchema)]
pub struct MaterialItem {
    /// Its id, as a history names it.
    id: String,
    /// Its generic name.
    name: String,
    /// What is in it.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    analysis: Option<String>,
    /// Classes it belongs to; a history may name one of these instead.
    classes: Vec<String>,
    /// How dangerous it is.
    hazard: MaterialHazard,
    /// The most of it.
    maximum: Vec<MaterialMaximum>,
    /// What every work with it asks to mind.
    cautions: Vec<String>,
    /// The ids of its sources.
    sources: Vec<String>,
}

/// The most of a material.
#[derive(Debug, Serialize, ToSchema)]
pub struct MaterialMaximum {
    /// What it is counted on.
    per: MaterialPer,
    /// A number with its unit.
    value: String,
}

pages! {
    MaterialPage of MaterialItem by id, "One page of the materials.";
}

fn item(material: &MaterialEntry, pack: &Pack, language: &str) -> MaterialItem {
    let ids = |list: &[At<String>]| list.iter().map(|id| id.value.clone()).collect::<Vec<_>>();
    let caution = |id: &At<String>| {
        let found = pack.cautions.iter().find(|caution| caution.entry.id.value == id.value)?;
        Some(found.entry.text.get(language).to_owned())
    };
    MaterialItem {
        id: material.id.value.clone(),
        name: material.name.get(language).to_owned(),
        analysis: list::some(material.analysis.get(language)),
        classes: ids(&material.classes),
        hazard: match material.hazard {
            Hazard::None => MaterialHazard::None,
            Hazard::Low => MaterialHazard::Low,
            Hazard::Label => MaterialHazard::Label,
            Hazard::Restricted => MaterialHazard::Restricted,
        },
        maximum: material
            .maximum
            .iter()
            .map(|most| MaterialMaximum {
                per: match most.per {
                    Per::Area => MaterialPer::Area,
                    Per::Plant => MaterialPer::Plant,
                    Per::Litre => MaterialPer::Litre,
                },
                value: most.value.value.clone(),
            })
            .collect(),
        cautions: material.cautions.iter().filter_map(caution).collect(),
        sources: ids(&material.sources),
    }
}

/// Which materials are there?
///
/// Every material that rules use and a history may name, with what is in it and the most of it, by id, page by page.
///
/// # Errors
/// The problem `bad-query`.
#[utoipa::path(
    get, path = "/v1/materials", operation_id = "list_materials", tag = "vocabulary", params(ListQuery),
    responses((status = 200, description = "A page of them.", body = MaterialPage, example = json!({"items": [{"id": "compost",
        "name": "Garden compost", "classes": ["organic"], "hazard": "none", "maximum": [], "cautions": [], "sources": ["common-practice"]}]})))
)]
pub async fn list_materials(
    request: HttpRequest,
    Query(query): Query<ListQuery>,
    rules: Data<Rules>,
) -> Result<HttpResponse, Problem> {
    let set = rules.set();
    list::answer::<_, MaterialPage>(&request, query, |language| {
        set.pack.materials.iter().map(|filed| item(&filed.entry, &set.pack, language)).collect()
    })
}
