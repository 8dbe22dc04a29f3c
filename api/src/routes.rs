//! Every HTTP call of the service.
//!
//! **To add one**: write its handler as an own file under `v1/<call>/`, named `<verb>_<noun>`, with
//! `#[utoipa::path(...)]` (tag, parameters, an example for the request body and for each 2xx answer; its problems stand
//! here, not there). Add a row below: method, path, handler, and the kinds of problem it can give beyond those of any
//! call. Then `LAMMAS_BLESS=1 cargo test -p lammas-tests --test contract` writes `openapi/openapi.json` anew, and the
//! other tests there walk this table and the document both ways.
//!
//! The table is all there is: it registers the handlers, answers 404 and 405 with `Allow`, and makes the document.

use actix_web::web::{self, ServiceConfig};
use actix_web::{HttpRequest, HttpResponse, Route};
use utoipa::OpenApi;

use crate::problem::Problem;
use crate::problem::kinds::{self, EDITOR, JSON_BODY, Kind, ONCE, QUESTION};
use crate::{health, openapi, pages, problem, v1};

/// One row: an HTTP call.
pub struct Call {
    /// `GET`, `POST`, `PUT`, `PATCH` or `DELETE`. A path that takes GET takes HEAD as well.
    pub method: &'static str,
    /// The path, with `{named}` parts.
    pub path: &'static str,
    /// The name of the handler and of the operation in the document.
    pub operation: &'static str,
    /// The kinds of problem it can give, beyond [`kinds::ANY_CALL`].
    pub problems: &'static [&'static [Kind]],
    /// Whether it stands in the OpenAPI document; pages for people do not.
    pub documented: bool,
    route: fn() -> Route,
}

macro_rules! calls {
    (
        documented { $($method:ident $path:literal $($part:ident)::+ => [$($kinds:expr),*];)* }
        pages { $($page_path:literal $($page:ident)::+;)* }
    ) => {
        /// Every call, in the order in which the router tries them.
        pub const CALLS: &[Call] = &[
            $(Call {
                method: stringify!($method),
                path: $path,
                operation: last_part!($($part)::+),
                problems: &[$($kinds),*],
                documented: true,
                route: || method_named(stringify!($method)).to($($part)::+),
            },)*
            $(Call {
                method: "GET",
                path: $page_path,
                operation: last_part!($($page)::+),
                problems: &[],
                documented: false,
                route: || web::get().to($($page)::+),
            },)*
        ];

        /// What the handlers say about themselves.
        #[derive(OpenApi)]
        #[openapi(paths($($($part)::+),*))]
        pub(crate) struct Described;
    };
}

macro_rules! last_part {
    ($last:ident) => { stringify!($last) };
    ($first:ident :: $($rest:ident)::+) => { last_part!($($rest)::+) };
}

calls! {
    documented {
        POST "/v1/advice" v1::advice::give::give_advice
            => [JSON_BODY, QUESTION, &[kinds::UNKNOWN_PLANT, kinds::UNKNOWN_RULE_SET]];
        GET "/v1/advice" v1::advice::get::get_advice
            => [&[kinds::BAD_QUERY, kinds::UNKNOWN_CLIMATE, kinds::UNKNOWN_PLANT, kinds::UNKNOWN_RULE_SET]];
        POST "/v1/replay" v1::replay::give::replay_advice
            => [JSON_BODY, QUESTION, &[kinds::UNKNOWN_PLANT, kinds::UNKNOWN_RULE_SET]];
        POST "/v1/season" v1::season::compute::compute_season => [JSON_BODY, QUESTION];
        GET "/v1/season" v1::season::get::get_season => [&[kinds::BAD_QUERY, kinds::UNKNOWN_CLIMATE]];
        POST "/v1/climate-profiles" v1::climate_profiles::make::make_climate_profile => [JSON_BODY, &[kinds::BAD_QUERY]];
        POST "/v1/diagnosis" v1::diagnosis::diagnose::diagnose_plant
            => [JSON_BODY, QUESTION, &[kinds::UNKNOWN_PLANT, kinds::UNKNOWN_RULE_SET]];
        GET "/v1/rules/{id}" v1::rules::read::get_rule
            => [&[kinds::BAD_QUERY, kinds::BAD_PATH, kinds::RULE_NOT_FOUND]];
        POST "/v1/rules/{id}/why-not" v1::rules::why_not::explain_absence
            => [JSON_BODY, QUESTION,
                &[kinds::BAD_PATH, kinds::RULE_NOT_FOUND, kinds::UNKNOWN_PLANT, kinds::UNKNOWN_RULE_SET]];
        GET "/v1/plants" v1::vocabulary::plants::list_plants => [&[kinds::BAD_QUERY]];
        GET "/v1/signs" v1::vocabulary::signs::list_signs => [&[kinds::BAD_QUERY]];
        GET "/v1/facts" v1::vocabulary::facts::list_facts => [&[kinds::BAD_QUERY]];
        GET "/v1/jobs" v1::vocabulary::jobs::list_jobs => [&[kinds::BAD_QUERY]];
        GET "/v1/materials" v1::vocabulary::materials::list_materials => [&[kinds::BAD_QUERY]];
        GET "/v1/problems" v1::vocabulary::problems::list_problems => [&[kinds::BAD_QUERY]];
        GET "/v1/sources" v1::vocabulary::sources::list_sources => [&[kinds::BAD_QUERY]];
        GET "/v1/climates" v1::vocabulary::climates::list_climates => [&[kinds::BAD_QUERY]];
        GET "/v1/climates/{id}" v1::vocabulary::climates::get_climate
            => [&[kinds::BAD_QUERY, kinds::BAD_PATH, kinds::CLIMATE_NOT_FOUND]];
        GET "/v1/quantities" v1::quantities::list::list_quantities => [&[kinds::BAD_QUERY]];
        POST "/v1/quantities/{name}" v1::quantities::reckon::reckon_quantity
            => [JSON_BODY, &[kinds::BAD_PATH, kinds::UNKNOWN_QUANTITY]];
        POST "/v1/editor/drafts" v1::editor::drafts::import_draft => [EDITOR, ONCE, JSON_BODY];
        GET "/v1/editor/drafts/{id}" v1::editor::drafts::get_draft
            => [EDITOR, &[kinds::BAD_PATH, kinds::NOT_IN_STORE]];
        PUT "/v1/editor/drafts/{id}" v1::editor::drafts::change_draft
            => [EDITOR, JSON_BODY,
                &[kinds::BAD_PATH, kinds::NOT_IN_STORE, kinds::MATCH_NEEDED, kinds::CHANGED_MEANWHILE]];
        POST "/v1/editor/drafts/{id}/check" v1::editor::drafts::check_draft
            => [EDITOR, &[kinds::BAD_PATH, kinds::NOT_IN_STORE]];
        POST "/v1/editor/drafts/{id}/publish" v1::editor::release::publish_draft
            => [EDITOR, ONCE, JSON_BODY,
                &[kinds::BAD_PATH, kinds::NOT_IN_STORE, kinds::MATCH_NEEDED, kinds::CHANGED_MEANWHILE,
                  kinds::NOT_PUBLISHABLE]];
        GET "/v1/editor/releases" v1::editor::release::list_releases => [EDITOR];
        POST "/v1/editor/rule-sets/{name}/undo" v1::editor::release::undo_release
            => [EDITOR, ONCE, JSON_BODY,
                &[kinds::BAD_PATH, kinds::CHANGED_MEANWHILE, kinds::NOT_PUBLISHABLE]];
        POST "/v1/editor/rule-sets/{name}/hold-back" v1::editor::hold_back::hold_back
            => [EDITOR, ONCE, JSON_BODY, &[kinds::BAD_PATH, kinds::NOT_IN_STORE, kinds::NOT_PUBLISHABLE]];
        GET "/problems/{slug}" problem::describe::describe_problem => [&[kinds::BAD_PATH, kinds::UNKNOWN_PROBLEM]];
        GET "/openapi.json" openapi::serve::get_document => [];
        GET "/health/live" health::check_life => [];
        GET "/health/ready" health::check_readiness => [&[kinds::NOT_READY]];
    }
    pages {
        "/" pages::home::show_home;
        "/home/{file}" pages::home::show_home_file;
        "/docs" pages::docs::show_docs_at_slash;
        "/docs/" pages::docs::show_docs;
        "/docs/{file}" pages::docs::show_docs_file;
    }
}

/// Registers every call of the table.
pub(crate) fn register(config: &mut ServiceConfig) {
    for path in paths() {
        let mut resource = web::resource(path);
        for call in CALLS.iter().filter(|call| call.path == path) {
            resource = resource.route((call.route)());
        }
        let allow = allowed(path);
        let wrong_method = move |request: HttpRequest| {
            let problem = Problem::method_not_allowed(request.method().as_str(), &allow);
            async move { Err::<HttpResponse, Problem>(problem) }
        };
        config.service(resource.default_service(web::to(wrong_method)));
    }
}

/// The answer at every path that is not in the table.
pub(crate) fn unknown_path() -> Route {
    web::to(|| async {
        let detail = "see `/openapi.json` for the paths that are served, or `/docs/` to read about them";
        Err::<HttpResponse, Problem>(Problem::new(kinds::UNKNOWN_PATH, detail))
    })
}

/// Every path once, in the order of the table.
pub fn paths() -> impl Iterator<Item = &'static str> {
    CALLS
        .iter()
        .enumerate()
        .filter(|(row, call)| CALLS.iter().take(*row).all(|other| other.path != call.path))
        .map(|(_, call)| call.path)
}

/// The value of `Allow` at a path.
#[must_use]
pub fn allowed(path: &str) -> String {
    let methods = CALLS.iter().filter(|call| call.path == path).flat_map(|call| match call.method {
        "GET" => vec!["GET", "HEAD"],
        other => vec![other],
    });
    methods.collect::<Vec<_>>().join(", ")
}

fn method_named(name: &str) -> Route {
    match name {
        "GET" => web::get(),
        "PUT" => web::put(),
        "PATCH" => web::patch(),
        "DELETE" => web::delete(),
        _ => web::post(),
    }
}
