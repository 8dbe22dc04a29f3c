//! Reference evapotranspiration of a day of the curve or of the weather.

use super::Season;
use crate::calendar::ClimateDay;
use crate::curve::{Row, straight_lines};
use crate::et0::penman_monteith::{Et0Method, KRS_COASTAL, KRS_INLAND, hargreaves};
use crate::et0::{EtInputs, HumidityGiven, RadiationGiven, WindGiven, penman_monteith};
use crate::profile::{DailyWeather, Humidity, Radiation};

/// Height that counts when the profile has none, m.
const ASSUMED_ELEVATION_M: f64 = 0.0;
/// Height at which the wind of a profile is measured, m.
const WIND_HEIGHT_M: f64 = 2.0;
/// Temperatures that the formulas take, °C; a curve through odd normals may swing past them.
const HELD_C: (f64, f64) = (-90.0, 60.0);

/// How the reference evapotranspiration of a season comes about.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct EtBasis {
    /// The formula: Penman-Monteith when anything beyond temperature is known, else
    /// Hargreaves-Samani.
    pub method: Et0Method,
    /// No elevation was given: sea level was taken.
    pub elevation_assumed: bool,
    /// No humidity was given: the air at dawn was taken as saturated (FAO-56 eq 48).
    pub humidity_assumed: bool,
    /// No wind was given: 2 m/s was taken (FAO-56 chapter 3).
    pub wind_assumed: bool,
    /// No radiation was given: it was taken from the temperature range (FAO-56 eq 50).
    pub radiation_assumed: bool,
}

/// What the normals give for one day beyond temperature.
#[derive(Clone, Copy)]
struct Air {
    humidity: HumidityGiven,
    wind: Option<WindGiven>,
    radiation: RadiationGiven,
}

/// Rows of what the normals give beyond temperature, humidity in percent and wind, which the season
/// keeps for itself.
#[derive(Debug)]
pub(super) struct AirRows {
    dew_point_c: Option<Row>,
    sunshine_h: Option<Row>,
    solar_mj: Option<Row>,
}

impl Season {
    /// How the reference evapotranspiration comes about.
    #[must_use]
    pub fn et0_method(&self) -> EtBasis {
        let normals = &self.normals;
        let beyond_temperature = normals.humidity.is_some() || normals.wind_ms.is_some() || normals.radiation.is_some();
        EtBasis {
            method: if beyond_temperature { Et0Method::PenmanMonteith } else { Et0Method::HargreavesSamani },
            elevation_assumed: beyond_temperature && self.elevation_m.is_none(),
            humidity_assumed: beyond_temperature && normals.humidity.is_none(),
            wind_assumed: beyond_temperature && normals.wind_ms.is_none(),
            radiation_assumed: beyond_temperature && normals.radiation.is_none(),
        }
    }

    /// Reference evapotranspiration on each day of the curve, mm/day.
    pub(super) fn et0_row(&self) -> &Row {
        self.et0_mm.get_or_init(|| {
            Box::new(Row::from_fn(|day| {
                self.et0_of_day(day, self.tmin_c.at(day), self.tmax_c.at(day), self.air_on(day))
            }))
        })
    }

    /// Reference evapotranspiration of a day of weather, mm/day, where both temperatures were read:
    /// what was not read is taken from the normals, by the formula of the season.
    pub(super) fn et0_of(&self, weather: &DailyWeather) -> Option<f64> {
        let (tmin_c, tmax_c) = (weather.tmin_c?, weather.tmax_c?);
        let day = weather.day.climate_day();
        let mut air = self.air_on(day);
        if let Some(pct) = weather.rh_pct {
            air.humidity = HumidityGiven::RhMean { pct };
        }
        if let Some(ms) = weather.wind_ms {
            air.wind = Some(WindGiven { ms, height_m: WIND_HEIGHT_M });
        }
        Some(self.et0_of_day(day, tmin_c, tmax_c, air))
    }

    /// What the normals give for a day beyond temperature.
    fn air_on(&self, day: ClimateDay) -> Air {
        let rows = self.air.get_or_init(|| Box::new(self.air_rows()));
        let humidity = match (&rows.dew_point_c, self.rh_row()) {
            (Some(dew_point_c), _) => HumidityGiven::Dew { c: dew_point_c.at(day) },
            (None, Some(rh_pct)) => HumidityGiven::RhMean { pct: rh_pct.at(day) },
            (None, None) => HumidityGiven::None,
        };
        let wind = self.wind_row().map(|row| WindGiven { ms: row.at(day), height_m: WIND_HEIGHT_M });
        let radiation = match (&rows.solar_mj, &rows.sunshine_h) {
            (Some(solar_mj), _) => RadiationGiven::Solar { mj: solar_mj.at(day) },
            (None, Some(sunshine_h)) => {
                // a straight line may say more sunshine than the day has hours
                let hours = sunshine_h.at(day).min(self.daylength_h(day));
                RadiationGiven::Sunshine { hours }
            }
            (None, None) => RadiationGiven::None,
        };
        Air { humidity, wind, radiation }
    }

    fn air_rows(&self) -> AirRows {
        let normals = &self.normals;
        let dew_point_c = match &normals.humidity {
            Some(Humidity::DewPoint(dew_point_c)) => Some(straight_lines(dew_point_c)),
            _ => None,
        };
        let (sunshine_h, solar_mj) = match &normals.radiation {
            Some(Radiation::SunshineHours(hours)) => (Some(straight_lines(hours)), None),
            Some(Radiation::SolarMj(solar_mj)) => (None, Some(straight_lines(solar_mj))),
            None => (None, None),
        };
        AirRows { dew_point_c, sunshine_h, solar_mj }
    }

    fn et0_of_day(&self, day: ClimateDay, tmin_c: f64, tmax_c: f64, air: Air) -> f64 {
        let hold = |t_c: f64| t_c.clamp(HELD_C.0, HELD_C.1);
        let (tmin_c, tmax_c) = (hold(tmin_c), hold(tmax_c).max(hold(tmin_c)));
        let day_of_year = day.day_of_year();
        let reckoned = match self.et0_method().method {
            Et0Method::HargreavesSamani => hargreaves(self.latitude_deg, day_of_year, tmin_c, tmax_c),
            Et0Method::PenmanMonteith => penman_monteith(&EtInputs {
                latitude_deg: self.latitude_deg,
                elevation_m: self.elevation_m.unwrap_or(ASSUMED_ELEVATION_M),
                day_of_year,
                tmin_c,
                tmax_c,
                humidity: air.humidity,
                wind: air.wind,
                radiation: air.radiation,
                krs: if self.coastal { KRS_COASTAL } else { KRS_INLAND },
                soil_heat_flux_mj: 0.0,
            }),
        };
        // The profile was checked against narrower ranges than those of the formulas, so a refusal
        // cannot come; nothing evaporates if it does.
        reckoned.map_or(0.0, |et0| et0.mm_per_day)
    }
}
