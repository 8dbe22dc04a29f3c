//! On what ground: the site and its soil.

use serde::Deserialize;
use utoipa::ToSchema;

use super::choices::{ContainerMaterial, Exposure, Planting, SiteWind, SoilDrainage, SoilMoisture, SoilTexture};
use crate::problem::faults::Faults;
use crate::problem::pointer::below;

/// The site.
#[derive(Clone, Debug, Default, PartialEq, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct SiteGiven {
    /// Where the plant stands; in open ground when not said.
    pub planting: Option<Planting>,
    /// Volume of the pot, L.
    #[schema(minimum = 0, maximum = 10000)]
    pub container_volume_l: Option<f64>,
    /// What the pot is made of.
    pub container_material: Option<ContainerMaterial>,
    /// How much direct sun the place has; full sun when not said.
    pub exposure: Option<Exposure>,
    /// How windy the place is; sheltered when not said.
    pub wind: Option<SiteWind>,
    /// Whether a wall, paving or a roof throws heat at it.
    pub reflected_heat: Option<bool>,
    /// Whether mulch lies on the soil.
    pub mulched: Option<bool>,
    /// Whether cold air gathers here.
    pub frost_hollow: Option<bool>,
    /// The soil.
    pub soil: Option<SoilGiven>,
    /// Whether pets come here.
    pub pets: Option<bool>,
    /// Whether children come here.
    pub children: Option<bool>,
    /// Whether a pond, stream or drain is near.
    pub near_water: Option<bool>,
    /// Whether bees are on open flowers here today.
    pub bees_working: Option<bool>,
    /// Whether any of it is eaten.
    pub food_use: Option<bool>,
    /// Where this is in law: an ISO 3166 code, as fine as is known. It is never inferred from coordinates.
    #[schema(pattern = "^[A-Z]{2}(-[A-Z0-9]{1,3})?$", example = "US-CA")]
    pub region: Option<String>,
    /// Rules of the region that hold here, such as a ban on watering, by their ids.
    #[serde(default)]
    #[schema(max_items = 50, example = json!(["water-ban"]))]
    pub region_flags: Vec<String>,
}

/// The soil.
#[derive(Clone, Debug, Default, PartialEq, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct SoilGiven {
    /// Its texture.
    pub texture: Option<SoilTexture>,
    /// Its pH.
    #[schema(minimum = 2, maximum = 12)]
    pub ph: Option<f64>,
    /// Its salinity: electrical conductivity, dS/m.
    #[schema(minimum = 0, maximum = 60)]
    pub ec_ds_m: Option<f64>,
    /// How fast water leaves it.
    pub drainage: Option<SoilDrainage>,
    /// How it feels today, 5 cm down.
    pub moisture: Option<SoilMoisture>,
}

impl SiteGiven {
    pub(crate) fn check(&self, at: &str, faults: &mut Faults) {
        faults.in_range(at, "container_volume_l", self.container_volume_l, (0.0, 10_000.0), "L");
        if let Some(soil) = &self.soil {
            let at = below(at, "soil");
            faults.in_range(&at, "ph", soil.ph, (2.0, 12.0), "");
            faults.in_range(&at, "ec_ds_m", soil.ec_ds_m, (0.0, 60.0), "dS/m");
        }
        if let Some(region) = self.region.as_deref().filter(|region| !is_region(region)) {
            let found = crate::problem::clipped(region);
            faults.add(below(at, "region"), format!("expected a code such as `GB` or `US-CA`, found `{found}`"));
        }
        faults.ids(at, "region_flags", &self.region_flags, 50);
    }
}

/// The form of ISO 3166-1 alpha-2 and ISO 3166-2; whether the code is in use is not asked here.
fn is_region(code: &str) -> bool {
    let (country, part) = code.split_once('-').map_or((code, None), |(country, part)| (country, Some(part)));
    let capital = |b: u8| b.is_ascii_uppercase();
    country.len() == 2
        && country.bytes().all(capital)
        && part.is_none_or(|p| (1..=3).contains(&p.len()) && p.bytes().all(|b| capital(b) || b.is_ascii_digit()))
}
