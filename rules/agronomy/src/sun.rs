//! The sun's path and the radiation above the air, by FAO Irrigation and Drainage Paper 56 (1998).
//!
//! The day length here is geometric: the sun's centre on a flat horizon, no refraction. Clocks show
//! sunrise some minutes earlier. FAO's one-sine declination is up to about half a degree off the
//! almanac's. Latitudes are in decimal degrees, south negative; the day of the year runs from 1 to
//! 366. The functions are plain sums and give a finite value for every finite latitude in -90..=90.

use core::f64::consts::{FRAC_PI_2, PI};
use libm::{acos, cos, sin};

/// Radians of the year's circle for a day: 2 pi J / 365, as FAO-56 has it in leap years also.
fn year_angle_rad(day_of_year: u16) -> f64 {
    2.0 * PI / 365.0 * f64::from(day_of_year)
}

/// Solar declination in radians, -0.409..=0.409. FAO-56 equation 24.
#[must_use]
pub fn declination_rad(day_of_year: u16) -> f64 {
    0.409 * sin(year_angle_rad(day_of_year) - 1.39)
}

/// Inverse relative distance of earth and sun, 0.967..=1.033, without unit. FAO-56 equation 23.
#[must_use]
pub fn inverse_relative_distance(day_of_year: u16) -> f64 {
    1.0 + 0.033 * cos(year_angle_rad(day_of_year))
}

/// What the sun does on a day at a place. The polar states are known states, not missing values.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum SunPath {
    /// The sun rises and sets.
    Rises {
        /// Half the day's arc in radians, above 0 and below pi.
        sunset_hour_angle_rad: f64,
    },
    /// The sun stays up all day.
    PolarDay,
    /// The sun stays down all day.
    PolarNight,
}

impl SunPath {
    /// The sunset hour angle in radians, 0..=pi: pi when the sun stays up, 0 when it stays down.
    #[must_use]
    pub fn hour_angle_rad(self) -> f64 {
        match self {
            Self::Rises { sunset_hour_angle_rad } => sunset_hour_angle_rad,
            Self::PolarDay => PI,
            Self::PolarNight => 0.0,
        }
    }
}

/// Sine and cosine products of latitude and declination; every equation of the day hangs on these.
#[derive(Debug, Clone, Copy)]
struct Slant {
    sines: f64,
    cosines: f64,
}

impl Slant {
    fn new(latitude_deg: f64, declination_rad: f64) -> Self {
        let latitude_rad = latitude_deg * (PI / 180.0);
        Self { sines: sin(latitude_rad) * sin(declination_rad), cosines: cos(latitude_rad) * cos(declination_rad) }
    }

    // FAO-56 equation 25 says arccos(-tan tan); multiplied through by the cosines, which are never
    // negative, it holds at the poles too, where the tangent runs away.
    fn path(self) -> SunPath {
        if self.sines >= self.cosines {
            SunPath::PolarDay
        } else if self.sines <= -self.cosines {
            SunPath::PolarNight
        } else {
            SunPath::Rises { sunset_hour_angle_rad: acos(-self.sines / self.cosines) }
        }
    }
}

/// The sun's path over a day, with its sunset hour angle. FAO-56 equation 25.
#[must_use]
pub fn sunset_angle(latitude_deg: f64, day_of_year: u16) -> SunPath {
    Slant::new(latitude_deg, declination_rad(day_of_year)).path()
}

/// Daylight hours, 0..=24: 24 in the polar day, 0 in the polar night. FAO-56 equation 34.
#[must_use]
pub fn daylength_h(latitude_deg: f64, day_of_year: u16) -> f64 {
    24.0 / PI * sunset_angle(latitude_deg, day_of_year).hour_angle_rad()
}

/// What the sun gives on one day: hours and radiation from one reckoning.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SunDay {
    /// Daylight hours, 0..=24. FAO-56 equation 34.
    pub daylength_h: f64,
    /// Extraterrestrial radiation, MJ m-2 d-1, not below 0. FAO-56 equation 21.
    pub extraterrestrial_mj: f64,
}

/// Day length and extraterrestrial radiation together, which share their costly parts.
#[must_use]
pub fn day(latitude_deg: f64, day_of_year: u16) -> SunDay {
    let slant = Slant::new(latitude_deg, declination_rad(day_of_year));
    let path = slant.path();
    let hour_angle_rad = path.hour_angle_rad();
    let sine_of_hour_angle = match path {
        SunPath::Rises { sunset_hour_angle_rad } => sin(sunset_hour_angle_rad),
        SunPath::PolarDay | SunPath::PolarNight => 0.0,
    };
    // 0.0820 MJ m-2 min-1 is FAO-56's solar constant.
    let extraterrestrial_mj = 24.0 * 60.0 / PI
        * 0.0820
        * inverse_relative_distance(day_of_year)
        * (hour_angle_rad * slant.sines + slant.cosines * sine_of_hour_angle);
    SunDay { daylength_h: 24.0 / PI * hour_angle_rad, extraterrestrial_mj: extraterrestrial_mj.max(0.0) }
}

/// Extraterrestrial radiation on a level surface, MJ m-2 d-1, 0 in the polar night. FAO-56 equation 21.
#[must_use]
pub fn extraterrestrial_mj(latitude_deg: f64, day_of_year: u16) -> f64 {
    day(latitude_deg, day_of_year).extraterrestrial_mj
}

/// Radiation under a clear sky, MJ m-2 d-1, from elevation in m and extraterrestrial radiation `ra`
/// in MJ m-2 d-1. FAO-56 equation 37.
#[must_use]
pub fn clear_sky_mj(elevation_m: f64, ra: f64) -> f64 {
    (0.75 + 2e-5 * elevation_m) * ra
}

/// Day of the year in the middle of a month (1..=12): the whole part of 30.4 M - 15.
/// FAO-56 Annex 2, note under Table 2.5.
#[must_use]
pub fn middle_of_month(month: u8) -> u16 {
    // In tenths, so that the whole part is exact: 304 M - 150, at most 3498.
    (u16::from(month) * 304).saturating_sub(150) / 10
}

/// The apparent declination in degrees at days after noon UTC of 1 January 2000 (J2000), good to
/// 0.01 degree from 1950 to 2050. The Astronomical Almanac's low-precision formulas for the sun,
/// section C (from memory).
#[must_use]
pub fn declination_apparent_deg(days_from_j2000: f64) -> f64 {
    let radians = PI / 180.0;
    let mean_longitude_deg = 280.460 + 0.985_647_4 * days_from_j2000;
    let anomaly_rad = (357.528 + 0.985_600_3 * days_from_j2000) * radians;
    let longitude_rad = (mean_longitude_deg + 1.915 * sin(anomaly_rad) + 0.020 * sin(2.0 * anomaly_rad)) * radians;
    let obliquity_rad = (23.439 - 4e-7 * days_from_j2000) * radians;
    let sine = sin(obliquity_rad) * sin(longitude_rad);
    (FRAC_PI_2 - acos(sine)) / radians
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_latitude_and_every_day_gives_hours_and_radiation_in_bounds() {
        for tenth in -900..=900 {
            let latitude_deg = f64::from(tenth) / 10.0;
            for doy in 1..=366 {
                let sun = day(latitude_deg, doy);
                assert!((0.0..=24.0).contains(&sun.daylength_h), "{latitude_deg} {doy} {sun:?}");
                // 50 MJ is above the solar constant's whole-day sum at the summer pole.
                assert!((0.0..50.0).contains(&sun.extraterrestrial_mj), "{latitude_deg} {doy} {sun:?}");
            }
        }
    }

    #[test]
    fn the_year_turns_mirrored_in_the_south() {
        // With the opposite declination the southern day is the northern one; the day lengths of the
        // two hemispheres add up to 24 hours on every day.
        for whole in 0..=90 {
            let latitude_deg = f64::from(whole);
            for doy in 1..=366 {
                let both = daylength_h(latitude_deg, doy) + daylength_h(-latitude_deg, doy);
                assert!((both - 24.0).abs() < 1e-9, "{latitude_deg} {doy} {both}");
                let north = Slant::new(latitude_deg, declination_rad(doy)).path();
                let south = Slant::new(-latitude_deg, -declination_rad(doy)).path();
                assert_eq!(north, south);
            }
        }
    }

    #[test]
    fn the_polar_circle_has_a_day_and_a_night_without_end() {
        assert_eq!(sunset_angle(70.0, 172), SunPath::PolarDay);
        assert_eq!(sunset_angle(70.0, 355), SunPath::PolarNight);
        assert_eq!(sunset_angle(-70.0, 172), SunPath::PolarNight);
        assert_eq!(extraterrestrial_mj(70.0, 355).to_bits(), 0.0_f64.to_bits());
        assert!(matches!(sunset_angle(60.0, 172), SunPath::Rises { .. }));
    }

    #[test]
    fn the_poles_themselves_are_not_a_special_case() {
        for doy in 1..=366 {
            let north = daylength_h(90.0, doy);
            let south = daylength_h(-90.0, doy);
            assert!((north + south - 24.0).abs() < 1e-9, "{doy} {north} {south}");
        }
    }

    #[test]
    fn months_have_the_middle_days_of_the_paper() {
        // FAO-56 Annex 2, note under Table 2.5: J = INTEGER(30.4 M - 15).
        assert_eq!(
            (1..=12).map(middle_of_month).collect::<Vec<_>>(),
            [15, 45, 76, 106, 137, 167, 197, 228, 258, 289, 319, 349]
        );
    }
}
