//! The document, made from the routes table and from what the handlers say about themselves.

use std::collections::BTreeMap;

use utoipa::OpenApi;
use utoipa::openapi::path::Operation;
use utoipa::openapi::tag::TagBuilder;
use utoipa::openapi::{
    ContentBuilder, InfoBuilder, LicenseBuilder, PathItem, Ref, RefOr, ResponseBuilder, schema::Schema,
};
use utoipa::{PartialSchema, ToSchema};

use lammas_engine::explain::estimate::ATTRIBUTION;

use crate::problem::kinds::{ANY_CALL, Kind};
use crate::problem::wire::{FieldError, MEDIA_TYPE, ProblemBody};
use crate::routes::{CALLS, Call, Described};

const ABOUT: &str = "Season-aware plant care: a climate, a date, a plant and its condition go in; what to do now, in \
    what order and why, and what to leave alone, come out. The service keeps nothing about those who ask.\n\n\
    Failures are problems after RFC 9457, with every wrong place of the request named at once. Each answer carries \
    the header `x-request-id`.\n\n\
    A climate known only by its coordinates is estimated. Show this notice with what comes of it: ";

const TAGS: &[(&str, &str)] = &[
    ("advice", "What to do now, in what order, how much, and why; and what to leave alone."),
    ("season", "The season, computed from a climate."),
    ("vocabulary", "The words of the rule set in the asked language: what a request may name."),
    ("quantities", "Physical quantities by name, each with its method and published source."),
    (
        "editor",
        "Drafts, releases, and what is held back at once; for programs with a key, where the service has a store.",
    ),
    ("operation", "What operators and programs need to know about the service itself."),
];

/// The whole document.
#[must_use]
pub fn document() -> utoipa::openapi::OpenApi {
    let mut document = Described::openapi();
    let mut licence = LicenseBuilder::new().name("MIT OR Apache-2.0").build();
    licence.identifier = Some("MIT OR Apache-2.0".to_owned());
    document.info = InfoBuilder::new()
        .title("Lammas")
        .version(env!("CARGO_PKG_VERSION"))
        .description(Some(format!("{ABOUT}{ATTRIBUTION}")))
        .license(Some(licence))
        .build();
    document.tags = Some(
        TAGS.iter().map(|(name, about)| TagBuilder::new().name(*name).description(Some(*about)).build()).collect(),
    );

    let schemas = &mut document.components.get_or_insert_default().schemas;
    schemas.insert(ProblemBody::name().into_owned(), ProblemBody::schema());
    schemas.insert(FieldError::name().into_owned(), FieldError::schema());

    for call in CALLS.iter().filter(|call| call.documented) {
        let item = document.paths.paths.get_mut(call.path);
        if let Some(operation) = item.and_then(|item| operation_of(item, call.method)) {
            leave_out_notes_for_programmers(operation);
            add_problems(operation, call);
        }
    }
    document
}

/// The document as it is served and kept: indented, with a line end.
#[must_use]
pub fn text() -> String {
    let mut text = document().to_pretty_json().unwrap_or_default();
    text.push('\n');
    text
}

/// Every schema of one wire type, by name: for checks of types that no call uses yet.
#[must_use]
pub fn schemas_of<T: ToSchema>() -> BTreeMap<String, RefOr<Schema>> {
    let mut schemas = vec![(T::name().into_owned(), T::schema())];
    T::schemas(&mut schemas);
    schemas.into_iter().collect()
}

fn operation_of<'a>(item: &'a mut PathItem, method: &str) -> Option<&'a mut Operation> {
    match method {
        "GET" => item.get.as_mut(),
        "POST" => item.post.as_mut(),
        "PUT" => item.put.as_mut(),
        "PATCH" => item.patch.as_mut(),
        "DELETE" => item.delete.as_mut(),
        _ => None,
    }
}

/// A handler's doc comment is also its description; the problems stand among the answers.
fn leave_out_notes_for_programmers(operation: &mut Operation) {
    if let Some(description) = &mut operation.description
        && let Some(end) = description.find("# Errors")
    {
        description.truncate(end);
        description.truncate(description.trim_end().len());
    }
}

/// One answer for each status, which names the kinds that have it.
fn add_problems(operation: &mut Operation, call: &Call) {
    let mut by_status: BTreeMap<u16, Vec<&Kind>> = BTreeMap::new();
    for kind in call.problems.iter().copied().flatten().chain(ANY_CALL) {
        by_status.entry(kind.status).or_default().push(kind);
    }
    for (status, kinds) in by_status {
        let named: Vec<String> = kinds.iter().map(|kind| format!("`{}`: {}", kind.slug, kind.title)).collect();
        let content =
            ContentBuilder::new().schema(Some(Ref::from_schema_name(ProblemBody::name().into_owned()))).build();
        let answer = ResponseBuilder::new().description(named.join("; ")).content(MEDIA_TYPE, content).build();
        operation.responses.responses.insert(status.to_string(), RefOr::T(answer));
    }
}
