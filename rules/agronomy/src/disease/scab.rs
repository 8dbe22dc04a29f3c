//! Apple scab: the revised Mills table.
//!
//! Hours of continuous wetness after which ascospores infect: Mills 1944, Jones 1980, MacHardy and Gadoury
//! 1989, as amended by Stensvand and others; table of the West Virginia University fruit centre, in F.

/// Coldest and warmest row, F.
pub const RANGE_F: (f64, f64) = (34.0, 79.0);

const ROWS: [(f64, f64); 19] = [
    (34.0, 41.0),
    (36.0, 35.0),
    (37.0, 30.0),
    (39.0, 28.0),
    (41.0, 21.0),
    (43.0, 18.0),
    (45.0, 15.0),
    (46.0, 13.0),
    (48.0, 12.0),
    (50.0, 11.0),
    (52.0, 9.0),
    (54.0, 8.0),
    (55.0, 8.0),
    (57.0, 7.0),
    (59.0, 7.0),
    (61.0, 6.0),
    (75.0, 6.0),
    (77.0, 8.0),
    (79.0, 11.0),
];

/// Hours of wetness that infection needs at a mean temperature in F, straight between the rows; none
/// outside the table, where no infection is to be reckoned with.
#[must_use]
pub fn wet_hours_needed(temperature_f: f64) -> Option<f64> {
    let mut before: Option<(f64, f64)> = None;
    for (row_f, hours) in ROWS {
        // A reading turned from C is a hair off.
        if temperature_f <= row_f + 1e-9 {
            return match before {
                Some((from_f, from)) => Some(from + (hours - from) * (temperature_f - from_f) / (row_f - from_f)),
                None => (temperature_f >= row_f - 1e-9).then_some(hours),
            };
        }
        before = Some((row_f, hours));
    }
    None
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn rows_are_met_and_beyond_them_there_is_nothing() {
        for (row_f, hours) in ROWS {
            assert!((wet_hours_needed(row_f).unwrap() - hours).abs() < 1e-6, "{row_f}");
        }
        assert_eq!(wet_hours_needed(68.0), Some(6.0));
        assert_eq!((wet_hours_needed(33.0), wet_hours_needed(80.0)), (None, None));
    }
}
