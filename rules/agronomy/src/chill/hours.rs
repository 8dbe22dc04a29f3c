//! Chill hours: Weinberger 1950, Bennett 1949.

/// The upper edge, 45 F.
pub const UPPER_C: f64 = 7.2;

/// Whether an hour at this temperature in C counts: 0 and 7.2 both do. Some texts have no lower edge.
#[must_use]
pub fn counts(temperature_c: f64) -> bool {
    (0.0..=UPPER_C).contains(&temperature_c)
}

/// The number of hours that count.
#[must_use]
pub fn chill_hours(hourly_c: &[f64]) -> f64 {
    hourly_c.iter().map(|&t| if counts(t) { 1.0 } else { 0.0 }).sum()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn both_edges_count() {
        assert!((chill_hours(&[-0.1, 0.0, 3.0, 7.2, 7.3]) - 3.0).abs() < 1e-12);
    }
}
