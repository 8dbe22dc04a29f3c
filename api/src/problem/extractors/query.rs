//! The query of a request.

use std::future::{Ready, ready};

use actix_web::dev::Payload;
use actix_web::{FromRequest, HttpRequest};
use serde::de::DeserializeOwned;

use super::collect::{self, Leaves};
use super::reader::object_of;
use crate::problem::Problem;
use crate::problem::kinds::BAD_QUERY;

/// The query, read as a `T`. A parameter given twice is a list; one that `T` does not know is refused.
#[derive(Debug)]
pub struct Query<T>(pub T);

impl<T: DeserializeOwned> FromRequest for Query<T> {
    type Error = Problem;
    type Future = Ready<Result<Self, Problem>>;

    fn from_request(request: &HttpRequest, _: &mut Payload) -> Self::Future {
        let pairs = form_urlencoded::parse(request.query_string().as_bytes());
        let value = object_of(pairs.map(|(name, text)| (name.into_owned(), text.into_owned())));
        ready(
            collect::read(value, Leaves::Texts)
                .map(Self)
                .map_err(|faults| Problem::invalid(BAD_QUERY, faults.into_errors())),
        )
    }
}
