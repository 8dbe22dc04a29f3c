//! Pests of vegetables.

use super::model::{Model, NEW_YEAR, stage};

const WISCONSIN: &str = "University of Wisconsin plant disease facts XHT1087 (2015), degree days for common fruit and vegetable insect pests";

/// The models.
pub const MODELS: &[Model] = &[
    Model {
        pests: &["cabbage maggot", "cabbage root fly"],
        lower_f: 43.0,
        upper_f: None,
        biofix: NEW_YEAR,
        stages: &[
            stage("first generation flies", 300.0, 300.0),
            stage("second generation flies", 1476.0, 1476.0),
            stage("third generation flies", 2652.0, 2652.0),
        ],
        source: WISCONSIN,
    },
    Model {
        pests: &["Colorado potato beetle"],
        lower_f: 50.0,
        upper_f: None,
        biofix: "the day on which the first eggs are seen",
        stages: &[
            stage("first instar, from first eggs", 185.0, 185.0),
            stage("second instar, from first eggs", 240.0, 240.0),
            stage("third instar, from first eggs", 300.0, 300.0),
            stage("fourth instar, from first eggs", 400.0, 400.0),
            stage("pupa, from first eggs", 675.0, 675.0),
        ],
        source: WISCONSIN,
    },
    Model::base_50(&["common asparagus beetle", "asparagus beetle"], &[stage("egg laying", 150.0, 240.0)], WISCONSIN),
    Model::base_50(&["corn rootworm"], &[stage("adults", 1300.0, 1300.0)], WISCONSIN),
    Model::base_50(
        &["European corn borer"],
        &[
            stage("first spring moths", 375.0, 375.0),
            stage("first eggs", 450.0, 450.0),
            stage("peak spring moths", 631.0, 631.0),
            stage("first summer moths", 1400.0, 1400.0),
            stage("second generation first eggs", 1450.0, 1450.0),
            stage("second generation first egg hatch", 1550.0, 1550.0),
            stage("peak summer moths", 1733.0, 1733.0),
            stage("summer treatment period", 1550.0, 2100.0),
        ],
        WISCONSIN,
    ),
    Model::base_50(&["imported cabbageworm"], &[stage("adult butterflies", 150.0, 240.0)], WISCONSIN),
    Model {
        pests: &["onion maggot", "onion fly"],
        lower_f: 40.0,
        upper_f: None,
        biofix: NEW_YEAR,
        stages: &[
            stage("first generation flies", 680.0, 680.0),
            stage("second generation flies", 1950.0, 1950.0),
            stage("third generation flies", 3230.0, 3230.0),
        ],
        source: WISCONSIN,
    },
];
