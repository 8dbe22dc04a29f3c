//! Runs a file of published values through the door of quantities.
//!
//! A file holds cases, each with quantity, inputs, expected value, tolerance and source. Files and the
//! records they name are read by the caller, so this stays free of input and output. Nothing is skipped:
//! a quantity that is not built, a tolerance that is not known or a record that cannot be read is a
//! failure with that reason.

mod compare;

use serde_json::Value;

use crate::quantity::{self, InputValue, Inputs, OutcomeValue};
use crate::units;

/// How many cases passed, and which failed.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Report {
    /// The number of cases that passed.
    pub passed: usize,
    /// The cases that did not, in the order of the file.
    pub failed: Vec<Failure>,
}

/// One case that did not pass.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
#[error("{id}: {quantity} should be {expected}, got {got}")]
pub struct Failure {
    /// The case's id.
    pub id: String,
    /// The quantity's name.
    pub quantity: String,
    /// The expected value with unit and tolerance.
    pub expected: String,
    /// The value reckoned, or the reason why there is none.
    pub got: String,
}

/// Why a file of checks could not be run at all.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum UnreadFile {
    /// Not JSON.
    #[error("file of checks is not JSON: {reason}")]
    NotJson {
        /// The parser's words, with line and column.
        reason: String,
    },
    /// No list of cases, or an empty one: an empty file would pass without checking anything.
    #[error("file of checks has no cases")]
    NoCases,
}

/// Runs every case of a file. `read_series` gives the text of a record for the path that a case names.
///
/// # Errors
/// [`UnreadFile`] when the file has no cases to run.
pub fn check(file_json: &str, read_series: &dyn Fn(&str) -> Result<String, String>) -> Result<Report, UnreadFile> {
    let file: Value =
        serde_json::from_str(file_json).map_err(|error| UnreadFile::NotJson { reason: error.to_string() })?;
    let cases = file.get("cases").and_then(Value::as_array).filter(|cases| !cases.is_empty());
    let mut report = Report::default();
    for case in cases.ok_or(UnreadFile::NoCases)? {
        match run(case, read_series) {
            Ok(()) => report.passed += 1,
            Err(got) => {
                let text = |name| case.get(name).and_then(Value::as_str).unwrap_or("(not named)").to_owned();
                let part = |name| case.get(name).map_or_else(String::new, Value::to_string);
                report.failed.push(Failure {
                    id: text("id"),
                    quantity: text("quantity"),
                    expected: format!("{} within {}", part("expected"), part("tolerance")),
                    got,
                });
            }
        }
    }
    Ok(report)
}

/// The error is what goes into [`Failure::got`].
fn run(case: &Value, read_series: &dyn Fn(&str) -> Result<String, String>) -> Result<(), String> {
    let name = case.get("quantity").and_then(Value::as_str).ok_or("no quantity named")?;
    let quantity = quantity::find(name).map_err(|error| error.to_string())?;
    let given = case.get("inputs").and_then(Value::as_object).ok_or("no inputs")?;
    let mut inputs = Inputs::new();
    for (name, input) in given {
        inputs = inputs.with(name.clone(), read_input(name, input, read_series)?);
    }
    let outcome = quantity.reckon(&inputs).map_err(|error| error.to_string())?;

    let expected = case.get("expected").ok_or("no expected value")?;
    let unit = expected.get("unit").and_then(Value::as_str).ok_or("no unit expected")?;
    let got = in_unit(outcome.value, &outcome.unit, unit)?.to_json();
    let tolerance = compare::Tolerance::read(case.get("tolerance"))?;
    let allowed = match (expected.get("value"), expected.get("any_of").and_then(Value::as_array)) {
        (Some(value), None) => vec![value],
        (None, Some(values)) if !values.is_empty() => values.iter().collect(),
        _ => return Err("neither one expected value nor a choice of them".to_owned()),
    };
    if allowed.iter().any(|value| tolerance.allows(value, &got)) { Ok(()) } else { Err(format!("{got} {unit}")) }
}

fn read_input(
    name: &str,
    input: &Value,
    read_series: &dyn Fn(&str) -> Result<String, String>,
) -> Result<InputValue, String> {
    let value = input.get("value").ok_or_else(|| format!("input `{name}` has no value"))?;
    // A remark in brackets is no part of the unit: `- (not adjusted)`.
    let unit = input.get("unit").and_then(Value::as_str);
    let unit = unit.map(|unit| unit.split(" (").next().unwrap_or(unit).to_owned().into());
    match value {
        Value::String(path) if name == "series" => read_series(path).map(|text| InputValue::Text(text.into())),
        Value::String(text) => Ok(InputValue::Text(text.clone().into())),
        Value::Number(number) => {
            let value = number.as_f64().ok_or_else(|| format!("input `{name}` is too long"))?;
            Ok(InputValue::Number { value, unit })
        }
        Value::Array(items) => {
            let values = items.iter().map(Value::as_f64).collect::<Option<Vec<_>>>();
            let values = values.ok_or_else(|| format!("input `{name}` is not a list of numbers"))?;
            Ok(InputValue::Numbers { values, unit })
        }
        _ => Err(format!("input `{name}` is neither number, text nor list")),
    }
}

/// Numbers are turned into the expected unit; words and named parts carry none.
fn in_unit(value: OutcomeValue, from: &str, to: &str) -> Result<OutcomeValue, String> {
    let turn = |number| units::convert_text(number, from, to).map_err(|fault| fault.to_string());
    match value {
        OutcomeValue::Number(number) => turn(number).map(OutcomeValue::Number),
        OutcomeValue::List(numbers) => numbers.into_iter().map(turn).collect::<Result<_, _>>().map(OutcomeValue::List),
        plain @ (OutcomeValue::Text(_)
        | OutcomeValue::Fields(_)
        | OutcomeValue::Rows(_)
        | OutcomeValue::Years(_)
        | OutcomeValue::Nothing) => Ok(plain),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde_json::json;

    fn one_case(quantity: &str, expected: &Value, tolerance: &Value) -> Report {
        let file = json!({"cases": [{
            "id": "one",
            "quantity": quantity,
            "inputs": {"temperature": {"value": 25, "unit": "C"}},
            "expected": expected,
            "tolerance": tolerance,
        }]});
        check(&file.to_string(), &|path| Err(format!("no record {path}"))).unwrap()
    }

    const QUANTITY: &str = "saturation_vapour_pressure";

    #[test]
    fn a_right_value_passes_and_a_wrong_one_fails() {
        // FAO-56 Annex 2 Table 2.3: 3.168 kPa at 25 C.
        let tolerance = json!({"kind": "abs", "value": 0.001});
        let right = json!({"value": 3.168, "unit": "kPa"});
        assert_eq!(one_case(QUANTITY, &right, &tolerance).passed, 1);
        let hectopascal = json!({"value": 31.68, "unit": "hPa"});
        assert_eq!(one_case(QUANTITY, &hectopascal, &json!({"kind": "rel", "value": 0.001})).passed, 1);
        let choice = json!({"any_of": [9.0, 3.168], "unit": "kPa"});
        assert_eq!(one_case(QUANTITY, &choice, &tolerance).passed, 1);

        let wrong = json!({"value": 3.2, "unit": "kPa"});
        let report = one_case(QUANTITY, &wrong, &tolerance);
        assert_eq!((report.passed, report.failed.len()), (0, 1));
        assert!(
            report.failed[0]
                .to_string()
                .starts_with("one: saturation_vapour_pressure should be {\"value\":3.2,\"unit\":\"kPa\"} within")
        );
    }

    #[test]
    fn what_cannot_be_checked_fails_with_its_reason() {
        let right = json!({"value": 3.168, "unit": "kPa"});
        let abs = json!({"kind": "abs", "value": 0.001});
        for (quantity, expected, tolerance, reason) in [
            ("wisdom", &right, &abs, "quantity `wisdom` is not known"),
            (QUANTITY, &right, &json!({"kind": "roughly"}), "tolerance `roughly` is not known"),
            (QUANTITY, &right, &json!({"kind": "abs"}), "tolerance has no value"),
            (QUANTITY, &right, &json!(null), "no tolerance"),
            (
                QUANTITY,
                &json!({"value": 3.168, "unit": "m"}),
                &abs,
                "`kPa` cannot be turned into `m`: they measure different things",
            ),
            (QUANTITY, &json!({"unit": "kPa"}), &abs, "neither one expected value nor a choice of them"),
        ] {
            let report = one_case(quantity, expected, tolerance);
            assert_eq!(report.failed[0].got, reason);
        }
    }

    #[test]
    fn a_file_without_cases_is_refused() {
        let none = |_: &str| Err(String::new());
        assert_eq!(check("{\"cases\": []}", &none), Err(UnreadFile::NoCases));
        assert_eq!(check("{}", &none), Err(UnreadFile::NoCases));
        assert!(matches!(check("{", &none), Err(UnreadFile::NotJson { .. })));
    }

    #[test]
    fn a_record_that_cannot_be_read_is_a_failure() {
        let file = json!({"cases": [{
            "id": "one",
            "quantity": "dd_sum_single_sine",
            "inputs": {"series": {"value": "gone.csv", "unit": "csv"}},
            "expected": {"value": 1, "unit": "C d"},
            "tolerance": {"kind": "exact"},
        }]});
        let report = check(&file.to_string(), &|path| Err(format!("no record {path}"))).unwrap();
        assert_eq!(report.failed[0].got, "no record gone.csv");
    }
}
