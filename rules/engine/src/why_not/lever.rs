//! What a caller can tell otherwise: one lever is one fact of the request, one sign, one work of the history. The climate
//! and the place are none: nobody can change them.

use crate::compile::term::{MarkerRef, Term, Work};
use crate::decide::history;
use crate::fact::catalogue::{Fact, Giver};

use super::ground::Ground;

/// One thing that a caller tells.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Lever {
    /// A fact without arguments.
    Fact(Fact),
    /// A trait of the plant.
    Trait(u16),
    /// A sign, with how bad it is, how much shows it and since when.
    Sign(u16),
    /// That nothing is seen.
    NoSigns,
    /// That hidden places were looked at.
    LookedClosely,
    /// A work of choice that is wished, or not.
    Wish(u16),
    /// A problem that the caller names.
    Problem(u16),
    /// The region, where it was not said, or not finely enough.
    Region(String),
    /// A flag of the region.
    Flag(String),
    /// That nothing was done.
    NoHistory,
    /// A work of the history, by its place: that it was not done.
    NotDone(usize),
    /// What the label of a spray of the history says, by its place.
    Label(usize),
    /// A work that was done.
    Done(Work),
    /// A work of a rule that was done.
    DoneRule(u32),
}

/// Facts that decide how much water goes, and so how often.
const OF_WATER: [Fact; 7] = [
    Fact::SitePlanting,
    Fact::SiteContainerVolume,
    Fact::PlantCanopyDiameter,
    Fact::SiteExposure,
    Fact::SiteWind,
    Fact::SiteReflectedHeat,
    Fact::SiteMulched,
];

/// The levers that move a term, into a list.
pub(super) fn of_term(term: &Term, ground: &Ground<'_>, out: &mut Vec<Lever>) {
    term.walk(&mut |leaf| of_leaf(leaf, ground, out));
}

fn of_leaf(leaf: &Term, ground: &Ground<'_>, out: &mut Vec<Lever>) {
    match leaf {
        Term::Fact(fact) => of_fact(*fact, ground, out),
        Term::Trait(number) => out.push(Lever::Trait(*number)),
        Term::Sign(sign) | Term::Severity(sign) | Term::Share(sign) => of_sign(*sign, ground, out),
        Term::RegionIs(code) => {
            let said = ground.question.region.as_deref();
            if said.is_none_or(|said| code.strip_prefix(said).is_some_and(|rest| rest.starts_with('-'))) {
                out.push(Lever::Region(code.clone()));
            }
        }
        Term::RegionFlag(flag) => out.push(Lever::Flag(flag.clone())),
        Term::Wants(job) => out.push(Lever::Wish(*job)),
        Term::Done(work, _) | Term::Count(work, _) => of_work(*work, ground, out),
        Term::Marker(at) | Term::DaysTo(at) | Term::DaysFrom(at) => of_marker(&at.marker, ground, out),
        Term::HeatSum { from, .. } => of_marker(&from.marker, ground, out),
        _ => {}
    }
}

fn of_fact(fact: Fact, ground: &Ground<'_>, out: &mut Vec<Lever>) {
    match fact {
        // The hollow is a thing of the place: it moves its frosts.
        Fact::PlantType | Fact::SiteFrostHollow => {}
        Fact::PlantAge if ground.said.plant.planted_on.is_some() => out.push(Lever::Fact(Fact::PlantPlantedOn)),
        Fact::PlantInLeaf => out.extend([Lever::Fact(fact), Lever::Fact(Fact::PlantStage)]),
        Fact::WaterNeed => out.extend(OF_WATER.iter().skip(3).map(|fact| Lever::Fact(*fact))),
        Fact::WaterInterval => {
            out.extend(OF_WATER.iter().map(|fact| Lever::Fact(*fact)));
            out.push(Lever::Fact(Fact::SoilTexture));
        }
        Fact::WaterDepletion => {
            out.extend(OF_WATER.iter().map(|fact| Lever::Fact(*fact)));
            out.push(Lever::Fact(Fact::SoilTexture));
            if let Some(job) = ground.set.names.jobs.number("water") {
                of_work(Work::Job(job), ground, out);
            }
        }
        Fact::HarvestWait => of_marker(&MarkerRef::HarvestWait, ground, out),
        _ if fact.entry().giver == Giver::Caller && fact.entry().arguments.is_empty() => out.push(Lever::Fact(fact)),
        _ => {}
    }
}

fn of_sign(sign: u16, ground: &Ground<'_>, out: &mut Vec<Lever>) {
    out.push(Lever::Sign(sign));
    let listed = ground.said.condition.as_ref().and_then(|condition| condition.signs.as_ref());
    // To list one sign is to deny the plain ones beside it; to look closely, the hidden ones.
    if listed.is_none() {
        out.push(Lever::NoSigns);
    }
    out.push(Lever::LookedClosely);
}

/// The levers that move a marker.
pub(super) fn of_marker(marker: &MarkerRef, ground: &Ground<'_>, out: &mut Vec<Lever>) {
    match marker {
        MarkerRef::HeatReached { from, .. } => of_marker(&from.marker, ground, out),
        MarkerRef::Planted => out.push(Lever::Fact(Fact::PlantPlantedOn)),
        MarkerRef::Stage(_) => out.extend([Lever::Fact(Fact::PlantStage), Lever::Fact(Fact::PlantStageSince)]),
        MarkerRef::Since(sign) => of_sign(*sign, ground, out),
        MarkerRef::Last(work) => of_work(*work, ground, out),
        MarkerRef::HarvestWait => {
            let works = ground.said.history.as_deref().unwrap_or_default();
            out.extend((0..works.len()).flat_map(|place| [Lever::Label(place), Lever::NotDone(place)]));
            of_history(ground, out);
        }
        MarkerRef::Season(_) | MarkerRef::ChillReached(_) | MarkerRef::Today => {}
    }
}

fn of_work(work: Work, ground: &Ground<'_>, out: &mut Vec<Lever>) {
    of_history(ground, out);
    out.push(Lever::Done(work));
    // The works stand in the question in order of their days, in the request as they were said.
    for (place, _) in ground.said.history.iter().flatten().enumerate() {
        if said_work(place, ground).is_some_and(|done| history::matches(&done, work, ground.set)) {
            out.push(Lever::NotDone(place));
        }
    }
}

/// The levers of the history as a whole.
pub(super) fn of_history(ground: &Ground<'_>, out: &mut Vec<Lever>) {
    if ground.said.history.is_none() {
        out.push(Lever::NoHistory);
    }
}

/// A work of the request as it was understood.
fn said_work(place: usize, ground: &Ground<'_>) -> Option<crate::question::WorkDone> {
    let mut one = ground.said.clone();
    one.history = Some(vec![one.history?.into_iter().nth(place)?]);
    let climate = std::sync::Arc::clone(&ground.question.climate);
    let understood = crate::question::understand::understand(&one, ground.set, climate, None).ok()?;
    understood.history?.first().copied()
}
