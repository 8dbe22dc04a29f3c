//! The named parts of a path.

use std::future::{Ready, ready};

use actix_web::dev::Payload;
use actix_web::{FromRequest, HttpRequest};
use percent_encoding::percent_decode_str;
use serde::de::DeserializeOwned;

use super::collect::{self, Leaves};
use super::reader::object_of;
use crate::problem::Problem;
use crate::problem::faults::Faults;
use crate::problem::kinds::BAD_PATH;
use crate::problem::pointer;

/// No name of this service is longer.
const LONGEST: usize = 200;

/// The named parts of the path, read as a `T` whose members have their names.
#[derive(Debug)]
pub struct PathParts<T>(pub T);

impl<T: DeserializeOwned> FromRequest for PathParts<T> {
    type Error = Problem;
    type Future = Ready<Result<Self, Problem>>;

    fn from_request(request: &HttpRequest, _: &mut Payload) -> Self::Future {
        ready(read(request).map(Self).map_err(|faults| Problem::invalid(BAD_PATH, faults.into_errors())))
    }
}

fn read<T: DeserializeOwned>(request: &HttpRequest) -> Result<T, Faults> {
    let mut faults = Faults::default();
    let mut parts = Vec::new();
    for (name, written) in request.match_info().iter() {
        // The router keeps bytes that would change the path (`%2F`, `%25`) as they were written.
        let part = percent_decode_str(written).decode_utf8_lossy();
        if part.len() > LONGEST {
            let detail = format!("expected at most {LONGEST} bytes, found {}", part.len());
            faults.add(pointer::below("", name), detail);
        } else if part.contains(|c: char| c.is_control() || c == char::REPLACEMENT_CHARACTER) {
            let detail = "expected text in UTF-8 without control characters";
            faults.add(pointer::below("", name), detail);
        } else {
            parts.push((name.to_owned(), part.into_owned()));
        }
    }
    if faults.is_empty() { collect::read(object_of(parts.into_iter()), Leaves::Texts) } else { Err(faults) }
}
