//! Pests by degree days, by name.

use chrono::NaiveDate;

use super::extremes::days_from;
use super::inputs::{Input, Kind};
use super::value::shorten;
use super::{Given, OutcomeValue, Quantity, Reckoned};
use crate::bounds::Unusable;
use crate::degree_days::{Cutoff, Method, Thresholds};
use crate::pest::model::{Stage, models_of};
use crate::pest::{Model, Unmatched, find};

const PEST: Input = Input::new("pest", Kind::Text, "common name, such as codling moth");
const STAGE: Input = Input::new("stage", Kind::Text, "stage in words, such as first generation flies");
const SERIES: Input = Input::new("series", Kind::Series, "daily record with columns tmin_c and tmax_c");
const METHODS: &[&str] = &[
    "average method 1",
    "average method 2",
    "single sine, no upper threshold",
    "single sine",
    "single triangle, no upper threshold",
    "single triangle",
];
const METHOD: Input =
    Input::choice("method", METHODS, "how a day's degree days are reckoned; single sine if not given").optional();
const WHEN_TO_LOOK: &str = "tells when to look: states print different sums for one pest, and a trap or an eye decides";

pub(super) const ALL: &[Quantity] = &[
    Quantity {
        name: "model_parameters",
        title: "thresholds and sums of a pest's degree-day model",
        inputs: &[PEST, STAGE],
        unit: "F; F degree days",
        about: "as printed; the stage `thresholds` gives the thresholds alone",
        method: "published table",
        source: "University of Wisconsin, Michigan State University, University of California (the note says which)",
        reckon: model_parameters,
    },
    Quantity {
        name: "date_reached",
        title: "day on which a sum of degree days is reached",
        inputs: &[
            SERIES,
            Input::new("start", Kind::Date, "first day that counts, the biofix"),
            Input::number("lower", "C", -60.0, 60.0, "threshold above which warmth counts"),
            Input::number(
                "upper",
                "C",
                -60.0,
                60.0,
                "threshold above which more warmth does not help; horizontal cut-off",
            )
            .optional(),
            Input::number("target", "C d", 0.0, 20_000.0, "sum to reach"),
            METHOD,
        ],
        unit: "-",
        about: "the first day at whose end the sum is reached; every day up to it must be there",
        method: "degree days summed day by day",
        source: "sine and triangle: Zalom and others 1983; average: McMaster and Wilhelm 1997",
        reckon: date_reached,
    },
    Quantity {
        name: "pest_stage_dates",
        title: "when a stage of a pest opens and closes in a record",
        inputs: &[
            SERIES,
            Input::new("start", Kind::Date, "the biofix, see the answer's words on it"),
            PEST,
            STAGE,
            METHOD,
        ],
        unit: "state, dates, C d",
        about: WHEN_TO_LOOK,
        method: "degree days of the model summed day by day from the biofix to the end of the record",
        source: "University of Wisconsin, Michigan State University, University of California (the note says which)",
        reckon: pest_stage_dates,
    },
];

fn model_of(given: &Given<'_>) -> Result<(&'static Model, &'static Stage), Unusable> {
    let (pest, stage) = (given.text("pest")?, given.text("stage")?);
    find(pest, stage).map_err(|unmatched| unread(pest, stage, unmatched))
}

fn unread(pest: &str, stage: &str, unmatched: Unmatched) -> Unusable {
    match unmatched {
        Unmatched::Pest(nearest) => Unusable::Unread {
            field: "pest",
            text: shorten(pest),
            expected: match nearest {
                Some(nearest) => format!("a pest with a model (did you mean `{nearest}`?)"),
                None => "a pest with a model".to_owned(),
            },
        },
        Unmatched::Stage(stages) => Unusable::Unread {
            field: "stage",
            text: shorten(stage),
            expected: format!(
                "one of {}",
                stages.iter().map(|name| format!("`{name}`")).collect::<Vec<_>>().join(", ")
            ),
        },
    }
}

fn model_parameters(given: &Given<'_>) -> Result<Reckoned, Unusable> {
    let (pest, stage) = (given.text("pest")?, given.text("stage")?);
    let (model, sums) = if stage.trim().eq_ignore_ascii_case("thresholds") {
        let models = models_of(pest).map_err(|unmatched| unread(pest, stage, unmatched))?;
        let model = models.first().copied().ok_or_else(|| unread(pest, stage, Unmatched::Pest(None)))?;
        (model, None)
    } else {
        let (model, stage) = model_of(given)?;
        (model, Some(stage.dd_f))
    };
    let mut fields = vec![("lower_f", model.lower_f.into())];
    if let Some((upper_f, _)) = model.upper_f {
        fields.push(("upper_f", upper_f.into()));
    }
    if let Some((from, to)) = sums {
        fields.push(("dd_f", OutcomeValue::List(vec![from, to])));
    }
    Ok(Reckoned::fields(fields).note(format!("counted from {}", model.biofix)).note(model.source))
}

/// The way of the method input, and whether it rules out an upper threshold.
fn method(given: &Given<'_>) -> (Method, bool) {
    let text = given.maybe_text("method").unwrap_or("single sine");
    let method = match text {
        "average method 1" => Method::AverageMethod1,
        "average method 2" => Method::AverageMethod2,
        _ if text.starts_with("single triangle") => Method::SingleTriangle,
        _ => Method::SingleSine,
    };
    (method, text.ends_with("no upper threshold"))
}

/// The sum at the end of each day from `start`, until it is enough or a day or a value is missing.
fn sums(
    given: &Given<'_>,
    method: Method,
    thresholds: Thresholds,
    enough_cd: f64,
) -> Result<Vec<(NaiveDate, f64)>, Unusable> {
    let mut sums = Vec::new();
    let mut sum_cd = 0.0;
    for row in days_from(given.text("series")?, given.date("start")?, None)? {
        let (tmin_c, tmax_c) = match row.extremes_c() {
            Ok(extremes_c) => extremes_c,
            Err(missing) if sums.is_empty() || row.is_whole() => return Err(missing),
            Err(_) => break,
        };
        sum_cd += method.day(tmin_c, tmax_c, None, thresholds);
        sums.push((row.date, sum_cd));
        if sum_cd >= enough_cd {
            break;
        }
    }
    Ok(sums)
}

fn date_reached(given: &Given<'_>) -> Result<Reckoned, Unusable> {
    let (method, no_upper) = method(given);
    let upper_c = given.maybe("upper").map(|upper_c| (upper_c, Cutoff::Horizontal));
    if no_upper && upper_c.is_some() {
        let reason = "the method says that there is no upper threshold".to_owned();
        return Err(Unusable::Contradiction { field: "upper", other: "method", reason });
    }
    let target_cd = given.number("target")?;
    let sums = sums(given, method, Thresholds::new(given.number("lower")?, upper_c)?, target_cd)?;
    match sums.last() {
        Some((date, sum_cd)) if *sum_cd >= target_cd => Ok(Reckoned::text(date.to_string())),
        Some((date, sum_cd)) => Err(Unusable::Contradiction {
            field: "target",
            other: "series",
            reason: format!("by {date}, where the unbroken days end, the sum is {sum_cd:.1} C d"),
        }),
        None => Err(Unusable::missing("series", "days from start on")),
    }
}

fn pest_stage_dates(given: &Given<'_>) -> Result<Reckoned, Unusable> {
    let (model, stage) = model_of(given)?;
    let (method, no_upper) = method(given);
    let mut thresholds = model.thresholds();
    if no_upper {
        thresholds.upper_c = None;
    }
    let (opens_cd, closes_cd) = (stage.dd_f.0 * 5.0 / 9.0, stage.dd_f.1 * 5.0 / 9.0);
    let sums = sums(given, method, thresholds, f64::INFINITY)?;
    let reached = |target_cd: f64| sums.iter().find(|(_, sum_cd)| *sum_cd >= target_cd).map(|(date, _)| *date);
    let (opens, closes) = (reached(opens_cd), reached(closes_cd));
    let state = match (opens, closes) {
        (None, _) => "not yet",
        (Some(_), None) => "open",
        (Some(_), Some(_)) => "reached",
    };
    let text = |text: String| OutcomeValue::Text(text);
    let sum_cd = sums.last().map_or(0.0, |(_, sum_cd)| *sum_cd);
    let mut fields = vec![
        ("state", text(state.to_owned())),
        ("sum_cd", sum_cd.into()),
        ("opens_at_cd", opens_cd.into()),
        ("closes_at_cd", closes_cd.into()),
    ];
    fields.extend(opens.map(|date| ("opens", text(date.to_string()))));
    fields.extend(closes.map(|date| ("closes", text(date.to_string()))));
    let until = sums.last().map_or_else(String::new, |(date, _)| format!(", to {date} where the unbroken days end"));
    Ok(Reckoned::fields(fields).note(format!("counted from {}{until}", model.biofix)).note(model.source))
}

#[cfg(test)]
mod tests {
    use super::super::find;
    use serde_json::{Value, json};

    /// 40 days of 5 to 25 C from the first of May.
    fn record() -> String {
        let days = (0..40).map(|day| {
            let date = chrono::NaiveDate::from_ymd_opt(2026, 5, 1).unwrap() + chrono::Days::new(day);
            format!("{date},5,25\n")
        });
        format!("date,tmin_c,tmax_c\n{}", days.collect::<String>())
    }

    fn ask(name: &str, inputs: &Value) -> Result<Value, String> {
        find(name)
            .unwrap()
            .reckon_json(inputs)
            .map(|outcome| outcome.value.to_json())
            .map_err(|error| error.to_string())
    }

    #[test]
    fn a_sum_is_reached_on_the_day_that_completes_it() {
        // The average of 5 and 25 is 15: 5 C d a day above 10, so that 50 are full on the tenth day.
        let mut asked =
            json!({"series": record(), "start": "2026-05-01", "lower": 10, "target": 50, "method": "average method 1"});
        assert_eq!(ask("date_reached", &asked), Ok(json!("2026-05-10")));
        asked["start"] = json!("2026-05-11");
        assert_eq!(ask("date_reached", &asked), Ok(json!("2026-05-20")));
        asked["target"] = json!(500);
        assert_eq!(
            ask("date_reached", &asked).unwrap_err(),
            "date_reached: target and series contradict each other: by 2026-06-09, where the unbroken days end, the sum is 150.0 C d"
        );
        asked["start"] = json!("2025-05-11");
        assert!(ask("date_reached", &asked).unwrap_err().contains("the record has no day 2025-05-11"));
    }

    #[test]
    fn a_stage_opens_closes_or_has_yet_to_come() {
        let asked = |pest: &str, stage: &str| json!({"series": record(), "start": "2026-05-01", "pest": pest, "stage": stage, "method": "average method 1"});
        // 5 C d a day are 9 F d: 150 are reached on the 17th day, 240 on the 27th.
        let whole = ask("pest_stage_dates", &asked("imported cabbageworm", "adult butterflies")).unwrap();
        assert_eq!(
            (&whole["state"], &whole["opens"], &whole["closes"]),
            (&json!("reached"), &json!("2026-05-17"), &json!("2026-05-27"))
        );
        let open = ask("pest_stage_dates", &asked("hawthorn leafminer", "larvae")).unwrap();
        assert_eq!((&open["state"], &open["opens"], open.get("closes")), (&json!("open"), &json!("2026-05-31"), None));
        let to_come = ask("pest_stage_dates", &asked("Japanese beetle", "adults")).unwrap();
        assert_eq!((&to_come["state"], to_come.get("opens")), (&json!("not yet"), None));
    }

    #[test]
    fn an_unknown_pest_or_stage_is_named_with_what_there_is() {
        let parameters = |pest: &str, stage: &str| ask("model_parameters", &json!({"pest": pest, "stage": stage}));
        assert_eq!(
            parameters("codling mot", "x").unwrap_err(),
            "model_parameters: pest is `codling mot`, expected a pest with a model (did you mean `codling moth`?)"
        );
        assert_eq!(
            parameters("euonymus scale", "eggs").unwrap_err(),
            "model_parameters: stage is `eggs`, expected one of `crawlers`"
        );
        assert_eq!(
            parameters("codling moth", "egg hatch"),
            Ok(json!({"lower_f": 50.0, "upper_f": 88.0, "dd_f": [250.0, 250.0]}))
        );
    }
}
