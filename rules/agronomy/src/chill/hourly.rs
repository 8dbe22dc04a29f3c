//! The hours of a day from its extremes: Linvill 1990, a sine by day and a logarithmic decline by night.
//!
//! From sunrise to sunset the temperature follows a sine that peaks two hours before a half wave of day
//! length plus four hours would end; from sunset it falls with the logarithm of the hours to the next
//! minimum at sunrise. The logarithm takes the hours plus one on both sides of the fraction, so that the
//! curve meets both the sunset and the minimum; some programs leave the one out in the morning.

use core::f64::consts::PI;
use libm::{acos, cos, log, sin};

/// A day's extremes in C.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Extremes {
    /// Minimum.
    pub tmin_c: f64,
    /// Maximum, not below the minimum.
    pub tmax_c: f64,
}

/// When the sun is up, in hours of the sun's own time.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Daylight {
    sunrise_h: f64,
    sunset_h: f64,
}

/// Sunrise and sunset of a day of the year (1..=366) at a latitude in degrees, sun's centre at -0.833
/// degrees; declination by Spencer 1971, as Almorox and others 2005 use it. None in polar day and night.
#[must_use]
pub fn daylight(latitude_deg: f64, day_of_year: u16) -> Option<Daylight> {
    let g = 2.0 * PI / 365.0 * (f64::from(day_of_year) - 1.0);
    let declination_rad = 0.006_918 - 0.399_912 * cos(g) + 0.070_257 * sin(g) - 0.006_758 * cos(2.0 * g)
        + 0.000_907 * sin(2.0 * g)
        - 0.002_697 * cos(3.0 * g)
        + 0.001_48 * sin(3.0 * g);
    let latitude_rad = latitude_deg * PI / 180.0;
    let horizon = sin(-0.833 * PI / 180.0);
    let below = horizon - sin(latitude_rad) * sin(declination_rad);
    let across = cos(latitude_rad) * cos(declination_rad);
    if below.abs() >= across.abs() {
        return None;
    }
    let half_h = acos(below / across) * 12.0 / PI;
    Some(Daylight { sunrise_h: 12.0 - half_h, sunset_h: 12.0 + half_h })
}

impl Daylight {
    fn length_h(self) -> f64 {
        self.sunset_h - self.sunrise_h
    }

    fn at_day(self, day: Extremes, hour: f64) -> f64 {
        let sine = sin(PI * (hour - self.sunrise_h) / (self.length_h() + 4.0));
        day.tmin_c + (day.tmax_c - day.tmin_c) * sine
    }
}

/// One night: from sunset's temperature to the minimum, over so many hours.
fn at_night(sunset_c: f64, minimum_c: f64, night_h: f64, since_sunset_h: f64) -> f64 {
    sunset_c - (sunset_c - minimum_c) * log(since_sunset_h + 1.0) / log(night_h + 1.0)
}

/// Temperatures in C at the hours 0 to 23 of the sun's own time, from the extremes of the day, those of
/// the day before and the minimum of the day after. Within the three days the sun is taken to rise and
/// set as on this one. Without sunrise and sunset every hour has the mean of the extremes.
#[must_use]
pub fn hours_of_day(before: Extremes, day: Extremes, next_tmin_c: f64, daylight: Option<Daylight>) -> [f64; 24] {
    let Some(sun) = daylight else {
        return [(day.tmin_c + day.tmax_c) / 2.0; 24];
    };
    let night_h = 24.0 - sun.length_h();
    let mut hours = [0.0; 24];
    for (hour, slot) in (0..24_u8).map(f64::from).zip(hours.iter_mut()) {
        *slot = if hour <= sun.sunrise_h {
            at_night(sun.at_day(before, sun.sunset_h), day.tmin_c, night_h, hour + 24.0 - sun.sunset_h)
        } else if hour <= sun.sunset_h {
            sun.at_day(day, hour)
        } else {
            at_night(sun.at_day(day, sun.sunset_h), next_tmin_c, night_h, hour - sun.sunset_h)
        };
    }
    hours
}

#[cfg(test)]
mod tests {
    use super::*;

    const DAY: Extremes = Extremes { tmin_c: 2.0, tmax_c: 14.0 };

    #[test]
    fn hours_stay_within_the_extremes_around_them() {
        for latitude in -66..=66 {
            for doy in 1..=366 {
                let hours = hours_of_day(DAY, DAY, 1.0, daylight(f64::from(latitude), doy));
                for (hour, t) in hours.iter().enumerate() {
                    assert!((1.0 - 1e-9..=14.0 + 1e-9).contains(t), "{latitude} {doy} {hour} {t}");
                }
            }
        }
    }

    #[test]
    fn the_warmest_hour_comes_after_noon_and_the_coldest_about_sunrise() {
        let hours = hours_of_day(DAY, DAY, DAY.tmin_c, daylight(45.0, 80));
        let warmest = (0..24).max_by(|&a, &b| hours[a].total_cmp(&hours[b])).unwrap();
        let coldest = (0..24).min_by(|&a, &b| hours[a].total_cmp(&hours[b])).unwrap();
        assert!((13..=15).contains(&warmest), "{warmest}");
        assert!((5..=6).contains(&coldest), "{coldest}");
    }

    #[test]
    fn a_day_without_sunrise_has_its_mean_all_day() {
        assert!(daylight(80.0, 355).is_none() && daylight(80.0, 172).is_none());
        assert!(hours_of_day(DAY, DAY, 0.0, None).iter().all(|t| (t - 8.0).abs() < 1e-12));
    }
}
