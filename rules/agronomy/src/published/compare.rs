//! Whether a value lies within a tolerance of the expected one.

use chrono::{DateTime, NaiveDate};
use serde_json::Value;

/// How far a value may be off.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Tolerance {
    /// Not at all.
    Exact,
    /// By this much in the expected unit; each element of a list.
    Abs(f64),
    /// By this share of the expected value.
    Rel(f64),
    /// Moments by so many minutes.
    Minutes(f64),
    /// Dates, or counts of days, by so many days.
    Days(f64),
}

impl Tolerance {
    pub(super) fn read(json: Option<&Value>) -> Result<Self, String> {
        let json = json.filter(|json| !json.is_null()).ok_or("no tolerance")?;
        let kind = json.get("kind").and_then(Value::as_str).ok_or("tolerance has no kind")?;
        if kind == "exact" {
            return Ok(Self::Exact);
        }
        let of = match kind {
            "abs" => Self::Abs,
            "rel" => Self::Rel,
            "minutes" => Self::Minutes,
            "days" => Self::Days,
            _ => return Err(format!("tolerance `{kind}` is not known")),
        };
        let value = json.get("value").and_then(Value::as_f64).filter(|value| *value >= 0.0);
        Ok(of(value.ok_or("tolerance has no value")?))
    }

    /// Lists must be as long as expected, objects must have the expected names and no others.
    pub(super) fn allows(self, expected: &Value, got: &Value) -> bool {
        match (expected, got) {
            (Value::Number(expected), Value::Number(got)) => {
                let (Some(expected), Some(got)) = (expected.as_f64(), got.as_f64()) else {
                    return false;
                };
                let off = (got - expected).abs();
                match self {
                    // Differences of unequal numbers are never nought, so this is equality.
                    Self::Exact => off <= 0.0,
                    Self::Abs(most) | Self::Days(most) => off <= most,
                    Self::Rel(share) => off <= share * expected.abs(),
                    Self::Minutes(_) => false,
                }
            }
            (Value::String(expected), Value::String(got)) => self.allows_text(expected, got),
            (Value::Array(expected), Value::Array(got)) => {
                expected.len() == got.len()
                    && expected.iter().zip(got).all(|(expected, got)| self.allows(expected, got))
            }
            (Value::Object(expected), Value::Object(got)) => {
                expected.len() == got.len()
                    && expected
                        .iter()
                        .all(|(name, expected)| got.get(name).is_some_and(|got| self.allows(expected, got)))
            }
            _ => expected == got,
        }
    }

    fn allows_text(self, expected: &str, got: &str) -> bool {
        match self {
            Self::Exact | Self::Abs(_) | Self::Rel(_) => expected == got,
            Self::Minutes(most) => {
                let moment = |text| DateTime::parse_from_rfc3339(text).ok();
                match (moment(expected), moment(got)) {
                    (Some(expected), Some(got)) => {
                        let seconds = (got - expected).num_seconds().unsigned_abs();
                        u32::try_from(seconds).is_ok_and(|s| f64::from(s) <= most * 60.0)
                    }
                    _ => false,
                }
            }
            Self::Days(most) => {
                let date = |text| NaiveDate::parse_from_str(text, "%Y-%m-%d").ok();
                match (date(expected), date(got)) {
                    (Some(expected), Some(got)) => {
                        let days = (got - expected).num_days().unsigned_abs();
                        u32::try_from(days).is_ok_and(|days| f64::from(days) <= most)
                    }
                    _ => false,
                }
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde_json::json;

    #[test]
    fn each_kind_allows_its_own_distance_and_no_more() {
        for (tolerance, expected, near, far) in [
            (json!({"kind": "exact"}), json!(2.5), json!(2.5), json!(2.500_000_1)),
            (json!({"kind": "abs", "value": 0.5}), json!(2), json!(2.5), json!(2.51)),
            (json!({"kind": "rel", "value": 0.1}), json!(-20), json!(-22), json!(-22.1)),
            (json!({"kind": "days", "value": 1}), json!("2026-02-28"), json!("2026-03-01"), json!("2026-03-02")),
            (json!({"kind": "days", "value": 1}), json!(7), json!(6), json!(9)),
            (
                json!({"kind": "minutes", "value": 2}),
                json!("2026-02-28T23:59:00Z"),
                json!("2026-03-01T00:01:00Z"),
                json!("2026-03-01T00:01:01Z"),
            ),
            (json!({"kind": "abs", "value": 0.1}), json!([1, 2]), json!([1.05, 1.95]), json!([1, 2, 3])),
            (json!({"kind": "abs", "value": 0.1}), json!({"a": 1}), json!({"a": 1.05}), json!({"a": 1, "b": 1})),
            (json!({"kind": "exact"}), json!("9a"), json!("9a"), json!("9b")),
            (json!({"kind": "abs", "value": 9}), json!(2), json!(2), json!("2")),
        ] {
            let read = Tolerance::read(Some(&tolerance)).unwrap();
            assert!(read.allows(&expected, &near), "{tolerance} {expected} {near}");
            assert!(!read.allows(&expected, &far), "{tolerance} {expected} {far}");
        }
    }

    #[test]
    fn a_value_that_is_not_a_number_is_never_allowed() {
        // JSON writes it as null.
        assert!(!Tolerance::Abs(9.0).allows(&json!(1), &json!(f64::NAN)));
    }
}
