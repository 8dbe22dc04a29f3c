//! A published table read between its rows.

/// Rows of (pH, amount), pH rising.
pub(super) type Rows = &'static [(f64, f64)];

/// The amount at a pH, on the straight line between the rows around it; beyond the ends the end's.
pub(super) fn at(rows: Rows, ph: f64) -> f64 {
    let mut before: Option<(f64, f64)> = None;
    for &(row_ph, amount) in rows {
        if ph <= row_ph {
            return match before {
                Some((from_ph, from)) => from + (amount - from) * (ph - from_ph) / (row_ph - from_ph),
                None => amount,
            };
        }
        before = Some((row_ph, amount));
    }
    before.map_or(0.0, |(_, amount)| amount)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn between_rows_the_line_is_straight_and_ends_hold() {
        let rows: Rows = &[(4.0, 8.0), (5.0, 2.0), (6.0, 0.0)];
        for (ph, amount) in [(3.0, 8.0), (4.0, 8.0), (4.5, 5.0), (5.5, 1.0), (6.0, 0.0), (9.0, 0.0)] {
            assert!((at(rows, ph) - amount).abs() < 1e-12, "{ph}");
        }
    }
}
