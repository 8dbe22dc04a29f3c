//! Inputs as they are typed: `tmin=14.8`, `tmax='80 F'`, `texture=clay-loam`, `series=@record.csv`.

use std::borrow::Cow;

use lammas_agronomy::quantity::{InputValue, Inputs};

use super::exit::BadInput;
use super::source;

/// The inputs of `input=value` pairs; `@` before a value names a file that holds it.
///
/// # Errors
/// [`BadInput`] for an argument without `=`, or a file that cannot be read.
pub(super) fn inputs(given: &[String]) -> Result<Inputs, BadInput> {
    given.iter().try_fold(Inputs::new(), |inputs, pair| {
        let (name, text) =
            pair.split_once('=').ok_or_else(|| BadInput(format!("expected `input=value`, found `{pair}`")))?;
        let value = match text.trim().strip_prefix('@') {
            Some(path) => InputValue::Text(source::text(path)?.into()),
            None => read_value(text.trim()),
        };
        Ok(inputs.with(name.trim().to_owned(), value))
    })
}

/// `14.8`, `14.8 C`, `14.8C`, `1,2,3 mm`, or a word.
fn read_value(text: &str) -> InputValue {
    let end = text.find(|c: char| !(c.is_ascii_digit() || "+-.,eE ".contains(c))).unwrap_or(text.len());
    // An `e` may be the power of ten or the beginning of a unit, so the longest reading that works is taken.
    let cuts = text.char_indices().map(|(at, _)| at).filter(|at| *at <= end).chain([text.len()]);
    for cut in cuts.collect::<Vec<_>>().into_iter().rev() {
        let (numbers, unit) = text.split_at(cut);
        let unit = Some(unit.trim()).filter(|unit| !unit.is_empty());
        // What follows a number is a unit only if it does not go on like a number or a date.
        if unit.is_some_and(|u| u.starts_with(|c: char| c.is_ascii_digit() || "-+.,:".contains(c))) {
            continue;
        }
        let read: Option<Vec<f64>> =
            numbers.split(',').map(|n| n.trim().parse().ok().filter(|n: &f64| n.is_finite())).collect();
        match read.as_deref() {
            Some([value]) => {
                return InputValue::Number { value: *value, unit: owned(unit) };
            }
            Some([_, ..]) => {
                return InputValue::Numbers { values: read.unwrap_or_default(), unit: owned(unit) };
            }
            _ => {}
        }
    }
    InputValue::Text(text.to_owned().into())
}

fn owned(unit: Option<&str>) -> Option<Cow<'static, str>> {
    unit.map(|unit| unit.to_owned().into())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_file_that_cannot_be_read_is_named() {
        let refused = inputs(&["series=@no/such/record.csv".to_owned()]).unwrap_err();
        assert!(refused.to_string().starts_with("cannot read `no/such/record.csv`"), "{refused}");
    }

    fn number(value: f64, unit: Option<&str>) -> InputValue {
        InputValue::Number { value, unit: owned(unit) }
    }

    #[test]
    fn a_value_is_read_as_people_write_it() {
        for (text, read) in [
            ("14.8", number(14.8, None)),
            ("-3.5 C", number(-3.5, Some("C"))),
            ("80F", number(80.0, Some("F"))),
            ("1e3 mm", number(1000.0, Some("mm"))),
            ("5 mm/d", number(5.0, Some("mm/d"))),
            ("1, 2,3 d", InputValue::Numbers { values: vec![1.0, 2.0, 3.0], unit: Some("d".into()) }),
            ("clay-loam", InputValue::Text("clay-loam".into())),
            ("2026-03-01", InputValue::Text("2026-03-01".into())),
            ("2026-03-01T12:00:00Z", InputValue::Text("2026-03-01T12:00:00Z".into())),
            ("tomato, large", InputValue::Text("tomato, large".into())),
            ("", InputValue::Text("".into())),
        ] {
            assert_eq!(read_value(text), read, "{text}");
        }
    }
}
