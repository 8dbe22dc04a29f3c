//! The profile of a place that differs from a registered climate, to be kept.

use std::io::Write;

use anyhow::Result;
use lammas_engine::question::profile_said;
use lammas_engine::question::said::ClimateSaid;

use super::table;
use crate::cli::exit::BadInput;
use crate::cli::packs::Packs;
use crate::cli::{differing, request};
use crate::problem::faults::Faults;
use crate::problem::kinds::INVALID_REQUEST;
use crate::v1::climate_differences::ClimateDiffering;
use crate::v1::question::choices::Language;
use crate::v1::question::climate::ClimateGiven;
use crate::v1::question::place::{self, When};
use crate::v1::question::today;

/// Prints it: JSON as a question takes it, or for people with the markers that moved.
///
/// # Errors
/// [`BadInput`]: a climate that is not registered, a difference that can't be.
pub(super) fn run(
    id: &str,
    differ: &[String],
    packs: Packs,
    language: Language,
    json: bool,
    out: &mut dyn Write,
) -> Result<()> {
    let differences = request::differences(differ)?;
    let rules = packs.load()?;
    let given = ClimateGiven { id: Some(id.to_owned()), differences, ..ClimateGiven::default() };
    let mut faults = Faults::default();
    given.check("/climate", &mut faults);
    let when = When { date: None, now: today::now() };
    let place = place::find(&ClimateSaid::from(given), false, when, &rules, &rules.set(), &mut faults);
    faults.or_problem(INVALID_REQUEST).map_err(|problem| request::refused(id, &problem))?;
    let Some(place) = place else { return Err(BadInput(format!("`{id}` can't be used")).into()) };
    let climate = ClimateGiven::from(profile_said::said(&place.climate.profile));
    if json {
        writeln!(out, "{}", serde_json::to_string(&climate)?)?;
        return Ok(());
    }
    let mut text = format!("{id}\n");
    let every = lammas_agronomy::marker::Marker::FIXED;
    if let Some(shown) = lammas_engine::explain::differing::shown(&place.climate, &every, language.word()) {
        let shown: ClimateDiffering = serde_json::from_value(serde_json::to_value(shown)?)?;
        text += &differing::shown(&shown, language);
    }
    table::months(&climate, language, &mut text);
    table::frost(&climate, None, language, &mut text);
    out.write_all(text.as_bytes())?;
    Ok(())
}

#[cfg(test)]
mod tests {
    use serde_json::{Value, json};

    use super::*;
    use crate::v1::season::compute;

    fn kept(id: &str, differ: &[&str]) -> Result<Vec<u8>> {
        let differ: Vec<String> = differ.iter().map(|typed| (*typed).to_owned()).collect();
        let mut out = Vec::new();
        run(id, &differ, Packs::default(), Language::En, true, &mut out)?;
        Ok(out)
    }

    #[test]
    fn a_profile_that_was_kept_is_the_climate_that_differs() {
        let kept: Value =
            serde_json::from_slice(&kept("cold-inland", &["nights=-2", "first-frost=-21"]).unwrap()).unwrap();
        let rules = Packs::default().load().unwrap();
        let sha256 = |climate: &Value| {
            let asked = serde_json::from_value(json!({"climate": climate, "date": "2026-09-15"})).unwrap();
            let said = compute::find(asked, None, &rules, today::now()).unwrap().json().unwrap();
            serde_json::from_str::<Value>(&said).unwrap()["climate_sha256"].clone()
        };
        let differences = json!({"nights_k": -2.0, "first_frost_days": -21});
        let asked = json!({"id": "cold-inland", "differences": differences});
        assert_eq!(sha256(&kept), sha256(&asked));
        assert_ne!(sha256(&kept), sha256(&json!({"id": "cold-inland"})));
    }

    #[test]
    fn what_can_not_be_kept_is_named() {
        let words = |id: &str, differ: &[&str]| kept(id, differ).unwrap_err().to_string();
        assert!(words("cold-inlan", &[]).contains("did you mean `cold-inland`"));
        assert!(words("cold-inland", &["nights=-40"]).contains("/climate/differences/nights_k"));
        let both = words("cold-inland", &["winters=1", "roof", "roof"]);
        assert!(both.contains("`winters=1`") && both.contains("`roof` stands twice"), "{both}");
    }
}
