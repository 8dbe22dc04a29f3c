//! Sunrise, sunset and day length as a clock shows them: the sun's upper edge on a level horizon, with
//! refraction.
//!
//! The sun's place follows the equations of NOAA's solar calculator, after Meeus, Astronomical
//! Algorithms (1998), chapters 25 and 28 (from memory): good to some seconds of time from 1900 to 2200,
//! while air and terrain move a real sunrise by a minute or more. The crossing of the horizon is then
//! looked for between midnight and noon, so that no day near the polar circle needs a rule of its own.
//! [`crate::sun`] has the simpler geometric day of FAO-56.

use core::f64::consts::PI;
use libm::{asin, cos, sin, tan};

/// Altitude of the sun's centre at sunrise and sunset in degrees: half the sun's disc and the mean
/// refraction at the horizon.
pub const RISE_AND_SET_DEG: f64 = -0.833;
const DAYS_PER_CENTURY: f64 = 36_525.0;
const RADIANS: f64 = PI / 180.0;
/// Halvings of half a day: the last is a few thousandths of a second.
const HALVINGS: u32 = 24;

/// Declination of the sun and equation of time at a moment.
#[derive(Debug, Clone, Copy)]
struct SunPlace {
    declination_rad: f64,
    equation_of_time_min: f64,
}

fn sun_place(days_from_j2000: f64) -> SunPlace {
    let t = days_from_j2000 / DAYS_PER_CENTURY;
    let mean_longitude_rad = (280.466_46 + t * (36_000.769_83 + t * 0.000_303_2)) * RADIANS;
    let anomaly_rad = (357.529_11 + t * (35_999.050_29 - t * 0.000_153_7)) * RADIANS;
    let eccentricity = 0.016_708_634 - t * (0.000_042_037 + t * 0.000_000_126_7);
    let centre_deg = sin(anomaly_rad) * (1.914_602 - t * (0.004_817 + t * 0.000_014))
        + sin(2.0 * anomaly_rad) * (0.019_993 - t * 0.000_101)
        + sin(3.0 * anomaly_rad) * 0.000_289;
    let node_rad = (125.04 - 1934.136 * t) * RADIANS;
    let longitude_rad = mean_longitude_rad + (centre_deg - 0.005_69 - 0.004_78 * sin(node_rad)) * RADIANS;
    let obliquity_deg = 23.0 + (26.0 + (21.448 - t * (46.815 + t * (0.000_59 - t * 0.001_813))) / 60.0) / 60.0;
    let obliquity_rad = (obliquity_deg + 0.002_56 * cos(node_rad)) * RADIANS;
    let half_tangent = tan(obliquity_rad / 2.0);
    let y = half_tangent * half_tangent;
    let time_rad = y * sin(2.0 * mean_longitude_rad) - 2.0 * eccentricity * sin(anomaly_rad)
        + 4.0 * eccentricity * y * sin(anomaly_rad) * cos(2.0 * mean_longitude_rad)
        - 0.5 * y * y * sin(4.0 * mean_longitude_rad)
        - 1.25 * eccentricity * eccentricity * sin(2.0 * anomaly_rad);
    SunPlace {
        declination_rad: asin(sin(obliquity_rad) * sin(longitude_rad)),
        equation_of_time_min: 4.0 * time_rad / RADIANS,
    }
}

/// Whether the sun crosses an altitude on a day.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum DayKind {
    /// It comes up and goes down.
    RisesAndSets,
    /// It stays above from midnight to midnight.
    NoSunset,
    /// It stays below.
    NoSunrise,
}

/// The sun on one local solar day, from midnight to midnight of the sun's own time. Moments are days
/// after noon UTC of 1 January 2000.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SunTimes {
    /// The sun's highest stand.
    pub noon: f64,
    /// When the sun comes up; none when it is up already at midnight, or never.
    pub sunrise: Option<f64>,
    /// When the sun goes down; none when it is still up at the next midnight, or never.
    pub sunset: Option<f64>,
    /// What kind of day it is.
    pub kind: DayKind,
}

impl SunTimes {
    /// How long the sun is up in minutes, 0..=1440.
    #[must_use]
    pub fn daylength_min(&self) -> f64 {
        match self.kind {
            DayKind::NoSunrise => 0.0,
            DayKind::NoSunset => 1440.0,
            DayKind::RisesAndSets => {
                let up = self.sunrise.unwrap_or(self.noon - 0.5);
                let down = self.sunset.unwrap_or(self.noon + 0.5);
                1440.0 * (down - up)
            }
        }
    }
}

/// Sine of the sun's altitude.
fn sine_of_altitude(latitude_rad: f64, longitude_deg: f64, days_from_j2000: f64) -> f64 {
    let place = sun_place(days_from_j2000);
    // Whole turns do not matter to the cosine: days count from noon, when the hour angle is nought.
    let hour_angle_rad =
        (360.0 * (days_from_j2000 - days_from_j2000.floor()) + place.equation_of_time_min / 4.0 + longitude_deg)
            * RADIANS;
    sin(latitude_rad) * sin(place.declination_rad)
        + cos(latitude_rad) * cos(place.declination_rad) * cos(hour_angle_rad)
}

/// Sunrise and sunset of the local solar day whose noon lies nearest to noon of the date by the
/// meridian's mean time. `date_noon` is noon UTC of the date in days after noon UTC of 1 January 2000;
/// latitude -90..=90 and longitude -180..=180 in degrees, south and west negative; `altitude_deg` that of
/// the sun's centre, [`RISE_AND_SET_DEG`] for the sun itself, -6, -12 and -18 for the twilights.
#[must_use]
pub fn sun_times(latitude_deg: f64, longitude_deg: f64, date_noon: f64, altitude_deg: f64) -> SunTimes {
    let mean_noon = date_noon - longitude_deg / 360.0;
    let noon = mean_noon - sun_place(mean_noon).equation_of_time_min / 1440.0;
    let latitude_rad = latitude_deg * RADIANS;
    let horizon = sin(altitude_deg * RADIANS);
    let above = |moment: f64| sine_of_altitude(latitude_rad, longitude_deg, moment) > horizon;
    let crossing = |below: f64, above_at: f64| {
        let (mut low, mut high) = (below, above_at);
        for _ in 0..HALVINGS {
            let middle = (low + high) / 2.0;
            if above(middle) {
                high = middle;
            } else {
                low = middle;
            }
        }
        (low + high) / 2.0
    };
    let (before, after) = (above(noon - 0.5), above(noon + 0.5));
    let up_at_noon = above(noon);
    let sunrise = (up_at_noon && !before).then(|| crossing(noon - 0.5, noon));
    let sunset = (up_at_noon && !after).then(|| crossing(noon + 0.5, noon));
    let kind = match (up_at_noon, before && after) {
        (false, _) => DayKind::NoSunrise,
        (true, true) => DayKind::NoSunset,
        (true, false) => DayKind::RisesAndSets,
    };
    SunTimes { noon, sunrise, sunset, kind }
}

#[cfg(test)]
mod tests {
    use super::*;

    // Noon UTC of 20 March 2024, an equinox.
    const EQUINOX: f64 = 8845.0;

    #[test]
    fn an_equinox_day_is_longer_than_twelve_hours_by_disc_and_refraction() {
        // Geometry: 0.833 degrees at 15 degrees an hour on both ends, at the equator 6.66 minutes.
        let day = sun_times(0.0, 0.0, EQUINOX, RISE_AND_SET_DEG);
        assert!((day.daylength_min() - 726.66).abs() < 0.2, "{}", day.daylength_min());
        let centre = sun_times(0.0, 0.0, EQUINOX, 0.0);
        assert!((centre.daylength_min() - 720.0).abs() < 0.2);
    }

    #[test]
    fn every_latitude_and_day_has_times_in_their_order() {
        for latitude in -90..=90 {
            for day in (0..366).step_by(3) {
                let noon = 8766.0 + f64::from(day);
                let sun = sun_times(f64::from(latitude), 12.5, noon, RISE_AND_SET_DEG);
                let minutes = sun.daylength_min();
                assert!((0.0..=1440.0).contains(&minutes), "{latitude} {day} {minutes}");
                if let Some(sunrise) = sun.sunrise {
                    assert!(sunrise < sun.noon && sunrise > sun.noon - 0.5);
                }
                if let Some(sunset) = sun.sunset {
                    assert!(sunset > sun.noon && sunset < sun.noon + 0.5);
                }
            }
        }
    }

    #[test]
    fn twilight_comes_before_the_sun() {
        let civil = sun_times(52.0, 5.0, EQUINOX, -6.0);
        let sun = sun_times(52.0, 5.0, EQUINOX, RISE_AND_SET_DEG);
        let minutes = 1440.0 * (sun.sunrise.unwrap() - civil.sunrise.unwrap());
        // From memory: half an hour to forty minutes at this latitude.
        assert!((30.0..=40.0).contains(&minutes), "{minutes}");
    }

    #[test]
    fn the_polar_summer_turns_into_the_polar_winter_by_days_with_both() {
        let kind = |day: i32| sun_times(70.0, 0.0, 8766.0 + f64::from(day), RISE_AND_SET_DEG).kind;
        assert_eq!(kind(172), DayKind::NoSunset);
        assert_eq!(kind(355), DayKind::NoSunrise);
        assert_eq!(kind(80), DayKind::RisesAndSets);
        let turns = (0..365).filter(|&day| kind(day) != kind(day + 1)).count();
        assert_eq!(turns, 4);
    }
}
