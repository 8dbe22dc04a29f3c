//! Which releases a request asks for: the operator's, by name, pinned as `name@version`, or as they were at a moment.

use std::sync::Arc;

use chrono::{DateTime, Utc};
use lammas_engine::compile::set::Set;

use super::rules::{Rules, Served};
use crate::library::{NotThen, Release};
use crate::problem::clipped;
use crate::problem::faults::Faults;
use crate::problem::kinds::UNKNOWN_RULE_SET;
use crate::problem::pointer::entry;
use crate::v1::question::climate::ClimateGiven;
use crate::v1::question::date::AsOf;
use crate::v1::question::today::Clock;

/// The set that a request is answered from.
#[derive(Clone, Debug)]
pub struct Picked {
    /// The releases, laid over each other.
    pub set: Arc<Set>,
    /// Those of them that were taken back.
    pub withdrawn: Vec<Arc<Release>>,
}

impl Picked {
    /// The set of whoever names none.
    #[must_use]
    pub fn standard(rules: &Rules) -> Self {
        Self { set: rules.set(), withdrawn: Vec::new() }
    }
}

/// What a request says of the sets that it wants.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Wanted<'r> {
    pub(crate) sets: &'r [String],
    pub(crate) as_of: Option<AsOf>,
    pub(crate) climate: Option<&'r ClimateGiven>,
}

/// The set that a request asks for; what is wrong with what it says goes to `faults`, and the operator's set stands in, so that
/// the rest can be judged as well.
pub(crate) fn pick(wanted: Wanted<'_>, rules: &Rules, now: DateTime<Utc>, faults: &mut Faults) -> Picked {
    let served = rules.served();
    if wanted.sets.is_empty() && wanted.as_of.is_none() {
        return Picked { set: Arc::clone(&served.set), withdrawn: Vec::new() };
    }
    let moment = wanted.as_of.map(|as_of| moment(as_of, wanted.climate, &served));
    if moment.is_some_and(|moment| moment > now) {
        faults.add_if_new(None, "/as_of".to_owned(), "expected a moment, or the end of a day, that is over".to_owned());
    }
    let sets = if wanted.sets.is_empty() { &served.standard } else { wanted.sets };
    let before = faults.len();
    let mut releases: Vec<Arc<Release>> = Vec::new();
    for (place, named) in sets.iter().enumerate() {
        if let Some(release) = release(named, place, moment, &served, faults) {
            if releases.iter().any(|known| known.set == release.set) {
                let detail = format!("the rule set `{}` stands twice", release.set);
                faults.add_if_new(None, entry("/rule_sets", place), detail);
            }
            releases.push(release);
        }
    }
    let standard = Picked { set: Arc::clone(&served.set), withdrawn: Vec::new() };
    if faults.len() > before || releases.is_empty() {
        return standard;
    }
    lies_over(&releases, faults);
    if faults.len() > before {
        return standard;
    }
    let is_pinned = sets.iter().any(|named| named.contains('@'));
    let laid = if is_pinned {
        rules.stacks().of(&releases, &served)
    } else {
        rules.stacks().fitting(releases.clone(), &served.library, &served)
    };
    match laid {
        Ok(set) => {
            let spoke = |release: &&Arc<Release>| set.layers.iter().any(|layer| layer.sha256 == release.sha256);
            let withdrawn =
                releases.iter().filter(|release| release.withdrawn.is_some()).filter(spoke).cloned().collect();
            Picked { set, withdrawn }
        }
        Err(error) => {
            faults.add_if_new(Some(UNKNOWN_RULE_SET), "/rule_sets".to_owned(), error.to_string());
            standard
        }
    }
}

/// A date means its end at the place of the question.
fn moment(as_of: AsOf, climate: Option<&ClimateGiven>, served: &Served) -> DateTime<Utc> {
    match as_of {
        AsOf::Instant(instant) => instant.to_utc(),
        AsOf::Day(date) => clock(climate, served).end_of(date),
    }
}

fn clock(climate: Option<&ClimateGiven>, served: &Served) -> Clock {
    let Some(climate) = climate else { return Clock::default() };
    let registered =
        climate.id.as_ref().and_then(|id| served.set.pack.climates.iter().find(|c| c.entry.id.value == *id));
    match registered {
        Some(found) => Clock { zone: found.entry.zone.clone(), longitude_deg: found.entry.profile.longitude },
        None => Clock { zone: None, longitude_deg: climate.longitude },
    }
}

fn release(
    named: &str,
    place: usize,
    moment: Option<DateTime<Utc>>,
    served: &Served,
    faults: &mut Faults,
) -> Option<Arc<Release>> {
    let library = &served.library;
    let at = || entry("/rule_sets", place);
    let (set, version) = named.split_once('@').map_or((named, None), |(set, version)| (set, Some(version)));
    if library.releases(set).is_empty() {
        let known: Vec<String> =
            library.names().filter_map(|name| Some(format!("`{name}` or `{}`", library.newest(name)?.pin()))).collect();
        let detail = format!("unknown rule set `{}`, expected {}", clipped(named), known.join(", "));
        faults.add_if_new(Some(UNKNOWN_RULE_SET), at(), detail);
        return None;
    }
    if let Some(version) = version {
        let found = library.pinned(set, version).cloned();
        if found.is_none() {
            let mut known: Vec<String> =
                library.releases(set).iter().rev().map(|release| format!("`{}`", release.pin())).collect();
            known.dedup();
            known.truncate(5);
            let detail = format!("unknown rule set `{}`, expected {}", clipped(named), known.join(" or "));
            faults.add_if_new(Some(UNKNOWN_RULE_SET), at(), detail);
        }
        return found;
    }
    let Some(moment) = moment else {
        let newest = library.newest(set).cloned();
        if newest.is_none() {
            faults.add_if_new(Some(UNKNOWN_RULE_SET), at(), format!("every release of `{set}` was taken back"));
        }
        return newest;
    };
    match library.as_of(set, moment) {
        Ok(release) => Some(Arc::clone(release)),
        Err(not_then) => {
            let detail = match not_then {
                NotThen::BeforeFirst(first) => format!(
                    "the rule set `{set}` was first published at {}",
                    first.to_rfc3339_opts(chrono::SecondsFormat::Secs, true)
                ),
                NotThen::NotRecorded => {
                    format!("nobody recorded when the rule set `{set}` was published: pin a version")
                }
                NotThen::NoSuchSet => format!("unknown rule set `{set}`"),
            };
            faults.add_if_new(Some(UNKNOWN_RULE_SET), "/as_of".to_owned(), detail);
            None
        }
    }
}

/// Each set says over which it lies; those must stand before it.
fn lies_over(releases: &[Arc<Release>], faults: &mut Faults) {
    for (place, release) in releases.iter().enumerate() {
        let below: Vec<&str> = releases.iter().take(place).map(|release| release.set.as_str()).collect();
        if let Some(missing) = release.over.iter().find(|over| !below.contains(&over.as_str())) {
            let detail = format!("`{}` lies over `{missing}`, which must stand before it", release.set);
            faults.add_if_new(None, entry("/rule_sets", place), detail);
        } else if place > 0 && release.over.is_empty() {
            let detail = format!("`{}` stands by itself and can't be laid over another set", release.set);
            faults.add_if_new(None, entry("/rule_sets", place), detail);
        }
    }
}
