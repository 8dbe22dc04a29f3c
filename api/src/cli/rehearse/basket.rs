//! The plants of a basket, each read as the service reads a question.

use std::sync::Arc;

use chrono::NaiveDate;
use lammas_agronomy::calendar::Day;
use lammas_engine::compile::set::Set;
use lammas_engine::question::said::Said;
use lammas_engine::rehearse::days::Member;
use serde::Deserialize;

use crate::cli::exit::BadInput;
use crate::sets::rules::Rules;
use crate::settings::rules::RuleSettings;
use crate::v1::advice::reply;
use crate::v1::advice::request::AdviceRequest;
use crate::v1::question::climate::ClimateGiven;
use crate::v1::question::condition::ConditionGiven;
use crate::v1::question::date::Date;
use crate::v1::question::history::HistoryWork;
use crate::v1::question::plant::PlantGiven;
use crate::v1::question::site::SiteGiven;
use crate::v1::question::today;
use crate::v1::question::water::WaterGiven;

/// The most plants of a basket.
const MOST: usize = 200;

/// A climate, and the plants that stand in it.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct Basket {
    climate: ClimateGiven,
    plants: Vec<Entry>,
}

/// A plant and the state it is in.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct Entry {
    name: Option<String>,
    plant: PlantGiven,
    site: Option<SiteGiven>,
    water: Option<WaterGiven>,
    #[serde(default)]
    wishes: Vec<String>,
    condition: Option<ConditionGiven>,
    history: Option<Vec<HistoryWork>>,
}

/// The members of a basket, understood on the first day, and that day.
///
/// # Errors
/// [`BadInput`] that names every place which does not fit.
pub(super) fn members(
    basket: Basket,
    file: &str,
    set: &Arc<Set>,
    from: Option<NaiveDate>,
) -> Result<(Vec<Member>, Day), BadInput> {
    let count = basket.plants.len();
    if !(1..=MOST).contains(&count) {
        return Err(BadInput(format!("`{file}`: /plants: expected 1 to {MOST} plants, found {count}")));
    }
    let rules = Rules::of(Arc::clone(set), &RuleSettings::default());
    let now = today::now();
    let mut first = from.map(Day::from_date);
    let mut members: Vec<Member> = Vec::new();
    let mut wrong: Vec<String> = Vec::new();
    for (at, entry) in basket.plants.into_iter().enumerate() {
        let request = AdviceRequest {
            climate: basket.climate.clone(),
            date: first.map(|day| Date(day.date())),
            plant: entry.plant,
            site: entry.site,
            water: entry.water,
            wishes: entry.wishes,
            condition: entry.condition,
            history: entry.history,
            ..AdviceRequest::default()
        };
        let faults = request.faults();
        match reply::question(request.clone(), faults, true, &rules, set, now) {
            Ok((question, _)) => {
                first.get_or_insert(question.day);
                let mut said = Said::from(request);
                set.names.plants.name(question.plant).clone_into(&mut said.plant.kind);
                let name = entry.name.unwrap_or_else(|| said.plant.kind.clone());
                members.push(Member { name: alone(name, &members), said, climate: question.climate });
            }
            Err(problem) if problem.errors().is_empty() => wrong.push(problem.to_string()),
            Err(problem) => {
                for error in problem.errors() {
                    let of_all = error.pointer.starts_with("/climate") || error.pointer == "/date";
                    let at = if of_all { String::new() } else { format!("/plants/{at}") };
                    wrong.push(format!("{at}{}: {}", error.pointer, error.detail));
                }
            }
        }
    }
    wrong.dedup();
    match (wrong.is_empty(), first) {
        (true, Some(first)) => Ok((members, first)),
        _ => Err(BadInput(format!("`{file}` can't be rehearsed\n  {}", wrong.join("\n  ")))),
    }
}

/// A name that no other plant of the basket has.
fn alone(name: String, others: &[Member]) -> String {
    let is_taken = |name: &str| others.iter().any(|other| other.name == name);
    if !is_taken(&name) {
        return name;
    }
    (2..).map(|number| format!("{name} {number}")).find(|name| !is_taken(name)).unwrap_or(name)
}
