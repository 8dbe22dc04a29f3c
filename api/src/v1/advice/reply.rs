//! From a request for advice to the text of the answer: the same for a request over HTTP and for one from a file.

use chrono::{DateTime, Utc};
use lammas_agronomy::calendar::Day;
use lammas_engine::compile::set::Set;
use lammas_engine::explain::whole;
use lammas_engine::question::Question;
use lammas_engine::question::said::Said;
use lammas_engine::question::understand::understand;

use super::face::Face;
use super::request::AdviceRequest;
use crate::problem::Problem;
use crate::problem::faults::Faults;
use crate::problem::kinds::{INVALID_REQUEST, NOT_AVAILABLE_YET, UNKNOWN_RULE_SET};
use crate::problem::pointer::entry;
use crate::sets::rules::Rules;
use crate::v1::question::choices::Language;
use crate::v1::question::{place, today};

/// The text of an answer, in its language.
#[derive(Debug)]
pub struct Reply {
    /// JSON.
    pub text: String,
    /// The language.
    pub language: Language,
}

/// Answers a request at this moment. `accepted` is the language to speak when the request names none.
///
/// # Errors
/// The problem that names every wrong place.
pub fn to(
    mut request: AdviceRequest,
    accepted: Option<Language>,
    rules: &Rules,
    now: DateTime<Utc>,
) -> Result<Reply, Problem> {
    let language = request.language.or(accepted).unwrap_or(Language::En);
    request.language = Some(language);
    let face = Face::of(&request);
    let set = rules.set();
    let question = question(request, rules, &set, now)?;
    let answer = whole::answer(&set, &question, language.word(), face.extent());
    let answer = answer.ok_or_else(|| Problem::broken("the plant of an understood question has no book"))?;
    let text = face.shown(&answer).map_err(Problem::broken)?;
    Ok(Reply { text, language })
}

fn question(request: AdviceRequest, rules: &Rules, set: &Set, now: DateTime<Utc>) -> Result<Question, Problem> {
    let mut faults = request.faults();
    later(&request, &mut faults);
    sets(&request.rule_sets, set, &mut faults);
    let mut said = Said::from(request);
    if let Some(id) = plant_id(&said.plant.kind, set) {
        said.plant.kind = id;
    }
    let hollow = said.site.frost_hollow == Some(true);
    let place = place::find(&said.climate, hollow, rules, set, &mut faults);
    let today = place.as_ref().map_or_else(
        || today::at_place(now, None, None),
        |place| today::at_place(now, place.zone.as_deref(), place.longitude_deg),
    );
    // Without a climate the rest is judged all the same, so that one answer names everything.
    let climate = place.map(|place| place.climate).or_else(|| place::stand_in(rules, set));
    let understood = climate.map(|climate| understand(&said, set, climate, Some(Day::from_date(today))));
    let question = match understood {
        Some(Ok(question)) => Some(question),
        Some(Err(troubles)) => {
            place::note(troubles, &mut faults);
            None
        }
        None => None,
    };
    faults.or_problem(INVALID_REQUEST)?;
    question.ok_or_else(|| Problem::broken("a question without a fault was not understood"))
}

/// What the document describes and this version can't do: said, never passed over in silence.
fn later(request: &AdviceRequest, faults: &mut Faults) {
    for (at, is_asked, detail) in [
        ("/as_of", request.as_of.is_some(), "earlier rule sets are not kept yet: leave it out for the set of today"),
        (
            "/recall",
            request.recall,
            "an answer can't carry its recall text yet: keep the request and the `digest` instead",
        ),
    ] {
        if is_asked {
            faults.add_if_new(Some(NOT_AVAILABLE_YET), at.to_owned(), detail.to_owned());
        }
    }
}

/// The sets that a request names: by name, or pinned as `name@version`.
fn sets(named: &[String], set: &Set, faults: &mut Faults) {
    let (name, version) = (&set.pack.header.name.value, &set.pack.header.version.value);
    for (place, asked) in named.iter().enumerate() {
        let at = entry("/rule_sets", place);
        let is_known = asked.split_once('@').map_or(asked == name, |(n, v)| n == name && v == version);
        if !is_known {
            let detail = format!(
                "unknown rule set `{}`, expected `{name}` or `{name}@{version}`",
                crate::problem::clipped(asked)
            );
            faults.add_if_new(Some(UNKNOWN_RULE_SET), at, detail);
        } else if place > 0 {
            faults.add_if_new(None, at, format!("the rule set `{name}` stands twice"));
        }
    }
}

/// The id of a plant by any of its names, in whatever case; none when it is no name of a plant.
pub(crate) fn plant_id(said: &str, set: &Set) -> Option<String> {
    let said = said.trim().to_lowercase();
    let is = |name: &str| name.to_lowercase() == said;
    set.pack
        .plants
        .iter()
        .map(|filed| &filed.entry)
        .find(|plant| {
            is(&plant.id.value)
                || plant.name.0.values().any(|name| is(name))
                || plant.names.values().flatten().any(|name| is(name))
        })
        .map(|plant| plant.id.value.clone())
}
