//! The profile of a place, from its coordinates.

use super::around::LAPSE_K_PER_M;
use super::diurnal::{Ground, MEAN_MONTH_DAYS, Wetness, dew_point_c, range_k};
use super::doubt::{Doubt, Facts, Grade};
use super::grid::Grid;
use super::likely_error::LikelyErrors;
use super::refusal::Refusal;
use crate::frost::spread_from_gradient;
use crate::origin::Origin;
use crate::profile::{EstimateBasis, Humidity, Limits, Monthly, Profile};
use crate::sun;

/// Share of land within 25 km below which the sea counts as near.
const COASTAL_LAND: f64 = 0.8;
/// Southernmost latitude of the grid, degrees.
const SOUTHERNMOST_DEG: f64 = -60.0;

/// A place.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Coordinates {
    /// Degrees, north positive, -90 to 90.
    pub latitude_deg: f64,
    /// Degrees, east positive, -180 to 180.
    pub longitude_deg: f64,
    /// Height above the sea, m, -500 to 9000, where it is known.
    pub elevation_m: Option<f64>,
}

/// A profile that was estimated, with what it stands on.
#[derive(Clone, Debug, PartialEq)]
pub struct Estimate {
    /// The profile, of origin [`Origin::Estimated`]: it passes [`Profile::check`].
    pub profile: Profile,
    /// How far it may be trusted.
    pub grade: Grade,
    /// Why it is not better.
    pub doubts: Vec<Doubt>,
    /// By how much it is likely to be off.
    pub errors: LikelyErrors,
    /// By how much it would be, were the elevation said; none where it was.
    pub errors_with_elevation: Option<LikelyErrors>,
    /// Height of the grid's points there, m.
    pub altitude_m: f64,
    /// Share of land within 50 km, 0 to 1.
    pub land_50_km: f64,
    /// Mean temperature of each month, °C.
    pub tmean_c: Monthly,
    /// Rain of each month as the grid has it, mm.
    pub rain_mm: Monthly,
    /// Radiation above the air in the middle of each month, MJ/m² a day.
    pub ra_mj: Monthly,
    /// How wet it is.
    pub wetness: Wetness,
    /// Fall of temperature towards the pole, K per 100 km; negative where it is warmer there.
    pub poleward_gradient: Monthly,
}

impl Grid {
    /// The profile of a place: monthly minimum, maximum, rain, dew point, and the spread of the daily minimum, from
    /// which frost dates and the coldest night follow. Wind and radiation are not in it: a season takes them by
    /// FAO-56's own rules (2 m/s; equation 50) and says that it did.
    ///
    /// # Errors
    /// A number out of range, the sea, or the far south.
    pub fn estimate(&self, place: Coordinates) -> Result<Estimate, Refusal> {
        check(place)?;
        let Coordinates { latitude_deg, longitude_deg, elevation_m } = place;
        let here = self.here(latitude_deg, longitude_deg).ok_or(if latitude_deg < SOUTHERNMOST_DEG {
            Refusal::TooFarSouth { latitude_deg }
        } else {
            Refusal::NotOnLand { latitude_deg, longitude_deg }
        })?;
        let land_25_km = self.land_within(latitude_deg, longitude_deg, 25.0);
        let land_50_km = self.land_within(latitude_deg, longitude_deg, 50.0);

        let higher_m = elevation_m.map_or(0.0, |elevation_m| elevation_m - here.altitude_m);
        let tmean_c = here.tmean_c.map(|t_c| t_c - LAPSE_K_PER_M * higher_m);
        let mut rain_mm = here.rain_mm_30_days;
        for (mm, days) in rain_mm.iter_mut().zip(MEAN_MONTH_DAYS) {
            *mm *= days / 30.0;
        }
        let ra_mj = radiation_above_mj(latitude_deg);
        let wetness = Wetness::of(&tmean_c, &rain_mm, &ra_mj);
        let (coldest_c, warmest_c) =
            tmean_c.iter().fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), t| (low.min(*t), high.max(*t)));
        let range_of_year_k = warmest_c - coldest_c;
        let ground = Ground { latitude_deg, altitude_m: here.altitude_m, land: land_50_km, range_of_year_k };
        let (mut tmin_c, mut tmax_c) = (tmean_c, tmean_c);
        for (((tmin, tmax), t_c), wet) in tmin_c.iter_mut().zip(&mut tmax_c).zip(tmean_c).zip(wetness.month) {
            let half_k = range_k(&ground, wet, t_c) / 2.0;
            *tmin = t_c - half_k;
            *tmax = t_c + half_k;
        }
        let mut dew_point = tmin_c;
        for (dew, wet) in dew_point.iter_mut().zip(wetness.season) {
            *dew = dew_point_c(*dew, wet);
        }
        let poleward_gradient = self.poleward_gradient(latitude_deg, longitude_deg);

        let doubts = Facts {
            latitude_deg,
            elevation_m,
            altitude_m: here.altitude_m,
            spread_m: here.spread_m,
            land_25_km,
            land_50_km,
            range_of_year_k,
            wetness_of_year: wetness.year,
            rain_of_year_mm: rain_mm.iter().fold(0.0, |sum, mm| sum + mm),
        }
        .doubts();
        let cold_told = !doubts.contains(&Doubt::ColdNotTold);
        let rain_told = !doubts.contains(&Doubt::RainNotBelieved);

        let mut profile = Profile::of_temperatures(latitude_deg, tmin_c, tmax_c);
        profile.longitude_deg = Some(longitude_deg);
        profile.elevation_m = Some(elevation_m.unwrap_or(here.altitude_m));
        profile.coastal = Some(land_25_km < COASTAL_LAND);
        profile.normals.rain_mm = rain_told.then_some(rain_mm);
        profile.normals.humidity = Some(Humidity::DewPoint(dew_point));
        profile.tmin_sd_k = Some(spread_from_gradient(&tmean_c, &poleward_gradient));
        profile.tmin_sd_estimated = true;
        profile.origin = Origin::Estimated;
        profile.estimate = Some(EstimateBasis { elevation_said: elevation_m.is_some(), cold_told });
        Ok(Estimate {
            profile,
            grade: doubts.iter().map(Doubt::grade).max().unwrap_or(Grade::Good),
            errors: LikelyErrors::of(here.spread_m, elevation_m.is_some(), rain_told, cold_told),
            errors_with_elevation: elevation_m
                .is_none()
                .then(|| LikelyErrors::of(here.spread_m, true, rain_told, cold_told)),
            doubts,
            altitude_m: here.altitude_m,
            land_50_km,
            tmean_c,
            rain_mm,
            ra_mj,
            wetness,
            poleward_gradient,
        })
    }
}

fn check(place: Coordinates) -> Result<(), Refusal> {
    let fields = [
        (Limits::LATITUDE, Some(place.latitude_deg)),
        (Limits::LONGITUDE, Some(place.longitude_deg)),
        (Limits::ELEVATION, place.elevation_m),
    ];
    for (limits, value) in fields {
        if let Some(words) = value.and_then(|value| limits.fault(limits.name, value)) {
            return Err(Refusal::OutOfRange { field: limits.name, words });
        }
    }
    Ok(())
}

/// Radiation above the air in the middle of each month, MJ/m² a day: FAO-56 equation 21, between two days by a straight
/// line.
fn radiation_above_mj(latitude_deg: f64) -> Monthly {
    let mut start = 0.0;
    MEAN_MONTH_DAYS.map(|days| {
        let middle: f64 = start + days / 2.0;
        start += days;
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "15 to 350")]
        let before = middle.floor() as u16;
        let (left, right) =
            (sun::extraterrestrial_mj(latitude_deg, before), sun::extraterrestrial_mj(latitude_deg, before + 1));
        left + (right - left) * (middle - f64::from(before))
    })
}
