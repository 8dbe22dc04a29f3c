//! The curves, and the same values read from the weather of a day.

use super::Season;
use crate::calendar::ClimateDay;
use crate::curve::{Row, Series, straight_lines};
use crate::humidity::{ea_from_dew_point_kpa, mean_saturation_vapour_pressure_kpa};
use crate::marker::{EVEN_BAND_K, Span, crossing};
use crate::profile::{DailyWeather, Humidity};
use crate::sun;

impl Season {
    /// The value of a curve on a climate day; none where the profile lacks what it hangs on (rain,
    /// humidity, wind).
    ///
    /// Temperatures in °C by three harmonics, rain in mm/day spread evenly in its month, reference
    /// evapotranspiration in mm/day, humidity in % and wind at 2 m in m/s by straight lines between
    /// mid-months, daylength in h.
    #[must_use]
    pub fn curve(&self, series: Series, day: ClimateDay) -> Option<f64> {
        Some(match series {
            Series::Tmin => self.tmin_c.at(day),
            Series::Tmax => self.tmax_c.at(day),
            Series::Tmean => self.tmean_c.at(day),
            Series::Rain => self.rain_mm.as_ref()?.at(day),
            Series::Et0 => self.et0_row().at(day),
            Series::Rh => self.rh_row()?.at(day),
            Series::Wind => self.wind_row()?.at(day),
            Series::Daylength => self.daylength_h(day),
        })
    }

    /// From sunrise to sunset of the sun's centre, h, 0 to 24 (FAO-56 eq 34).
    #[must_use]
    pub fn daylength_h(&self, day: ClimateDay) -> f64 {
        sun::daylength_h(self.latitude_deg, day.day_of_year())
    }

    /// Relative humidity, %, held at 100: as given, or from the dew point (FAO-56 eq 10, 12, 14).
    pub(super) fn rh_row(&self) -> Option<&Row> {
        let reckon = || match self.normals.humidity.as_ref()? {
            Humidity::RhMean(rh_pct) => Some(Box::new(straight_lines(rh_pct))),
            Humidity::DewPoint(dew_point_c) => {
                let dew_point_c = straight_lines(dew_point_c);
                Some(Box::new(Row::from_fn(|day| {
                    let held_kpa = mean_saturation_vapour_pressure_kpa(self.tmin_c.at(day), self.tmax_c.at(day));
                    (ea_from_dew_point_kpa(dew_point_c.at(day)) / held_kpa * 100.0).min(100.0)
                })))
            }
        };
        self.rh_pct.get_or_init(reckon).as_deref()
    }

    /// Wind at 2 m, m/s.
    pub(super) fn wind_row(&self) -> Option<&Row> {
        let reckon = || self.normals.wind_ms.as_ref().map(|wind| Box::new(straight_lines(wind)));
        self.wind_ms.get_or_init(reckon).as_deref()
    }

    /// A value of the weather of a day, where it was read. Evapotranspiration wants both temperatures;
    /// daylength is not weather.
    pub(super) fn read(&self, series: Series, weather: &DailyWeather) -> Option<f64> {
        match series {
            Series::Tmin => weather.tmin_c,
            Series::Tmax => weather.tmax_c,
            Series::Tmean => weather.tmean_c(),
            Series::Rain => weather.rain_mm,
            Series::Et0 => self.et0_of(weather),
            Series::Rh => weather.rh_pct,
            Series::Wind => weather.wind_ms,
            Series::Daylength => None,
        }
    }

    /// The season in which a curve is at or above a threshold.
    pub(super) fn span(&self, series: Series, threshold: f64) -> Span {
        let band = series.is_temperature().then_some(EVEN_BAND_K);
        let row = match series {
            Series::Tmin => Some(&self.tmin_c),
            Series::Tmax => Some(&self.tmax_c),
            Series::Tmean => Some(&self.tmean_c),
            Series::Rain => self.rain_mm.as_ref(),
            Series::Et0 => Some(self.et0_row()),
            Series::Rh => self.rh_row(),
            Series::Wind => self.wind_row(),
            Series::Daylength => {
                return crossing(&Row::from_fn(|day| self.daylength_h(day)), threshold, band);
            }
        };
        row.map_or(Span::Unknown, |row| crossing(row, threshold, band))
    }
}
