//! Chill portions by the Dynamic model: Fishman, Erez and Couvillon 1987; constants Erez and others 1990.
//!
//! Cold makes an intermediate that warmth destroys; once there is enough of it, a part is fixed as a
//! portion that no later warmth takes back. Nought Celsius is 273 K here, as in the model's own sheets.

use libm::exp;

const E0: f64 = 4153.5;
const E1: f64 = 12_888.8;
const A0: f64 = 139_500.0;
const A1: f64 = 2.567e18;
const SLOPE: f64 = 1.6;
const TF_K: f64 = 277.0;
const NOUGHT_K: f64 = 273.0;

/// The state of the model.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Dynamic {
    /// The intermediate, 0 at the start; at 1 and more a part of it is fixed.
    pub intermediate: f64,
    /// Portions so far.
    pub portions: f64,
}

impl Dynamic {
    /// The state an hour later, at a temperature in C. Meant for -60..=60.
    #[must_use]
    pub fn after_hour(self, temperature_c: f64) -> Self {
        let kelvin = temperature_c + NOUGHT_K;
        let ease = exp(SLOPE * TF_K * (kelvin - TF_K) / kelvin);
        let share = ease / (1.0 + ease);
        let equilibrium = A0 / A1 * exp((E1 - E0) / kelvin);
        let left = exp(-A1 * exp(-E1 / kelvin));
        let intermediate = equilibrium - (equilibrium - self.intermediate) * left;
        if intermediate < 1.0 {
            return Self { intermediate, portions: self.portions };
        }
        let fixed = intermediate * share;
        Self { intermediate: intermediate - fixed, portions: self.portions + fixed }
    }
}

/// The state at each hour of a record in C: the first stands before anything happened, so the last hour's
/// temperature has no effect yet. As long as the record.
pub fn trace(hourly_c: &[f64]) -> impl Iterator<Item = Dynamic> + '_ {
    let mut state = Dynamic::default();
    hourly_c.iter().map(move |&t| {
        let now = state;
        state = state.after_hour(t);
        now
    })
}

/// Portions at the last hour of a record in C; 0 for an empty one.
#[must_use]
pub fn portions(hourly_c: &[f64]) -> f64 {
    trace(hourly_c).last().map_or(0.0, |state| state.portions)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn portions_never_go_away_again() {
        let hours: Vec<f64> = (0..2000).map(|hour| if hour % 200 < 150 { 5.0 } else { 24.0 }).collect();
        let mut before = 0.0;
        for state in trace(&hours) {
            assert!(state.portions >= before);
            assert!(state.intermediate >= 0.0 && state.intermediate < 2.0);
            before = state.portions;
        }
        assert!(before > 20.0, "{before}");
    }

    #[test]
    fn frost_and_summer_make_none() {
        assert!(portions(&[-12.0; 1000]) < 1.0);
        assert!(portions(&[22.0; 1000]) < 1e-9);
    }

    #[test]
    fn every_temperature_gives_a_finite_state() {
        for tenth in -600..=600 {
            let after = Dynamic { intermediate: 0.9, portions: 3.0 }.after_hour(f64::from(tenth) / 10.0);
            assert!(after.intermediate.is_finite() && after.portions.is_finite());
        }
    }
}
