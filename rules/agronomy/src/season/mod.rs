//! The season of a place: everything that follows from its profile, asked by day.

mod ahead;
mod ahead_frost;
mod chill;
mod classes;
mod daily;
mod evaporation;
mod heat;
mod markers;
mod past;
mod soil;
mod tally;
mod told_by;
mod weather_days;

use std::sync::OnceLock;

pub use ahead::ForecastState;
pub use chill::Chill;
pub use evaporation::EtBasis;

use crate::calendar::{ClimateDay, Day};
use crate::climate::ClimateFlags;
use crate::curve::{Harmonics, Row, largest_residual, straight_lines};
use crate::frost::{FrostDates, FrostKnowledge, SiteFrost, Turning, extreme_min_c, site_frost, spread_from_normals};
use crate::marker::{Marker, MarkerState};
use crate::origin::Origin;
use crate::profile::{Monthly, Normals, Profile};
use chill::ChillKept;
use evaporation::AirRows;
use weather_days::WeatherDays;

pub use crate::curve::{Aggregate, Series};

/// By how much the daily minimum of a frost hollow lies below that of its surroundings, K (own
/// choice).
pub const FROST_HOLLOW_K: f64 = 2.0;

/// What the site changes of the climate of its place.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub struct SiteShift {
    /// The site lies in a frost hollow: every daily minimum, of normals, records and forecast, counts
    /// 2 K less.
    pub frost_hollow: bool,
}

/// Half of the year by the first harmonic of the mean temperature.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Half {
    /// It is getting warmer.
    Warming,
    /// It is getting cooler.
    Cooling,
    /// The year has no halves: the harmonic moves less than 1.5 K from the mean.
    Even,
}

/// Amplitude of the first harmonic below which a year has no halves, K (own choice).
const EVEN_AMPLITUDE_K: f64 = 1.5;

/// The season of a place, owned and immutable; what is not always read is worked out when first asked
/// for. All answers are unrounded.
#[derive(Debug)]
pub struct Season {
    latitude_deg: f64,
    elevation_m: Option<f64>,
    coastal: bool,
    normals: Normals,
    observations: WeatherDays,
    forecast: Option<(Day, WeatherDays)>,
    /// Origin of what is read from the curves.
    curve_origin: Origin,

    tmin_c: Row,
    tmax_c: Row,
    tmean_c: Row,
    tmean: Harmonics,
    residual_k: f64,
    rain_mm: Option<Row>,
    spread_k: Row,

    frost: SiteFrost,
    frost_knowledge: FrostKnowledge,
    fixed: [MarkerState; Marker::FIXED_COUNT],
    given_extreme_min_c: Option<f64>,
    counted_heat_days: Option<f64>,
    /// Frost and the coldest night follow from the curves; else they are unknown unless given.
    cold_told: bool,

    air: OnceLock<Box<AirRows>>,
    et0_mm: OnceLock<Box<Row>>,
    rh_pct: OnceLock<Option<Box<Row>>>,
    wind_ms: OnceLock<Option<Box<Row>>>,
    heat_left_cd: OnceLock<Box<Row>>,
    soil: OnceLock<Harmonics>,
    extreme_min_c: OnceLock<f64>,
    heat_days: OnceLock<f64>,
    chill_kept: ChillKept,
    flags: OnceLock<ClimateFlags>,
}

impl Season {
    /// Works the season of a profile out. The profile must have passed [`Profile::check`]; of one that
    /// has not, values may not be finite.
    #[must_use]
    pub fn new(profile: &Profile, shift: SiteShift) -> Self {
        let lower_k = if shift.frost_hollow { FROST_HOLLOW_K } else { 0.0 };
        let mut normals = profile.normals.clone();
        normals.tmin_c = normals.tmin_c.map(|tmin_c| tmin_c - lower_k);
        let curve_origin = match profile.origin {
            Origin::Estimated => Origin::Estimated,
            _ => Origin::Computed,
        };

        let tmin = Harmonics::of_months(&normals.tmin_c);
        let tmax = Harmonics::of_months(&normals.tmax_c);
        let tmean = tmin.halfway(&tmax);
        let tmin_c = tmin.row();
        let bare_tmax_c = tmax.row();
        let residual_k =
            largest_residual(&tmin_c, &normals.tmin_c).max(largest_residual(&bare_tmax_c, &normals.tmax_c));
        // Where the two curves would cross (odd normals with hardly any daily range), they touch.
        let tmax_c = Row::from_fn(|day| bare_tmax_c.at(day).max(tmin_c.at(day)));
        let tmean_c = Row::from_fn(|day| (tmin_c.at(day) + tmax_c.at(day)) / 2.0);

        let level = &profile.normals;
        let spread_k = straight_lines(&profile.tmin_sd_k.unwrap_or_else(|| spread_from_normals(&means(level))));
        let frost = frost_of_site(profile, shift, &tmin, &tmin_c, &spread_k, curve_origin);

        let mut season = Self {
            latitude_deg: profile.latitude_deg,
            elevation_m: profile.elevation_m,
            coastal: profile.coastal.unwrap_or(false),
            rain_mm: normals.rain_mm.as_ref().map(Row::spread_evenly),
            normals,
            observations: WeatherDays::new(&profile.observations, lower_k),
            forecast: profile
                .forecast
                .as_ref()
                .map(|forecast| (forecast.issued, WeatherDays::new(&forecast.days, lower_k))),
            curve_origin,
            tmin_c,
            tmax_c,
            tmean_c,
            tmean,
            residual_k,
            spread_k,
            frost,
            frost_knowledge: frost_knowledge(profile),
            fixed: [MarkerState::Unknown; Marker::FIXED_COUNT],
            given_extreme_min_c: profile.extreme_min_c.map(|extreme_c| extreme_c - lower_k),
            counted_heat_days: profile.heat_days_a_year,
            cold_told: profile.estimate.is_none_or(|basis| basis.cold_told),
            air: OnceLock::new(),
            et0_mm: OnceLock::new(),
            rh_pct: OnceLock::new(),
            wind_ms: OnceLock::new(),
            heat_left_cd: OnceLock::new(),
            soil: OnceLock::new(),
            extreme_min_c: OnceLock::new(),
            heat_days: OnceLock::new(),
            chill_kept: ChillKept::default(),
            flags: OnceLock::new(),
        };
        season.fixed = season.fixed_markers();
        season
    }

    /// Latitude, degrees, south negative.
    #[must_use]
    pub fn latitude_deg(&self) -> f64 {
        self.latitude_deg
    }

    /// Origin of what is read from the curves: computed from normals, or estimated when the normals
    /// themselves were.
    #[must_use]
    pub fn curve_origin(&self) -> Origin {
        self.curve_origin
    }

    /// By how much the mean of a month of the temperature curves differs from its normal at most, K.
    /// Three harmonics carry most years within 0.7 K; monsoon years are the worst, up to 2.3 K.
    #[must_use]
    pub fn largest_residual_k(&self) -> f64 {
        self.residual_k
    }

    /// Share of years with any day at or below 0 °C, percent, 0 to 100; none where an estimate can't tell.
    #[must_use]
    pub fn frost_chance_pct(&self) -> Option<f64> {
        self.cold_told.then_some(self.frost.dates.chance * 100.0)
    }

    /// Mean annual extreme minimum, °C: as given, else from the curve; none where an estimate can't tell.
    #[must_use]
    pub fn extreme_min_c(&self) -> Option<(f64, Origin)> {
        match self.given_extreme_min_c {
            Some(extreme_c) => Some((extreme_c, Origin::Given)),
            None => {
                let reckon = || extreme_min_c(&self.tmin_c, &self.spread_k);
                self.cold_told.then(|| (*self.extreme_min_c.get_or_init(reckon), self.curve_origin))
            }
        }
    }

    /// Half of the year in which a day lies: the sign of the slope of the first harmonic of the mean
    /// temperature, `Even` when its amplitude is under 1.5 K.
    #[must_use]
    pub fn half(&self, day: ClimateDay) -> Half {
        if self.tmean.amplitude() < EVEN_AMPLITUDE_K {
            Half::Even
        } else if self.tmean.slope(day) > 0.0 {
            Half::Warming
        } else {
            Half::Cooling
        }
    }

    /// What the climate is like, in the words that rules use.
    #[must_use]
    pub fn climate(&self) -> ClimateFlags {
        *self.flags.get_or_init(|| ClimateFlags::of(self))
    }
}

/// Half the sum of minimum and maximum of each month.
fn means(normals: &Normals) -> Monthly {
    let mut means_c = normals.tmin_c;
    for (mean_c, tmax_c) in means_c.iter_mut().zip(&normals.tmax_c) {
        *mean_c = (*mean_c + tmax_c) / 2.0;
    }
    means_c
}

fn frost_knowledge(profile: &Profile) -> FrostKnowledge {
    let elevation_said = profile.estimate.map_or(profile.elevation_m.is_some(), |basis| basis.elevation_said);
    match (profile.origin, profile.tmin_sd_k) {
        (Origin::Estimated, _) if elevation_said => FrostKnowledge::CoordinatesAndElevation,
        (Origin::Estimated, _) => FrostKnowledge::Coordinates,
        (_, Some(_)) if !profile.tmin_sd_estimated => FrostKnowledge::NormalsAndSpread,
        _ => FrostKnowledge::Normals,
    }
}

fn frost_of_site(
    profile: &Profile,
    shift: SiteShift,
    tmin: &Harmonics,
    tmin_c: &Row,
    spread_k: &Row,
    curve_origin: Origin,
) -> SiteFrost {
    // the shift moves no turning point
    let turning = Turning::of(tmin);
    let site = FrostDates::from_normals(tmin_c, spread_k, turning);
    let known = profile.frost.is_some() || profile.counted_frost.is_some();
    let level = (shift.frost_hollow && known).then(|| {
        let level_c = Harmonics::of_months(&profile.normals.tmin_c).row();
        FrostDates::from_normals(&level_c, spread_k, turning)
    });
    site_frost(site, level.as_ref(), profile.counted_frost.as_ref(), profile.frost.as_ref(), curve_origin)
}
