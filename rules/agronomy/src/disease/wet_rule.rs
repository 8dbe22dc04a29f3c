//! Rules of thumb: so many wet hours between two temperatures.

/// A rule for one disease. All are common practice: handbooks differ by some hours and degrees.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct WetRule {
    /// The disease.
    pub disease: &'static str,
    /// Hours of wetness at a stretch.
    pub wet_h: f64,
    /// Mean temperature from and to, C.
    pub mean_c: (f64, f64),
}

const fn rule(disease: &'static str, wet_h: f64, from_c: f64, to_c: f64) -> WetRule {
    WetRule { disease, wet_h, mean_c: (from_c, to_c) }
}

/// The rules.
pub const RULES: &[WetRule] = &[
    rule("rose black spot", 7.0, 15.0, 27.0),
    rule("rose rust", 2.0, 15.0, 21.0),
    rule("downy mildew", 4.0, 8.0, 24.0),
    rule("grey mould", 8.0, 13.0, 24.0),
    rule("peach leaf curl", 12.0, 0.0, 17.0),
    rule("brown rot", 5.0, 13.0, 27.0),
    rule("shot hole", 14.0, 7.0, 20.0),
];

/// The names, for choosing.
pub const NAMES: &[&str] =
    &["rose black spot", "rose rust", "downy mildew", "grey mould", "peach leaf curl", "brown rot", "shot hole"];

/// The rule of a disease.
#[must_use]
pub fn find(disease: &str) -> Option<&'static WetRule> {
    RULES.iter().find(|rule| rule.disease == disease)
}

impl WetRule {
    /// Whether so many wet hours at a mean temperature in C favour the disease.
    #[must_use]
    pub fn favoured(&self, wet_h: f64, mean_c: f64) -> bool {
        let (from_c, to_c) = self.mean_c;
        wet_h >= self.wet_h && (from_c..=to_c).contains(&mean_c)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_name_has_its_rule() {
        assert_eq!(RULES.iter().map(|rule| rule.disease).collect::<Vec<_>>(), NAMES);
        let spot = find("rose black spot").unwrap();
        assert!(spot.favoured(7.0, 20.0) && !spot.favoured(6.9, 20.0) && !spot.favoured(9.0, 30.0));
    }
}
