//! What is in a salt, by atomic weights (IUPAC, abridged standard values 2021).

const HYDROGEN: f64 = 1.008;
const OXYGEN: f64 = 15.999;
const MAGNESIUM: f64 = 24.305;
const PHOSPHORUS: f64 = 30.974;
const SULPHUR: f64 = 32.06;
const POTASSIUM: f64 = 39.098;

const EPSOM: f64 = MAGNESIUM + SULPHUR + 4.0 * OXYGEN + 7.0 * (2.0 * HYDROGEN + OXYGEN);

/// Phosphorus in phosphate (P2O5), share by mass. Extension sheets round it to 0.44.
pub const P_IN_P2O5: f64 = 2.0 * PHOSPHORUS / (2.0 * PHOSPHORUS + 5.0 * OXYGEN);
/// Potassium in potash (K2O), share by mass. Extension sheets print 0.83.
pub const K_IN_K2O: f64 = 2.0 * POTASSIUM / (2.0 * POTASSIUM + OXYGEN);
/// Magnesium in Epsom salt (MgSO4 with seven waters), share by mass.
pub const MG_IN_EPSOM: f64 = MAGNESIUM / EPSOM;
/// Sulphur in Epsom salt (MgSO4 with seven waters), share by mass.
pub const S_IN_EPSOM: f64 = SULPHUR / EPSOM;

/// The grade of a label: nitrogen, phosphate and potash, each 0..=100 %, together not above 100.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Grade {
    /// N, percent by mass.
    pub n_pct: f64,
    /// P2O5, percent by mass.
    pub p2o5_pct: f64,
    /// K2O, percent by mass.
    pub k2o_pct: f64,
}

impl Grade {
    /// Reads `30-4-4`. Nothing for text that is no grade, or holds more than the whole.
    #[must_use]
    pub fn read(text: &str) -> Option<Self> {
        let mut parts = text.split('-').map(|part| {
            let plain = part.bytes().all(|b| b.is_ascii_digit() || b == b'.');
            part.parse::<f64>().ok().filter(|_| plain)
        });
        let grade = Self { n_pct: parts.next()??, p2o5_pct: parts.next()??, k2o_pct: parts.next()?? };
        let whole = grade.n_pct + grade.p2o5_pct + grade.k2o_pct <= 100.0;
        (whole && parts.next().is_none()).then_some(grade)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_grade_is_three_shares_that_do_not_pass_the_whole() {
        let grade = Grade { n_pct: 15.5, p2o5_pct: 0.0, k2o_pct: 5.0 };
        assert_eq!(Grade::read("15.5-0-5"), Some(grade));
        for text in ["", "30", "30-4", "30-4-4-1", "60-30-20", "a-b-c", "30- 4-4", "1e1-0-0", "--"] {
            assert_eq!(Grade::read(text), None, "{text}");
        }
    }
}
