//! `GET /v1/plants`.

use std::collections::BTreeMap;

use actix_web::web::Data;
use actix_web::{HttpRequest, HttpResponse};
use lammas_engine::compile::set::Set;
use lammas_engine::pack::plant::TraitValue;
use lammas_engine::pack::{Pack, PlantEntry};
use lammas_engine::words::MOST_LETTERS;
use lammas_engine::words::plants::{How, PlantFound};
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

use super::list;
use crate::problem::Problem;
use crate::problem::extractors::Query;
use crate::problem::faults::Faults;
use crate::problem::kinds::BAD_QUERY;
use crate::sets::rules::Rules;
use crate::v1::language;
use crate::v1::page::PageQuery;
use crate::v1::question::choices::Language;

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
    /// Of a search: how it was found.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    found: Option<PlantMatch>,
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

/// How a plant was found by what customers call it.
#[derive(Debug, Serialize, ToSchema)]
pub struct PlantMatch {
    /// The name that fits.
    name: String,
    /// Why it was found.
    how: PlantHow,
    /// What the name says of the traits, as a request tells them: a lemon tree is a citrus with `kind: lemon`.
    traits: BTreeMap<String, String>,
}

/// Why a plant was found.
#[derive(Clone, Copy, Debug, Serialize, ToSchema)]
#[serde(rename_all = "kebab-case")]
pub enum PlantHow {
    /// By its name.
    Name,
    /// By another name of it, or by the name of a kind.
    Synonym,
    /// By a botanical name.
    Scientific,
    /// By a name that is written otherwise.
    Misspelling,
    /// It is not what was said: that is not known here, and this only comes nearest.
    Near,
}

/// One page of the plants.
#[derive(Debug, Serialize, ToSchema)]
pub struct PlantPage {
    /// The entries, in the order of their names; those of a search best first.
    items: Vec<PlantItem>,
    /// Of a search: whether what was said is a plant that is known here. If not, the entries are only the nearest.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    known: Option<bool>,
    /// Where the next page begins; left out on the last page.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    next_cursor: Option<String>,
}

/// Which plants, and which page of them.
#[derive(Debug, Default, Deserialize, utoipa::IntoParams)]
#[serde(deny_unknown_fields)]
#[into_params(parameter_in = Query)]
pub struct PlantQuery {
    /// What a customer calls the plant, in any language of the rules or by its botanical name: at most 500 letters.
    #[param(required = false, nullable = false, max_length = 500, example = "lemon tree")]
    q: Option<String>,
    /// At most so many entries; 50 when left out.
    #[param(required = false, nullable = false, minimum = 1, maximum = 200, example = 50)]
    limit: Option<u16>,
    /// The `next_cursor` of the page before; left out for the first page. Not together with `q`.
    #[param(required = false, nullable = false, pattern = "^([0-9a-f]{2})+$")]
    cursor: Option<String>,
    /// The language of the texts; else the header `accept-language` decides.
    #[param(required = false, nullable = false, example = "en")]
    language: Option<Language>,
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
        found: None,
    }
}

/// Which plants are known?
///
/// Every plant that the rules know, with its names, traits and stages, by id, page by page. With `q`, those that a customer
/// means, best first, each with the name that fits and why; a plant that is not known here is said not to be known, with
/// the nearest.
///
/// # Errors
/// The problem `bad-query`.
#[utoipa::path(
    get, path = "/v1/plants", operation_id = "list_plants", tag = "vocabulary", params(PlantQuery),
    responses((status = 200, description = "A page of them.", body = PlantPage, example = json!({"items": [{"id": "rose", "name": "Rose",
        "other_names": ["rose bush"], "scientific": ["Rosa"], "traits": [{"id": "flowering",
        "question": "Does it flower once a year or again and again?", "usual": "repeat",
        "values": [{"id": "once", "name": "Once a year"}, {"id": "repeat", "name": "Again and again"}]}],
        "stages": [{"id": "dormant", "name": "Dormant"}], "food_use": false,
        "found": {"name": "climbing rose", "how": "synonym", "traits": {"form": "climber"}}}], "known": true})))
)]
pub async fn list_plants(
    request: HttpRequest,
    Query(query): Query<PlantQuery>,
    rules: Data<Rules>,
) -> Result<HttpResponse, Problem> {
    let set = rules.set();
    let page = PageQuery::new(query.limit, query.cursor.clone());
    checked(&query, &page)?;
    let language = language::of(query.language, &request);
    if let Some(words) = &query.q {
        let found = set.words.plants(words);
        let known = found.first().is_some_and(|first| first.how != How::Near);
        let items = found.into_iter().take(page.limit()).filter_map(|found| matched(&found, &set, language.word()));
        let items = items.collect();
        return list::sent_json(&request, &PlantPage { items, known: Some(known), next_cursor: None }, language);
    }
    let mut items: Vec<PlantItem> =
        set.pack.plants.iter().map(|filed| item(&filed.entry, &set.pack, language.word())).collect();
    items.sort_by(|a, b| a.id.cmp(&b.id));
    let page = page.of(items, |item| &item.id)?;
    let page = PlantPage { items: page.items, known: None, next_cursor: page.next_cursor };
    list::sent_json(&request, &page, language)
}

fn checked(query: &PlantQuery, page: &PageQuery) -> Result<(), Problem> {
    let mut faults = Faults::default();
    page.check(&mut faults);
    if let Some(words) = &query.q {
        faults.text_at_most("", "q", words, MOST_LETTERS);
        if words.trim().is_empty() {
            faults.add("/q", "expected the name of a plant, found no text");
        }
        if query.cursor.is_some() {
            let detail = "expected no cursor beside `q`: what fits comes on one page".to_owned();
            faults.add_if_new(None, "/cursor".to_owned(), detail);
        }
    }
    faults.or_problem(BAD_QUERY)
}

fn matched(found: &PlantFound, set: &Set, language: &str) -> Option<PlantItem> {
    let entry = &set.pack.plants.get(usize::from(found.plant))?.entry;
    let how = match found.how {
        How::Name => PlantHow::Name,
        How::Synonym => PlantHow::Synonym,
        How::Scientific => PlantHow::Scientific,
        How::Misspelling => PlantHow::Misspelling,
        How::Near => PlantHow::Near,
    };
    let traits = kind(found, set).into_iter().collect();
    let found = PlantMatch { name: found.name.clone(), how, traits };
    Some(PlantItem { found: Some(found), ..item(entry, &set.pack, language) })
}

/// What a name says of a plant: a trait and its value, by their ids.
pub(crate) fn kind(found: &PlantFound, set: &Set) -> Option<(String, String)> {
    let (part, value) = found.kind?;
    let part = set.pack.plants.get(usize::from(found.plant))?.entry.traits.get(usize::from(part))?;
    Some((part.id.value.clone(), part.values.get(usize::from(value))?.id.value.clone()))
}
