//! `GET /v1/quantities`.

use std::sync::LazyLock;

use actix_web::HttpResponse;
use actix_web::http::header::CACHE_CONTROL;
use lammas_agronomy::quantity::{self, Quantity};
use serde::Serialize;
use utoipa::ToSchema;

use super::wire::QuantityEntry;
use crate::problem::Problem;
use crate::problem::extractors::Query;
use crate::v1::page::PageQuery;

static BY_NAME: LazyLock<Vec<&'static Quantity>> = LazyLock::new(|| {
    let mut quantities: Vec<_> = quantity::all().collect();
    quantities.sort_by_key(|quantity| quantity.name);
    quantities
});

/// One page of the quantities.
#[derive(Debug, Serialize, ToSchema)]
pub struct QuantityPage {
    /// The quantities, by name.
    items: Vec<QuantityEntry>,
    /// Where the next page begins; left out on the last page.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    next_cursor: Option<String>,
}

/// Which quantities can be reckoned?
///
/// Every quantity with its inputs, their units and ranges, its method and source, by name, page by page.
///
/// # Errors
/// The problem `bad-query`.
#[utoipa::path(
    get, path = "/v1/quantities", operation_id = "list_quantities", tag = "quantities", params(PageQuery),
    responses((status = 200, description = "A page of the quantities.", body = QuantityPage, example = json!({
        "items": [{
            "name": "canopy_area", "title": "area under a canopy",
            "about": "the circle that the plant covers",
            "inputs": [{"name": "canopy_diameter", "kind": "number", "about": "width of the plant's canopy",
                "required": true, "unit": "m", "min": 0.0, "max": 50.0}],
            "unit": "m2", "method": "circle", "source": "geometry"
        }],
        "next_cursor": "63616e6f70795f61726561"
    })))
)]
pub async fn list_quantities(Query(page): Query<PageQuery>) -> Result<HttpResponse, Problem> {
    let page = page.of(BY_NAME.iter().copied(), |quantity| quantity.name)?;
    Ok(HttpResponse::Ok().insert_header((CACHE_CONTROL, "public, max-age=3600")).json(QuantityPage {
        items: page.items.into_iter().map(QuantityEntry::from).collect(),
        next_cursor: page.next_cursor,
    }))
}
