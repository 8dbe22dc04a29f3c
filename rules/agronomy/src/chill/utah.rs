//! Utah chill units: Richardson, Seeley and Walker 1974.
//!
//! The paper's edges are in Fahrenheit: 34, 36, 48, 54, 60, 65. Its Celsius edges, 1.4, 2.4, 9.1, 12.4,
//! 15.9 and 18.0, which most programs use, are not the same temperatures (1.1, 2.2, 8.9, 12.2, 15.6,
//! 18.3), so that some hours weigh differently. The Celsius edges are taken unless others are asked for.
//! The sum may fall below nought; some texts hold it there until it first rises, this one does not.

/// Which edges the classes have.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Bands {
    /// 1.4, 2.4, 9.1, 12.4, 15.9, 18.0 C.
    #[default]
    Celsius,
    /// 34, 36, 48, 54, 60, 65 F.
    Fahrenheit,
}

const WEIGHTS: [f64; 6] = [0.0, 0.5, 1.0, 0.5, 0.0, -0.5];
const CELSIUS: [f64; 6] = [1.4, 2.4, 9.1, 12.4, 15.9, 18.0];
const FAHRENHEIT: [f64; 6] = [34.0, 36.0, 48.0, 54.0, 60.0, 65.0];

/// Units of an hour at a temperature in C: 0, 0.5, 1, 0.5, 0, -0.5 and -1 in the classes; an edge belongs
/// to the colder class.
#[must_use]
pub fn weight(temperature_c: f64, bands: Bands) -> f64 {
    let (at, edges) = match bands {
        Bands::Celsius => (temperature_c, CELSIUS),
        Bands::Fahrenheit => (temperature_c * 9.0 / 5.0 + 32.0, FAHRENHEIT),
    };
    edges.iter().zip(WEIGHTS).find(|(edge, _)| at <= **edge).map_or(-1.0, |(_, weight)| weight)
}

/// The units of a run of hours.
#[must_use]
pub fn chill_units(hourly_c: &[f64], bands: Bands) -> f64 {
    hourly_c.iter().map(|&t| weight(t, bands)).sum()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn classes_weigh_as_printed() {
        // Richardson, Seeley and Walker 1974, table 1: the middle of each class, F.
        for (f, units) in [(30.0, 0.0), (35.0, 0.5), (42.0, 1.0), (51.0, 0.5), (57.0, 0.0), (62.5, -0.5), (70.0, -1.0)]
        {
            let c = (f - 32.0) / 1.8;
            for bands in [Bands::Celsius, Bands::Fahrenheit] {
                assert!((weight(c, bands) - units).abs() < 1e-12, "{f} {bands:?}");
            }
        }
    }

    #[test]
    fn hours_between_the_two_sets_of_edges_weigh_differently() {
        for (c, celsius, fahrenheit) in [(1.3, 0.0, 0.5), (9.0, 1.0, 0.5), (12.3, 0.5, 0.0), (18.2, -1.0, -0.5)] {
            assert!((weight(c, Bands::Celsius) - celsius).abs() < 1e-12);
            assert!((weight(c, Bands::Fahrenheit) - fahrenheit).abs() < 1e-12);
        }
    }
}
