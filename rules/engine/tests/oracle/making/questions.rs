//! Random questions, in the caller's words: anything may be left out.

use std::collections::BTreeMap;

use chrono::{Days, NaiveDate};
use lammas_engine::question::said::{
    ConditionSaid, PlantSaid, Said, SignSaid, SiteSaid, SoilSaid, WaterSaid, WeatherSaid, WorkSaid,
};
use proptest::collection::vec;
use proptest::option::{self, weighted};
use proptest::prelude::*;
use proptest::sample::{select, subsequence};

const SIGNS: &[&str] = &[
    "spent-blooms",
    "crowded-centre",
    "webbing",
    "speckled-leaves",
    "yellow-between-veins",
    "frost-damage",
    "root-rot",
];

fn word(list: &'static [&'static str]) -> impl Strategy<Value = Option<String>> {
    option::of(select(list).prop_map(str::to_owned))
}

fn tenths(from: i32, to: i32) -> impl Strategy<Value = Option<f64>> {
    option::of((from..=to).prop_map(|n| f64::from(n) / 10.0))
}

/// A day some days before the date.
fn ago(date: NaiveDate, days: u64) -> NaiveDate {
    date.checked_sub_days(Days::new(days)).unwrap()
}

pub(crate) fn dates() -> impl Strategy<Value = NaiveDate> {
    let from = NaiveDate::from_ymd_opt(2023, 1, 1).unwrap();
    prop_oneof![
        20 => (0_u64..1826).prop_map(move |days| from.checked_add_days(Days::new(days)).unwrap()),
        1 => Just(NaiveDate::from_ymd_opt(2024, 2, 29).unwrap()),
        1 => Just(NaiveDate::from_ymd_opt(2024, 12, 31).unwrap()),
        1 => Just(NaiveDate::from_ymd_opt(2025, 1, 1).unwrap()),
    ]
}

fn plants(date: NaiveDate) -> impl Strategy<Value = PlantSaid> {
    let kind = prop_oneof![4 => Just("rose"), 2 => Just("apple"), 1 => Just("fern")];
    let traits = (word(&["once", "repeat"]), word(&["bush", "climber"]));
    let stage = (word(&["dormant", "bud-break", "bloom", "leaf-fall"]), option::of(0_u64..60));
    let sizes = (tenths(0, 60), weighted(0.3, 0_u64..900), tenths(2, 30), tenths(10, 300));
    (kind, traits, stage, sizes, option::of(any::<bool>()), option::of(any::<bool>())).prop_map(
        move |(kind, (flowering, form), (stage, since), (age, planted, height, trunk), in_leaf, bearing)| {
            let mut traits = BTreeMap::new();
            traits.extend(flowering.map(|value| ("flowering".to_owned(), value)));
            traits.extend(form.map(|value| ("form".to_owned(), value)));
            PlantSaid {
                kind: kind.to_owned(),
                traits,
                age_years: age,
                planted_on: planted.map(|days| ago(date, days)),
                height_m: height,
                trunk_diameter_cm: trunk,
                stage_since: stage.is_some().then_some(since).flatten().map(|days| ago(date, days)),
                stage,
                in_leaf,
                bearing,
                ..PlantSaid::default()
            }
        },
    )
}

fn sites() -> impl Strategy<Value = SiteSaid> {
    let soil = (
        option::of(prop_oneof![Just(6.5), (50..90_i32).prop_map(|n| f64::from(n) / 10.0)]),
        word(&["clay", "clay-loam", "loam", "sand"]),
        word(&["fast", "good", "poor"]),
        word(&["dry", "moist", "wet"]),
    );
    let words = (
        word(&["ground", "container"]),
        word(&["full-sun", "shade", "afternoon-sun"]),
        word(&["sheltered", "open", "windy"]),
    );
    let truths =
        (option::of(any::<bool>()), weighted(0.3, any::<bool>()), option::of(any::<bool>()), option::of(any::<bool>()));
    let region = (word(&["US", "US-CA", "GB", "AU-VIC"]), any::<bool>());
    (soil, words, truths, region).prop_map(
        |(
            (ph, texture, drainage, moisture),
            (planting, exposure, wind),
            (mulched, frost_hollow, bees_working, food_use),
            (region, flag),
        )| SiteSaid {
            planting,
            exposure,
            wind,
            mulched,
            frost_hollow,
            bees_working,
            food_use,
            region,
            region_flags: if flag { vec!["water-ban".to_owned()] } else { Vec::new() },
            soil: SoilSaid { texture, ph, drainage, moisture, ..SoilSaid::default() },
            ..SiteSaid::default()
        },
    )
}

fn sign(date: NaiveDate) -> impl Strategy<Value = SignSaid> {
    let grade = word(&["slight", "moderate", "severe"]);
    (select(SIGNS), grade, option::of((0..=100).prop_map(f64::from)), option::of(0_u64..40)).prop_map(
        move |(sign, severity, share_pct, since)| SignSaid {
            sign: sign.to_owned(),
            severity,
            share_pct,
            since: since.map(|days| ago(date, days)),
        },
    )
}

fn conditions(date: NaiveDate) -> impl Strategy<Value = ConditionSaid> {
    let signs = weighted(0.8, vec(sign(date), 0..=4));
    let not_seen = subsequence(SIGNS, 0..=2);
    let problems = subsequence(&["mites", "chlorosis", "rot"][..], 0..=1);
    (signs, not_seen, weighted(0.3, Just(())), problems, word(&["weak", "normal", "strong"])).prop_map(
        |(signs, not_seen, closely, problems, vigour)| {
            let owned = |list: Vec<&str>| list.into_iter().map(str::to_owned).collect();
            ConditionSaid {
                signs,
                not_seen: owned(not_seen),
                looked_closely: closely.is_some(),
                words: None,
                vigour,
                problems: owned(problems),
            }
        },
    )
}

/// Works; ids of rules are only known with the pack.
fn works(date: NaiveDate, rules: Vec<String>) -> impl Strategy<Value = Vec<WorkSaid>> {
    let job = || {
        select(&["prune", "feed", "treat-pest", "treat-disease", "water", "mulch", "transplant", "deadhead"][..])
            .prop_map(str::to_owned)
    };
    let material = || {
        select(&["urea", "compost", "oil-spray", "soap-spray", "sulphur-dust", "copper-salt", "nitrogen", "oil"][..])
            .prop_map(str::to_owned)
    };
    let what = prop_oneof![
        3 => job().prop_map(|job| (Some(job), None, None)),
        2 => (job(), material()).prop_map(|(job, material)| (Some(job), Some(material), None)),
        1 => material().prop_map(|material| (None, Some(material), None)),
        4 => select(rules).prop_map(|rule| (None, None, Some(rule))),
    ];
    let one = (what, prop_oneof![3 => 0_u64..30, 1 => 30_u64..120], option::of(0_u16..60)).prop_map(
        move |((job, material, rule), days, wait)| WorkSaid {
            job,
            rule,
            material,
            date: Some(ago(date, days)),
            label_days_to_harvest: wait,
        },
    );
    vec(one, 0..=5)
}

/// A question about a pack with these rules.
pub(crate) fn questions(rules: Vec<String>) -> impl Strategy<Value = Said> {
    dates().prop_flat_map(move |date| {
        let condition = weighted(0.85, conditions(date));
        let history = weighted(0.6, works(date, rules.clone()));
        let water = (word(&["drip", "basin", "sprinkler"]), option::of(any::<bool>()));
        let wishes = subsequence(&["transplant", "divide"][..], 0..=1);
        (plants(date), sites(), condition, history, water, wishes, weighted(0.3, 0..=24)).prop_map(
            move |(plant, site, condition, history, (method, source_alkaline), wishes, wet)| Said {
                date: Some(date),
                plant,
                site,
                condition,
                history,
                water: WaterSaid { method, source_alkaline, ..WaterSaid::default() },
                weather: WeatherSaid { leaf_wet_h: wet.map(f64::from) },
                wishes: wishes.into_iter().map(str::to_owned).collect(),
                ..Said::default()
            },
        )
    })
}
