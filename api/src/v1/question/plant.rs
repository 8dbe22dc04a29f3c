//! What: the plant.

use std::collections::BTreeMap;

use serde::Deserialize;
use utoipa::ToSchema;

use super::date::Date;
use crate::problem::faults::Faults;
use crate::problem::pointer::below;

/// The plant.
#[derive(Clone, Debug, Default, PartialEq, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct PlantGiven {
    /// Which plant, by its id or one of its names. Only an emergency is answered without it.
    #[serde(rename = "type", default)]
    #[schema(max_length = 100, example = "rose")]
    pub kind: String,
    /// Its traits: for a rose `flowering` is `once` or `repeat`.
    #[serde(default)]
    pub traits: BTreeMap<String, String>,
    /// Years since it was planted.
    #[schema(minimum = 0, maximum = 1000)]
    pub age_years: Option<f64>,
    /// When it was planted; says the age more exactly.
    pub planted_on: Option<Date>,
    /// Height, m.
    #[schema(minimum = 0, maximum = 120)]
    pub height_m: Option<f64>,
    /// Width, m.
    #[schema(minimum = 0, maximum = 60)]
    pub canopy_diameter_m: Option<f64>,
    /// Thickness of the trunk, cm.
    #[schema(minimum = 0, maximum = 1000)]
    pub trunk_diameter_cm: Option<f64>,
    /// What it is doing now, by the id of a stage that this plant has.
    #[schema(max_length = 100, example = "heat-rest")]
    pub stage: Option<String>,
    /// Since when it has been doing that.
    pub stage_since: Option<Date>,
    /// Whether it bears fruit.
    pub bearing: Option<bool>,
    /// Whether its hips are wanted.
    pub hips_wanted: Option<bool>,
    /// Whether it was bought in the last weeks and still stands in the pot it came in; taken as no when left out.
    pub just_bought: Option<bool>,
    /// Whether it is in leaf.
    pub in_leaf: Option<bool>,
}

impl PlantGiven {
    pub(crate) fn check(&self, at: &str, faults: &mut Faults) {
        faults.text_at_most(at, "type", &self.kind, 100);
        faults.at_most(at, "traits", self.traits.len(), 50);
        for (name, value) in &self.traits {
            faults.text_at_most(&below(at, "traits"), name, value, 100);
        }
        faults.in_range(at, "age_years", self.age_years, (0.0, 1000.0), "years");
        faults.in_range(at, "height_m", self.height_m, (0.0, 120.0), "m");
        faults.in_range(at, "canopy_diameter_m", self.canopy_diameter_m, (0.0, 60.0), "m");
        faults.in_range(at, "trunk_diameter_cm", self.trunk_diameter_cm, (0.0, 1000.0), "cm");
        faults.text_at_most(at, "stage", self.stage.as_deref().unwrap_or_default(), 100);
    }
}
