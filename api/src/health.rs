//! Whether the process lives, and whether it wants requests.

use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering};

use actix_web::http::header::CACHE_CONTROL;
use actix_web::{HttpResponse, web};
use serde::Serialize;
use utoipa::ToSchema;

use crate::problem::Problem;
use crate::problem::kinds::NOT_READY;
use crate::serving::node::Node;
use crate::serving::state::ServedReleases;

/// A switch: does this process want requests? It asks no other machine, so that the loss of one does not take the
/// service away as well.
#[derive(Clone, Debug, Default)]
pub struct Ready(Arc<AtomicBool>);

impl Ready {
    /// Turns the switch.
    pub fn set(&self, ready: bool) {
        self.0.store(ready, Ordering::Release);
    }

    /// Whether it is on.
    #[must_use]
    pub fn is_set(&self) -> bool {
        self.0.load(Ordering::Acquire)
    }
}

/// The state of the process.
#[derive(Debug, Serialize, ToSchema)]
pub struct HealthState {
    /// `live` or `ready`.
    #[schema(example = "ready")]
    status: &'static str,
    /// The version of the program.
    #[schema(example = "0.1.0")]
    version: &'static str,
    /// With a store: what of it is served, and what was refused.
    #[serde(skip_serializing_if = "Option::is_none")]
    releases: Option<ServedReleases>,
}

fn state(status: &'static str, releases: Option<ServedReleases>) -> HttpResponse {
    HttpResponse::Ok().insert_header((CACHE_CONTROL, "no-store")).json(HealthState {
        status,
        version: env!("CARGO_PKG_VERSION"),
        releases,
    })
}

/// Does the process live?
///
/// Answers as long as the process can answer at all. A supervisor restarts it when this fails.
#[utoipa::path(
    get, path = "/health/live", operation_id = "check_life", tag = "operation",
    responses((status = 200, description = "It lives.", body = HealthState,
        example = json!({"status": "live", "version": "0.1.0"})))
)]
pub async fn check_life() -> HttpResponse {
    state("live", None)
}

/// Does the process want requests?
///
/// A load balancer sends requests only to processes that are ready. No database is asked: a process that can answer
/// from memory is ready.
///
/// # Errors
/// The problem `not-ready` while the process starts or stops.
#[utoipa::path(
    get, path = "/health/ready", operation_id = "check_readiness", tag = "operation",
    responses((status = 200, description = "It does.", body = HealthState,
        example = json!({"status": "ready", "version": "0.1.0"})))
)]
pub async fn check_readiness(ready: web::Data<Ready>, node: web::Data<Option<Node>>) -> Result<HttpResponse, Problem> {
    let releases = node.as_ref().as_ref().and_then(|node| node.state.told());
    if ready.is_set() {
        Ok(state("ready", releases))
    } else {
        Err(Problem::new(NOT_READY, "try again in a few seconds"))
    }
}
