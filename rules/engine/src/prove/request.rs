//! A case as a question that anybody can ask: the body of `POST /v1/advice`.

use chrono::NaiveDate;
use lammas_agronomy::calendar::Day;
use lammas_agronomy::profile::Profile;
use lammas_agronomy::season::{Aggregate, Series};
use serde_json::{Map, Value as Json, json};

use super::ground::Ground;
use super::search::Case;
use crate::compile::book::PlantBook;
use crate::compile::set::Set;
use crate::compile::term::{MarkerAt, MarkerRef, Term, Work};
use crate::fact::catalogue::{Fact, FactType};
use crate::fact::choices::SEVERITY;
use crate::fact::step::Step;
use crate::fact::value::Value;

/// A region that no rule of a garden speaks of: user-assigned in ISO 3166-1.
const NOWHERE: &str = "ZZ";
/// Long enough ago to stand in nobody's way.
const LONG_AGO: i32 = 400;

/// What was done before the day of a question.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Done {
    /// What the case asks for.
    AsAsked,
    /// That, and the works after which the due rules must wait some days.
    FirstThings,
}

/// A case as a question on one of its days. `due` are rules, by their number among the plant's, whose turn it must be.
#[must_use]
pub(crate) fn of(case: &Case, at: usize, due: &[u32], done: Done, ground: &Ground<'_>) -> Option<Json> {
    let place = ground.place(case.spot)?;
    let day = Ground::day(at);
    let mut asking = Asking {
        set: ground.set,
        book: ground.book,
        day,
        body: json!({
            "climate": climate(&place.climate.profile),
            "date": date(day),
            "plant": {"type": ground.book.id},
        }),
        signs: Vec::new(),
        history: Vec::new(),
        weather: Vec::new(),
        region: None,
    };
    asking.body.as_object_mut()?.insert("condition".to_owned(), json!({"signs": [], "looked_closely": true}));
    for (probe, values) in &case.terms {
        // What exists is told before what does not.
        let value = values.iter().find(|value| **value != Value::Absent).or(values.first());
        if let (Some(term), Some(value)) = (ground.book.probes.get(*probe as usize), value) {
            asking.term(term, *value);
        }
    }
    for (rule, open) in &case.windows {
        if *open {
            asking.window(*rule);
        }
    }
    for (problem, had) in &case.problems {
        if *had {
            asking.push("/condition/problems", json!(ground.set.names.problems.name(*problem)));
        }
    }
    for rule in due {
        asking.turn(*rule);
        if done == Done::FirstThings {
            asking.first_things(*rule);
        }
    }
    asking.done(&place.climate)
}

/// A climate as it is said.
fn climate(profile: &Profile) -> Json {
    let normals = &profile.normals;
    let mut said = json!({
        "latitude": profile.latitude_deg,
        "longitude": profile.longitude_deg,
        "elevation_m": profile.elevation_m,
        "normals": {"tmin_c": normals.tmin_c, "tmax_c": normals.tmax_c},
    });
    if let (Some(rain), Some(slot)) = (normals.rain_mm, said.pointer_mut("/normals").and_then(Json::as_object_mut)) {
        slot.insert("rain_mm".to_owned(), json!(rain));
    }
    if let (Some(sd), Some(slot)) = (profile.tmin_sd_k, said.as_object_mut()) {
        slot.insert("tmin_sd_k".to_owned(), json!(sd));
    }
    said
}

fn date(day: Day) -> NaiveDate {
    day.date()
}

/// What a forecast must say.
enum Weather {
    Of(Aggregate, Series, u16, f64),
    Frost(f64, bool, u16),
}

struct Asking<'s> {
    set: &'s Set,
    book: &'s PlantBook,
    day: Day,
    body: Json,
    signs: Vec<(u16, Map<String, Json>)>,
    history: Vec<Json>,
    weather: Vec<Weather>,
    region: Option<String>,
}

impl Asking<'_> {
    /// Puts a value where a JSON pointer says.
    fn put(&mut self, pointer: &str, value: Json) {
        let mut here = &mut self.body;
        for name in pointer.trim_start_matches('/').split('/') {
            if !here.is_object() {
                *here = json!({});
            }
            let Some(object) = here.as_object_mut() else { return };
            here = object.entry(name.to_owned()).or_insert(Json::Null);
        }
        *here = value;
    }

    /// Adds a value to the list where a JSON pointer says.
    fn push(&mut self, pointer: &str, value: Json) {
        let mut list = self.body.pointer(pointer).and_then(Json::as_array).cloned().unwrap_or_default();
        if !list.contains(&value) {
            list.push(value);
        }
        self.put(pointer, Json::Array(list));
    }

    fn sign(&mut self, sign: u16) -> Option<&mut Map<String, Json>> {
        if !self.signs.iter().any(|(known, _)| *known == sign) {
            let mut entry = Map::new();
            entry.insert("sign".to_owned(), json!(self.set.names.signs.name(sign)));
            self.signs.push((sign, entry));
        }
        self.signs.iter_mut().find(|(known, _)| *known == sign).map(|(_, entry)| entry)
    }

    /// Says a term. What can't be said is left to the engine, which then finds something else.
    fn term(&mut self, term: &Term, value: Value) {
        match (term, value) {
            (Term::Fact(fact), value) => self.fact(*fact, value),
            (Term::Trait(number), Value::Choice(choice)) => {
                let values = self.book.names.values.get(usize::from(*number));
                let name = self.book.names.traits.name(*number);
                if let Some(values) = values {
                    self.put(&format!("/plant/traits/{name}"), json!(values.name(choice)));
                }
            }
            (Term::Sign(sign), Value::Truth(true)) => {
                self.sign(*sign);
            }
            (Term::Severity(sign), Value::Choice(choice)) => {
                let name = SEVERITY.values.get(usize::from(choice)).copied();
                if let Some(entry) = self.sign(*sign) {
                    entry.insert("severity".to_owned(), json!(name));
                }
            }
            (Term::Share(sign), Value::Number(share)) => {
                if let Some(entry) = self.sign(*sign) {
                    entry.insert("share_pct".to_owned(), json!(share));
                }
            }
            (Term::RegionIs(code), Value::Truth(true)) => {
                if self.region.as_ref().is_none_or(|known| known == NOWHERE || code.len() > known.len()) {
                    self.region = Some(code.clone());
                }
            }
            (Term::RegionIs(_), _) => {
                self.region.get_or_insert_with(|| NOWHERE.to_owned());
            }
            (Term::RegionFlag(flag), Value::Truth(true)) => self.push("/site/region_flags", json!(flag)),
            (Term::Wants(job), Value::Truth(true)) => {
                self.push("/wishes", json!(self.set.names.jobs.name(*job)));
            }
            (Term::Done(work, days), Value::Truth(true)) => self.work(*work, i32::from(*days) - 1),
            (Term::Count(work, days), Value::Number(count)) => {
                let mut left = count;
                let mut ago = i32::from(*days) - 1;
                while left >= 1.0 && left < 100.0 {
                    self.work(*work, ago.max(0));
                    ago -= 1;
                    left -= 1.0;
                }
            }
            (Term::Ahead(aggregate, series, days), Value::Number(number)) => {
                self.weather.push(Weather::Of(*aggregate, *series, *days, number));
            }
            (Term::FrostAhead(temperature, days), Value::Truth(frost)) => {
                self.weather.push(Weather::Frost(*temperature, frost, *days));
            }
            (Term::DaysFrom(at), Value::Number(days)) => self.marker(at, self.day - whole(days)),
            (Term::Marker(at), Value::Date(day)) => self.marker(at, day),
            // Only whether it exists is asked.
            (Term::Marker(at), Value::Truth(true)) => self.marker(at, self.day - 30),
            _ => {}
        }
    }

    fn fact(&mut self, fact: Fact, value: Value) {
        let entry = fact.entry();
        if entry.pointer.is_empty() || self.body.pointer(entry.pointer).is_some() {
            return;
        }
        let said = match (value, entry.ty) {
            (Value::Number(number), _) => json!(number),
            (Value::Truth(yes), _) => json!(yes),
            (Value::Date(day), _) => json!(date(day)),
            (Value::Choice(choice), FactType::Choice(list)) => json!(list.values.get(usize::from(choice))),
            (Value::Choice(choice), FactType::Stage) => json!(self.book.names.stages.name(choice)),
            _ => return,
        };
        self.put(entry.pointer, said);
    }

    /// A day of a marker, its offset taken off.
    fn marker(&mut self, at: &MarkerAt, day: Day) {
        let day = day - at.days;
        if day > self.day {
            return;
        }
        match &at.marker {
            MarkerRef::Planted => self.put("/plant/planted_on", json!(date(day))),
            MarkerRef::Last(work) => self.work(*work, self.day - day),
            MarkerRef::Since(sign) => {
                if let Some(entry) = self.sign(*sign) {
                    entry.insert("since".to_owned(), json!(date(day)));
                }
            }
            MarkerRef::Stage(stage) => {
                let name = self.book.names.stages.name(*stage).to_owned();
                self.put("/plant/stage", json!(name));
                self.put("/plant/stage_since", json!(date(day)));
            }
            _ => {}
        }
    }

    fn work(&mut self, work: Work, ago: i32) {
        let on = date(self.day - ago);
        let names = &self.set.names;
        self.history.push(match work {
            Work::Job(job) => json!({"job": names.jobs.name(job), "date": on}),
            Work::Material(material) => json!({"material": names.materials.name(material), "date": on}),
            Work::Class(class) => json!({"material": names.classes.name(class), "date": on}),
        });
    }

    /// A window that hangs on the caller opens on the day.
    fn window(&mut self, rule: u32) {
        let Some(window) = self.book.rules.get(rule as usize).and_then(|rule| rule.windows.first()) else { return };
        let side = window.opens.as_ref().or(window.closes.as_ref());
        if let Some(at) = side.and_then(|side| side.first()).filter(|at| !self.is_told(&at.marker)) {
            self.marker(at, self.day);
        }
    }

    /// Whether the day of a marker is told already.
    fn is_told(&self, marker: &MarkerRef) -> bool {
        match marker {
            MarkerRef::Planted => self.body.pointer("/plant/planted_on").is_some(),
            MarkerRef::Since(sign) => {
                self.signs.iter().any(|(known, entry)| known == sign && entry.contains_key("since"))
            }
            MarkerRef::Stage(_) => self.body.pointer("/plant/stage_since").is_some(),
            MarkerRef::Last(_) => !self.history.is_empty(),
            _ => false,
        }
    }

    /// What must come some days before a rule was done as late as it may.
    fn first_things(&mut self, rule: u32) {
        let number = self.book.rules.get(rule as usize).map(|rule| rule.rule);
        let Some(info) = number.and_then(|number| self.set.rules.get(number as usize)) else { return };
        for (first, days) in info.after.iter().filter(|(_, days)| *days > 0) {
            if let Some(first) = self.set.rules.get(*first as usize) {
                self.history.push(json!({"rule": first.id, "date": date(self.day - i32::from(*days))}));
            }
        }
    }

    /// Of two that take turns the other was done long ago.
    fn turn(&mut self, rule: u32) {
        let rule = self.book.rules.get(rule as usize).map(|rule| rule.rule);
        let info = rule.and_then(|rule| self.set.rules.get(rule as usize));
        if let Some((other, _, false)) = info.and_then(|info| info.alternate)
            && let Some(partner) = self.set.rules.get(other as usize)
        {
            self.history.push(json!({"rule": partner.id, "date": date(self.day - LONG_AGO)}));
        }
    }

    fn done(mut self, climate: &crate::question::Climate) -> Option<Json> {
        let signs: Vec<Json> = self.signs.drain(..).map(|(_, entry)| Json::Object(entry)).collect();
        self.put("/condition/signs", Json::Array(signs));
        let history = std::mem::take(&mut self.history);
        self.put("/history", Json::Array(history));
        if let Some(region) = self.region.take() {
            self.put("/site/region", json!(region));
        }
        if !self.weather.is_empty() {
            let forecast = self.forecast(climate);
            self.put("/climate/forecast", forecast);
        }
        Some(self.body)
    }

    /// The same weather on every day of the forecast, as far as that will do.
    fn forecast(&self, climate: &crate::question::Climate) -> Json {
        let curve = |series| climate.season.curve(series, self.day.climate_day());
        let mut tmin = curve(Series::Tmin).unwrap_or(8.0);
        let mut tmax = curve(Series::Tmax).unwrap_or(18.0);
        let mut rain = curve(Series::Rain).unwrap_or(0.0);
        let mut wind = None;
        let (mut low_is_set, mut high_is_set) = (false, false);
        for weather in &self.weather {
            match weather {
                Weather::Of(aggregate, series, days, number) => {
                    let per_day =
                        if *aggregate == Aggregate::Sum { number / f64::from(*days).max(1.0) } else { *number };
                    match series {
                        Series::Tmin => (tmin, low_is_set) = (per_day, true),
                        Series::Tmax => (tmax, high_is_set) = (per_day, true),
                        Series::Rain => rain = per_day,
                        Series::Wind => wind = Some(per_day),
                        _ => {}
                    }
                }
                Weather::Frost(temperature, frost, _) if !low_is_set => {
                    tmin = if *frost { tmin.min(temperature - 1.0) } else { tmin.max(temperature + 1.0) };
                }
                Weather::Frost(..) => {}
            }
        }
        if tmin > tmax {
            if high_is_set && !low_is_set { tmin = tmax - 8.0 } else { tmax = tmin + 8.0 }
        }
        let tenth = |value: f64| Step::new(1, 10).round(value);
        let last = self.weather.iter().map(|weather| match weather {
            Weather::Of(_, _, days, _) | Weather::Frost(_, _, days) => i32::from(*days),
        });
        let days: Vec<Json> = (0..last.max().unwrap_or(1))
            .map(|ahead| {
                let mut day = json!({
                    "date": date(self.day + ahead), "tmin_c": tenth(tmin), "tmax_c": tenth(tmax), "rain_mm": Step::new(1, 100).round(rain),
                });
                if let (Some(wind), Some(day)) = (wind, day.as_object_mut()) {
                    day.insert("wind_kmh".to_owned(), json!(wind));
                }
                day
            })
            .collect();
        json!({"issued": date(self.day), "days": days})
    }
}

#[expect(clippy::cast_possible_truncation, reason = "a number of days")]
fn whole(days: f64) -> i32 {
    days as i32
}
