//! In what a place differs from a climate, as gardeners say it: in a request, in an address, on the command line.

use lammas_agronomy::profile::Differences;
use lammas_engine::question::said::DifferencesSaid;
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

use crate::problem::clipped;
use crate::problem::faults::Faults;

/// The words of [`ClimateDifferences::take`], for whoever writes them.
pub(crate) const WORDS: &str = "nights=K, afternoons=K, summer-afternoons=K, last-frost=DAYS, first-frost=DAYS, \
    frost-pocket, warm-wall, roof";

/// In what a place differs from the climate beside it. What is left out is as there. Frost dates that were given or counted
/// bend with the nights and still win over reckoned ones; stated days win over that. `observations` and `forecast` are taken
/// as those of the climate and differ likewise.
#[derive(Clone, Copy, Debug, Default, PartialEq, Deserialize, Serialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct ClimateDifferences {
    /// Nights all year, K: -2 is two degrees colder.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(minimum = -15, maximum = 15)]
    pub nights_k: Option<f64>,
    /// Afternoons all year, K.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(minimum = -15, maximum = 15)]
    pub afternoons_k: Option<f64>,
    /// Afternoons of summer, K: whole in the warmest part of the year, nothing in the coldest.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(minimum = -15, maximum = 15)]
    pub summer_afternoons_k: Option<f64>,
    /// The last frosts, days: -7 is a week earlier.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(minimum = -90, maximum = 90)]
    pub last_frost_days: Option<i16>,
    /// The first frosts, days: -21 is three weeks earlier.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(minimum = -90, maximum = 90)]
    pub first_frost_days: Option<i16>,
    /// Whether cold air gathers: nights 2 K colder.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub frost_pocket: Option<bool>,
    /// Whether it is before a wall in the sun: nights 1 K, afternoons 1.5 K warmer.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub warm_wall: Option<bool>,
    /// Whether it is on a roof: summer afternoons 2 K warmer, wind half as strong again where it is known.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub roof: Option<bool>,
}

impl ClimateDifferences {
    /// What is out of range.
    pub(crate) fn check(&self, at: &str, faults: &mut Faults) {
        let days = |days: Option<i16>| days.map(f64::from);
        for (name, value, limits) in [
            ("nights_k", self.nights_k, Differences::TEMPERATURE),
            ("afternoons_k", self.afternoons_k, Differences::TEMPERATURE),
            ("summer_afternoons_k", self.summer_afternoons_k, Differences::TEMPERATURE),
            ("last_frost_days", days(self.last_frost_days), Differences::DAYS),
            ("first_frost_days", days(self.first_frost_days), Differences::DAYS),
        ] {
            faults.in_range(at, name, value, (limits.min, limits.max), limits.unit);
        }
    }

    /// Takes a difference as it is typed: `nights=-2`, `first-frost=-21`, `frost-pocket`. The names of a request are
    /// understood too, and a colon for the sign of equality.
    ///
    /// # Errors
    /// In words: no such difference, one that was taken already, no number.
    pub(crate) fn take(&mut self, typed: &str) -> Result<(), String> {
        let (name, value) = match typed.split_once(['=', ':']) {
            Some((name, value)) => (name, Some(value.trim())),
            None => (typed, None),
        };
        let name = name.trim().to_lowercase().replace('_', "-");
        let name = name.trim_end_matches("-k").trim_end_matches("-days");
        match name {
            "nights" => set(&mut self.nights_k, typed, kelvin(typed, value)?),
            "afternoons" => set(&mut self.afternoons_k, typed, kelvin(typed, value)?),
            "summer-afternoons" => set(&mut self.summer_afternoons_k, typed, kelvin(typed, value)?),
            "last-frost" => set(&mut self.last_frost_days, typed, days(typed, value)?),
            "first-frost" => set(&mut self.first_frost_days, typed, days(typed, value)?),
            "frost-pocket" => set(&mut self.frost_pocket, typed, yes(typed, value)?),
            "warm-wall" => set(&mut self.warm_wall, typed, yes(typed, value)?),
            "roof" => set(&mut self.roof, typed, yes(typed, value)?),
            _ => Err(format!("unknown difference `{}`, expected one of {WORDS}", clipped(typed))),
        }
    }
}

fn set<T>(place: &mut Option<T>, typed: &str, value: T) -> Result<(), String> {
    match place.replace(value) {
        None => Ok(()),
        Some(_) => Err(format!("the difference `{}` stands twice", clipped(typed))),
    }
}

fn kelvin(typed: &str, value: Option<&str>) -> Result<f64, String> {
    let number = value.and_then(|value| value.parse().ok()).filter(|number: &f64| number.is_finite());
    number.ok_or_else(|| {
        format!("expected a number of degrees (°C or K) such as `nights=-2` for colder, found `{}`", clipped(typed))
    })
}

fn days(typed: &str, value: Option<&str>) -> Result<i16, String> {
    value.and_then(|value| value.parse().ok()).ok_or_else(|| {
        format!(
            "expected a whole number of days such as `first-frost=-21` for three weeks earlier, found `{}`",
            clipped(typed)
        )
    })
}

fn yes(typed: &str, value: Option<&str>) -> Result<bool, String> {
    match value {
        None | Some("yes" | "true") => Ok(true),
        Some("no" | "false") => Ok(false),
        Some(_) => Err(format!("expected the word alone, found `{}`", clipped(typed))),
    }
}

impl From<ClimateDifferences> for DifferencesSaid {
    fn from(given: ClimateDifferences) -> Self {
        let ClimateDifferences {
            nights_k,
            afternoons_k,
            summer_afternoons_k,
            last_frost_days,
            first_frost_days,
            frost_pocket,
            warm_wall,
            roof,
        } = given;
        Self {
            nights_k,
            afternoons_k,
            summer_afternoons_k,
            last_frost_days,
            first_frost_days,
            frost_pocket,
            warm_wall,
            roof,
        }
    }
}

impl From<DifferencesSaid> for ClimateDifferences {
    fn from(said: DifferencesSaid) -> Self {
        let DifferencesSaid {
            nights_k,
            afternoons_k,
            summer_afternoons_k,
            last_frost_days,
            first_frost_days,
            frost_pocket,
            warm_wall,
            roof,
        } = said;
        Self {
            nights_k,
            afternoons_k,
            summer_afternoons_k,
            last_frost_days,
            first_frost_days,
            frost_pocket,
            warm_wall,
            roof,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn differences_are_taken_as_they_are_typed() {
        let mut taken = ClimateDifferences::default();
        for typed in ["nights=-2", "summer_afternoons_k=-4", "first-frost:-21", "frost-pocket", "roof=no"] {
            taken.take(typed).unwrap();
        }
        assert_eq!(
            taken,
            ClimateDifferences {
                nights_k: Some(-2.0),
                summer_afternoons_k: Some(-4.0),
                first_frost_days: Some(-21),
                frost_pocket: Some(true),
                roof: Some(false),
                ..ClimateDifferences::default()
            }
        );
        for (typed, words) in [
            ("nights=3", "the difference `nights=3` stands twice"),
            ("afternoons", "expected a number of degrees"),
            ("afternoons=NaN", "expected a number of degrees"),
            ("last-frost=1.5", "expected a whole number of days"),
            ("warm-wall=2", "expected the word alone"),
            ("winters=2", "unknown difference `winters=2`, expected one of nights=K"),
        ] {
            let refused = taken.take(typed).unwrap_err();
            assert!(refused.starts_with(words), "{refused}");
        }
    }
}
