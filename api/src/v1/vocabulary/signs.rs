//! `GET /v1/signs`.

use actix_web::web::Data;
use actix_web::{HttpRequest, HttpResponse};
use lammas_engine::pack::word::{Seen, Where};
use lammas_engine::pack::{Filed, SignEntry};
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

use super::list::{self, ListQuery, pages};
use crate::problem::Problem;
use crate::problem::extractors::Query;
use crate::sets::rules::Rules;
use crate::v1::question::choices::choices;

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
///
/// # Errors
/// The problem `bad-query`.
#[utoipa::path(
    get, path = "/v1/signs", operation_id = "list_signs", tag = "vocabulary", params(ListQuery),
    responses((status = 200, description = "A page of them.", body = SignPage, example = json!({"items": [{"id": "spent-blooms", "name": "Spent blooms",
        "where": "flower", "seen": "plain", "look": "Faded flowers still on the stem, petals dropping or brown.",
        "words": ["dead flowers", "faded blooms"]}]})))
)]
pub async fn list_signs(
    request: HttpRequest,
    Query(query): Query<ListQuery>,
    rules: Data<Rules>,
) -> Result<HttpResponse, Problem> {
    let set = rules.set();
    list::answer::<_, SignPage>(&request, query, |language| {
        let sign = |filed: &Filed<SignEntry>| SignItem {
            id: filed.entry.id.value.clone(),
            name: filed.entry.name.get(language).to_owned(),
            place: place(filed.entry.place),
            seen: if filed.entry.seen == Seen::Plain { SignSeen::Plain } else { SignSeen::Hidden },
            look: filed.entry.look.get(language).to_owned(),
            words: filed.entry.words.get(language).to_vec(),
        };
        set.pack.signs.iter().map(sign).collect()
    })
}
