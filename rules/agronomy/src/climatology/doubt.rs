//! Why an estimate is not good, and its grade.

use serde::Serialize;

/// How far an estimate may be trusted, best first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Grade {
    /// As good as such an estimate is.
    Good,
    /// Something makes it worse.
    Fair,
    /// Not to be trusted without better numbers.
    Poor,
}

impl Grade {
    /// `good`, `fair`, `poor`.
    #[must_use]
    pub fn as_str(self) -> &'static str {
        match self {
            Self::Good => "good",
            Self::Fair => "fair",
            Self::Poor => "poor",
        }
    }
}

/// Spread of the points' heights above which the elevation should be said, m.
const SPREAD_M: (f64, f64) = (150.0, 400.0);
/// Difference of the elevation to the grid's above which an estimate is poor, m.
const APART_M: f64 = 1200.0;
/// Rain of a year that is not believed, mm; the second where the ground is steep.
const UNBELIEVED_RAIN_MM: (f64, f64) = (5000.0, 1500.0);
/// Spread that makes ground steep, m.
const STEEP_M: f64 = 800.0;
/// Latitude beyond which the cold can't be told, degrees.
const POLAR_DEG: f64 = 66.0;
/// Range of the year beyond which it can't be told either, K.
const CONTINENTAL_K: f64 = 40.0;

/// One reason for doubt.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[serde(tag = "id", rename_all = "kebab-case")]
pub enum Doubt {
    /// The ground is uneven and the elevation was not said.
    ElevationNotSaid {
        /// Highest less lowest of the points around, m.
        spread_m: f64,
    },
    /// The elevation lies far from that of the points around.
    FarAboveOrBelow {
        /// Elevation less that of the points, m.
        apart_m: f64,
    },
    /// A dry coast by a cold current may have far cooler days.
    CoolCoast,
    /// The rain of the grid is not believed here, and left out.
    RainNotBelieved,
    /// So near the pole, or with such a range of the year, frost dates and the coldest night can't be told.
    ColdNotTold,
    /// No land within 25 km (own limit): the coordinates may be wrong.
    HardlyAnyLand,
}

impl Doubt {
    /// Its name: `elevation-not-said` and so on.
    #[must_use]
    pub fn id(&self) -> &'static str {
        match self {
            Self::ElevationNotSaid { .. } => "elevation-not-said",
            Self::FarAboveOrBelow { .. } => "far-above-or-below",
            Self::CoolCoast => "cool-coast",
            Self::RainNotBelieved => "rain-not-believed",
            Self::ColdNotTold => "cold-not-told",
            Self::HardlyAnyLand => "hardly-any-land",
        }
    }

    /// The best grade that it leaves. That doubtful rain leaves `fair` is an own choice.
    #[must_use]
    pub fn grade(&self) -> Grade {
        match self {
            Self::ElevationNotSaid { spread_m } if *spread_m <= SPREAD_M.1 => Grade::Fair,
            Self::RainNotBelieved => Grade::Fair,
            _ => Grade::Poor,
        }
    }
}

/// What the reasons for doubt hang on.
#[derive(Clone, Copy, Debug)]
pub(super) struct Facts {
    pub(super) latitude_deg: f64,
    pub(super) elevation_m: Option<f64>,
    pub(super) altitude_m: f64,
    pub(super) spread_m: f64,
    pub(super) land_25_km: f64,
    pub(super) land_50_km: f64,
    pub(super) range_of_year_k: f64,
    pub(super) wetness_of_year: f64,
    pub(super) rain_of_year_mm: f64,
}

impl Facts {
    /// All doubts, in the order of the list.
    pub(super) fn doubts(&self) -> Vec<Doubt> {
        let apart_m = self.elevation_m.map_or(0.0, |elevation_m| elevation_m - self.altitude_m);
        let dry_coast = self.land_50_km < 0.8 && self.wetness_of_year < 0.25 && self.latitude_deg.abs() < 38.0;
        let (anywhere_mm, steep_mm) = UNBELIEVED_RAIN_MM;
        let unbelieved =
            self.rain_of_year_mm > anywhere_mm || (self.rain_of_year_mm > steep_mm && self.spread_m > STEEP_M);
        [
            (self.elevation_m.is_none() && self.spread_m > SPREAD_M.0)
                .then_some(Doubt::ElevationNotSaid { spread_m: self.spread_m }),
            (apart_m.abs() > APART_M).then_some(Doubt::FarAboveOrBelow { apart_m }),
            dry_coast.then_some(Doubt::CoolCoast),
            unbelieved.then_some(Doubt::RainNotBelieved),
            (self.latitude_deg.abs() > POLAR_DEG || self.range_of_year_k > CONTINENTAL_K).then_some(Doubt::ColdNotTold),
            (self.land_25_km <= 0.0).then_some(Doubt::HardlyAnyLand),
        ]
        .into_iter()
        .flatten()
        .collect()
    }
}
