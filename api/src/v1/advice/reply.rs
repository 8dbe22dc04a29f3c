//! From a request for advice to the text of the answer: the same for a request over HTTP and for one from a file.

use std::sync::Arc;

use chrono::{DateTime, NaiveDate, Utc};
use lammas_agronomy::calendar::Day;
use lammas_engine::compile::set::Set;
use lammas_engine::explain::whole;
use lammas_engine::question::Question;
use lammas_engine::question::said::{PlantSaid, Said};
use lammas_engine::question::understand::understand;

use super::face::Face;
use super::given::{self, Given};
use super::request::AdviceRequest;
use crate::problem::Problem;
use crate::problem::faults::Faults;
use crate::problem::kinds::{INVALID_REQUEST, NOT_AVAILABLE_YET, UNKNOWN_RULE_SET};
use crate::problem::pointer::entry;
use crate::sets::rules::Rules;
use crate::v1::question::choices::Language;
use crate::v1::question::place::{self, Place, When};
use crate::v1::question::today::Clock;
use crate::v1::sent;
use crate::v1::vocabulary::plants::kind;
use crate::weather::age;

/// The text of an answer, in its language.
#[derive(Debug)]
pub struct Reply {
    /// JSON.
    pub text: String,
    /// Hash of the text.
    pub sha256: String,
    /// The language.
    pub language: Language,
    /// How long it may be kept, in seconds.
    pub keep_s: u64,
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
    let faults = request.faults();
    let (question, clock) = question(request, faults, true, rules, &set, now)?;
    let key = given::key(&question, &set, face, language);
    let found = key.as_deref().and_then(|key| rules.answers().find(key));
    let given = match found {
        Some(given) => given,
        None => {
            let given = Arc::new(answered(&question, &set, face, language)?);
            if let Some(key) = key {
                rules.answers().keep(key, &given, given.bytes());
            }
            given
        }
    };
    let keep_s = keep_s(&question, given.valid_until, &clock, now);
    Ok(Reply { text: given.text.clone(), sha256: given.sha256.clone(), language, keep_s })
}

fn answered(question: &Question, set: &Set, face: Face, language: Language) -> Result<Given, Problem> {
    let answer = whole::answer(set, question, language.word(), face.extent());
    let answer = answer.ok_or_else(|| Problem::broken("the plant of an understood question has no book"))?;
    let text = face.shown(&answer).map_err(Problem::broken)?;
    Ok(Given::new(text, answer.valid_until))
}

/// The smallest of an hour, the time to the end of the last day on which the decision is the same, that to the end of the
/// weather which was used, and, where the answer is for today, the time to midnight at the place. An answer about a day
/// that is over does not change with the clock.
fn keep_s(question: &Question, valid_until: NaiveDate, clock: &Clock, now: DateTime<Utc>) -> u64 {
    let validity = clock.seconds_left(valid_until, now);
    let midnight = question.day_assumed.then(|| clock.seconds_left(question.day.date(), now).unwrap_or(0));
    let weather = age::seconds_kept(&question.climate, now);
    [validity, midnight, weather].into_iter().flatten().fold(sent::LONGEST_S, u64::min)
}

/// What is asked, and the clock of its place. Of a question without a climate the date is that in UTC, and a climate of the
/// set stands in: nothing of it may be read.
///
/// # Errors
/// The problem that names every wrong place, those in `faults` among them.
pub(crate) fn question(
    request: AdviceRequest,
    mut faults: Faults,
    has_climate: bool,
    rules: &Rules,
    set: &Set,
    now: DateTime<Utc>,
) -> Result<(Question, Clock), Problem> {
    later(&request, &mut faults);
    sets(&request.rule_sets, set, &mut faults);
    let mut said = Said::from(request);
    name_plant(&mut said.plant, set);
    let hollow = said.site.frost_hollow == Some(true);
    let place = if has_climate {
        place::find(&said.climate, hollow, When { date: said.date, now }, rules, set, &mut faults)
    } else {
        None
    };
    let clock = place.as_ref().map(Place::clock).unwrap_or_default();
    let today = clock.date(now);
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
    let question = question.ok_or_else(|| Problem::broken("a question without a fault was not understood"))?;
    Ok((question, clock))
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

/// The id of a plant by any of its names, however they are written in case, accents and number; none when it is no name of a
/// plant, or only nearly one.
pub(crate) fn plant_id(said: &str, set: &Set) -> Option<String> {
    let found = set.words.plant(said)?;
    Some(set.names.plants.name(found.plant).to_owned())
}

/// Puts the plant's id in the place of its name. What the name says of its kind counts where the caller does not say it.
fn name_plant(said: &mut PlantSaid, set: &Set) {
    let Some(found) = set.words.plant(&said.kind) else { return };
    set.names.plants.name(found.plant).clone_into(&mut said.kind);
    if let Some((part, value)) = kind(&found, set) {
        said.traits.entry(part).or_insert(value);
    }
}

#[cfg(test)]
mod tests {
    use chrono::Duration;
    use serde_json::{Value, json};

    use super::*;
    use crate::settings::rules::RuleSettings;

    #[test]
    fn an_answer_is_kept_for_the_shortest_of_an_hour_its_validity_and_midnight_at_the_place() {
        let rules = Rules::load(&RuleSettings::default()).expect("it loads");
        let ask = |date: Option<&str>, now: DateTime<Utc>| {
            let mut question = json!({"climate": {"id": "hot-dry-valley"}, "plant": {"type": "rose"}});
            if let Some(date) = date {
                question["date"] = json!(date);
            }
            let question = serde_json::from_value(question).expect("a question");
            let said = to(question, None, &rules, now).expect("an answer");
            (said.keep_s, serde_json::from_str::<Value>(&said.text).expect("JSON"))
        };
        let moment = |text: &str| text.parse::<DateTime<Utc>>().expect("a moment");
        // The valley keeps Los Angeles' time, UTC-7 in September (IANA time zone database).
        let late = moment("2026-09-16T06:59:30Z");
        let (keep_s, answer) = ask(None, late);
        assert_eq!((keep_s, &answer["asked"]["date"]), (30, &json!("2026-09-15")));
        assert_eq!(ask(None, moment("2026-09-15T12:00:00Z")).0, sent::LONGEST_S);
        let (keep_s, answer) = ask(Some("2026-09-15"), late);
        assert_eq!(keep_s, sent::LONGEST_S, "midnight is nothing to a question with a date");
        let last: NaiveDate = answer["valid_until"].as_str().and_then(|day| day.parse().ok()).expect("a date");
        let clock = Clock { zone: Some("America/Los_Angeles".to_owned()), longitude_deg: None };
        let end = clock.end_of(last);
        assert_eq!(ask(Some("2026-09-15"), end - Duration::seconds(100)).0, 100);
        assert_eq!(ask(Some("2026-09-15"), end + Duration::days(30)).0, sent::LONGEST_S, "it is over");
    }

    #[test]
    fn the_same_question_finds_its_answer_again_and_a_gardener_s_words_are_not_kept() {
        let rules = Rules::load(&RuleSettings::default()).expect("it loads");
        let now = "2026-09-15T12:00:00Z".parse().expect("a moment");
        let ask = |question: &Value| {
            let question = serde_json::from_value(question.clone()).expect("a question");
            to(question, None, &rules, now).expect("an answer").text
        };
        let mut question =
            json!({"climate": {"id": "hot-dry-valley"}, "date": "2026-09-15", "plant": {"type": "rose"}});
        let first = ask(&question);
        assert_eq!((ask(&question), rules.answers().size().0), (first.clone(), 1));
        for (member, value) in [("language", json!("es")), ("units", json!("si")), ("detail", json!("full"))] {
            let mut other = question.clone();
            other[member] = value;
            assert_ne!(ask(&other), first, "another {member} is another text");
        }
        assert_eq!(rules.answers().size().0, 4);
        question["condition"] = json!({"words": "buds stay shut and brown"});
        assert!(ask(&question).contains("understood"));
        assert_eq!(rules.answers().size().0, 4, "words are not kept");
    }
}
