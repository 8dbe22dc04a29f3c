//! `POST /v1/advice`.

use actix_web::web::Data;
use actix_web::{HttpRequest, HttpResponse};

use super::answer::AdviceAnswer;
use super::request::AdviceRequest;
use super::{example, reply};
use crate::problem::Problem;
use crate::problem::extractors::Body;
use crate::sets::rules::Rules;
use crate::v1::language;
use crate::v1::question::today;
use crate::v1::sent::{self, Keep};

/// What should be done now?
///
/// Tasks in the order in which to do them, each with what to check first, how much, how long to wait between works,
/// and why; what is held back and until when; what hangs on facts that were not given, and what to ask next. The
/// decision is the same for the same question and the same rule sets, for ever. Nothing of the question is kept.
///
/// # Errors
/// Those of any JSON body, and of what it names.
#[utoipa::path(
    post, path = "/v1/advice", operation_id = "give_advice", tag = "advice",
    request_body(content = AdviceRequest, description = "The question.", example = json!(example::request())),
    responses((status = 200, description = "The advice.", body = AdviceAnswer, example = json!(example::answer())))
)]
pub async fn give_advice(
    request: HttpRequest,
    Body(asked): Body<AdviceRequest>,
    rules: Data<Rules>,
) -> Result<HttpResponse, Problem> {
    let said = reply::to(asked, language::accepted(&request), &rules, today::now())?;
    Ok(sent::hashed(&request, said.text, &said.sha256, said.language, Keep::No))
}
