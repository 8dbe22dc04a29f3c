//! `POST /v1/quantities/{name}`.

use std::borrow::Cow;
use std::collections::BTreeSet;

use actix_web::web::Json;
use lammas_agronomy::quantity::{self, Outcome, Quantity, QuantityError};
use serde::{Deserialize, Serialize};
use serde_json::{Map, Value};
use utoipa::ToSchema;

use crate::problem::Problem;
use crate::problem::extractors::{Body, PathParts};
use crate::problem::faults::Faults;
use crate::problem::kinds::{INVALID_REQUEST, UNKNOWN_QUANTITY};
use crate::problem::pointer;

/// Which quantity.
#[derive(Debug, Deserialize, utoipa::IntoParams)]
#[into_params(parameter_in = Path)]
pub struct QuantityName {
    /// The quantity's name.
    #[param(example = "et0_hs", pattern = "^[a-z0-9_]+$", max_length = 100)]
    name: String,
}

/// The inputs of a quantity.
#[derive(Debug, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct ReckonRequest {
    /// Each input by its name.
    #[schema(value_type = std::collections::BTreeMap<String, ReckonInput>)]
    inputs: Map<String, Value>,
}

/// An input: a value with its unit, or a bare value, which is read in the unit that the quantity declares.
// Only described here: the registry of quantities reads inputs itself, and names the wrong ones.
#[derive(Debug, ToSchema)]
#[schema(as = ReckonInput)]
#[serde(untagged)]
pub enum ReckonInput {
    /// A value with its unit.
    Measured(ReckonMeasured),
    /// A bare value.
    Bare(ReckonValue),
}

/// A value with its unit.
#[derive(Debug, ToSchema)]
#[expect(dead_code, reason = "only described here")]
#[serde(deny_unknown_fields)]
pub struct ReckonMeasured {
    /// The value.
    value: ReckonValue,
    /// Its unit, such as `deg`, `C`, `F` or `mm/d`; when left out, the one that the quantity declares.
    unit: Option<String>,
}

/// A number, numbers in order, a word, a date, or yes or no.
#[derive(Debug, ToSchema)]
#[serde(untagged)]
pub enum ReckonValue {
    /// A number.
    Number(f64),
    /// Numbers in order.
    Numbers(Vec<f64>),
    /// A word, a date, or a daily record.
    Text(String),
    /// Yes or no.
    Truth(bool),
}

/// What came out.
#[derive(Debug, Serialize, ToSchema)]
pub struct ReckonAnswer {
    /// The quantity's name.
    quantity: &'static str,
    /// A number, a word, numbers in order, or named parts.
    value: Value,
    /// The unit of the value; `-` for a bare number or a word.
    #[schema(value_type = String)]
    unit: Cow<'static, str>,
    /// What was assumed or held at a limit.
    notes: Vec<String>,
    /// How it was reckoned.
    method: &'static str,
    /// Where the method comes from, with its equation or table.
    source: &'static str,
}

impl From<Outcome> for ReckonAnswer {
    fn from(outcome: Outcome) -> Self {
        let value = outcome.value.to_json();
        let Outcome { quantity, unit, notes, method, source, .. } = outcome;
        Self { quantity, value, unit, notes, method, source }
    }
}

/// Reckon a quantity
///
/// Inputs may come in any unit that measures the right thing; the answer says the unit, the method and its source.
///
/// # Errors
/// The problems `unknown-quantity` and `invalid-request`.
#[utoipa::path(
    post, path = "/v1/quantities/{name}", operation_id = "reckon_quantity", tag = "quantities", params(QuantityName),
    // FAO-56, example 20, last line: 5.0 mm a day.
    request_body(content = ReckonRequest, description = "The inputs.", example = json!({"inputs": {
        "latitude": {"value": 45.72, "unit": "deg"}, "day_of_year": 196, "tmin": {"value": 14.8, "unit": "C"}, "tmax": 26.6
    }})),
    responses((status = 200, description = "The value.", body = ReckonAnswer, example = json!({
        "quantity": "et0_hs", "value": 5.033_028_402_788_133, "unit": "mm/d", "notes": [],
        "method": "Hargreaves-Samani with a latent heat of 2.45 MJ/kg", "source": "FAO-56 equation 52"
    })))
)]
pub async fn reckon_quantity(
    PathParts(asked): PathParts<QuantityName>,
    Body(request): Body<ReckonRequest>,
) -> Result<Json<ReckonAnswer>, Problem> {
    let quantity =
        quantity::find(&asked.name).map_err(|unknown| Problem::new(UNKNOWN_QUANTITY, unknown.to_string()))?;
    match quantity.reckon_json(&Value::Object(request.inputs.clone())) {
        Ok(outcome) => Ok(Json(outcome.into())),
        Err(first) => Err(Problem::invalid(INVALID_REQUEST, all_wrong(quantity, request.inputs, first).into_errors())),
    }
}

/// Reckoning stops at the first wrong input. It is noted and taken out, and the rest is tried again.
fn all_wrong(quantity: &'static Quantity, mut inputs: Map<String, Value>, first: QuantityError) -> Faults {
    let mut faults = Faults::default();
    let mut removed = BTreeSet::new();
    let mut error = first;
    loop {
        if let QuantityError::MissingInput { .. } = error {
            for input in quantity.inputs.iter().filter(|input| input.required) {
                if !inputs.contains_key(input.name) && !removed.contains(input.name) {
                    let missing = QuantityError::MissingInput {
                        quantity: quantity.name,
                        field: input.name,
                        expected: input.expected(),
                    };
                    faults.add(pointer::below("/inputs", input.name), missing.to_string());
                }
            }
            return faults;
        }
        // Inputs that only do not go together may do so once the wrong ones are right.
        if removed.is_empty() || !matches!(error, QuantityError::Refused { .. }) {
            let at = error.field().map_or_else(|| "/inputs".to_owned(), |field| pointer::below("/inputs", field));
            faults.add(at, error.to_string());
        }
        let Some(field) = error.field().map(str::to_owned) else {
            return faults;
        };
        if inputs.shift_remove(&field).is_none() {
            return faults;
        }
        removed.insert(field);
        match quantity.reckon_json(&Value::Object(inputs.clone())) {
            Ok(_) => return faults,
            Err(next) => error = next,
        }
    }
}
