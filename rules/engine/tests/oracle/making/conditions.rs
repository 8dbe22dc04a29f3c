//! Random conditions over a fixed list of comparisons, every kind of fact among them.

use proptest::prelude::*;
use proptest::sample::select;

/// What is seen.
pub(crate) fn sign() -> impl Strategy<Value = &'static str> {
    select(&["signs has spent-blooms", "signs has webbing", "severity(spent-blooms) >= moderate"][..])
}

/// Of what the caller says and of the season: they last.
const LASTING: &[&str] = &[
    "signs has spent-blooms",
    "signs has crowded-centre",
    "signs has webbing",
    "signs has speckled-leaves",
    "signs has yellow-between-veins",
    "severity(spent-blooms) >= moderate",
    "severity(speckled-leaves) = severe",
    "share(speckled-leaves) >= 10 %",
    "days_from(since(frost-damage)) < 3 weeks",
    "since(frost-damage) is absent",
    "plant.age >= 1 year",
    "plant.age < 2.5 years",
    "plant.height * 2 > 1.5 m",
    "plant.canopy_diameter >= 90 cm",
    "plant.trunk_diameter > 2 in",
    "plant.planted_on is absent",
    "days_from(planted) < 52 weeks",
    "weeks_to(planted) is absent",
    "plant.stage = bloom",
    "plant.stage in {dormant, bud-break}",
    "days_from(stage(bloom)) <= 30 days",
    "days_to(stage(leaf-fall)) < 12 weeks",
    "plant.in_leaf",
    "plant.bearing",
    "plant.trait(flowering) = repeat",
    "site.planting = container",
    "site.planting != ground",
    "site.exposure in {full-sun, afternoon-sun}",
    "site.wind < windy",
    "site.mulched",
    "site.frost_hollow",
    "site.food_use",
    "soil.ph > 7.2",
    "soil.ph = 6.5",
    "soil.ph * 2 - 1 > 11.5",
    "soil.texture in {clay, clay-loam}",
    "soil.drainage != poor",
    "water.source_alkaline",
    "water.method = sprinkler",
    "region = US",
    "region = US-CA or region = GB",
    "region.flag(water-ban)",
    "vigour < normal",
    "vigour >= normal",
    "wants(transplant)",
    "done(feed, within 28 days)",
    "done(nitrogen, within 56 days)",
    "done(oil-spray, within 14 days)",
    "count(prune, within 60 days) >= 2",
    "last(prune) is absent",
    "days_from(last(prune)) > 10 days",
    "harvest_wait is absent",
    "days_to(harvest_wait) > 3 days",
    "climate.frost_free",
    "climate.hot_summer",
    "climate.mild_winter",
    "climate.cold_winter",
    "climate.dry_winter",
    "climate.dry_spring",
    "climate.short_season",
    "frost.chance >= 50 %",
    "season.half = cooling",
    "season.half != even",
    "season.heat_left < 550 °Cd",
    "tmean > 12 °C",
    "tmax >= 77 °F",
    "mean(tmax, 7 days) > 24 °C",
    "mean(tmax, 7 days) - mean(tmin, 7 days) > 11 K",
    "tmax - tmin <= 10.5 K",
    "tmax + 3 K > 25 °C",
    "sum(rain, 14 days) < 20 mm",
    "min(tmin, 10 days) < 4 °C",
    "soil_10cm >= 10 °C",
    "daylength > 12 h",
    "et0 > 3 mm/day",
    "rh < 60 %",
    "wind > 10 km/h",
    "weeks_to(first_frost.median) < 8 weeks",
    "weeks_to(first_frost.median) - 2 weeks < 8 weeks",
    "days_from(last_frost.late) > 14 days",
    "first_frost.early is absent",
    "first_frost.median < today",
    "growing.start < last_frost.median",
    "days_to(rains.start) <= 40 days",
    "second_rains.start is absent",
    "days_from(hot_season.end) <= 8 weeks",
    "heat_sum(10 °C, from growing.start) > 300 °Cd",
    "heat_sum(10 °C, 30 °C, from since(frost-damage)) > 100 °Cd",
    "heat_sum(5 °C, from coldest_week + 2 weeks) > 200 °Cd",
    "days_to(heat_reached(250 °Cd, 10 °C, from growing.start)) < 60 days",
    "chill_hours >= 400 h",
    "chill_portions < 30",
    "climate.zone > 7",
    "climate.zone = 5",
    "climate.heat_days >= 45 days",
    "climate.extreme_min < 5 °F",
    "climate.koppen = Csb",
    "climate.koppen != Dfa",
    "days_to(chill_reached(800 h)) < 60 days",
    "chill_reached(1200 h) is absent",
    "days_from(rises(tmean, 10 °C)) < 5 weeks",
    "falls(tmax, 27 °C) is absent",
    "weeks_to(falls(tmax, 27 °C)) != 8 weeks",
];

/// Of the day.
const OF_THE_DAY: &[&str] = &[
    "soil.moisture = dry",
    "soil.moisture < wet",
    "site.bees_working",
    "weather.leaf_wet > 6 h",
    "ahead(max, tmax, 7 days) > 30 °C",
    "ahead(min, tmin, 3 days) <= 2 °C",
    "ahead(sum, rain, 5 days) > 10 mm",
    "ahead(max, tmax, 7 days) - mean(tmax, 7 days) > 4 K",
    "frost_ahead(0 °C, 7 days)",
    "frost_ahead(-2 °C, 3 days)",
];

/// Over traits by their short names.
const TRAITS: &[&str] =
    &["flowering = repeat", "form = climber", "flowering != once or form = bush", "not (form = bush)"];

fn joined(leaf: impl Strategy<Value = String> + 'static, deepest: u32) -> BoxedStrategy<String> {
    leaf.prop_recursive(deepest, 8, 3, |inner| {
        prop_oneof![
            proptest::collection::vec(inner.clone(), 2..=3).prop_map(|parts| format!("({})", parts.join(" and "))),
            proptest::collection::vec(inner.clone(), 2..=3).prop_map(|parts| format!("({})", parts.join(" or "))),
            inner.prop_map(|part| format!("not ({part})")),
        ]
    })
    .boxed()
}

/// A condition of a rule: mostly of what lasts.
pub(crate) fn when() -> BoxedStrategy<String> {
    let leaf = prop_oneof![12 => select(LASTING), 1 => select(OF_THE_DAY)].prop_map(str::to_owned);
    joined(leaf, 2)
}

/// A condition of a hold or guard: often of the day.
pub(crate) fn hold() -> BoxedStrategy<String> {
    let leaf = prop_oneof![select(LASTING), select(OF_THE_DAY)].prop_map(str::to_owned);
    joined(leaf, 2)
}

/// A condition of markers of temperature and of what the caller says, for mirrored climates.
pub(crate) fn mirrored() -> BoxedStrategy<String> {
    let of_rain_or_sums = |text: &&str| {
        [
            "rain",
            "et0",
            "rh ",
            "wind",
            "heat",
            "chill",
            "koppen",
            "zone",
            "extreme_min",
            "done",
            "count",
            "last(",
            "since",
            "harvest",
            "planted",
            "daylength",
            "season.half",
            "year",
            "dry",
            "wet",
            "tmax",
            "tmin",
            "tmean",
            "soil_10",
            "frost.chance",
            "stage",
        ]
        .iter()
        .any(|word| text.contains(word))
    };
    let list: Vec<&str> = LASTING.iter().copied().filter(|text| !of_rain_or_sums(text)).collect();
    joined(select(list).prop_map(str::to_owned), 2)
}

pub(crate) fn of_traits() -> impl Strategy<Value = String> {
    select(TRAITS).prop_map(str::to_owned)
}
