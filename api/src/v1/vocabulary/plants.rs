//! `GET /v1/plants`.

use actix_web::web::Data;
use actix_web::{HttpRequest, HttpResponse};
use lammas_engine::pack::plant::TraitValue;
use lammas_engine::pack::{Pack, PlantEntry};
use serde::Serialize;
use utoipa::ToSchema;

use super::list::{self, ListQuery, pages};
use crate::problem::Problem;
use crate::problem::extractors::Query;
use crate::sets::rules::Rules;

/// A plant that the rules know.
#[derive(Debug, Serialize, ToSchema)]
pub struct PlantItem {
    /// Its id, as a request names it.
    id: String,
    /// Its name.
    name: String,
    /// Other names of it, which a request may use as well.
    other_names: Vec<String>,
    /// Its botanical names.
    scientific: Vec<String>,
    /// How plants of its kind differ.
    traits: Vec<PlantTrait>,
    /// Its stages, in order.
    stages: Vec<PlantStage>,
    /// Whether any of it is eaten.
    food_use: bool,
}

/// A way in which plants of one kind differ.
#[derive(Debug, Serialize, ToSchema)]
pub struct PlantTrait {
    /// Its id, as a request names it.
    id: String,
    /// How it is asked for.
    question: String,
    /// What is assumed when it is not said; without it, it is then unknown.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    usual: Option<String>,
    /// What it can be.
    values: Vec<PlantTraitValue>,
}

/// What a trait can be.
#[derive(Debug, Serialize, ToSchema)]
pub struct PlantTraitValue {
    /// Its id.
    id: String,
    /// Its name.
    name: String,
}

/// A stage of a plant.
#[derive(Debug, Serialize, ToSchema)]
pub struct PlantStage {
    /// Its id, as a request names it.
    id: String,
    /// Its name.
    name: String,
}

pages! {
    PlantPage of PlantItem by id, "One page of the plants.";
}

fn item(plant: &PlantEntry, pack: &Pack, language: &str) -> PlantItem {
    let names = |language: &str| plant.names.get(language).cloned().unwrap_or_default();
    let stage = |id: &str| pack.stages.iter().find(|stage| stage.entry.id.value == id);
    let value =
        |value: &TraitValue| PlantTraitValue { id: value.id.value.clone(), name: value.name.get(language).to_owned() };
    PlantItem {
        id: plant.id.value.clone(),
        name: plant.name.get(language).to_owned(),
        other_names: names(language),
        scientific: names("scientific"),
        traits: plant
            .traits
            .iter()
            .map(|entry| PlantTrait {
                id: entry.id.value.clone(),
                question: entry.ask.get(language).to_owned(),
                usual: entry.usual.as_ref().map(|usual| usual.value.clone()),
                values: entry.values.iter().map(value).collect(),
            })
            .collect(),
        stages: plant
            .stages
            .iter()
            .map(|id| PlantStage {
                id: id.value.clone(),
                name: stage(&id.value).map_or("", |stage| stage.entry.name.get(language)).to_owned(),
            })
            .collect(),
        food_use: plant.food_use,
    }
}

/// Which plants are known?
///
/// Every plant that the rules know, with its names, traits and stages, by id, page by page.
///
/// # Errors
/// The problem `bad-query`.
#[utoipa::path(
    get, path = "/v1/plants", operation_id = "list_plants", tag = "vocabulary", params(ListQuery),
    responses((status = 200, description = "A page of them.", body = PlantPage, example = json!({"items": [{"id": "rose", "name": "Rose",
        "other_names": ["rose bush"], "scientific": ["Rosa"], "traits": [{"id": "flowering",
        "question": "Does it flower once a year or again and again?", "usual": "repeat",
        "values": [{"id": "once", "name": "Once a year"}, {"id": "repeat", "name": "Again and again"}]}],
        "stages": [{"id": "dormant", "name": "Dormant"}], "food_use": false}]})))
)]
pub async fn list_plants(
    request: HttpRequest,
    Query(query): Query<ListQuery>,
    rules: Data<Rules>,
) -> Result<HttpResponse, Problem> {
    let set = rules.set();
    list::answer::<_, PlantPage>(&request, query, |language| {
        set.pack.plants.iter().map(|filed| item(&filed.entry, &set.pack, language)).collect()
    })
}
