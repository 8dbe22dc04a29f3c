//! The step of a fact: it is rounded to it before it is compared, shown or hashed.

/// A step as a fraction, so that a rounded value is the same number as the literal that looks like it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Step {
    numerator: u32,
    denominator: u32,
}

/// How near to a tie a value must be to count as one.
const TIE: f64 = 1e-9;

impl Step {
    /// `numerator / denominator`.
    #[must_use]
    pub const fn new(numerator: u32, denominator: u32) -> Self {
        Self { numerator, denominator }
    }

    /// `x` rounded to the step: half away from zero, and what is within 1e-9 of a half counts as one. Never -0.
    #[must_use]
    pub fn round(self, x: f64) -> f64 {
        let (num, den) = (f64::from(self.numerator), f64::from(self.denominator));
        let steps = x.abs() * den / num;
        let whole = (steps + 0.5 + TIE).floor();
        let rounded = whole * num / den;
        if rounded == 0.0 {
            0.0
        } else if x < 0.0 {
            -rounded
        } else {
            rounded
        }
    }

    /// Decimals with which a value of this step is shown.
    #[must_use]
    pub const fn decimals(self) -> usize {
        match self.denominator {
            1 => 0,
            2 | 10 => 1,
            _ => 2,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_half_goes_away_from_zero_and_a_near_half_counts_as_one() {
        let tenth = Step::new(1, 10);
        assert_eq!(tenth.round(0.25), 0.3);
        assert_eq!(tenth.round(-0.25), -0.3);
        assert_eq!(tenth.round(0.249_999_999_99), 0.3);
        assert_eq!(tenth.round(0.249_9), 0.2);
        assert!(tenth.round(-0.01).is_sign_positive());
        assert_eq!(Step::new(5, 1).round(552.6), 555.0);
        assert_eq!(Step::new(1, 20).round(0.874), 0.85);
    }
}
