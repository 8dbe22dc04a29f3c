//! Fertiliser sums, by name.

use super::inputs::{Input, Kind};
use super::value::shorten;
use super::{Given, Quantity, Reckoned};
use crate::bounds::Unusable;
use crate::feeding::elements::{Grade, K_IN_K2O, MG_IN_EPSOM, P_IN_P2O5, S_IN_EPSOM};
use crate::feeding::product;

const WEIGHTS: &str = "standard atomic weights (IUPAC 2021)";
const LABEL: &str = "label analysis, percent by mass";
const BAG: Input = Input::number("bag", "g", 0.0, 1e9, "mass of the fertiliser");
const GRADE: Input = Input::new("grade", Kind::Text, "N-P2O5-K2O in percent, such as 30-4-4");
const ANALYSIS: Input = Input::number("analysis", "%", 0.01, 100.0, "nutrient in the product by mass");
const TARGET: Input = Input::number("target", "ppm", 0.0, 100_000.0, "strength, mg of nutrient per litre");
const SALT: Input = Input::choice("salt", &["MgSO4.7H2O"], "formula of the salt");
const AREA: Input = Input::number("area", "m2", 0.0, 1_000_000.0, "area to treat");

macro_rules! in_bag {
    ($name:literal, $title:literal, $share:expr) => {
        Quantity {
            name: $name,
            title: $title,
            inputs: &[BAG, GRADE],
            unit: "g",
            about: "phosphorus and potassium of a label are phosphate and potash",
            method: "share of the mass",
            source: LABEL,
            reckon: |given| {
                let share: fn(Grade) -> f64 = $share;
                Ok((given.number("bag")? * share(grade(given)?) / 100.0).into())
            },
        }
    };
}

macro_rules! oxide {
    ($name:literal, $title:literal, $input:literal, $element:literal, $share:expr) => {
        Quantity {
            name: $name,
            title: $title,
            inputs: &[Input::new(
                $input,
                Kind::Measure { min: 0.0, max: 1e9 },
                "mass or percent of the oxide, in any unit",
            )],
            unit: "as given",
            about: "the result stands in the unit of the input",
            method: "share by mass",
            source: WEIGHTS,
            reckon: |given| {
                let unit = format!("{} {}", given.unit_of($input).unwrap_or("-"), $element);
                Ok(Reckoned::from(given.number($input)? * $share).in_unit(unit))
            },
        }
    };
}

pub(super) const ALL: &[Quantity] = &[
    oxide!("p2o5_to_p", "phosphorus in phosphate", "p2o5", "P", P_IN_P2O5),
    oxide!("k2o_to_k", "potassium in potash", "k2o", "K", K_IN_K2O),
    in_bag!("nutrient_in_bag_nitrogen", "nitrogen in a bag", |grade| { grade.n_pct }),
    in_bag!("nutrient_in_bag_phosphate", "phosphate in a bag", |grade| { grade.p2o5_pct }),
    in_bag!("nutrient_in_bag_potash", "potash in a bag", |grade| grade.k2o_pct),
    in_bag!("elemental_in_bag_p", "phosphorus in a bag", |grade| grade.p2o5_pct * P_IN_P2O5),
    in_bag!("elemental_in_bag_k", "potassium in a bag", |grade| grade.k2o_pct * K_IN_K2O),
    Quantity {
        name: "material_for_area",
        title: "material for an area",
        inputs: &[Input::number("rate", "g/m2", 0.0, 100_000.0, "mass per area"), AREA],
        unit: "g",
        about: "for any material that is given by area",
        method: "rate times area",
        source: "definition",
        reckon: |given| Ok(product::for_area_g(given.number("rate")?, given.number("area")?).into()),
    },
    Quantity {
        name: "product_for_rate",
        title: "product for a nutrient rate on an area",
        inputs: &[AREA, Input::number("nutrient_rate", "g/m2", 0.0, 10_000.0, "nutrient per area"), ANALYSIS],
        unit: "g",
        about: "mass of product that brings the rate",
        method: "rate times area over analysis",
        source: LABEL,
        reckon: |given| {
            let nutrient_g = product::for_area_g(given.number("nutrient_rate")?, given.number("area")?);
            Ok(product::for_nutrient_g(nutrient_g, given.number("analysis")?).into())
        },
    },
    Quantity {
        name: "product_for_nutrient",
        title: "product for a mass of nutrient",
        inputs: &[Input::number("nutrient", "g", 0.0, 1e9, "mass of nutrient"), ANALYSIS],
        unit: "g",
        about: "mass of product that holds the nutrient",
        method: "nutrient over analysis",
        source: LABEL,
        reckon: |given| Ok(product::for_nutrient_g(given.number("nutrient")?, given.number("analysis")?).into()),
    },
    Quantity {
        name: "oz_per_100_gal_for_ppm",
        title: "product in water for a strength",
        inputs: &[TARGET, ANALYSIS],
        unit: "g/L",
        about: "mass of product per volume of feed, in any such unit",
        method: "strength over analysis",
        source: "definition of ppm as mg/L",
        reckon: |given| {
            let (target, analysis) = (given.number("target")?, given.number("analysis")?);
            Ok(product::for_strength_g_per_l(target, analysis).into())
        },
    },
    Quantity {
        name: "stock_oz_per_gal",
        title: "product in the stock of an injector",
        inputs: &[TARGET, ANALYSIS, Input::new("injector", Kind::Text, "ratio of stock to water, such as 1:100")],
        unit: "g/L",
        about: "mass of product per volume of stock, in any such unit",
        method: "strength over analysis times the injector's ratio",
        source: "definition of ppm as mg/L",
        reckon: |given| {
            let (target, analysis) = (given.number("target")?, given.number("analysis")?);
            Ok((product::for_strength_g_per_l(target, analysis) * injector(given)?).into())
        },
    },
    Quantity {
        name: "ppm_from_g_per_l",
        title: "strength of a feed",
        inputs: &[Input::number("product", "g/L", 0.0, 2000.0, "product per volume of feed"), ANALYSIS],
        unit: "ppm",
        about: "mg of nutrient per litre",
        method: "product times analysis",
        source: "definition of ppm as mg/L",
        reckon: |given| Ok(product::strength_ppm(given.number("product")?, given.number("analysis")?).into()),
    },
    Quantity {
        name: "magnesium_in_epsom",
        title: "magnesium in Epsom salt",
        inputs: &[SALT],
        unit: "%",
        about: "share by mass",
        method: "molar masses",
        source: WEIGHTS,
        reckon: |_| Ok((100.0 * MG_IN_EPSOM).into()),
    },
    Quantity {
        name: "sulphur_in_epsom",
        title: "sulphur in Epsom salt",
        inputs: &[SALT],
        unit: "%",
        about: "share by mass",
        method: "molar masses",
        source: WEIGHTS,
        reckon: |_| Ok((100.0 * S_IN_EPSOM).into()),
    },
    Quantity {
        name: "magnesium_from_epsom_g",
        title: "magnesium in a mass of Epsom salt",
        inputs: &[Input::number("epsom", "g", 0.0, 1e9, "mass of MgSO4.7H2O")],
        unit: "g",
        about: "mass of the element",
        method: "molar masses",
        source: WEIGHTS,
        reckon: |given| Ok((given.number("epsom")? * MG_IN_EPSOM).into()),
    },
];

fn grade(given: &Given<'_>) -> Result<Grade, Unusable> {
    let text = given.text("grade")?;
    Grade::read(text).ok_or_else(|| Unusable::Unread {
        field: "grade",
        text: shorten(text),
        expected: "N-P2O5-K2O in percent, together not above 100, such as 30-4-4".to_owned(),
    })
}

/// Parts of water for one part of stock.
fn injector(given: &Given<'_>) -> Result<f64, Unusable> {
    let text = given.text("injector")?;
    let part = |text: &str| text.parse::<f64>().ok().filter(|part| (1.0..=10_000.0).contains(part));
    text.split_once(':').and_then(|(stock, water)| Some(part(water)? / part(stock)?)).ok_or_else(|| Unusable::Unread {
        field: "injector",
        text: shorten(text),
        expected: "a ratio such as 1:100".to_owned(),
    })
}
