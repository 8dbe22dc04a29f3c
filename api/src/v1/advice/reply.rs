//! From a request for advice to the text of the answer: the same for a request over HTTP and for one from a file.

use std::sync::Arc;

use chrono::{DateTime, NaiveDate, SecondsFormat, Utc};
use lammas_agronomy::calendar::Day;
use lammas_engine::compile::set::Set;
use lammas_engine::explain::answer::Withdrawn;
use lammas_engine::explain::whole;
use lammas_engine::question::Question;
use lammas_engine::question::said::{PlantSaid, Said};
use lammas_engine::question::understand::understand;
use lammas_engine::version::hash;

use super::face::Face;
use super::given::{self, Given};
use super::request::AdviceRequest;
use crate::library::Release;
use crate::problem::Problem;
use crate::problem::faults::Faults;
use crate::problem::kinds::INVALID_REQUEST;
use crate::sets::pick::{Picked, Wanted, pick};
use crate::sets::rules::Rules;
use crate::v1::question::choices::Language;
use crate::v1::question::place::{self, Place, When};
use crate::v1::question::today::Clock;
use crate::v1::replay::asking::Asking;
use crate::v1::replay::reference::Reference;
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
    /// Hash of the text without what was taken back since, and without its recall text.
    pub plain_sha256: String,
    /// The language.
    pub language: Language,
    /// How long it may be kept, in seconds.
    pub keep_s: u64,
    /// The set that it was answered from.
    pub set: Arc<Set>,
}

/// Answers a request at this moment. `accepted` is the language to speak when the request names none.
///
/// # Errors
/// The problem that names every wrong place.
pub fn to(
    request: AdviceRequest,
    accepted: Option<Language>,
    rules: &Rules,
    now: DateTime<Utc>,
) -> Result<Reply, Problem> {
    let mut faults = request.faults();
    let wanted = Wanted { sets: &request.rule_sets, as_of: request.as_of, climate: Some(&request.climate) };
    let picked = pick(wanted, rules, now, &mut faults);
    from(request, accepted, &picked, faults, rules, now)
}

/// The same from sets that have been picked.
///
/// # Errors
/// The problem that names every wrong place, those in `faults` among them.
pub(crate) fn from(
    mut request: AdviceRequest,
    accepted: Option<Language>,
    picked: &Picked,
    faults: Faults,
    rules: &Rules,
    now: DateTime<Utc>,
) -> Result<Reply, Problem> {
    let language = request.language.or(accepted).unwrap_or(Language::En);
    request.language = Some(language);
    let face = Face::of(&request);
    let set = Arc::clone(&picked.set);
    let recalled = request.recall.then(|| request.clone());
    let (question, clock) = question(request, faults, true, rules, &set, now)?;
    let asking = recalled.map(|request| Asking { at: asked_at(&question, &clock, now), request });
    let key = given::key(&question, &set, face, language).map(|key| {
        let at = asking.as_ref().map(|asking| asking.at);
        let withdrawn: Vec<String> = picked.withdrawn.iter().map(|release| release.pin()).collect();
        if at.is_none() && withdrawn.is_empty() { key } else { format!("{key} {at:?} {withdrawn:?}") }
    });
    let found = key.as_deref().and_then(|key| rules.answers().find(key));
    let given = match found {
        Some(given) => given,
        None => {
            let given = Arc::new(answered(&question, picked, face, language, asking, rules)?);
            if let Some(key) = key {
                rules.answers().keep(key, &given, given.bytes());
            }
            given
        }
    };
    let keep_s = keep_s(&question, given.valid_until, &clock, now);
    let Given { text, sha256, plain_sha256, .. } = &*given;
    let [text, sha256, plain_sha256] = [text, sha256, plain_sha256].map(Clone::clone);
    Ok(Reply { text, sha256, plain_sha256, language, keep_s, set })
}

/// The moment of asking, as far as the answer hangs on it: not at all where a date was said; by the date, unless weather was kept.
fn asked_at(question: &Question, clock: &Clock, now: DateTime<Utc>) -> Option<DateTime<Utc>> {
    match (question.day_assumed, question.climate.weather.is_some()) {
        (false, _) => None,
        (true, false) => Some(clock.noon_of(question.day.date())),
        (true, true) => Some(now),
    }
}

fn answered(
    question: &Question,
    picked: &Picked,
    face: Face,
    language: Language,
    asking: Option<Asking>,
    rules: &Rules,
) -> Result<Given, Problem> {
    let answer = whole::answer(&picked.set, question, language.word(), face.extent());
    let mut answer = answer.ok_or_else(|| Problem::broken("the plant of an understood question has no book"))?;
    answer.reference = Reference::of(question, &picked.set).map(|reference| reference.to_string());
    let text = face.shown(&answer).map_err(Problem::broken)?;
    if asking.is_none() && picked.withdrawn.is_empty() {
        return Ok(Given::new(text, None, answer.valid_until));
    }
    let plain_sha256 = hash::of_text(&text);
    answer.withdrawn = picked.withdrawn.iter().filter_map(|release| withdrawn(release)).collect();
    if let Some(asking) = asking {
        answer.recall = asking.recall(question, &text, &plain_sha256, picked, rules)?;
    }
    let text = face.shown(&answer).map_err(Problem::broken)?;
    Ok(Given::new(text, Some(plain_sha256), answer.valid_until))
}

/// A release that was taken back.
pub(crate) fn withdrawn(release: &Release) -> Option<Withdrawn> {
    let taken = release.withdrawn.as_ref()?;
    Some(Withdrawn {
        name: release.set.clone(),
        version: release.version.clone(),
        since: taken.at.to_rfc3339_opts(SecondsFormat::Secs, true),
        because: taken.because.clone(),
    })
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
