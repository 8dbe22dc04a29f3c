//! Pests of fruit trees, with upper thresholds.

use super::model::{Model, stage};
use crate::degree_days::Cutoff;

/// The models.
pub const MODELS: &[Model] = &[
    // A sum of about 250 F d to egg hatch; thresholds on two secondary pages of the Washington and
    // California models.
    Model {
        pests: &["codling moth"],
        lower_f: 50.0,
        upper_f: Some((88.0, Cutoff::Horizontal)),
        biofix: "the first sustained catch of moths in the trap",
        stages: &[stage("first egg hatch", 250.0, 250.0)],
        source: "codling moth degree-day model (Washington State University, University of California); egg hatch from memory",
    },
    Model {
        pests: &["San Jose scale"],
        lower_f: 51.0,
        upper_f: Some((90.0, Cutoff::Horizontal)),
        biofix: "the first male scale of the overwintered generation in the trap",
        stages: &[stage("crawlers emerge", 405.0, 405.0), stage("crawlers, best time for treatment", 600.0, 700.0)],
        source: "University of California phenology model database: Rice, Zalom and Jorgensen 1982 (leaflet 21312)",
    },
];
