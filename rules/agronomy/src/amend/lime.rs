//! Ground limestone, to raise the pH.

use super::table::{self, Rows};

/// The least pH of the table.
pub const LEAST_PH: f64 = 4.0;
/// The greatest pH, the table's target.
pub const MOST_PH: f64 = 6.5;
/// The most limestone for one application, lb per 1000 sq ft: above it, divide by seasons (common practice).
pub const MOST_AT_ONCE_LB_PER_1000_FT2: f64 = 50.0;

/// The three groups of texture of the lime table.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Group {
    /// Sandy loam and lighter.
    SandyLoam,
    /// Loam and silt.
    Loam,
    /// Clay loam and heavier.
    ClayLoam,
}

// Ground limestone to raise the pH to 6.5, lb per 100 sq ft, as printed on a soil-information page.
const SANDY_LOAM: Rows = &[(4.0, 11.5), (4.5, 9.5), (5.0, 8.0), (5.5, 6.0), (6.0, 3.0), (6.5, 0.0)];
const LOAM: Rows = &[(4.0, 16.0), (4.5, 13.5), (5.0, 10.5), (5.5, 8.0), (6.0, 4.0), (6.5, 0.0)];
const CLAY_LOAM: Rows = &[(4.0, 23.0), (4.5, 19.5), (5.0, 15.0), (5.5, 10.5), (6.0, 5.5), (6.5, 0.0)];

impl Group {
    /// The group of a USDA texture class: which classes go together is our choice.
    #[must_use]
    pub fn of_texture(name: &str) -> Self {
        match name {
            "sand" | "loamy sand" | "sandy loam" => Self::SandyLoam,
            "loam" | "silt loam" | "silt" => Self::Loam,
            _ => Self::ClayLoam,
        }
    }

    fn rows(self) -> Rows {
        match self {
            Self::SandyLoam => SANDY_LOAM,
            Self::Loam => LOAM,
            Self::ClayLoam => CLAY_LOAM,
        }
    }
}

/// Ground limestone in lb per 100 sq ft from one pH to a higher one, both within 4.0..=6.5; nothing when
/// the target is not higher. For pure calcium carbonate.
#[must_use]
pub fn lb_per_100_ft2(group: Group, ph_now: f64, ph_target: f64) -> f64 {
    (table::at(group.rows(), ph_now) - table::at(group.rows(), ph_target)).max(0.0)
}

/// The garden rule: lb per 1000 sq ft from 5.5 to 6.5.
///
/// 35, 50 and 70 on sandy loam, loam and clay loam; other tables give 45, 75 and 100, or 60, 80 and 105.
#[must_use]
pub fn garden_rule_lb_per_1000_ft2(group: Group) -> f64 {
    match group {
        Group::SandyLoam => 35.0,
        Group::Loam => 50.0,
        Group::ClayLoam => 70.0,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_target_below_the_table_s_takes_the_difference() {
        assert!((lb_per_100_ft2(Group::Loam, 5.0, 6.0) - 6.5).abs() < 1e-9);
        assert!((lb_per_100_ft2(Group::SandyLoam, 5.75, 6.5) - 4.5).abs() < 1e-9);
        assert!(lb_per_100_ft2(Group::Loam, 6.5, 6.0).abs() < 1e-12);
    }

    #[test]
    fn another_published_table_is_met_within_a_third() {
        // A second table, lb per 1000 sq ft to 6.5 from 5.0: sand 65, loam 110, clay 150.
        for (group, other) in [(Group::SandyLoam, 65.0), (Group::Loam, 110.0), (Group::ClayLoam, 150.0)] {
            let ours = 10.0 * lb_per_100_ft2(group, 5.0, 6.5);
            assert!((ours - other).abs() <= other / 3.0, "{group:?} {ours} {other}");
        }
    }
}
