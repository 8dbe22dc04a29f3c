//! Any leaf fungus: Magarey, Sutton and Thayer 2005, a simple generic infection model.

use crate::bounds::{Unusable, in_order, within};
use libm::pow;

/// What is known of a fungus.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Fungus {
    /// Below this no infection, C.
    pub tmin_c: f64,
    /// Best for infection, C.
    pub topt_c: f64,
    /// Above this no infection, C.
    pub tmax_c: f64,
    /// Hours of wetness needed at the best temperature.
    pub wet_min_h: f64,
    /// Hours of wetness that are enough at any temperature between the limits.
    pub wet_max_h: f64,
}

impl Fungus {
    /// The fungus, its temperatures in strict order.
    ///
    /// # Errors
    /// [`Unusable`], naming the field that stands in the wrong order.
    pub fn new(
        (tmin_c, topt_c, tmax_c): (f64, f64, f64),
        (wet_min_h, wet_max_h): (f64, f64),
    ) -> Result<Self, Unusable> {
        within("tmin_infection", tmin_c, "C", -10.0, topt_c - 0.1)?;
        within("tmax_infection", tmax_c, "C", topt_c + 0.1, 60.0)?;
        in_order("wet_min", wet_min_h, "wet_max", wet_max_h, "h")?;
        Ok(Self { tmin_c, topt_c, tmax_c, wet_min_h, wet_max_h })
    }

    /// How well a temperature in C suits, 0..=1. Equation 2 (Yan and Hunt 1999).
    #[must_use]
    pub fn response(&self, temperature_c: f64) -> f64 {
        if temperature_c <= self.tmin_c || temperature_c >= self.tmax_c {
            return 0.0;
        }
        let fall = (self.tmax_c - temperature_c) / (self.tmax_c - self.topt_c);
        let rise = (temperature_c - self.tmin_c) / (self.topt_c - self.tmin_c);
        fall * pow(rise, (self.topt_c - self.tmin_c) / (self.tmax_c - self.topt_c))
    }

    /// Hours of wetness that infection needs at a temperature in C; none where there is no infection.
    /// Equation 1: the least hours over the response, not above the most (from memory).
    #[must_use]
    pub fn wet_hours_needed(&self, temperature_c: f64) -> Option<f64> {
        let response = self.response(temperature_c);
        (response > 0.0).then(|| (self.wet_min_h / response).min(self.wet_max_h))
    }
}

#[cfg(test)]
mod tests {
    use super::super::scab;
    use super::*;

    // Apple scab in the paper's table of pathogens (from memory).
    const SCAB: Fungus = Fungus { tmin_c: 1.0, topt_c: 20.0, tmax_c: 35.0, wet_min_h: 6.0, wet_max_h: 40.5 };

    #[test]
    fn the_best_temperature_needs_the_least_hours() {
        assert!((SCAB.response(20.0) - 1.0).abs() < 1e-12);
        assert_eq!(SCAB.wet_hours_needed(20.0), Some(6.0));
        assert_eq!((SCAB.wet_hours_needed(1.0), SCAB.wet_hours_needed(35.0)), (None, None));
        assert_eq!(SCAB.wet_hours_needed(1.5), Some(40.5));
    }

    #[test]
    fn the_model_and_the_revised_table_of_scab_tell_the_same() {
        for c in 8..=24 {
            let c = f64::from(c);
            let table_h = scab::wet_hours_needed(c * 1.8 + 32.0).unwrap();
            let model_h = SCAB.wet_hours_needed(c).unwrap();
            assert!((table_h - model_h).abs() <= 2.5, "{c} {table_h} {model_h}");
        }
    }

    #[test]
    fn temperatures_in_the_wrong_order_are_named() {
        let refused = Fungus::new((20.0, 20.0, 35.0), (6.0, 40.0)).unwrap_err();
        assert!(refused.to_string().starts_with("tmin_infection is 20 C"), "{refused}");
        assert!(Fungus::new((1.0, 20.0, 35.0), (60.0, 40.0)).is_err());
    }
}
