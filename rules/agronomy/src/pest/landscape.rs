//! Pests of trees and shrubs, base 50 F, counted from new year.

use super::model::{Model, stage};

const MICHIGAN: &str = "Michigan State University, GDD of landscape insects";
const WISCONSIN: &str = "University of Wisconsin, degree days for common landscape insect pests";

/// The models.
pub const MODELS: &[Model] = &[
    Model::base_50(
        &["American plum borer"],
        &[stage("adult flight and egg laying", 245.0, 440.0), stage("second generation", 1375.0, 1500.0)],
        MICHIGAN,
    ),
    Model::base_50(
        &["arborvitae leafminer"],
        &[
            stage("larvae in mines, first generation", 245.0, 360.0),
            stage("second generation", 533.0, 700.0),
            stage("third generation", 1700.0, 2100.0),
        ],
        MICHIGAN,
    ),
    Model::base_50(
        &["balsam gall midge"],
        &[stage("adults laying eggs", 150.0, 300.0), stage("galls apparent", 550.0, 700.0)],
        MICHIGAN,
    ),
    Model::base_50(
        &["balsam twig aphid"],
        &[stage("egg hatch", 60.0, 100.0), stage("stem mothers present", 100.0, 140.0)],
        MICHIGAN,
    ),
    Model::base_50(
        &["banded ash clearwing borer", "banded ash clearwing"],
        &[stage("adult emergence", 1800.0, 2200.0)],
        MICHIGAN,
    ),
    Model::base_50(
        &["beech scale"],
        &[stage("eggs present", 800.0, 800.0), stage("egg hatch, first crawlers", 1250.0, 1250.0)],
        MICHIGAN,
    ),
    Model::base_50(
        &["birch leafminer"],
        &[
            stage("first adults emerge", 175.0, 215.0),
            stage("adults laying eggs", 275.0, 375.0),
            stage("larvae and pupae", 375.0, 500.0),
            stage("adults and egg laying, second generation", 600.0, 700.0),
        ],
        MICHIGAN,
    ),
    Model::base_50(&["black pineleaf scale"], &[stage("egg hatch", 1068.0, 1068.0)], MICHIGAN),
    Model::base_50(&["bronze birch borer"], &[stage("adults, eggs, new grubs", 400.0, 600.0)], MICHIGAN),
    Model::base_50(&["cankerworm"], &[stage("young caterpillars", 100.0, 200.0)], MICHIGAN),
    Model::base_50(
        &["Cooley spruce gall adelgid"],
        &[
            stage("first adults active, spruce", 25.0, 120.0),
            stage("first galls visible, spruce", 200.0, 310.0),
            stage("first adults active, Douglas fir", 90.0, 180.0),
            stage("first nymphs, Douglas fir", 90.0, 150.0),
            stage("second nymphs, Douglas fir", 600.0, 1000.0),
        ],
        MICHIGAN,
    ),
    Model::base_50(&["ash borer"], &[stage("first instar larvae", 275.0, 500.0)], WISCONSIN),
    Model::base_50(&["ash plantbug", "ash plant bug"], &[stage("nymphs", 100.0, 200.0)], WISCONSIN),
    Model::base_50(
        &["black vine weevil"],
        &[stage("first generation adults", 400.0, 600.0), stage("second generation adults", 900.0, 1000.0)],
        WISCONSIN,
    ),
    Model::base_50(
        &["cottony maple scale"],
        &[stage("egg hatch", 850.0, 850.0), stage("crawlers", 900.0, 1200.0)],
        WISCONSIN,
    ),
    Model::base_50(
        &["eastern spruce gall adelgid"],
        &[
            stage("adults", 50.0, 100.0),
            stage("egg hatch", 90.0, 90.0),
            stage("first instar larvae", 100.0, 100.0),
            stage("second generation nymphs", 2800.0, 3000.0),
        ],
        WISCONSIN,
    ),
    Model::base_50(
        &["eastern tent caterpillar"],
        &[
            stage("egg hatch", 50.0, 50.0),
            stage("first instar larvae", 100.0, 100.0),
            stage("second instar larvae", 140.0, 140.0),
            stage("third instar larvae", 350.0, 350.0),
            stage("adults", 725.0, 725.0),
        ],
        WISCONSIN,
    ),
    Model::base_50(&["elm leaf beetle"], &[stage("larvae", 400.0, 500.0)], WISCONSIN),
    Model::base_50(&["elm sawfly"], &[stage("larvae", 365.0, 365.0)], WISCONSIN),
    Model::base_50(&["euonymus scale"], &[stage("crawlers", 500.0, 700.0)], WISCONSIN),
    Model::base_50(&["European pine sawfly"], &[stage("first instar larvae", 50.0, 100.0)], WISCONSIN),
    Model::base_50(
        &["European pine shoot moth"],
        &[stage("spring larvae active", 50.0, 100.0), stage("adults", 900.0, 900.0)],
        WISCONSIN,
    ),
    Model::base_50(&["fall webworm"], &[stage("larvae", 850.0, 850.0)], WISCONSIN),
    Model::base_50(
        &["Fletcher scale"],
        &[stage("adults", 100.0, 200.0), stage("egg hatch", 600.0, 600.0), stage("crawlers active", 900.0, 1200.0)],
        WISCONSIN,
    ),
    Model::base_50(
        &["gypsy moth", "spongy moth"],
        &[stage("egg hatch", 100.0, 200.0), stage("larvae", 200.0, 350.0)],
        WISCONSIN,
    ),
    Model::base_50(&["hawthorn leafminer"], &[stage("larvae", 275.0, 500.0)], WISCONSIN),
    // Other states print 950 and 950-2150.
    Model::base_50(&["Japanese beetle"], &[stage("adults", 900.0, 1200.0)], WISCONSIN),
    Model::base_50(
        &["oystershell scale", "oystershell scale (brown race)"],
        &[
            stage("egg hatch", 265.0, 265.0),
            stage("first generation crawlers", 275.0, 500.0),
            stage("second generation crawlers", 1600.0, 1700.0),
        ],
        WISCONSIN,
    ),
    Model::base_50(&["oystershell scale (grey race)"], &[stage("first generation crawlers", 400.0, 600.0)], WISCONSIN),
    Model::base_50(
        &["pine needle scale"],
        &[stage("first generation crawlers", 200.0, 350.0), stage("second generation crawlers", 1600.0, 1700.0)],
        WISCONSIN,
    ),
    Model::base_50(
        &["pine spittlebug"],
        &[stage("first generation egg hatch", 145.0, 145.0), stage("second generation egg hatch", 1500.0, 1500.0)],
        WISCONSIN,
    ),
];
