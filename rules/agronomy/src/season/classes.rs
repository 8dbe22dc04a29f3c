//! The classes of handbooks that a place lies in: hardiness, heat, Köppen.

use super::{Season, means};
use crate::hardiness::HardinessZone;
use crate::heat_zone::{heat_days_from_normals, heat_zone};
use crate::koppen::{CD_BOUNDARY_C, koppen_class};
use crate::origin::Origin;

impl Season {
    /// Hardiness half zone of the mean annual extreme minimum; unknown where that is.
    #[must_use]
    pub fn hardiness_zone(&self) -> Option<(HardinessZone, Origin)> {
        let (extreme_c, origin) = self.extreme_min_c()?;
        Some((HardinessZone::of_celsius(extreme_c), origin))
    }

    /// Mean number of days a year with a maximum above 30 °C: as counted, else from the curve.
    #[must_use]
    pub fn heat_days(&self) -> (f64, Origin) {
        match self.counted_heat_days {
            Some(days) => (days, Origin::Measured),
            None => {
                let reckon = || heat_days_from_normals(&self.tmax_c, &self.spread_k);
                (*self.heat_days.get_or_init(reckon), self.curve_origin)
            }
        }
    }

    /// Heat zone, 1 to 12, of that number of days.
    #[must_use]
    pub fn heat_zone(&self) -> u8 {
        heat_zone(self.heat_days().0)
    }

    /// Köppen-Geiger class of the normals; unknown without rain.
    #[must_use]
    pub fn koppen(&self) -> Option<&'static str> {
        let rain_mm = self.normals.rain_mm.as_ref()?;
        Some(koppen_class(&means(&self.normals), rain_mm, self.latitude_deg, CD_BOUNDARY_C))
    }
}
