//! Köppen-Geiger climate classes, by the criteria of Peel and others 2007 and Beck and others 2018.
//!
//! Where handbooks differ: the C/D boundary lies at 0 °C of the coldest month here (Köppen and Kottek and others
//! 2006 take -3 °C; it can be chosen); a dry summer needs a month under 40 mm (older texts: 30 mm); B is tested
//! before everything else; summer is the warmer of April to September and October to March.

use crate::calendar::month_value;
use crate::profile::Monthly;

/// Coldest month above which a climate is C and not D, °C (Peel and others 2007, Beck and others 2018).
pub const CD_BOUNDARY_C: f64 = 0.0;

/// The classes, in the order of their letters.
pub const CLASSES: [&str; 30] = [
    "Af", "Am", "Aw", "BWh", "BWk", "BSh", "BSk", "Csa", "Csb", "Csc", "Cwa", "Cwb", "Cwc", "Cfa", "Cfb", "Cfc", "Dsa",
    "Dsb", "Dsc", "Dsd", "Dwa", "Dwb", "Dwc", "Dwd", "Dfa", "Dfb", "Dfc", "Dfd", "ET", "EF",
];

/// Rain of the two halves of the year.
struct Halves {
    summer_mm: f64,
    winter_mm: f64,
    driest_summer_mm: f64,
    wettest_summer_mm: f64,
    driest_winter_mm: f64,
    wettest_winter_mm: f64,
}

impl Halves {
    fn of(tmean_c: &Monthly, rain_mm: &Monthly, latitude_deg: f64) -> Self {
        let northern = |month: usize| (3..9).contains(&month);
        let (mut north_c, mut south_c) = (0.0, 0.0);
        for (month, mean_c) in tmean_c.iter().enumerate() {
            *(if northern(month) { &mut north_c } else { &mut south_c }) += mean_c;
        }
        // equally warm halves: the latitude decides
        let northern_summer = north_c > south_c || north_c >= south_c && latitude_deg >= 0.0;
        let mut halves = Self {
            summer_mm: 0.0,
            winter_mm: 0.0,
            driest_summer_mm: f64::INFINITY,
            wettest_summer_mm: 0.0,
            driest_winter_mm: f64::INFINITY,
            wettest_winter_mm: 0.0,
        };
        for (month, mm) in rain_mm.iter().enumerate() {
            if northern(month) == northern_summer {
                halves.summer_mm += mm;
                halves.driest_summer_mm = halves.driest_summer_mm.min(*mm);
                halves.wettest_summer_mm = halves.wettest_summer_mm.max(*mm);
            } else {
                halves.winter_mm += mm;
                halves.driest_winter_mm = halves.driest_winter_mm.min(*mm);
                halves.wettest_winter_mm = halves.wettest_winter_mm.max(*mm);
            }
        }
        halves
    }

    /// `s`, `w` or `f`. Where both hold, the drier half names the class (from memory; the criteria do not say).
    fn letter(&self) -> char {
        let dry_summer = self.driest_summer_mm < 40.0 && self.driest_summer_mm < self.wettest_winter_mm / 3.0;
        let dry_winter = self.driest_winter_mm < self.wettest_summer_mm / 10.0;
        match (dry_summer, dry_winter) {
            (true, true) if self.summer_mm > self.winter_mm => 'w',
            (true, _) => 's',
            (false, true) => 'w',
            (false, false) => 'f',
        }
    }
}

/// The class of monthly mean temperatures (°C) and monthly rain (mm), January first. `cd_boundary_c` is
/// [`CD_BOUNDARY_C`], or -3 for the older boundary. One of [`CLASSES`].
#[must_use]
pub fn koppen_class(tmean_c: &Monthly, rain_mm: &Monthly, latitude_deg: f64, cd_boundary_c: f64) -> &'static str {
    let mean_c = sum(tmean_c) / 12.0;
    let year_mm = sum(rain_mm);
    let coldest_c = tmean_c.iter().copied().fold(f64::INFINITY, f64::min);
    let warmest_c = tmean_c.iter().copied().fold(f64::NEG_INFINITY, f64::max);
    let halves = Halves::of(tmean_c, rain_mm, latitude_deg);

    let dry_below = if halves.winter_mm > 0.7 * year_mm {
        2.0 * mean_c
    } else if halves.summer_mm > 0.7 * year_mm {
        2.0 * mean_c + 28.0
    } else {
        2.0 * mean_c + 14.0
    };
    if year_mm < 10.0 * dry_below {
        return match (year_mm < 5.0 * dry_below, mean_c >= 18.0) {
            (true, true) => "BWh",
            (true, false) => "BWk",
            (false, true) => "BSh",
            (false, false) => "BSk",
        };
    }
    if coldest_c >= 18.0 {
        let driest_mm = rain_mm.iter().copied().fold(f64::INFINITY, f64::min);
        return if driest_mm >= 60.0 {
            "Af"
        } else if driest_mm >= 100.0 - year_mm / 25.0 {
            "Am"
        } else {
            "Aw"
        };
    }
    if warmest_c <= 10.0 {
        return if warmest_c > 0.0 { "ET" } else { "EF" };
    }
    let warm_months = (0..12).filter(|month| month_value(tmean_c, *month) > 10.0).count();
    let mild = coldest_c > cd_boundary_c;
    let warmth = match (warmest_c >= 22.0, warm_months >= 4, !mild && coldest_c < -38.0) {
        (true, ..) => 'a',
        (_, true, _) => 'b',
        (_, _, true) => 'd',
        _ => 'c',
    };
    match (mild, halves.letter(), warmth) {
        (true, 's', 'a') => "Csa",
        (true, 's', 'b') => "Csb",
        (true, 's', _) => "Csc",
        (true, 'w', 'a') => "Cwa",
        (true, 'w', 'b') => "Cwb",
        (true, 'w', _) => "Cwc",
        (true, _, 'a') => "Cfa",
        (true, _, 'b') => "Cfb",
        (true, ..) => "Cfc",
        (false, 's', 'a') => "Dsa",
        (false, 's', 'b') => "Dsb",
        (false, 's', 'c') => "Dsc",
        (false, 's', _) => "Dsd",
        (false, 'w', 'a') => "Dwa",
        (false, 'w', 'b') => "Dwb",
        (false, 'w', 'c') => "Dwc",
        (false, 'w', _) => "Dwd",
        (false, _, 'a') => "Dfa",
        (false, _, 'b') => "Dfb",
        (false, _, 'c') => "Dfc",
        (false, ..) => "Dfd",
    }
}

fn sum(monthly: &Monthly) -> f64 {
    let mut sum = 0.0;
    for value in monthly {
        sum += value;
    }
    sum
}

#[cfg(test)]
mod tests {
    use super::*;

    fn wave(mean: f64, swing: f64) -> Monthly {
        let mut months = [0.0; 12];
        for (month, slot) in months.iter_mut().enumerate() {
            *slot = mean - swing * libm::cos((month as f64 - 0.5) / 12.0 * std::f64::consts::TAU);
        }
        months
    }

    #[test]
    fn every_profile_has_one_of_the_thirty_classes_and_so_has_its_mirror() {
        for mean in -30..32 {
            for swing in 0..30 {
                for (rain, rain_swing) in
                    [(2.0, 1.0), (20.0, 18.0), (60.0, 0.0), (60.0, 58.0), (60.0, -58.0), (200.0, 90.0)]
                {
                    let (warmth, rain) =
                        (wave(f64::from(mean) + 0.37, f64::from(swing)), wave(rain + 0.13, rain_swing));
                    let class = koppen_class(&warmth, &rain, 40.0, CD_BOUNDARY_C);
                    assert!(CLASSES.contains(&class));
                    let half_a_year_on = |m: &Monthly| {
                        let mut turned = *m;
                        turned.rotate_left(6);
                        turned
                    };
                    let south = koppen_class(&half_a_year_on(&warmth), &half_a_year_on(&rain), -40.0, CD_BOUNDARY_C);
                    assert_eq!(class, south, "{mean} {swing}");
                }
            }
        }
    }

    #[test]
    fn the_boundary_of_c_and_d_can_be_chosen() {
        let (warmth, rain) = (wave(11.0, 12.5), [90.0; 12]);
        assert_eq!(koppen_class(&warmth, &rain, 40.5, 0.0), "Dfa");
        assert_eq!(koppen_class(&warmth, &rain, 40.5, -3.0), "Cfa");
    }
}
