//! With what water, and how wet the leaves are.

use serde::Deserialize;
use utoipa::ToSchema;

use super::choices::{WateringMethod, Weekday};
use crate::problem::faults::Faults;

/// The water.
#[derive(Clone, Debug, Default, PartialEq, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct WaterGiven {
    /// How it is brought; into a basin when not said.
    pub method: Option<WateringMethod>,
    /// Whether it is alkaline.
    pub source_alkaline: Option<bool>,
    /// Its salinity: electrical conductivity, dS/m.
    #[schema(minimum = 0, maximum = 60)]
    pub ec_ds_m: Option<f64>,
    /// Days of the week on which watering is not allowed.
    #[serde(default)]
    #[schema(max_items = 7)]
    pub restricted_days: Vec<Weekday>,
}

/// Weather that only someone at the place can tell.
#[derive(Clone, Debug, Default, PartialEq, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct WeatherGiven {
    /// Longest time in the last day that leaves stayed wet, h.
    #[schema(minimum = 0, maximum = 24)]
    pub leaf_wet_h: Option<f64>,
}

impl WaterGiven {
    pub(crate) fn check(&self, at: &str, faults: &mut Faults) {
        faults.in_range(at, "ec_ds_m", self.ec_ds_m, (0.0, 60.0), "dS/m");
        faults.at_most(at, "restricted_days", self.restricted_days.len(), Weekday::ALL.len());
    }
}

impl WeatherGiven {
    pub(crate) fn check(&self, at: &str, faults: &mut Faults) {
        faults.in_range(at, "leaf_wet_h", self.leaf_wet_h, (0.0, 24.0), "h");
    }
}
