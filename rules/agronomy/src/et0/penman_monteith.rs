//! The FAO-56 Penman-Monteith equation, with the paper's own rules for what is not known.

pub use super::inputs::{ASSUMED_WIND_MS, KRS_COASTAL, KRS_INLAND};
use super::inputs::{EtInputs, HumidityGiven, RadiationGiven};
use crate::bounds::{Unusable, in_order, within};
use crate::humidity::{ea_from_dew_point_kpa, saturation_vapour_pressure_kpa, slope_vapour_pressure};
use crate::pressure::{atmospheric_pressure_kpa, psychrometric_constant};
use crate::radiation::{
    from_sunshine_mj, from_temperature_mj, net_longwave_mj, net_mj, net_shortwave_mj, relative_to_clear_sky,
};
use crate::sun;
use crate::wind::wind_at_2m_ms;

/// Which formula gave the value.
#[derive(Debug, Clone, Copy, PartialEq, Eq, serde::Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Et0Method {
    /// FAO-56 equation 6.
    PenmanMonteith,
    /// FAO-56 equation 52.
    HargreavesSamani,
}

/// Reference evapotranspiration with how it came about.
#[derive(Debug, Clone, Copy, PartialEq, serde::Serialize)]
pub struct Et0 {
    /// mm/d, not below 0.
    pub mm_per_day: f64,
    /// The formula used.
    pub method: Et0Method,
    /// No humidity was given: the air at dawn was taken as saturated.
    pub humidity_assumed: bool,
    /// No wind was given: [`ASSUMED_WIND_MS`] was taken.
    pub wind_assumed: bool,
    /// No radiation was given: it was taken from the temperature range.
    pub radiation_assumed: bool,
}

/// Reference evapotranspiration of a day by FAO-56 equation 6, with equations 7, 8, 11 to 14, 17 to
/// 19, 21, 35, 37 to 40, 47, 48 and 50 for its parts.
///
/// Missing humidity, wind and radiation follow the paper's chapter 3 (missing climatic data). The
/// clear-sky share is held at 0.3 or more (see [`relative_to_clear_sky`]). Air above saturation counts
/// as saturated and dew as no evaporation, so the value is never negative. FAO-56's advice to take no
/// wind below 0.5 m/s is not followed: a measured calm stays a calm.
///
/// # Errors
/// [`Unusable`], for the first field outside its range or a minimum above its maximum.
pub fn penman_monteith(given: &EtInputs) -> Result<Et0, Unusable> {
    given.check()?;
    let EtInputs { tmin_c, tmax_c, .. } = *given;
    let es_tmin_kpa = saturation_vapour_pressure_kpa(tmin_c);
    let es_tmax_kpa = saturation_vapour_pressure_kpa(tmax_c);
    let es_kpa = (es_tmax_kpa + es_tmin_kpa) / 2.0;
    let ea_kpa = match given.humidity {
        HumidityGiven::None => es_tmin_kpa,
        HumidityGiven::Ea { kpa } => kpa,
        HumidityGiven::Dew { c } => ea_from_dew_point_kpa(c),
        HumidityGiven::RhMean { pct } => es_kpa * pct / 100.0,
        HumidityGiven::RhMaxMin { max_pct, min_pct } => {
            (es_tmin_kpa * max_pct / 100.0 + es_tmax_kpa * min_pct / 100.0) / 2.0
        }
        HumidityGiven::RhMax { pct } => es_tmin_kpa * pct / 100.0,
    };

    let sun = sun::day(given.latitude_deg, given.day_of_year);
    let rso_mj = sun::clear_sky_mj(given.elevation_m, sun.extraterrestrial_mj);
    let rs_mj = match given.radiation {
        RadiationGiven::None => from_temperature_mj(sun.extraterrestrial_mj, tmin_c, tmax_c, given.krs).min(rso_mj),
        RadiationGiven::Sunshine { hours } => from_sunshine_mj(sun, hours),
        RadiationGiven::Solar { mj } => mj,
    };
    let longwave_mj = net_longwave_mj(tmin_c, tmax_c, ea_kpa, relative_to_clear_sky(rs_mj, rso_mj));
    let rn_mj = net_mj(net_shortwave_mj(rs_mj), longwave_mj);

    let wind_ms = given.wind.map_or(ASSUMED_WIND_MS, |wind| wind_at_2m_ms(wind.ms, wind.height_m));
    let tmean_c = (tmin_c + tmax_c) / 2.0;
    let slope = slope_vapour_pressure(tmean_c);
    let gamma = psychrometric_constant(atmospheric_pressure_kpa(given.elevation_m));
    let deficit_kpa = (es_kpa - ea_kpa).max(0.0);
    let mm_per_day = (0.408 * slope * (rn_mj - given.soil_heat_flux_mj)
        + gamma * 900.0 / (tmean_c + 273.0) * wind_ms * deficit_kpa)
        / (slope + gamma * (1.0 + 0.34 * wind_ms));

    Ok(Et0 {
        mm_per_day: mm_per_day.max(0.0),
        method: Et0Method::PenmanMonteith,
        humidity_assumed: given.humidity == HumidityGiven::None,
        wind_assumed: given.wind.is_none(),
        radiation_assumed: given.radiation == RadiationGiven::None,
    })
}

/// Reference evapotranspiration of a day when only temperatures are known: FAO-56 equation 52, with
/// the same result type as [`penman_monteith()`].
///
/// # Errors
/// [`Unusable`], for the first of the fields outside its range or a minimum above its maximum.
pub fn hargreaves(latitude_deg: f64, day_of_year: u16, tmin_c: f64, tmax_c: f64) -> Result<Et0, Unusable> {
    within("latitude", latitude_deg, "deg", -90.0, 90.0)?;
    within("day_of_year", f64::from(day_of_year), "d", 1.0, 366.0)?;
    within("tmin", tmin_c, "C", -90.0, 60.0)?;
    within("tmax", tmax_c, "C", -90.0, 60.0)?;
    in_order("tmin", tmin_c, "tmax", tmax_c, "C")?;
    let ra_mj = sun::extraterrestrial_mj(latitude_deg, day_of_year);
    Ok(Et0 {
        mm_per_day: super::hargreaves::hargreaves_mm(tmin_c, tmax_c, ra_mj),
        method: Et0Method::HargreavesSamani,
        humidity_assumed: true,
        wind_assumed: true,
        radiation_assumed: true,
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::et0::WindGiven;

    /// FAO-56 Example 18: Brussels, 6 July.
    fn brussels() -> EtInputs {
        EtInputs {
            latitude_deg: 50.8,
            elevation_m: 100.0,
            day_of_year: 187,
            tmin_c: 12.3,
            tmax_c: 21.5,
            humidity: HumidityGiven::RhMaxMin { max_pct: 84.0, min_pct: 63.0 },
            wind: Some(WindGiven { ms: 10.0 / 3.6, height_m: 10.0 }),
            radiation: RadiationGiven::Sunshine { hours: 9.25 },
            krs: KRS_INLAND,
            soil_heat_flux_mj: 0.0,
        }
    }

    #[test]
    fn example_18_of_the_paper_is_met_and_nothing_is_assumed() {
        // FAO-56 Example 18: 3.88 mm/d.
        let et0 = penman_monteith(&brussels()).unwrap();
        assert!((et0.mm_per_day - 3.88).abs() < 0.05, "{et0:?}");
        assert!(!et0.humidity_assumed && !et0.wind_assumed && !et0.radiation_assumed);
    }

    #[test]
    fn what_is_missing_is_assumed_and_said() {
        let given =
            EtInputs { humidity: HumidityGiven::None, wind: None, radiation: RadiationGiven::None, ..brussels() };
        let et0 = penman_monteith(&given).unwrap();
        assert!(et0.humidity_assumed && et0.wind_assumed && et0.radiation_assumed);
        let by_hand = EtInputs {
            humidity: HumidityGiven::Dew { c: 12.3 },
            wind: Some(WindGiven { ms: 2.0, height_m: 2.0 }),
            ..given
        };
        let said = penman_monteith(&by_hand).unwrap();
        assert!((said.mm_per_day - et0.mm_per_day).abs() < 1e-12);
    }

    #[test]
    fn every_latitude_and_day_gives_a_finite_loss_that_is_not_negative() {
        let humidities = [
            HumidityGiven::None,
            HumidityGiven::RhMean { pct: 0.0 },
            HumidityGiven::RhMax { pct: 100.0 },
            HumidityGiven::Ea { kpa: 12.0 },
        ];
        for latitude in (-90..=90).step_by(3) {
            for day_of_year in (1..=366).step_by(5) {
                for (tmin_c, tmax_c) in [(-90.0, -60.0), (-20.0, -20.0), (4.0, 15.0), (30.0, 60.0)] {
                    for humidity in humidities {
                        for radiation in [RadiationGiven::None, RadiationGiven::Solar { mj: 0.0 }] {
                            let given = EtInputs {
                                latitude_deg: f64::from(latitude),
                                day_of_year,
                                tmin_c,
                                tmax_c,
                                humidity,
                                radiation,
                                ..brussels()
                            };
                            let mm = penman_monteith(&given).unwrap().mm_per_day;
                            assert!((0.0..60.0).contains(&mm), "{given:?}: {mm}");
                        }
                    }
                }
            }
        }
    }

    #[test]
    fn drier_windier_and_sunnier_air_takes_more() {
        let mm = |given: EtInputs| penman_monteith(&given).unwrap().mm_per_day;
        let plain = mm(brussels());
        let drier = HumidityGiven::RhMaxMin { max_pct: 60.0, min_pct: 30.0 };
        assert!(mm(EtInputs { humidity: drier, ..brussels() }) > plain);
        let windier = Some(WindGiven { ms: 6.0, height_m: 10.0 });
        assert!(mm(EtInputs { wind: windier, ..brussels() }) > plain);
        let sunnier = RadiationGiven::Sunshine { hours: 15.0 };
        assert!(mm(EtInputs { radiation: sunnier, ..brussels() }) > plain);
    }

    #[test]
    fn every_field_out_of_range_is_named() {
        let refused = |given: EtInputs| penman_monteith(&given).unwrap_err().to_string();
        for (given, words) in [
            (EtInputs { latitude_deg: 91.0, ..brussels() }, "latitude is 91 deg"),
            (EtInputs { elevation_m: f64::NAN, ..brussels() }, "elevation is NaN m"),
            (EtInputs { day_of_year: 0, ..brussels() }, "day_of_year is 0 d"),
            (EtInputs { tmin_c: 30.0, ..brussels() }, "tmin is 30 C, above tmax which is 21.5 C"),
            (EtInputs { tmax_c: 61.0, ..brussels() }, "tmax is 61 C"),
            (EtInputs { humidity: HumidityGiven::RhMean { pct: 101.0 }, ..brussels() }, "rhmean is 101 %"),
            (EtInputs { humidity: HumidityGiven::Ea { kpa: -0.1 }, ..brussels() }, "ea is -0.1 kPa"),
            (EtInputs { humidity: HumidityGiven::Dew { c: 46.0 }, ..brussels() }, "tdew is 46 C"),
            (
                EtInputs { humidity: HumidityGiven::RhMaxMin { max_pct: 50.0, min_pct: 60.0 }, ..brussels() },
                "rhmin is 60 %, above rhmax which is 50 %",
            ),
            (EtInputs { wind: Some(WindGiven { ms: -1.0, height_m: 2.0 }), ..brussels() }, "wind is -1 m/s"),
            (EtInputs { wind: Some(WindGiven { ms: 1.0, height_m: 0.1 }), ..brussels() }, "wind_height is 0.1 m"),
            (EtInputs { radiation: RadiationGiven::Solar { mj: 51.0 }, ..brussels() }, "solar is 51 MJ m-2 d-1"),
            (EtInputs { radiation: RadiationGiven::Sunshine { hours: 25.0 }, ..brussels() }, "sunshine is 25 h"),
            (EtInputs { radiation: RadiationGiven::None, krs: 0.5, ..brussels() }, "kRs is 0.5 C^-0.5"),
            (EtInputs { soil_heat_flux_mj: 11.0, ..brussels() }, "soil_heat_flux is 11 MJ m-2 d-1"),
        ] {
            let said = refused(given);
            assert!(said.starts_with(words), "{said}");
        }
    }

    #[test]
    fn temperatures_alone_are_enough_for_hargreaves() {
        // FAO-56 Example 20, last line: 5.0 mm/d.
        let et0 = hargreaves(45.72, 196, 14.8, 26.6).unwrap();
        assert!((et0.mm_per_day - 5.0).abs() < 0.05);
        assert_eq!(et0.method, Et0Method::HargreavesSamani);
        assert!(hargreaves(45.72, 196, 26.6, 14.8).is_err());
    }
}
