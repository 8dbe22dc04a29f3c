//! Every place of a value that does not fit its type.
//!
//! Reading stops at the first misfit. So the misfit is noted, taken out of a copy of the value, and the rest is read
//! again, until it fits or nothing is left. What only fails because something was taken out of it is our own doing
//! and is taken out as well, unnoted.

use serde::de::DeserializeOwned;
use serde_json::Value;

use super::reader::Reader;
use crate::problem::faults::{Faults, MOST};
use crate::problem::pointer::{self, Step};
use crate::problem::wording::Misfit;

/// Whether the leaves of the value are JSON's own or texts.
#[derive(Clone, Copy)]
pub(super) enum Leaves {
    Json,
    Texts,
}

/// The value as a `T`, or all that is wrong with it (at most [`MOST`] places).
pub(super) fn read<T: DeserializeOwned>(mut value: Value, leaves: Leaves) -> Result<T, Faults> {
    let mut faults = Faults::default();
    let mut removed: Vec<Vec<Step>> = Vec::new();
    // Every round takes a value out, so it ends; the cap is for hostile bodies.
    for _ in 0..2 * MOST {
        let reader = match leaves {
            Leaves::Json => Reader::json(&value),
            Leaves::Texts => Reader::text(&value),
        };
        let error = match serde_path_to_error::deserialize::<_, T>(reader) {
            Ok(read) if removed.is_empty() => return Ok(read),
            Ok(_) => break,
            Err(error) => error,
        };
        let here = pointer::steps(error.path());
        let there = as_sent(&here, &removed);
        let misfit = error.into_inner();
        if !is_our_doing(&there, &misfit, &removed) {
            let at = match &misfit {
                Misfit::Missing(name) => pointer::below(&pointer::written(&there), name),
                _ => pointer::written(&there),
            };
            faults.add(at, misfit.to_string());
        }
        if here.is_empty() || !take_out(&mut value, &here) {
            break;
        }
        removed.push(there);
    }
    Err(faults)
}

/// A misfit of something from which we took a part: a list is too short, a member is missing.
fn is_our_doing(there: &[Step], misfit: &Misfit, removed: &[Vec<Step>]) -> bool {
    let inside = |path: &&Vec<Step>| path.len() > there.len() && path.starts_with(there);
    match misfit {
        Misfit::Missing(name) => {
            removed.iter().filter(inside).any(|path| path.get(there.len()) == Some(&Step::Key((*name).to_owned())))
        }
        _ => removed.iter().any(|path| inside(&path)),
    }
}

/// Undoes the shift of list places that taking entries out has brought.
fn as_sent(here: &[Step], removed: &[Vec<Step>]) -> Vec<Step> {
    let mut there: Vec<Step> = Vec::new();
    for step in here {
        let step = match step {
            Step::Key(key) => Step::Key(key.clone()),
            Step::Index(index) => {
                let mut gone: Vec<usize> = removed
                    .iter()
                    .filter(|path| path.len() == there.len() + 1 && path.starts_with(&there))
                    .filter_map(|path| match path.last() {
                        Some(Step::Index(index)) => Some(*index),
                        _ => None,
                    })
                    .collect();
                gone.sort_unstable();
                Step::Index(gone.into_iter().fold(*index, |at, gone| if gone <= at { at + 1 } else { at }))
            }
        };
        there.push(step);
    }
    there
}

fn take_out(value: &mut Value, steps: &[Step]) -> bool {
    let Some((last, parents)) = steps.split_last() else {
        return false;
    };
    let mut at = value;
    for step in parents {
        let next = match (at, step) {
            (Value::Object(object), Step::Key(key)) => object.get_mut(key),
            (Value::Array(list), Step::Index(index)) => list.get_mut(*index),
            _ => None,
        };
        match next {
            Some(next) => at = next,
            None => return false,
        }
    }
    match (at, last) {
        (Value::Object(object), Step::Key(key)) => object.shift_remove(key).is_some(),
        (Value::Array(list), Step::Index(index)) if *index < list.len() => {
            list.remove(*index);
            true
        }
        _ => false,
    }
}

#[cfg(test)]
mod tests {
    use serde::Deserialize;
    use serde_json::json;

    use super::*;

    #[derive(Debug, Deserialize)]
    #[serde(deny_unknown_fields)]
    #[expect(dead_code, reason = "only its shape is read")]
    struct Bed {
        name: String,
        depth: f64,
        rain: Option<[f64; 3]>,
        #[serde(default)]
        rows: Vec<Row>,
    }

    #[derive(Debug, Deserialize)]
    #[serde(deny_unknown_fields)]
    #[expect(dead_code, reason = "only its shape is read")]
    struct Row {
        crop: String,
        open: Option<bool>,
    }

    fn errors(value: Value) -> Vec<(String, String)> {
        let faults = read::<Bed>(value, Leaves::Json).expect_err("does not fit");
        faults.into_errors().into_iter().map(|e| (e.pointer, e.detail)).collect()
    }

    fn said(rows: &[(&str, &str)]) -> Vec<(String, String)> {
        rows.iter().map(|(at, detail)| ((*at).to_owned(), (*detail).to_owned())).collect()
    }

    #[test]
    fn everything_that_is_wrong_is_said_at_once() {
        let bed = json!({"nme": "north", "name": "north", "depth": "deep", "rain": [1, "x", "y"],
            "rows": [{"crop": 1}, {"crop": "leek", "open": "no"}, {"crop": 2}, {"kind": 0}]});
        assert_eq!(
            errors(bed),
            said(&[
                ("/nme", "unknown field `nme`, did you mean `name`?"),
                ("/depth", "expected a number, found the text `deep`"),
                ("/rain/1", "expected a number, found the text `x`"),
                ("/rain/2", "expected a number, found the text `y`"),
                ("/rows/0/crop", "expected text, found `1`"),
                ("/rows/1/open", "expected `true` or `false`, found the text `no`"),
                ("/rows/2/crop", "expected text, found `2`"),
                ("/rows/3/kind", "unknown field `kind`, expected one of `crop`, `open`"),
                ("/rows/3/crop", "missing field `crop`"),
            ])
        );
    }

    #[test]
    fn a_missing_member_is_pointed_at_where_it_should_stand() {
        assert_eq!(errors(json!({"name": "north"})), said(&[("/depth", "missing field `depth`")]));
    }

    #[test]
    fn a_list_is_not_taken_for_an_object() {
        assert_eq!(
            errors(json!({"name": "north", "depth": 1, "rows": [["leek", true]]})),
            said(&[("/rows/0", "expected an object, found a list")])
        );
        assert_eq!(errors(json!([])), said(&[("", "expected an object, found a list")]));
    }

    #[test]
    fn a_list_of_the_wrong_length_is_said_to_be_so() {
        assert_eq!(
            errors(json!({"name": "north", "depth": 1, "rain": [1, 2]})),
            said(&[("/rain", "expected a list of 3 entries, found 2 entries")])
        );
    }
}
