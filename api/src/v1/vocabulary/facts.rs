//! `GET /v1/facts`.

use std::borrow::Cow;

use actix_web::{HttpRequest, HttpResponse};
use lammas_engine::fact::catalogue::{CATALOGUE, Entry, FactType, Giver, Missing};
use lammas_engine::fact::choice_names::choice_name;
use lammas_engine::fact::wording;
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

use super::list::{self, ListQuery, pages};
use crate::problem::Problem;
use crate::problem::extractors::Query;
use crate::v1::question::choices::choices;

choices! {
    /// What kind of value a fact has.
    FactKind {
        Truth "truth" "Yes or no.",
        Number "number" "A number.",
        Date "date" "A day.",
        Choice "choice" "One of a fixed list.",
        Plant "plant" "A plant.",
        Trait "trait" "A value of a trait of the plant.",
        Stage "stage" "A stage of the plant.",
        Region "region" "A region code.",
        Weekdays "weekdays" "Days of the week.",
    }
    /// Who supplies a fact.
    FactGiver {
        Caller "caller" "The request.",
        History "history" "The works done that the request lists.",
        Season "season" "The season, computed from the climate.",
        Plant "plant" "The plant's own entry.",
    }
    /// What holds when a fact is not given.
    FactMissing {
        Unknown "unknown" "It is unknown, and so is what hangs on it.",
        Assumed "assumed" "The usual is taken, and the answer says so.",
        Derived "derived" "It is worked out from others, and unknown when those are.",
        Computed "computed" "It is always there.",
        Refused "refused" "The question can't be answered.",
    }
}

/// A fact that rules may read.
#[derive(Debug, Serialize, ToSchema)]
pub struct FactItem {
    /// Its name, as rules write it.
    name: Cow<'static, str>,
    /// Its arguments, as they are written; empty if it takes none.
    arguments: &'static str,
    /// What it is called; arguments stand in braces.
    called: &'static str,
    /// One sentence about it.
    about: &'static str,
    /// What kind of value it has.
    #[serde(rename = "type")]
    kind: FactKind,
    /// Its unit; empty if it has none.
    unit: &'static str,
    /// The step that it is rounded to before it is compared.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    step: Option<f64>,
    /// The least value, in its unit.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    min: Option<f64>,
    /// The greatest value, in its unit.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    max: Option<f64>,
    /// What can be chosen.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    choices: Option<Vec<FactChoice>>,
    /// Who supplies it.
    given_by: FactGiver,
    /// What holds when it is not given.
    when_missing: FactMissing,
    /// What is taken then, where the usual is.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    assumed: Option<&'static str>,
    /// Whether it is of the day: what hangs on it then becomes something to check first.
    of_the_day: bool,
    /// Where it stands in a request: a JSON pointer (RFC 6901).
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    pointer: Option<&'static str>,
    /// The question that finds it out; arguments stand in braces.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    question: Option<&'static str>,
    /// How to find it out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    look: Option<&'static str>,
}

/// A choice of a fact.
#[derive(Debug, Serialize, ToSchema)]
pub struct FactChoice {
    /// The value, as a request gives it.
    id: &'static str,
    /// Its name.
    name: &'static str,
}

pages! {
    FactPage of FactItem by name, "One page of the facts.";
}

fn item(entry: &Entry, language: &str) -> FactItem {
    let words = wording::words(entry.fact);
    let choices = match entry.ty {
        FactType::Choice(list) => Some(
            list.values
                .iter()
                .map(|id| FactChoice { id, name: choice_name(list.name, id).map_or(*id, |name| name.get(language)) })
                .collect(),
        ),
        _ => None,
    };
    let is_number = matches!(entry.ty, FactType::Number(_));
    FactItem {
        name: Cow::Borrowed(entry.name),
        arguments: entry.arguments,
        called: words.name.get(language),
        about: words.about.get(language),
        kind: match entry.ty {
            FactType::Truth => FactKind::Truth,
            FactType::Number(_) => FactKind::Number,
            FactType::Date => FactKind::Date,
            FactType::Choice(_) => FactKind::Choice,
            FactType::Plant => FactKind::Plant,
            FactType::Trait => FactKind::Trait,
            FactType::Stage => FactKind::Stage,
            FactType::Region => FactKind::Region,
            FactType::Weekdays => FactKind::Weekdays,
        },
        unit: entry.unit,
        // The step is the least number above nought that rounding leaves as it is: it is read off the rounding itself.
        step: is_number.then(|| step(entry)),
        min: entry.range.map(|(min, _)| min),
        max: entry.range.map(|(_, max)| max),
        choices,
        given_by: match entry.giver {
            Giver::Caller => FactGiver::Caller,
            Giver::History => FactGiver::History,
            Giver::Season => FactGiver::Season,
            Giver::Plant => FactGiver::Plant,
        },
        when_missing: match entry.missing {
            Missing::Unknown => FactMissing::Unknown,
            Missing::Assumed(_) => FactMissing::Assumed,
            Missing::Derived => FactMissing::Derived,
            Missing::Computed => FactMissing::Computed,
            Missing::Refused => FactMissing::Refused,
        },
        assumed: match entry.missing {
            Missing::Assumed(usual) => Some(usual),
            _ => None,
        },
        of_the_day: entry.of_the_day,
        pointer: Some(entry.pointer).filter(|pointer| !pointer.is_empty()),
        question: words.ask.map(|ask| ask.question.get(language)),
        look: words.ask.map(|ask| ask.look.get(language)),
    }
}

fn step(entry: &Entry) -> f64 {
    const STEPS: [f64; 6] = [0.01, 0.05, 0.1, 0.5, 1.0, 5.0];
    STEPS.into_iter().find(|step| (entry.step.round(*step) - step).abs() < 1e-9).unwrap_or(1.0)
}

/// What do rules ask about?
///
/// Every fact that a rule may read: who gives it, in which unit and range, where it stands in a request, what holds when it is missing, and the question that finds it out; by name, page by page.
///
/// # Errors
/// The problem `bad-query`.
#[utoipa::path(
    get, path = "/v1/facts", operation_id = "list_facts", tag = "vocabulary", params(ListQuery),
    responses((status = 200, description = "A page of them.", body = FactPage, example = json!({"items": [{"name": "soil.ph", "arguments": "",
        "called": "soil pH", "about": "How acid or alkaline the soil is.", "type": "number", "unit": "", "step": 0.1,
        "min": 2.0, "max": 12.0, "given_by": "caller", "when_missing": "unknown", "of_the_day": false,
        "pointer": "/site/soil/ph", "question": "What is the pH of the soil?", "look": "A test kit from a garden shop shows it."}]})))
)]
pub async fn list_facts(request: HttpRequest, Query(query): Query<ListQuery>) -> Result<HttpResponse, Problem> {
    list::answer::<_, FactPage>(&request, query, |language| {
        CATALOGUE.iter().map(|entry| item(entry, language)).collect()
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_step_is_read_off_its_rounding() {
        let step_of = |name: &str| CATALOGUE.iter().find(|entry| entry.name == name).map(step);
        for (name, expected) in [
            ("soil.ph", 0.1),
            ("season.heat_left", 5.0),
            ("soil_10cm", 0.5),
            ("plant.height", 0.05),
            ("tmin", 0.1),
            ("rh", 1.0),
        ] {
            assert_eq!(step_of(name), Some(expected), "{name}");
        }
    }
}
