//! Crop coefficients (FAO-56 Table 12) and root depths with depletion fractions (FAO-56 Table 22).
//!
//! Coefficients hold for a subhumid, calm climate; root depths for mature plants in deep soil, and home
//! beds are watered less deep. Orchards stand without ground cover, with killing frost where the table
//! has both. The rows that gardeners meet are here; read in the paper's text and in the data tables of
//! an open-source library.

/// One row.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Crop {
    /// Its names, the table's first.
    pub names: &'static [&'static str],
    /// Coefficients of the initial and middle stages and of the end, the end as a range.
    pub coefficients: Option<Coefficients>,
    /// Least and greatest depth in m of the mature root zone.
    pub root_depth_m: (f64, f64),
    /// Share of the store used without stress at a need of 5 mm/d.
    pub p: f64,
}

/// The coefficients of a crop, FAO-56 Table 12.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Coefficients {
    /// Initial stage.
    pub ini: f64,
    /// Middle stage.
    pub mid: f64,
    /// End of the late stage, lower and upper bound.
    pub end: (f64, f64),
}

const fn crop(
    names: &'static [&'static str],
    coefficients: Option<Coefficients>,
    root_depth_m: (f64, f64),
    p: f64,
) -> Crop {
    Crop { names, coefficients, root_depth_m, p }
}

const fn kc(ini: f64, mid: f64, end: f64) -> Option<Coefficients> {
    Some(Coefficients { ini, mid, end: (end, end) })
}

/// The row of a name.
#[must_use]
pub fn find(name: &str) -> Option<&'static Crop> {
    CROPS.iter().find(|crop| crop.names.contains(&name))
}

/// The rows in the order of FAO-56.
pub const CROPS: &[Crop] = &[
    crop(&["broccoli"], kc(0.7, 1.05, 0.95), (0.4, 0.6), 0.45),
    crop(&["brussels sprouts"], kc(0.7, 1.05, 0.95), (0.4, 0.6), 0.45),
    crop(&["cabbage"], kc(0.7, 1.05, 0.95), (0.5, 0.8), 0.45),
    crop(&["carrot", "carrots"], kc(0.7, 1.05, 0.95), (0.5, 1.0), 0.35),
    crop(&["cauliflower"], kc(0.7, 1.05, 0.95), (0.4, 0.7), 0.45),
    crop(&["celery"], kc(0.7, 1.05, 1.0), (0.3, 0.5), 0.2),
    crop(&["garlic"], kc(0.7, 1.0, 0.7), (0.3, 0.5), 0.3),
    crop(&["lettuce"], kc(0.7, 1.0, 0.95), (0.3, 0.5), 0.3),
    crop(&["onion, dry", "onion (dry)"], kc(0.7, 1.05, 0.75), (0.3, 0.6), 0.3),
    crop(&["onion, green", "onion (green)"], kc(0.7, 1.0, 1.0), (0.3, 0.6), 0.3),
    crop(&["spinach"], kc(0.7, 1.0, 0.95), (0.3, 0.5), 0.2),
    crop(&["radish", "radishes"], kc(0.7, 0.9, 0.85), (0.3, 0.5), 0.3),
    crop(&["eggplant", "egg plant"], kc(0.6, 1.05, 0.9), (0.7, 1.2), 0.45),
    crop(&["sweet pepper", "sweet peppers", "sweet peppers (bell)"], kc(0.6, 1.05, 0.9), (0.5, 1.0), 0.3),
    crop(&["tomato"], Some(Coefficients { ini: 0.6, mid: 1.15, end: (0.7, 0.9) }), (0.7, 1.5), 0.4),
    crop(&["cantaloupe"], kc(0.5, 0.85, 0.6), (0.9, 1.5), 0.45),
    crop(&["cucumber, fresh", "cucumber, fresh market", "cucumber"], kc(0.6, 1.0, 0.75), (0.7, 1.2), 0.5),
    crop(&["cucumber, machine harvest"], kc(0.5, 1.0, 0.9), (0.7, 1.2), 0.5),
    crop(&["pumpkin, winter squash", "winter squash", "pumpkin"], kc(0.5, 1.0, 0.8), (1.0, 1.5), 0.35),
    crop(&["squash, zucchini", "zucchini"], kc(0.5, 0.95, 0.75), (0.6, 1.0), 0.5),
    crop(&["sweet melons", "sweet melon"], kc(0.5, 1.05, 0.75), (0.8, 1.5), 0.4),
    crop(&["watermelon"], kc(0.4, 1.0, 0.75), (0.8, 1.5), 0.4),
    crop(&["beets, table", "table beet"], kc(0.5, 1.05, 0.95), (0.6, 1.0), 0.5),
    crop(&["parsnip"], kc(0.5, 1.05, 0.95), (0.5, 1.0), 0.4),
    crop(&["potato"], kc(0.5, 1.15, 0.75), (0.4, 0.6), 0.35),
    crop(&["sweet potato"], kc(0.5, 1.15, 0.65), (1.0, 1.5), 0.65),
    crop(&["turnip, rutabaga", "turnip"], kc(0.5, 1.1, 0.95), (0.5, 1.0), 0.5),
    crop(&["sugar beet"], kc(0.35, 1.2, 0.7), (0.7, 1.2), 0.55),
    crop(&["beans, green", "green beans"], kc(0.5, 1.05, 0.9), (0.5, 0.7), 0.45),
    crop(&["beans, dry"], kc(0.4, 1.15, 0.35), (0.6, 0.9), 0.45),
    crop(&["beans, lima"], None, (0.8, 1.2), 0.45),
    crop(&["chickpea"], kc(0.4, 1.0, 0.35), (0.6, 1.0), 0.5),
    crop(&["faba bean, fresh", "broad bean, fresh"], kc(0.5, 1.15, 1.1), (0.5, 0.7), 0.45),
    crop(&["peas, fresh"], kc(0.5, 1.15, 1.1), (0.6, 1.0), 0.35),
    crop(&["peas, dry"], kc(0.5, 1.15, 0.3), (0.6, 1.0), 0.4),
    crop(&["lentil"], kc(0.4, 1.1, 0.3), (0.6, 0.8), 0.5),
    crop(&["soybean", "soybeans"], kc(0.5, 1.15, 0.5), (0.6, 1.3), 0.5),
    crop(&["groundnut", "peanut"], kc(0.4, 1.15, 0.6), (0.5, 1.0), 0.5),
    crop(&["artichoke", "artichokes"], kc(0.5, 1.0, 0.95), (0.6, 0.9), 0.45),
    crop(&["asparagus"], kc(0.5, 0.95, 0.3), (1.2, 1.8), 0.45),
    crop(&["mint"], kc(0.6, 1.15, 1.1), (0.4, 0.8), 0.4),
    crop(&["strawberry", "strawberries"], kc(0.4, 0.85, 0.75), (0.2, 0.3), 0.2),
    crop(&["sunflower"], kc(0.35, 1.1, 0.35), (0.8, 1.5), 0.45),
    crop(&["maize, grain", "field maize"], None, (1.0, 1.7), 0.55),
    crop(&["sweet maize", "sweet corn"], kc(0.3, 1.15, 1.05), (0.8, 1.2), 0.5),
    crop(&["turf, cool season", "cool season turf"], kc(0.9, 0.95, 0.95), (0.5, 1.0), 0.4),
    crop(&["turf, warm season", "warm season turf"], kc(0.8, 0.85, 0.85), (0.5, 1.0), 0.5),
    crop(&["banana, first year"], kc(0.5, 1.1, 1.0), (0.5, 0.9), 0.35),
    crop(&["banana, second year"], kc(1.0, 1.2, 1.1), (0.5, 0.9), 0.35),
    crop(&["cacao"], kc(1.0, 1.05, 1.05), (0.7, 1.0), 0.3),
    crop(&["coffee", "coffee, bare ground"], kc(0.9, 0.95, 0.95), (0.9, 1.5), 0.4),
    crop(&["date palms", "date palm"], kc(0.9, 0.95, 0.95), (1.5, 2.5), 0.5),
    crop(&["palm trees"], kc(0.95, 1.0, 1.0), (0.7, 1.1), 0.65),
    crop(&["pineapple", "pineapple, bare soil"], kc(0.5, 0.3, 0.3), (0.3, 0.6), 0.5),
    crop(&["tea, non-shaded"], kc(0.95, 1.0, 1.0), (0.9, 1.5), 0.4),
    crop(&["berries (bushes)", "berries"], kc(0.3, 1.05, 0.5), (0.6, 1.2), 0.5),
    crop(&["grapes, table"], kc(0.3, 0.85, 0.45), (1.0, 2.0), 0.35),
    crop(&["grapes, wine"], kc(0.3, 0.7, 0.45), (1.0, 2.0), 0.45),
    crop(&["hops"], kc(0.3, 1.05, 0.85), (1.0, 1.2), 0.5),
    crop(&["almond", "almonds"], kc(0.4, 0.9, 0.65), (1.0, 2.0), 0.4),
    crop(&["apple, cherry, pear"], kc(0.45, 0.95, 0.7), (1.0, 2.0), 0.5),
    crop(&["apricot, peach, stone fruit", "stone fruit"], kc(0.45, 0.9, 0.65), (1.0, 2.0), 0.5),
    crop(&["avocado"], kc(0.6, 0.85, 0.75), (0.5, 1.0), 0.7),
    crop(&["citrus 70% canopy", "citrus"], kc(0.7, 0.65, 0.7), (1.2, 1.5), 0.5),
    crop(&["citrus 50% canopy"], kc(0.65, 0.6, 0.65), (1.1, 1.5), 0.5),
    crop(&["citrus 20% canopy"], kc(0.5, 0.45, 0.55), (0.8, 1.1), 0.5),
    crop(&["conifer trees", "conifers"], kc(1.0, 1.0, 1.0), (1.0, 1.5), 0.7),
    crop(&["kiwi"], kc(0.4, 1.05, 1.05), (0.7, 1.3), 0.35),
    crop(&["olive", "olives"], kc(0.65, 0.7, 0.7), (1.2, 1.7), 0.65),
    crop(&["pistachio", "pistachios"], kc(0.4, 1.1, 0.45), (1.0, 1.5), 0.4),
    crop(&["walnut"], kc(0.5, 1.1, 0.65), (1.7, 2.4), 0.5),
];

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn names_are_unique_and_values_plausible() {
        let mut names: Vec<_> = CROPS.iter().flat_map(|crop| crop.names).collect();
        names.sort();
        assert!(names.windows(2).all(|pair| pair[0] != pair[1]));
        for crop in CROPS {
            assert!((0.1..=0.8).contains(&crop.p), "{:?}", crop.names);
            assert!(0.2 <= crop.root_depth_m.0 && crop.root_depth_m.0 < crop.root_depth_m.1);
            if let Some(kc) = crop.coefficients {
                assert!((0.2..=1.3).contains(&kc.mid) && kc.end.0 <= kc.end.1, "{:?}", crop.names);
            }
        }
    }
}
