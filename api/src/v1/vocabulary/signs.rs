//! `GET /v1/signs`.

use actix_web::web::Data;
use actix_web::{HttpRequest, HttpResponse};
use lammas_engine::compile::set::Set;
use lammas_engine::nearest::nearest;
use lammas_engine::pack::SignEntry;
use lammas_engine::pack::word::{Seen, Where};
use lammas_engine::words::MOST_LETTERS;
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

use super::list::{self, pages};
use crate::problem::Problem;
use crate::problem::extractors::Query;
use crate::problem::faults::Faults;
use crate::problem::kinds::BAD_QUERY;
use crate::sets::rules::Rules;
use crate::v1::advice::reply::plant_id;
use crate::v1::language;
use crate::v1::page::PageQuery;
use crate::v1::question::choices::{Language, choices};

choices! {
    /// Where a sign is seen.
    SignPlace {
        ShootTip "shoot-tip" "At the tips of shoots.",
        LeafUpper "leaf-upper" "On the upper side of leaves.",
        LeafUnder "leaf-under" "On the underside of leaves.",
        Bud "bud" "On buds.",
        Flower "flower" "On flowers.",
        Fruit "fruit" "On fruit.",
        Stem "stem" "On stems.",
        Crown "crown" "At the crown.",
        Root "root" "On roots.",
        Soil "soil" "On or in the soil.",
        WholePlant "whole-plant" "On the whole plant.",
    }
    /// Whether a sign is seen at a glance.
    SignSeen {
        Plain "plain" "At a glance.",
        Hidden "hidden" "On a close look only.",
    }
}

/// Something that can be seen on a plant, or that happened to it.
#[derive(Debug, Serialize, ToSchema)]
pub struct SignItem {
    /// Its id, as a request names it.
    id: String,
    /// Its name.
    name: String,
    /// Where it is seen.
    #[serde(rename = "where")]
    place: SignPlace,
    /// Whether it is seen at a glance.
    seen: SignSeen,
    /// How to look.
    look: String,
    /// What people call it.
    words: Vec<String>,
    /// With `q`: the words of it that fit this sign.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    matched: Option<Vec<String>>,
}

/// Which signs, in which language.
#[derive(Debug, Default, Deserialize, utoipa::IntoParams)]
#[serde(deny_unknown_fields)]
#[into_params(parameter_in = Query)]
pub struct SignQuery {
    /// What is seen, in a gardener's words, English or Spanish: the signs that fit, best first. Misspellings, plurals and
    /// accents don't matter; what is denied does not fit.
    #[param(
        required = false,
        nullable = false,
        min_length = 1,
        max_length = 500,
        example = "buds stay shut and brown"
    )]
    q: Option<String>,
    /// Only signs that the rules or problems of this plant speak of: its id or one of its names.
    #[param(required = false, nullable = false, max_length = 100, example = "rose")]
    plant: Option<String>,
    /// At most so many entries; 50 when left out.
    #[param(required = false, nullable = false, minimum = 1, maximum = 200, example = 50)]
    limit: Option<u16>,
    /// The `next_cursor` of the page before; left out for the first page. Not with `q`, which has one page.
    #[param(required = false, nullable = false, pattern = "^([0-9a-f]{2})+$")]
    cursor: Option<String>,
    /// The language of the texts; else the header `accept-language` decides.
    #[param(required = false, nullable = false, example = "en")]
    language: Option<Language>,
}

pages! {
    SignPage of SignItem by id, "One page of the signs.";
}

fn place(place: Where) -> SignPlace {
    match place {
        Where::ShootTip => SignPlace::ShootTip,
        Where::LeafUpper => SignPlace::LeafUpper,
        Where::LeafUnder => SignPlace::LeafUnder,
        Where::Bud => SignPlace::Bud,
        Where::Flower => SignPlace::Flower,
        Where::Fruit => SignPlace::Fruit,
        Where::Stem => SignPlace::Stem,
        Where::Crown => SignPlace::Crown,
        Where::Root => SignPlace::Root,
        Where::Soil => SignPlace::Soil,
        Where::WholePlant => SignPlace::WholePlant,
    }
}

/// What can be seen on a plant?
///
/// Every sign that a request may name, with where and how to look for it and what people call it, by id, page by page.
/// With `q`, those that fit a gardener's words, best first, each with the words that fit it.
///
/// # Errors
/// The problem `bad-query`.
#[utoipa::path(
    get, path = "/v1/signs", operation_id = "list_signs", tag = "vocabulary", params(SignQuery),
    responses((status = 200, description = "A page of them.", body = SignPage, example = json!({"items": [{"id": "buds-stay-shut", "name": "Buds stay shut",
        "where": "bud", "seen": "plain", "look": "Full-size buds turn brown and papery or rot without opening.",
        "words": ["buds won't open", "balled buds"], "matched": ["buds", "stay", "shut", "brown"]}]})))
)]
pub async fn list_signs(
    request: HttpRequest,
    Query(query): Query<SignQuery>,
    rules: Data<Rules>,
) -> Result<HttpResponse, Problem> {
    let set = rules.set();
    let page = PageQuery::new(query.limit, query.cursor.clone());
    let plant = checked(&query, &page, &set)?;
    let language = language::of(query.language, &request);
    let item = |sign: u16| set.pack.signs.get(usize::from(sign)).map(|filed| item(&filed.entry, language.word()));
    if let Some(words) = &query.q {
        let found = set.words.search(words, plant, language.word()).into_iter().take(page.limit());
        let items = found.filter_map(|found| Some(SignItem { matched: Some(found.matched), ..item(found.sign)? }));
        return list::sent_json(&request, &SignPage { items: items.collect(), next_cursor: None }, language);
    }
    let mut items: Vec<SignItem> = match plant {
        Some(plant) => set.words.signs_of(plant).filter_map(item).collect(),
        None => set.pack.signs.iter().map(|filed| self::item(&filed.entry, language.word())).collect(),
    };
    items.sort_by(|a, b| a.id.cmp(&b.id));
    list::sent_json(&request, &SignPage::from(page.of(items, |item| &item.id)?), language)
}

/// Checks the query, and finds the plant that it asks for, if any.
fn checked(query: &SignQuery, page: &PageQuery, set: &Set) -> Result<Option<u16>, Problem> {
    let mut faults = Faults::default();
    page.check(&mut faults);
    if let Some(words) = &query.q {
        faults.text_at_most("", "q", words, MOST_LETTERS);
        if words.trim().is_empty() {
            faults.add("/q", "expected a few words, found no text");
        }
        if query.cursor.is_some() {
            faults.add_if_new(
                None,
                "/cursor".to_owned(),
                "expected no cursor beside `q`: what fits comes on one page".to_owned(),
            );
        }
    }
    let plant = query.plant.as_deref().map(|said| (said, plant_id(said, set)));
    let number = plant.as_ref().and_then(|(_, id)| set.names.plants.number(id.as_deref()?));
    if let (Some((said, _)), None) = (&plant, number) {
        let known = set.pack.plants.iter().flat_map(|filed| {
            std::iter::once(filed.entry.id.value.as_str())
                .chain(filed.entry.names.values().flatten().map(String::as_str))
        });
        let near = nearest(said, known).map(|name| format!(", did you mean `{name}`?")).unwrap_or_default();
        faults.add("/plant", format!("unknown plant `{}`{near}", crate::problem::clipped(said)));
    }
    faults.or_problem(BAD_QUERY)?;
    Ok(number)
}

fn item(entry: &SignEntry, language: &str) -> SignItem {
    SignItem {
        id: entry.id.value.clone(),
        name: entry.name.get(language).to_owned(),
        place: place(entry.place),
        seen: if entry.seen == Seen::Plain { SignSeen::Plain } else { SignSeen::Hidden },
        look: entry.look.get(language).to_owned(),
        words: entry.words.get(language).to_vec(),
        matched: None,
    }
}
