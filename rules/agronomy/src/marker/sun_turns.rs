//! The longest and the shortest day and the equinoxes.

use std::sync::LazyLock;

use super::state::MarkerState;
use crate::calendar::ClimateDay;
use crate::sun::declination_rad;

/// Nearer to the equator than this the length of the day makes no seasons, degrees (own choice).
const EVEN_LATITUDE_DEG: f64 = 5.0;

/// The four turns of the sun at a latitude.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct SunTurns {
    /// The longest day; in the polar day its middle.
    pub longest_day: MarkerState,
    /// The shortest day; in the polar night its middle.
    pub shortest_day: MarkerState,
    /// The first day on which daylength has risen to 12 h.
    pub spring_equinox: MarkerState,
    /// The first day on which daylength has fallen below 12 h.
    pub autumn_equinox: MarkerState,
}

/// The turns of the declination, the same for every latitude.
#[derive(Clone, Copy)]
struct Turns {
    northmost: ClimateDay,
    southmost: ClimateDay,
    northward: ClimateDay,
    southward: ClimateDay,
}

static TURNS: LazyLock<Turns> = LazyLock::new(|| {
    let at = |day: ClimateDay| declination_rad(day.day_of_year());
    let mut northmost = ClimateDay::around(0);
    let mut southmost = northmost;
    let mut northward = northmost;
    let mut southward = northmost;
    for day in ClimateDay::all() {
        if at(day) > at(northmost) {
            northmost = day;
        }
        if at(day) < at(southmost) {
            southmost = day;
        }
        let before = at(day.plus(-1));
        if before < 0.0 && at(day) >= 0.0 {
            northward = day;
        }
        if before >= 0.0 && at(day) < 0.0 {
            southward = day;
        }
    }
    Turns { northmost, southmost, northward, southward }
});

impl SunTurns {
    /// The turns at a latitude in degrees, south negative. Within 5 degrees of the equator all are
    /// `Even`.
    ///
    /// By FAO-56 eq 25 and 34 daylength grows with the declination in the north and falls with it in
    /// the south, and passes 12 h where the declination passes 0; so the declination (eq 24) is all
    /// that is needed.
    #[must_use]
    pub fn at(latitude_deg: f64) -> Self {
        if latitude_deg.abs() <= EVEN_LATITUDE_DEG {
            let even = MarkerState::Even;
            return Self { longest_day: even, shortest_day: even, spring_equinox: even, autumn_equinox: even };
        }
        let Turns { northmost, southmost, northward, southward } = *TURNS;
        let [longest, shortest, spring, autumn] = if latitude_deg > 0.0 {
            [northmost, southmost, northward, southward]
        } else {
            [southmost, northmost, southward, northward]
        };
        Self {
            longest_day: MarkerState::Seasonal(longest),
            shortest_day: MarkerState::Seasonal(shortest),
            spring_equinox: MarkerState::Seasonal(spring),
            autumn_equinox: MarkerState::Seasonal(autumn),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::sun::daylength_h;

    #[test]
    fn the_turns_are_those_of_the_daylength_at_every_latitude() {
        for latitude in (-90..=90).filter(|latitude: &i32| latitude.abs() > 5) {
            let latitude_deg = f64::from(latitude);
            let hours = |day: ClimateDay| daylength_h(latitude_deg, day.day_of_year());
            let turns = SunTurns::at(latitude_deg);
            let (longest, shortest) = (turns.longest_day.day(), turns.shortest_day.day());
            for day in ClimateDay::all() {
                assert!(hours(day) <= hours(longest.unwrap()) + 1e-9, "{latitude} {day}");
                assert!(hours(day) >= hours(shortest.unwrap()) - 1e-9, "{latitude} {day}");
            }
            let spring = turns.spring_equinox.day().unwrap();
            assert!(hours(spring) >= 12.0 - 1e-9 && hours(spring.plus(-1)) < 12.0 + 1e-9);
            let autumn = turns.autumn_equinox.day().unwrap();
            assert!(hours(autumn) < 12.0 + 1e-9 && hours(autumn.plus(-1)) >= 12.0 - 1e-9);
            let days_of_light = autumn.days_after(spring);
            assert!((180..=186).contains(&days_of_light), "{latitude} {days_of_light}");
        }
    }

    #[test]
    fn the_almanac_dates_are_met_within_two_days() {
        // Equinoxes about 20 March and 22 September, solstices about 21 June and 21 December
        // (common knowledge); the one-sine declination is up to half a degree off, over a day.
        let turns = SunTurns::at(50.0);
        for (marker, almanac) in [
            (turns.spring_equinox, "03-20"),
            (turns.longest_day, "06-21"),
            (turns.autumn_equinox, "09-22"),
            (turns.shortest_day, "12-21"),
        ] {
            let off = marker.day().unwrap().days_from(almanac.parse().unwrap());
            assert!(off.abs() <= 2, "{almanac}: {off}");
        }
    }

    #[test]
    fn the_tropics_within_five_degrees_are_even() {
        assert_eq!(SunTurns::at(-5.0).longest_day, MarkerState::Even);
        assert_eq!(SunTurns::at(0.0).spring_equinox, MarkerState::Even);
        assert!(SunTurns::at(5.1).longest_day.day().is_some());
    }
}
