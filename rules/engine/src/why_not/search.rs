//! The smallest change: sets of settings, fewest first. Of a set that helps, some setting moves each part that stands in the
//! way; so at every step one part is taken and only its levers are tried, and none of the sets is missed.

use std::collections::{BTreeMap, BTreeSet};

use super::edit::Edit;
use super::ground::Ground;
use super::lever::Lever;
use super::obstacle::{self, Part};
use super::values::{self, Setting};
use crate::fact::catalogue::Fact;
use crate::fact::value::Value;
use lammas_agronomy::origin::Origin;

/// How much is looked at.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Reach {
    /// The most facts that are changed together.
    pub most_changes: usize,
    /// The most questions that are decided on the way.
    pub most_tries: usize,
}

impl Reach {
    /// What a caller waits for.
    pub const USUAL: Self = Self { most_changes: 3, most_tries: 20_000 };
}

/// One set of settings that brings the rule, in the order of their levers.
#[derive(Clone, Debug, PartialEq)]
pub struct Way {
    /// Which levers are moved, and to what.
    pub settings: Vec<(Lever, Setting)>,
}

impl Way {
    /// All its edits.
    #[must_use]
    pub fn edits(&self) -> Vec<Edit> {
        self.settings.iter().flat_map(|(_, setting)| setting.edits.clone()).collect()
    }
}

/// What was found.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Found {
    /// Ways with the fewest changes, the least of each kind, best first.
    pub ways: Vec<Way>,
    /// Whether all was looked at.
    pub complete: bool,
    /// How many questions were decided.
    pub tries: usize,
}

/// A setting by its lever and its place among the lever's.
type Step = (Lever, usize);

struct Search<'g, 'a> {
    ground: &'g Ground<'a>,
    settings: BTreeMap<Lever, Vec<Setting>>,
    seen: BTreeSet<Vec<Step>>,
    helping: Vec<Vec<Step>>,
    tries: usize,
    most_tries: usize,
}

/// The smallest sets of at most so many changes that bring the rule on the day of the question.
#[must_use]
pub fn smallest(ground: &Ground<'_>, reach: Reach) -> Found {
    let mut search = Search {
        ground,
        settings: BTreeMap::new(),
        seen: BTreeSet::new(),
        helping: Vec::new(),
        tries: 0,
        most_tries: reach.most_tries,
    };
    for changes in 1..=reach.most_changes {
        search.seen.clear();
        search.deepen(&mut Vec::new(), changes);
        if !search.helping.is_empty() || search.is_spent() {
            break;
        }
    }
    let complete = !search.is_spent();
    let tries = search.tries;
    Found { ways: search.ways(), complete, tries }
}

impl Search<'_, '_> {
    fn is_spent(&self) -> bool {
        self.tries >= self.most_tries
    }

    fn of(&mut self, lever: &Lever) -> &[Setting] {
        let ground = self.ground;
        self.settings.entry(lever.clone()).or_insert_with(|| values::of(lever, ground))
    }

    fn edits(&self, steps: &[Step]) -> Vec<Edit> {
        steps
            .iter()
            .filter_map(|(lever, at)| self.settings.get(lever)?.get(*at))
            .flat_map(|setting| setting.edits.clone())
            .collect()
    }

    fn deepen(&mut self, steps: &mut Vec<Step>, left: usize) {
        if self.is_spent() {
            return;
        }
        let mut key = steps.clone();
        key.sort();
        if !self.seen.insert(key.clone()) {
            return;
        }
        self.tries += 1;
        let ground = self.ground;
        let Some(question) = ground.after(&self.edits(&key)) else { return };
        let moment = ground.moment(&question);
        if left == 0 {
            if ground.is_there(&moment) {
                self.helping.push(key);
            }
            return;
        }
        let parts = obstacle::parts(ground, &moment);
        // With more parts left than changes it may still do: one lever can move several.
        if obstacle::is_fixed(&parts) {
            return;
        }
        let taken: BTreeSet<Lever> = steps.iter().map(|(lever, _)| lever.clone()).collect();
        let Some(part) = self.narrowest(parts, &taken) else { return };
        for lever in part {
            let count = self.of(&lever).len();
            for at in 0..count {
                steps.push((lever.clone(), at));
                self.deepen(steps, left - 1);
                steps.pop();
            }
        }
    }

    /// The part with the fewest settings to try.
    fn narrowest(&mut self, parts: Vec<Part>, taken: &BTreeSet<Lever>) -> Option<Vec<Lever>> {
        let mut best: Option<(usize, Vec<Lever>)> = None;
        for part in parts {
            let levers: Vec<Lever> = part.into_iter().filter(|lever| !taken.contains(lever)).collect();
            let count: usize = levers.iter().map(|lever| self.of(lever).len()).sum();
            if best.as_ref().is_none_or(|(fewest, _)| count < *fewest) {
                best = Some((count, levers));
            }
        }
        best.map(|(_, levers)| levers)
    }

    /// Of each set of levers the least way; by what they cost, then as the levers stand.
    fn ways(self) -> Vec<Way> {
        let mut least: BTreeMap<Vec<Lever>, (u64, Way)> = BTreeMap::new();
        for steps in &self.helping {
            let settings: Vec<(Lever, Setting)> = steps
                .iter()
                .filter_map(|(lever, at)| Some((lever.clone(), self.settings.get(lever)?.get(*at)?.clone())))
                .collect();
            let cost = settings.iter().map(|(lever, setting)| cost(lever, setting, self.ground)).sum();
            let levers = settings.iter().map(|(lever, _)| lever.clone()).collect();
            let way = Way { settings };
            match least.get(&levers) {
                Some((known, _)) if *known <= cost => {}
                _ => {
                    least.insert(levers, (cost, way));
                }
            }
        }
        let mut ways: Vec<(u64, Way)> = least.into_values().collect();
        ways.sort_by_key(|(cost, _)| *cost);
        ways.into_iter().map(|(_, way)| way).collect()
    }
}

/// What a change asks of the caller, in thousandths: to tell what was not said is less than to tell it otherwise; a
/// measurement is more than a glance; a small step is less than a wide one.
fn cost(lever: &Lever, setting: &Setting, ground: &Ground<'_>) -> u64 {
    let look = |fact: Fact| u64::from(fact.entry().cost.max(1));
    let (told, look) = match lever {
        Lever::Fact(fact) => {
            let given = ground.question.given(*fact);
            let told = match (given.value, given.origin) {
                (Value::Unknown, _) => 0,
                (_, Origin::Assumed) => 1,
                _ => 2,
            };
            (told, look(*fact))
        }
        Lever::Trait(number) => {
            let given = ground.question.traits.get(usize::from(*number));
            let told = match given.map(|reading| (reading.value, reading.origin)) {
                None | Some((Value::Unknown, _)) => 0,
                Some((_, Origin::Assumed)) => 1,
                Some(_) => 2,
            };
            (told, look(Fact::PlantTrait))
        }
        Lever::Sign(_) | Lever::NoSigns => (u64::from(!setting.from.is_null()), look(Fact::SignsHas)),
        // Many places are looked at.
        Lever::LookedClosely => (1, 2),
        Lever::NoHistory | Lever::Region(_) | Lever::Label(_) => (0, 1),
        Lever::Wish(_) => (0, 1),
        Lever::Problem(_) => (1, 2),
        Lever::Flag(_) => (3, 1),
        Lever::Done(_) | Lever::DoneRule(_) => (2, 1),
        Lever::NotDone(_) => (3, 1),
    };
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "kept between 0 and 999")]
    let distance = (setting.distance * 10.0).clamp(0.0, 999.0) as u64;
    told * 10_000 + look * 1000 + distance
}
