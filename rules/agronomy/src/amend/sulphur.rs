//! Elemental sulphur and iron sulphate, to lower the pH.

use super::table::{self, Rows};

/// The least pH of the table, its target.
pub const LEAST_PH: f64 = 4.5;
/// The greatest pH of the table. Above it soils often hold free lime, and then sulphur does nothing.
pub const MOST_PH: f64 = 7.0;
/// The most sulphur for one application on planted ground: 10 lb per 1000 sq ft.
pub const MOST_AT_ONCE_LB_PER_1000_FT2: f64 = 10.0;
/// The careful end of the same limit.
pub const LEAST_AT_ONCE_LB_PER_1000_FT2: f64 = 5.0;
/// Iron sulphate (FeSO4 with seven waters) for as much acid as one part of sulphur.
///
/// The Royal Horticultural Society's page on acidifying soil gives 1080-2160 g/m2 beside 135-270 g/m2
/// of sulphur; by formula it is 278.0 / 32.06 = 8.7, and other sheets print 6.
pub const IRON_SULPHATE_PER_SULPHUR: f64 = 8.0;

/// The three groups of texture of the sulphur table.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Group {
    /// Sand.
    Sand,
    /// Loam.
    Loam,
    /// Clay.
    Clay,
}

// Elemental sulphur to lower the pH to 4.5, lb per acre: Michigan State University, as printed on a
// supplier's page; for about eight inches of soil.
const SAND: Rows = &[(4.5, 0.0), (5.0, 175.0), (5.5, 350.0), (6.0, 530.0), (6.5, 660.0), (7.0, 840.0)];
const LOAM: Rows = &[(4.5, 0.0), (5.0, 530.0), (5.5, 1030.0), (6.0, 1540.0), (6.5, 2020.0), (7.0, 2560.0)];
const CLAY: Rows = &[(4.5, 0.0), (5.0, 800.0), (5.5, 1600.0), (6.0, 2300.0), (6.5, 3030.0), (7.0, 3830.0)];

impl Group {
    /// The group of a USDA texture class: which classes go together is our choice.
    #[must_use]
    pub fn of_texture(name: &str) -> Self {
        match name {
            "sand" | "loamy sand" => Self::Sand,
            "sandy loam" | "loam" | "silt loam" | "silt" => Self::Loam,
            _ => Self::Clay,
        }
    }

    fn rows(self) -> Rows {
        match self {
            Self::Sand => SAND,
            Self::Loam => LOAM,
            Self::Clay => CLAY,
        }
    }
}

/// Sulphur in lb per acre from one pH to a lower one, both within 4.5..=7.0; nothing when the target is
/// not lower. Between the table's rows the line is straight, and a target above 4.5 takes the difference.
#[must_use]
pub fn lb_per_acre(group: Group, ph_now: f64, ph_target: f64) -> f64 {
    (table::at(group.rows(), ph_now) - table::at(group.rows(), ph_target)).max(0.0)
}

/// The garden rule: lb per 1000 sq ft for one unit of pH, from about 6.
///
/// 10, 15 and 20 on sandy loam, loam and clay loam, as two garden-soil pages print it. The table gives
/// 8, 24 and 35: alike on sand, half as much again and more on the others.
#[must_use]
pub fn garden_rule_lb_per_1000_ft2(soil: super::lime::Group) -> f64 {
    match soil {
        super::lime::Group::SandyLoam => 10.0,
        super::lime::Group::Loam => 15.0,
        super::lime::Group::ClayLoam => 20.0,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_target_between_the_rows_takes_the_difference() {
        assert!((lb_per_acre(Group::Loam, 6.0, 5.0) - (1540.0 - 530.0)).abs() < 1e-9);
        assert!((lb_per_acre(Group::Clay, 5.25, 4.5) - 1200.0).abs() < 1e-9);
        assert!(lb_per_acre(Group::Clay, 5.0, 6.0).abs() < 1e-12);
    }

    #[test]
    fn heavier_soil_takes_more() {
        for tenth in 46..=70 {
            let ph = f64::from(tenth) / 10.0;
            let amounts = [Group::Sand, Group::Loam, Group::Clay].map(|group| lb_per_acre(group, ph, 4.5));
            assert!(amounts.is_sorted_by(|light, heavy| light < heavy), "{ph} {amounts:?}");
        }
    }

    #[test]
    fn the_table_lies_within_what_another_handbook_gives() {
        // Royal Horticultural Society, acidifying soil: from 7.0-7.5 to 6.0-6.5, 135 g/m2 on sand and
        // 270 g/m2 on clay. One lb per acre is 0.112085 g/m2. Ours is less: the careful side.
        let sand_g = lb_per_acre(Group::Sand, 7.0, 6.0) * 0.112_085;
        let clay_g = lb_per_acre(Group::Clay, 7.0, 6.0) * 0.112_085;
        assert!(sand_g < 135.0 && clay_g < 270.0, "{sand_g} {clay_g}");
    }
}
