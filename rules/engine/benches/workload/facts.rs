//! The forty facts of a document, with the names under which rules read them, and the signs.

/// A numeric fact: how rules write it, its unit, how many steps make one, its least and most in steps.
#[derive(Clone, Copy)]
pub(crate) struct Number {
    pub(crate) name: &'static str,
    pub(crate) unit: &'static str,
    pub(crate) steps_in_one: u16,
    pub(crate) least: u16,
    pub(crate) most: u16,
}

const fn number(name: &'static str, unit: &'static str, steps_in_one: u16, least: u16, most: u16) -> Number {
    Number { name, unit, steps_in_one, least, most }
}

/// Nine that a caller measures, the shares of fourteen signs, the counts of two works.
pub(crate) const NUMBERS: [Number; 25] = [
    number("plant.age", "year", 10, 0, 400),
    number("plant.height", "m", 20, 0, 100),
    number("plant.canopy_diameter", "m", 20, 0, 100),
    number("plant.trunk_diameter", "cm", 1, 0, 100),
    number("site.container_volume", "L", 1, 0, 200),
    number("soil.ph", "", 10, 40, 90),
    number("soil.ec", "dS/m", 10, 0, 80),
    number("water.ec", "dS/m", 10, 0, 40),
    number("weather.leaf_wet", "h", 1, 0, 24),
    number("share(part-00)", "%", 1, 0, 100),
    number("share(part-01)", "%", 1, 0, 100),
    number("share(part-02)", "%", 1, 0, 100),
    number("share(part-03)", "%", 1, 0, 100),
    number("share(part-04)", "%", 1, 0, 100),
    number("share(part-05)", "%", 1, 0, 100),
    number("share(part-06)", "%", 1, 0, 100),
    number("share(part-07)", "%", 1, 0, 100),
    number("share(part-08)", "%", 1, 0, 100),
    number("share(part-09)", "%", 1, 0, 100),
    number("share(part-10)", "%", 1, 0, 100),
    number("share(part-11)", "%", 1, 0, 100),
    number("share(part-12)", "%", 1, 0, 100),
    number("share(part-13)", "%", 1, 0, 100),
    number("count(sweep, within 30 days)", "", 1, 0, 6),
    number("count(rake, within 60 days)", "", 1, 0, 6),
];

/// The first of the shares among the numbers, and how many there are.
pub(crate) const SHARES: std::ops::Range<usize> = 9..23;
/// The first of the counts among the numbers.
pub(crate) const COUNTS: std::ops::Range<usize> = 23..25;

/// Choices and how many values each has.
pub(crate) const CHOICES: [(&str, &[&str]); 8] = [
    ("site.planting", &["ground", "container", "raised-bed", "indoor"]),
    ("site.container_material", &["clay", "plastic", "wood", "fabric"]),
    ("site.exposure", &["full-sun", "half-sun", "shade", "afternoon-sun"]),
    ("site.wind", &["sheltered", "open", "windy"]),
    (
        "soil.texture",
        &[
            "sand",
            "loamy-sand",
            "sandy-loam",
            "loam",
            "silt-loam",
            "silt",
            "sandy-clay-loam",
            "clay-loam",
            "silty-clay-loam",
            "sandy-clay",
            "silty-clay",
            "clay",
        ],
    ),
    ("soil.drainage", &["fast", "good", "poor"]),
    ("water.method", &["can", "drip", "basin", "sprinkler"]),
    ("vigour", &["weak", "normal", "strong"]),
];

/// Yes or no.
pub(crate) const FLAGS: [&str; 7] = [
    "site.reflected_heat",
    "site.mulched",
    "site.frost_hollow",
    "water.source_alkaline",
    "site.near_water",
    "plant.bearing",
    "site.pets",
];

/// Signs that may be in the list of a document; those of the shares come after them.
pub(crate) const SIGNS: usize = 40;

/// Plants that rules are for.
pub(crate) const PLANTS: usize = 60;
