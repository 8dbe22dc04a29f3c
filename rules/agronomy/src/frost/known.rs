//! Frost dates of a site from everything that is known: given over counted over reckoned.

use super::dates::FrostDates;
use crate::calendar::ClimateDay;
use crate::origin::Origin;
use crate::profile::{CountedFrost, FrostTriple, GivenFrost};

/// The frost dates of a site and where each comes from.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SiteFrost {
    /// The dates, in pairs unless the caller gave them.
    pub dates: FrostDates,
    /// Origins of the last frosts, early first.
    pub last_origins: [Origin; 3],
    /// Origins of the first frosts, early first.
    pub first_origins: [Origin; 3],
    /// Origin of the killing frosts.
    pub killing_origin: Origin,
}

/// The frost dates of a site.
///
/// `site` are the dates from the normals with the site's shift of the daily minimum in them, `level`
/// those without it when there is a shift (a frost hollow). Better knowledge wins: dates that the
/// caller gave, then those counted from a record, then the reckoned ones (whose origin is
/// `curve_origin`). Given and counted dates hold for the station, so a shifted site moves them by as
/// many days as the reckoned date moves. Where the caller gave one date of a triple only, the others
/// keep their reckoned distance from it; where there is none to keep they stand on the given day.
#[must_use]
pub fn site_frost(
    site: FrostDates,
    level: Option<&FrostDates>,
    counted: Option<&CountedFrost>,
    given: Option<&GivenFrost>,
    curve_origin: Origin,
) -> SiteFrost {
    let told = |origin: Origin| {
        if level.is_some() { curve_origin } else { origin }
    };
    let (base, base_origin) = match counted {
        Some(counted) => {
            let counted = FrostDates::counted(counted);
            (moved(counted, level, &site).paired(), told(Origin::Measured))
        }
        None => (site.paired(), curve_origin),
    };
    let mut frost = SiteFrost {
        dates: base,
        last_origins: [base_origin; 3],
        first_origins: [base_origin; 3],
        killing_origin: base_origin,
    };
    let Some(given) = given else { return frost };

    let given_origin = told(Origin::Given);
    let (level_last, level_first) = level.map_or((site.last, site.first), |level| (level.last, level.first));
    let given_last = moved_triple(given.last, level_last, site.last);
    let given_first = moved_triple(given.first, level_first, site.first);
    let dates = &mut frost.dates;
    dates.last_killing = follow_one(given_last.median, base.last.median, base.last_killing);
    dates.first_killing = follow_one(given_first.median, base.first.median, base.first_killing);
    if given_last.median.is_some() || given_first.median.is_some() {
        frost.killing_origin = curve_origin;
    }
    let fill = |triple: FrostTriple, base: FrostTriple, origins: &mut [Origin; 3]| {
        for (origin, day) in origins.iter_mut().zip(triple.days()) {
            *origin = match day {
                Some(_) => given_origin,
                None if triple == FrostTriple::default() => *origin,
                None => curve_origin,
            };
        }
        follow(triple, base)
    };
    dates.last = fill(given_last, base.last, &mut frost.last_origins);
    dates.first = fill(given_first, base.first, &mut frost.first_origins);
    dates.chance = dates.chance.max(least_chance(given));
    frost
}

/// The share of years with frost that given dates vouch for.
fn least_chance(given: &GivenFrost) -> f64 {
    if given.last.early.is_some() || given.first.late.is_some() {
        0.9
    } else if given.last.median.is_some() || given.first.median.is_some() {
        0.5
    } else if given.last.late.is_some() || given.first.early.is_some() {
        0.1
    } else {
        0.0
    }
}

/// Counted dates moved as the reckoned ones move from the level station to the site.
fn moved(counted: FrostDates, level: Option<&FrostDates>, site: &FrostDates) -> FrostDates {
    let Some(level) = level else { return counted };
    let share = |counted: f64, level: f64, site: f64| (counted + site - level).clamp(0.0, 1.0);
    FrostDates {
        chance: share(counted.chance, level.chance, site.chance),
        killing_chance: share(counted.killing_chance, level.killing_chance, site.killing_chance),
        last: appearing(moved_triple(counted.last, level.last, site.last), level.last, site.last),
        first: appearing(moved_triple(counted.first, level.first, site.first), level.first, site.first),
        last_killing: moved_day(counted.last_killing, level.last_killing, site.last_killing)
            .or(new_day(level.last_killing, site.last_killing)),
        first_killing: moved_day(counted.first_killing, level.first_killing, site.first_killing)
            .or(new_day(level.first_killing, site.first_killing)),
    }
}

/// A date that the shift brings into being.
fn new_day(level: Option<ClimateDay>, site: Option<ClimateDay>) -> Option<ClimateDay> {
    if level.is_none() { site } else { None }
}

fn appearing(known: FrostTriple, level: FrostTriple, site: FrostTriple) -> FrostTriple {
    FrostTriple {
        early: known.early.or(new_day(level.early, site.early)),
        median: known.median.or(new_day(level.median, site.median)),
        late: known.late.or(new_day(level.late, site.late)),
    }
}

fn moved_triple(known: FrostTriple, level: FrostTriple, site: FrostTriple) -> FrostTriple {
    FrostTriple {
        early: moved_day(known.early, level.early, site.early),
        median: moved_day(known.median, level.median, site.median),
        late: moved_day(known.late, level.late, site.late),
    }
}

fn moved_day(known: Option<ClimateDay>, level: Option<ClimateDay>, site: Option<ClimateDay>) -> Option<ClimateDay> {
    let days = level.zip(site).map_or(0, |(level, site)| site.days_from(level));
    known.map(|day| day.plus(days))
}

/// A date moved by as much as another one was corrected.
fn follow_one(given: Option<ClimateDay>, reckoned: Option<ClimateDay>, day: Option<ClimateDay>) -> Option<ClimateDay> {
    let days = given.zip(reckoned).map_or(0, |(given, reckoned)| given.days_from(reckoned));
    day.map(|day| day.plus(days))
}

/// The given dates of a triple with the missing ones beside them.
fn follow(given: FrostTriple, base: FrostTriple) -> FrostTriple {
    if given == FrostTriple::default() {
        return base;
    }
    let [early, median, late] = [(given.early, base.early), (given.median, base.median), (given.late, base.late)];
    let beside = |day: (Option<ClimateDay>, Option<ClimateDay>), nearest, farther| {
        let (given, reckoned): (Option<ClimateDay>, _) = nearest;
        let (given, reckoned) = if given.is_some() { (given, reckoned) } else { farther };
        day.0.or_else(|| follow_one(given, reckoned, day.1).or(given))
    };
    let median = beside(median, early, late);
    // what was given stands; what was moved beside it may not pass it
    let median = not_before(median, given.early);
    let median = not_after(median, given.late);
    let early = beside(early, (given.median, base.median), late);
    let late = beside(late, (given.median, base.median), (given.early, base.early));
    FrostTriple {
        early: if given.early.is_some() { early } else { not_after(early, median) },
        median,
        late: if given.late.is_some() { late } else { not_before(late, median) },
    }
}

/// The day, but not before the bound.
fn not_before(day: Option<ClimateDay>, bound: Option<ClimateDay>) -> Option<ClimateDay> {
    match (day, bound) {
        (Some(day), Some(bound)) if day.days_from(bound) < 0 => Some(bound),
        _ => day,
    }
}

/// The day, but not after the bound.
fn not_after(day: Option<ClimateDay>, bound: Option<ClimateDay>) -> Option<ClimateDay> {
    match (day, bound) {
        (Some(day), Some(bound)) if day.days_from(bound) > 0 => Some(bound),
        _ => day,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn day(text: &str) -> Option<ClimateDay> {
        Some(text.parse().unwrap())
    }

    fn triple(early: &str, median: &str, late: &str) -> FrostTriple {
        let read = |text: &str| if text.is_empty() { None } else { day(text) };
        FrostTriple { early: read(early), median: read(median), late: read(late) }
    }

    fn site() -> FrostDates {
        FrostDates {
            chance: 0.99,
            killing_chance: 0.9,
            last: triple("03-20", "04-10", "04-30"),
            first: triple("10-20", "11-05", "11-25"),
            last_killing: day("03-25"),
            first_killing: day("11-20"),
        }
    }

    fn with_given(last: FrostTriple, first: FrostTriple) -> SiteFrost {
        site_frost(site(), None, None, Some(&GivenFrost { last, first }), Origin::Computed)
    }

    #[test]
    fn a_given_median_takes_the_other_two_with_it() {
        let frost = with_given(triple("", "04-15", ""), FrostTriple::default());
        assert_eq!(frost.dates.last, triple("03-25", "04-15", "05-05"));
        assert_eq!(frost.last_origins, [Origin::Computed, Origin::Given, Origin::Computed]);
        assert_eq!(frost.dates.first, site().first);
        assert_eq!(frost.dates.last_killing, day("03-30"));
    }

    #[test]
    fn what_was_given_is_never_passed_by_what_was_not() {
        let frost = with_given(triple("04-20", "", "04-25"), FrostTriple::default());
        assert_eq!(frost.dates.last, triple("04-20", "04-25", "04-25"));
        let late = with_given(triple("", "", "04-05"), FrostTriple::default());
        assert_eq!(late.dates.last, triple("02-23", "03-16", "04-05"));
    }

    #[test]
    fn given_frost_in_a_place_that_should_have_none_is_believed() {
        let none = FrostDates {
            chance: 0.01,
            killing_chance: 0.0,
            last: FrostTriple::default(),
            first: FrostTriple::default(),
            last_killing: None,
            first_killing: None,
        };
        let given = GivenFrost { last: triple("", "02-01", ""), first: triple("", "12-20", "") };
        let frost = site_frost(none, None, None, Some(&given), Origin::Computed);
        assert_eq!(frost.dates.last, triple("02-01", "02-01", "02-01"));
        assert!(frost.dates.chance >= 0.5);
    }

    #[test]
    fn a_hollow_moves_counted_dates_as_far_as_the_reckoned_ones() {
        let mut hollow = site();
        hollow.last = triple("03-30", "04-22", "05-14");
        let counted = CountedFrost {
            seasons: 20,
            share_with_frost: 1.0,
            share_with_killing_frost: 1.0,
            last: triple("03-18", "04-08", "05-01"),
            first: triple("10-22", "11-07", "11-21"),
            last_killing: day("03-24"),
            first_killing: day("11-22"),
        };
        let level = site();
        let frost = site_frost(hollow, Some(&level), Some(&counted), None, Origin::Computed);
        assert_eq!(frost.dates.last, triple("03-28", "04-20", "05-15"));
        assert_eq!(frost.dates.first, counted.first);
        assert_eq!(frost.last_origins, [Origin::Computed; 3]);
        let plain = site_frost(site(), None, Some(&counted), None, Origin::Computed);
        assert_eq!(plain.dates.last, counted.last);
        assert_eq!(plain.last_origins, [Origin::Measured; 3]);
    }
}
