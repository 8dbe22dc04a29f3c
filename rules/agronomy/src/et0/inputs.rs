//! What is known of a day, for the Penman-Monteith equation.

use crate::bounds::{Unusable, in_order, within};

/// `krs` in C^-0.5 for a place where land air rules. FAO-56 equation 50.
pub const KRS_INLAND: f64 = 0.16;
/// `krs` in C^-0.5 for a place on or near the coast. FAO-56 equation 50.
pub const KRS_COASTAL: f64 = 0.19;
/// The wind speed at 2 m in m/s taken when none is known. FAO-56 chapter 3, missing climatic data.
pub const ASSUMED_WIND_MS: f64 = 2.0;

/// What is known of the air's humidity, best way first by FAO-56: dew point, both extremes of relative
/// humidity, the greatest, the mean.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum HumidityGiven {
    /// Nothing: the air at dawn is taken as saturated (FAO-56 equation 48).
    None,
    /// Actual vapour pressure, 0..=12 kPa.
    Ea {
        /// kPa.
        kpa: f64,
    },
    /// Dew point, -90..=45 C.
    Dew {
        /// Degrees C.
        c: f64,
    },
    /// Mean relative humidity, 0..=100 %.
    RhMean {
        /// Percent.
        pct: f64,
    },
    /// Greatest and least relative humidity, 0..=100 %.
    RhMaxMin {
        /// Percent, near dawn.
        max_pct: f64,
        /// Percent, in the afternoon.
        min_pct: f64,
    },
    /// Greatest relative humidity, 0..=100 %.
    RhMax {
        /// Percent, near dawn.
        pct: f64,
    },
}

/// A wind speed and the height at which it was measured.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct WindGiven {
    /// Mean speed of the day, 0..=60 m/s.
    pub ms: f64,
    /// Height of the instrument, 0.5..=200 m.
    pub height_m: f64,
}

/// What is known of the day's radiation.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum RadiationGiven {
    /// Nothing: from the temperature range (FAO-56 equation 50), not above a clear sky.
    None,
    /// Bright sunshine, 0..=24 h.
    Sunshine {
        /// Hours.
        hours: f64,
    },
    /// Solar radiation, 0..=50 MJ m-2 d-1.
    Solar {
        /// MJ m-2 d-1.
        mj: f64,
    },
}

/// The inputs of one day, or of a month's mean day.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct EtInputs {
    /// Degrees, -90..=90, south negative.
    pub latitude_deg: f64,
    /// Metres, -500..=9000.
    pub elevation_m: f64,
    /// 1..=366.
    pub day_of_year: u16,
    /// Minimum of the day, -90..=60 C.
    pub tmin_c: f64,
    /// Maximum of the day, -90..=60 C, not below the minimum.
    pub tmax_c: f64,
    /// What is known of humidity.
    pub humidity: HumidityGiven,
    /// Wind, if known.
    pub wind: Option<WindGiven>,
    /// What is known of radiation.
    pub radiation: RadiationGiven,
    /// Adjustment of FAO-56 equation 50, 0.1..=0.25 C^-0.5; read only when radiation is not known.
    pub krs: f64,
    /// Heat going into the soil, -10..=10 MJ m-2 d-1; 0 for a day (FAO-56 equation 42).
    pub soil_heat_flux_mj: f64,
}

impl EtInputs {
    /// # Errors
    /// The first field outside its range, or a pair in the wrong order.
    pub(super) fn check(&self) -> Result<(), Unusable> {
        within("latitude", self.latitude_deg, "deg", -90.0, 90.0)?;
        within("elevation", self.elevation_m, "m", -500.0, 9000.0)?;
        within("day_of_year", f64::from(self.day_of_year), "d", 1.0, 366.0)?;
        within("tmin", self.tmin_c, "C", -90.0, 60.0)?;
        within("tmax", self.tmax_c, "C", -90.0, 60.0)?;
        in_order("tmin", self.tmin_c, "tmax", self.tmax_c, "C")?;
        match self.humidity {
            HumidityGiven::None => {}
            HumidityGiven::Ea { kpa } => {
                within("ea", kpa, "kPa", 0.0, 12.0)?;
            }
            HumidityGiven::Dew { c } => {
                within("tdew", c, "C", -90.0, 45.0)?;
            }
            HumidityGiven::RhMean { pct } => {
                within("rhmean", pct, "%", 0.0, 100.0)?;
            }
            HumidityGiven::RhMaxMin { max_pct, min_pct } => {
                within("rhmax", max_pct, "%", 0.0, 100.0)?;
                within("rhmin", min_pct, "%", 0.0, 100.0)?;
                in_order("rhmin", min_pct, "rhmax", max_pct, "%")?;
            }
            HumidityGiven::RhMax { pct } => {
                within("rhmax", pct, "%", 0.0, 100.0)?;
            }
        }
        if let Some(wind) = self.wind {
            within("wind", wind.ms, "m/s", 0.0, 60.0)?;
            within("wind_height", wind.height_m, "m", 0.5, 200.0)?;
        }
        match self.radiation {
            RadiationGiven::None => {
                within("kRs", self.krs, "C^-0.5", 0.1, 0.25)?;
            }
            RadiationGiven::Sunshine { hours } => {
                within("sunshine", hours, "h", 0.0, 24.0)?;
            }
            RadiationGiven::Solar { mj } => {
                within("solar", mj, "MJ m-2 d-1", 0.0, 50.0)?;
            }
        }
        within("soil_heat_flux", self.soil_heat_flux_mj, "MJ m-2 d-1", -10.0, 10.0)?;
        Ok(())
    }
}
