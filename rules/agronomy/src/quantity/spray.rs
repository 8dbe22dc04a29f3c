//! The spray window, by name.

use super::inputs::Input;
use super::{Given, Quantity, Reckoned};
use crate::bounds::{Unusable, in_order};
use crate::spray::{Limits, Moment, Window, window};

const TEMPERATURE: Input =
    Input::number("temperature", "C", -40.0, 55.0, "air now, or when it would be done").optional();
const WIND: Input = Input::number("wind", "m/s", 0.0, 60.0, "wind where it would be done").optional();
const RAIN: Input =
    Input::number("hours_to_rain", "h", 0.0, 1000.0, "until rain is forecast; a great number for none").optional();
const AHEAD: Input =
    Input::number("tmin_ahead", "C", -60.0, 50.0, "lowest temperature forecast in the next day").optional();
const BLOOM: Input =
    Input::choice("open_flowers", &["no", "yes"], "whether flowers are open where it falls, weeds included").optional();
const COOLEST: Input =
    Input::number("temperature_min", "C", -20.0, 40.0, "the label's; 4 if not given (oil: Colorado State University)")
        .optional();
const WARMEST: Input = Input::number(
    "temperature_max",
    "C",
    0.0,
    50.0,
    "the label's; 29 if not given (oil: Washington State University; 32 elsewhere)",
)
.optional();
const CALMEST: Input = Input::number(
    "wind_min",
    "m/s",
    0.0,
    10.0,
    "the label's; 3 mph if not given (pesticide stewardship pages on drift)",
)
.optional();
const WINDIEST: Input = Input::number(
    "wind_max",
    "m/s",
    0.1,
    15.0,
    "the label's; 8 mph if not given (same pages; 10 mph and 15 km/h are also printed)",
)
.optional();
const DRY: Input =
    Input::number("dry_hours", "h", 0.0, 240.0, "the label's; 24 if not given (common practice)").optional();

pub(super) const ALL: &[Quantity] = &[Quantity {
    name: "spray_window",
    title: "whether the weather allows a spray",
    inputs: &[TEMPERATURE, WIND, RAIN, AHEAD, BLOOM, COOLEST, WARMEST, CALMEST, WINDIEST, DRY],
    unit: "-",
    about: "open, closed, or depends on what was not said; the notes give every reason; the label of the product and local rules prevail over each limit",
    method: "each condition against its limit; closed by any, open only when all are known",
    source: "each limit names its own, see the inputs",
    reckon: spray_window,
}];

fn spray_window(given: &Given<'_>) -> Result<Reckoned, Unusable> {
    let usual = Limits::default();
    let limits = Limits {
        temperature_c: (
            given.maybe("temperature_min").unwrap_or(usual.temperature_c.0),
            given.maybe("temperature_max").unwrap_or(usual.temperature_c.1),
        ),
        wind_m_s: (
            given.maybe("wind_min").unwrap_or(usual.wind_m_s.0),
            given.maybe("wind_max").unwrap_or(usual.wind_m_s.1),
        ),
        dry_h: given.maybe("dry_hours").unwrap_or(usual.dry_h),
    };
    in_order("temperature_min", limits.temperature_c.0, "temperature_max", limits.temperature_c.1, "C")?;
    in_order("wind_min", limits.wind_m_s.0, "wind_max", limits.wind_m_s.1, "m/s")?;
    let moment = Moment {
        temperature_c: given.maybe("temperature"),
        wind_m_s: given.maybe("wind"),
        hours_to_rain: given.maybe("hours_to_rain"),
        tmin_ahead_c: given.maybe("tmin_ahead"),
        open_flowers: given.maybe_text("open_flowers").map(|word| word == "yes"),
    };
    let (window, reasons) = window(&moment, &limits);
    let word = match window {
        Window::Open => "open",
        Window::Closed => "closed",
        Window::Depends => "depends",
    };
    let reckoned = reasons.into_iter().fold(Reckoned::text(word), Reckoned::note);
    Ok(reckoned.note("the label and local rules prevail; keep people, pets and water out of the drift"))
}

#[cfg(test)]
mod tests {
    use super::super::find;
    use serde_json::json;

    #[test]
    fn the_label_s_own_limit_prevails() {
        let mut asked = json!({"temperature": 30, "wind": {"value": 5, "unit": "mph"}, "hours_to_rain": 30,
            "tmin_ahead": 15, "open_flowers": false});
        let ask = |json: &serde_json::Value| find("spray_window").unwrap().reckon_json(json).unwrap();
        let closed = ask(&asked);
        assert_eq!(closed.value.to_json(), "closed");
        assert!(closed.notes[0].starts_with("30.0 C is above 29.0 C"), "{:?}", closed.notes);
        asked["temperature_max"] = json!(32);
        assert_eq!(ask(&asked).value.to_json(), "open");
        asked["temperature_max"] = json!(3);
        let refused = find("spray_window").unwrap().reckon_json(&asked).unwrap_err();
        assert_eq!(refused.to_string(), "spray_window: temperature_min is 4 C, above temperature_max which is 3 C");
    }
}
