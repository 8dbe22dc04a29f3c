//! Radiation at the ground, MJ m-2 d-1, by FAO-56 chapter 3.

use crate::sun::SunDay;

/// Stefan-Boltzmann constant in MJ K-4 m-2 d-1, as FAO-56 equation 39 has it.
const STEFAN_BOLTZMANN: f64 = 4.903e-9;
/// Reflection of the grass reference crop, FAO-56 equation 38.
const ALBEDO: f64 = 0.23;

/// Solar radiation from hours of bright sunshine, with the Angstrom values 0.25 and 0.50.
/// FAO-56 equation 35.
///
/// Hours above the day length count as the day length, since instruments and the geometric day
/// differ by some minutes. In the polar night there is no radiation.
#[must_use]
pub fn from_sunshine_mj(sun: SunDay, sunshine_h: f64) -> f64 {
    if sun.daylength_h > 0.0 {
        let share = (sunshine_h / sun.daylength_h).min(1.0);
        (0.25 + 0.50 * share) * sun.extraterrestrial_mj
    } else {
        0.0
    }
}

/// Solar radiation from the day's temperature range, with `krs` in C^-0.5: 0.16 inland, 0.19 on the
/// coast. FAO-56 equation 50. A minimum above the maximum counts as no range.
#[must_use]
pub fn from_temperature_mj(ra_mj: f64, tmin_c: f64, tmax_c: f64, krs: f64) -> f64 {
    krs * (tmax_c - tmin_c).max(0.0).sqrt() * ra_mj
}

/// Net short-wave radiation of the grass surface (albedo 0.23). FAO-56 equation 38.
#[must_use]
pub fn net_shortwave_mj(rs_mj: f64) -> f64 {
    (1.0 - ALBEDO) * rs_mj
}

/// Solar radiation relative to the clear sky, held between 0.3 and 1.
///
/// FAO-56 prints only the upper limit. ASCE-EWRI 2005 (equation 18) holds it at 0.3 or more as well,
/// for under a dark sky the long-wave term would turn round; this is what we took. In the polar night,
/// where both are 0, the sky is taken as dark: 0.3.
#[must_use]
pub fn relative_to_clear_sky(rs_mj: f64, rso_mj: f64) -> f64 {
    if rso_mj > 0.0 { (rs_mj / rso_mj).clamp(0.3, 1.0) } else { 0.3 }
}

/// Net long-wave radiation leaving the surface, from extremes in C, vapour pressure in kPa and
/// [`relative_to_clear_sky`] (0.3..=1). FAO-56 equation 39.
#[must_use]
pub fn net_longwave_mj(tmin_c: f64, tmax_c: f64, ea_kpa: f64, rs_over_rso: f64) -> f64 {
    let fourth_power = |temperature_c: f64| {
        let square = (temperature_c + 273.16) * (temperature_c + 273.16);
        square * square
    };
    STEFAN_BOLTZMANN * (fourth_power(tmax_c) + fourth_power(tmin_c)) / 2.0
        * (0.34 - 0.14 * ea_kpa.sqrt())
        * (1.35 * rs_over_rso - 0.35)
}

/// Net radiation. FAO-56 equation 40.
#[must_use]
pub fn net_mj(net_shortwave_mj: f64, net_longwave_mj: f64) -> f64 {
    net_shortwave_mj - net_longwave_mj
}

/// Soil heat flux of a month from the mean temperatures in C of the months before and after it.
/// FAO-56 equation 43.
#[must_use]
pub fn soil_heat_flux_of_month_mj(mean_before_c: f64, mean_after_c: f64) -> f64 {
    0.07 * (mean_after_c - mean_before_c)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::sun;

    #[test]
    fn more_sunshine_than_daylight_is_a_cloudless_day() {
        let day = sun::day(52.0, 100);
        let full = from_sunshine_mj(day, day.daylength_h);
        assert!((from_sunshine_mj(day, 24.0) - full).abs() < 1e-12);
        assert!((full - 0.75 * day.extraterrestrial_mj).abs() < 1e-12);
    }

    #[test]
    fn the_polar_night_has_no_radiation_and_no_not_a_number() {
        let night = sun::day(80.0, 355);
        assert_eq!(from_sunshine_mj(night, 0.0).to_bits(), 0.0_f64.to_bits());
        assert!((relative_to_clear_sky(0.0, 0.0) - 0.3).abs() < 1e-12);
    }

    #[test]
    fn the_clear_sky_share_stays_between_three_tenths_and_one() {
        // ASCE-EWRI 2005, equation 18 and its limits.
        assert!((relative_to_clear_sky(1.0, 20.0) - 0.3).abs() < 1e-12);
        assert!((relative_to_clear_sky(25.0, 20.0) - 1.0).abs() < 1e-12);
        assert!((relative_to_clear_sky(10.0, 20.0) - 0.5).abs() < 1e-12);
    }

    #[test]
    fn april_in_example_13_of_the_paper_warms_the_soil() {
        // FAO-56 Example 13: March 14.1 C, May 18.8 C: 0.33 MJ m-2 d-1 for April.
        assert!((soil_heat_flux_of_month_mj(14.1, 18.8) - 0.33).abs() < 0.005);
    }
}
