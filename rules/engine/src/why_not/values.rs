//! What a lever can be set to: every choice, and of numbers and days those that lie on either side of the thresholds which
//! the rules of the plant read.

use serde_json::{Value as Json, json};

use super::edit::{Edit, escaped};
use super::ground::Ground;
use super::lever::Lever;
use crate::compile::term::{MarkerRef, Term, Test, Work};
use crate::fact::catalogue::{Fact, FactType};
use crate::fact::choices::SEVERITY;
use crate::fact::value::Truth;
use crate::pack::word::Seen;

/// One value of a lever.
#[derive(Clone, Debug, PartialEq)]
pub struct Setting {
    /// What it takes in the request.
    pub edits: Vec<Edit>,
    /// Where the value stands.
    pub pointer: String,
    /// What stands there now; null: nothing.
    pub from: Json,
    /// What is to stand there; null: nothing.
    pub to: Json,
    /// How far the value is moved, in steps of its kind.
    pub distance: f64,
}

/// Days back on which something that is dated may lie, beside those that rules ask for.
const USUAL_BACK: [i32; 12] = [1, 7, 14, 30, 60, 90, 120, 180, 270, 365, 730, 1825];
/// Usual sizes of pots, L: what an interval of watering hangs on has no threshold of its own.
const USUAL_POTS_L: [f64; 8] = [2.0, 5.0, 10.0, 20.0, 40.0, 80.0, 200.0, 1000.0];
/// Usual widths, m.
const USUAL_WIDTHS_M: [f64; 6] = [0.3, 0.6, 1.0, 2.0, 4.0, 8.0];

/// The values that a lever can be set to, without the one that it has.
#[must_use]
pub(super) fn of(lever: &Lever, ground: &Ground<'_>) -> Vec<Setting> {
    match lever {
        Lever::Fact(fact) => fact_values(*fact, ground),
        Lever::Trait(number) => trait_values(*number, ground),
        Lever::Sign(sign) => sign_values(*sign, ground),
        Lever::NoSigns => vec![whole("/condition/signs", json!([]), ground)],
        Lever::LookedClosely => {
            let closely = ground.said.condition.as_ref().is_some_and(|condition| condition.looked_closely);
            if closely { Vec::new() } else { vec![whole("/condition/looked_closely", json!(true), ground)] }
        }
        Lever::Wish(job) => listed("/wishes", ground.set.names.jobs.name(*job), &ground.said.wishes),
        Lever::Problem(problem) => {
            let named = ground.said.condition.as_ref().map(|c| c.problems.as_slice()).unwrap_or_default();
            listed("/condition/problems", ground.set.names.problems.name(*problem), named)
        }
        Lever::Flag(flag) => listed("/site/region_flags", flag, &ground.said.site.region_flags),
        Lever::Region(code) => vec![whole("/site/region", json!(code), ground)],
        Lever::NoHistory => vec![whole("/history", json!([]), ground)],
        Lever::NotDone(place) => vec![without(&format!("/history/{place}"), ground)],
        Lever::Label(place) => {
            let pointer = format!("/history/{place}/label_days_to_harvest");
            vec![whole(&pointer, json!(0), ground)]
        }
        Lever::Done(work) => done_values(*work, ground),
        Lever::DoneRule(rule) => {
            let id = ground.set.rules.get(*rule as usize).map_or("", |info| info.id.as_str());
            let gap = ground.set.rules.get(*rule as usize).and_then(|info| info.alternate).map_or(1, |turn| turn.1);
            backs(&[i32::from(gap), 1]).into_iter().map(|back| appended(json!({"rule": id}), back, ground)).collect()
        }
    }
}

fn at(pointer: &str, ground: &Ground<'_>) -> Json {
    ground.document.pointer(pointer).cloned().unwrap_or_default()
}

fn whole(pointer: &str, to: Json, ground: &Ground<'_>) -> Setting {
    let from = at(pointer, ground);
    Setting { edits: vec![Edit::put(pointer, to.clone())], pointer: pointer.to_owned(), from, to, distance: 0.0 }
}

fn without(pointer: &str, ground: &Ground<'_>) -> Setting {
    Setting {
        edits: vec![Edit::remove(pointer)],
        pointer: pointer.to_owned(),
        from: at(pointer, ground),
        to: Json::Null,
        distance: 0.0,
    }
}

/// A word that is put into a list, or taken out of it.
fn listed(list: &str, word: &str, now: &[String]) -> Vec<Setting> {
    let places: Vec<usize> = (0..now.len()).filter(|at| now.get(*at).is_some_and(|other| other == word)).collect();
    let (edits, pointer, from, to) = match places.first() {
        None => (vec![Edit::put(format!("{list}/-"), json!(word))], format!("{list}/-"), Json::Null, json!(word)),
        Some(first) => (
            places.iter().map(|at| Edit::remove(format!("{list}/{at}"))).collect(),
            format!("{list}/{first}"),
            json!(word),
            Json::Null,
        ),
    };
    vec![Setting { edits, pointer, from, to, distance: 0.0 }]
}

fn trait_values(number: u16, ground: &Ground<'_>) -> Vec<Setting> {
    let pointer = format!("/plant/traits/{}", escaped(ground.book.names.traits.name(number)));
    let now = at(&pointer, ground);
    let values = ground.book.names.values.get(usize::from(number));
    values
        .into_iter()
        .flat_map(crate::compile::names::Index::names)
        .map(|value| json!(value))
        .filter(|value| *value != now)
        .map(|value| whole(&pointer, value, ground))
        .collect()
}

fn fact_values(fact: Fact, ground: &Ground<'_>) -> Vec<Setting> {
    let entry = fact.entry();
    let now = at(entry.pointer, ground);
    let put = |value: Json| whole(entry.pointer, value, ground);
    let given = ground.question.given(fact).value.number();
    let all: Vec<Setting> = match entry.ty {
        FactType::Truth => vec![put(json!(true)), put(json!(false))],
        FactType::Choice(list) => list.values.iter().map(|word| put(json!(word))).collect(),
        FactType::Stage => ground.book.names.stages.names().map(|stage| put(json!(stage))).collect(),
        FactType::Number(_) => numbers(fact, ground)
            .into_iter()
            .map(|number| Setting {
                // What is assumed stands nearer than what the ends of the range are.
                distance: given.map_or(0.0, |given| (number - given).abs() / unit_of(fact)),
                ..put(json!(number))
            })
            .collect(),
        FactType::Date => {
            let of = if fact == Fact::PlantStageSince {
                |marker: &MarkerRef| matches!(marker, MarkerRef::Stage(_))
            } else {
                |marker: &MarkerRef| *marker == MarkerRef::Planted
            };
            let mut days = asked_back(ground, of);
            if fact == Fact::PlantPlantedOn {
                // An age is told by the day of planting where that is said.
                days.extend(
                    thresholds(&Term::Fact(Fact::PlantAge), ground).iter().flat_map(|years| around_years(*years)),
                );
            }
            let dated = |back: i32| put(json!((ground.question.day - back).date()));
            backs(&days).into_iter().map(dated).collect()
        }
        _ => Vec::new(),
    };
    all.into_iter().filter(|setting| setting.to != now).collect()
}

/// The days on either side of an age in years of 365.25 days.
fn around_years(years: f64) -> [i32; 4] {
    #[expect(clippy::cast_possible_truncation, reason = "an age of at most a thousand years")]
    let days = (years * 365.25).floor() as i32;
    // An age counts in tenths of a year: the half of one lies 18 days off.
    [days - 19, days - 17, days + 1, days + 20]
}

/// What counts as one unit of a number, for how far it is moved.
fn unit_of(fact: Fact) -> f64 {
    let (low, high) = fact.entry().range.unwrap_or((0.0, 100.0));
    (high - low).max(1.0) / 100.0
}

/// Numbers on either side of every threshold of a fact, and on it.
fn numbers(fact: Fact, ground: &Ground<'_>) -> Vec<f64> {
    let entry = fact.entry();
    let (low, high) = entry.range.unwrap_or((0.0, 1000.0));
    let mut out = around(&thresholds(&Term::Fact(fact), ground), fact);
    match fact {
        Fact::SiteContainerVolume => out.extend(USUAL_POTS_L),
        Fact::PlantCanopyDiameter | Fact::PlantHeight => out.extend(USUAL_WIDTHS_M),
        _ => {}
    }
    if is_reckoned_with(fact, ground) {
        out.extend((0..=20).map(|part| entry.step.round(low + (high - low).min(100.0) * f64::from(part) / 20.0)));
    }
    out.retain(|number| *number >= low && *number <= high);
    out.sort_by(f64::total_cmp);
    out.dedup();
    out
}

fn around(thresholds: &[f64], fact: Fact) -> Vec<f64> {
    let step = fact.entry().step;
    let mut one = step.round(1.0);
    for finer in [0.01, 0.05, 0.1, 0.5] {
        if (step.round(finer) - finer).abs() < 1e-9 {
            one = finer;
            break;
        }
    }
    thresholds.iter().flat_map(|t| [step.round(t - one), step.round(*t), step.round(t + one)]).collect()
}

/// Whether a rule reckons with a fact, so that its thresholds can't be read off.
fn is_reckoned_with(fact: Fact, ground: &Ground<'_>) -> bool {
    ground.book.probes.iter().any(|probe| {
        let mut found = false;
        probe.walk(&mut |leaf| found |= *leaf == Term::Fact(fact));
        found && *probe != Term::Fact(fact)
    })
}

/// The numbers with which the rules of the plant compare a term.
fn thresholds(term: &Term, ground: &Ground<'_>) -> Vec<f64> {
    let probes = &ground.book.probes;
    let tests = ground.book.atoms.iter().filter(|atom| probes.get(atom.probe as usize) == Some(term));
    tests
        .flat_map(|atom| match &atom.test {
            Test::Number(_, number) => vec![*number],
            Test::OneOfNumbers(list) => list.clone(),
            _ => Vec::new(),
        })
        .collect()
}

fn sign_values(sign: u16, ground: &Ground<'_>) -> Vec<Setting> {
    let id = ground.set.names.signs.name(sign);
    let condition = ground.said.condition.as_ref();
    let listed = condition.and_then(|condition| condition.signs.as_deref()).unwrap_or_default();
    let places: Vec<usize> =
        (0..listed.len()).filter(|at| listed.get(*at).is_some_and(|entry| entry.sign == id)).collect();
    let seen = ground.question.signs.get(usize::from(sign)).map_or(Truth::Unknown, |state| state.seen);
    let mut out = Vec::new();
    if seen != Truth::False {
        out.push(not_seen(id, sign, &places, ground));
    }
    let now = places.first().map_or(Json::Null, |at| self::at(&format!("/condition/signs/{at}"), ground));
    for entry in entries(sign, &now, ground) {
        if entry == now {
            continue;
        }
        let (pointer, mut edits) = match places.first() {
            None => ("/condition/signs/-".to_owned(), Vec::new()),
            // Several entries of one sign become one.
            Some(first) => (
                format!("/condition/signs/{first}"),
                places.iter().skip(1).map(|at| Edit::remove(format!("/condition/signs/{at}"))).collect(),
            ),
        };
        edits.push(Edit::put(&pointer, entry.clone()));
        let distance = severity_distance(&now, &entry);
        out.push(Setting { edits, pointer, from: now.clone(), to: entry, distance });
    }
    out
}

/// A plain sign is denied by not listing it, a hidden one or one that was told in words by its name.
fn not_seen(id: &str, sign: u16, places: &[usize], ground: &Ground<'_>) -> Setting {
    let condition = ground.said.condition.as_ref();
    let closely = condition.is_some_and(|condition| condition.looked_closely);
    let is_plain = ground.set.pack.signs.get(usize::from(sign)).is_some_and(|filed| filed.entry.seen == Seen::Plain);
    let told = condition.is_some_and(|condition| condition.words.is_some());
    let mut edits: Vec<Edit> = places.iter().map(|at| Edit::remove(format!("/condition/signs/{at}"))).collect();
    let from = places.first().map_or(Json::Null, |at| self::at(&format!("/condition/signs/{at}"), ground));
    if places.is_empty() || !(is_plain || closely) || told {
        edits.push(Edit::put("/condition/not_seen/-", json!(id)));
        return Setting { edits, pointer: "/condition/not_seen/-".to_owned(), from, to: json!(id), distance: 0.0 };
    }
    let pointer = places.first().map_or_else(String::new, |at| format!("/condition/signs/{at}"));
    Setting { edits, pointer, from, to: Json::Null, distance: 0.0 }
}

/// The entries of a sign that rules tell apart.
fn entries(sign: u16, now: &Json, ground: &Ground<'_>) -> Vec<Json> {
    let reads = |wanted: &Term| {
        ground.book.probes.iter().any(|probe| {
            let mut found = false;
            probe.walk(&mut |leaf| found |= leaf == wanted);
            found
        })
    };
    let base = if now.is_null() { json!({"sign": ground.set.names.signs.name(sign)}) } else { now.clone() };
    let mut out = vec![base];
    let vary = |out: &mut Vec<Json>, member: &str, values: Vec<Json>| {
        let more: Vec<Json> = out
            .iter()
            .flat_map(|entry| {
                values.iter().map(|value| {
                    let mut entry = entry.clone();
                    if let Some(members) = entry.as_object_mut() {
                        members.insert(member.to_owned(), value.clone());
                    }
                    entry
                })
            })
            .collect();
        out.extend(more);
    };
    if reads(&Term::Severity(sign)) {
        vary(&mut out, "severity", SEVERITY.values.iter().map(|word| json!(word)).collect());
    }
    let shares = around(&thresholds(&Term::Share(sign), ground), Fact::Share);
    let in_range = shares.into_iter().filter(|share| (0.0..=100.0).contains(share)).map(|share| json!(share));
    vary(&mut out, "share_pct", in_range.collect());
    let is_dated = |marker: &MarkerRef| *marker == MarkerRef::Since(sign);
    if reads_marker(ground, is_dated) {
        let day = ground.question.day;
        let dated = backs(&asked_back(ground, is_dated)).into_iter().map(|back| json!((day - back).date()));
        vary(&mut out, "since", dated.collect());
    }
    out
}

fn severity_distance(from: &Json, to: &Json) -> f64 {
    let number = |entry: &Json| entry.get("severity").and_then(Json::as_str).and_then(|word| SEVERITY.position(word));
    let members = to.as_object().map_or(0, serde_json::Map::len);
    #[expect(clippy::cast_precision_loss, reason = "a handful of members")]
    let words = members as f64 / 10.0;
    match (number(from), number(to)) {
        (Some(a), Some(b)) => f64::from(a.abs_diff(b)) + words,
        _ => words,
    }
}

fn done_values(work: Work, ground: &Ground<'_>) -> Vec<Setting> {
    let names = &ground.set.names;
    let entry = match work {
        Work::Job(job) => json!({"job": names.jobs.name(job)}),
        Work::Material(material) => json!({"material": names.materials.name(material)}),
        Work::Class(class) => json!({"material": names.classes.name(class)}),
    };
    let asked = asked_back(ground, |marker| *marker == MarkerRef::Last(work));
    backs(&asked).into_iter().map(|back| appended(entry.clone(), back, ground)).collect()
}

fn appended(mut entry: Json, back: i32, ground: &Ground<'_>) -> Setting {
    if let Some(members) = entry.as_object_mut() {
        members.insert("date".to_owned(), json!((ground.question.day - back).date()));
    }
    Setting {
        edits: vec![Edit::put("/history/-", entry.clone())],
        pointer: "/history/-".to_owned(),
        from: Json::Null,
        to: entry,
        distance: f64::from(back) / 365.0,
    }
}

/// Days back, each once, none in the future.
fn backs(asked: &[i32]) -> Vec<i32> {
    let mut out: Vec<i32> =
        asked.iter().copied().chain(USUAL_BACK).filter(|back| (0..=40_000).contains(back)).collect();
    out.sort_unstable();
    out.dedup();
    out
}

fn reads_marker(ground: &Ground<'_>, is: impl Fn(&MarkerRef) -> bool) -> bool {
    let mut found = false;
    each_marker(ground, &mut |marker, _| found |= is(marker));
    found
}

/// How many days back the rules of the plant look from a marker, and the days around that.
fn asked_back(ground: &Ground<'_>, is: impl Fn(&MarkerRef) -> bool) -> Vec<i32> {
    let mut out = Vec::new();
    each_marker(ground, &mut |marker, days| {
        if is(marker) {
            out.extend([days - 1, days, days + 1]);
        }
    });
    out
}

/// Every marker that terms and windows of the plant read, with the days after it at which something turns.
fn each_marker(ground: &Ground<'_>, visit: &mut impl FnMut(&MarkerRef, i32)) {
    for atom in &ground.book.atoms {
        let Some(term) = ground.book.probes.get(atom.probe as usize) else { continue };
        let numbers: Vec<f64> = match &atom.test {
            Test::Number(_, number) => vec![*number],
            Test::OneOfNumbers(list) => list.clone(),
            _ => vec![0.0],
        };
        term.walk(&mut |leaf| match leaf {
            Term::Marker(at) | Term::DaysTo(at) | Term::DaysFrom(at) => {
                for number in &numbers {
                    #[expect(clippy::cast_possible_truncation, reason = "days of at most some years")]
                    visit(innermost(&at.marker), number.clamp(-9000.0, 9000.0).round() as i32 + at.days);
                }
            }
            Term::HeatSum { from, .. } => visit(innermost(&from.marker), from.days),
            Term::Done(work, days) | Term::Count(work, days) => visit(&MarkerRef::Last(*work), i32::from(*days)),
            _ => {}
        });
    }
    for window in ground.book.rules.iter().flat_map(|rule| &rule.windows) {
        for at in [&window.opens, &window.closes].into_iter().flatten().flatten() {
            visit(innermost(&at.marker), at.days);
        }
    }
    for at in ground.book.stages.iter().flat_map(|stage| &stage.begins) {
        visit(innermost(&at.marker), at.days);
    }
}

fn innermost(marker: &MarkerRef) -> &MarkerRef {
    match marker {
        MarkerRef::HeatReached { from, .. } => innermost(&from.marker),
        other => other,
    }
}
