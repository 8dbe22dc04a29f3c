//! Reference evapotranspiration, by name.

use chrono::Datelike;

use super::inputs::{
    DATE, DAY_OF_YEAR, EA, ELEVATION, Input, KRS, Kind, LATITUDE, MONTH, RA, RHMAX, RHMEAN, RHMIN, SOLAR, SUNSHINE,
    TDEW, TMAX, TMIN, U2, WIND, WIND_HEIGHT,
};
use super::series::Series;
use super::solar::month;
use super::{Given, Quantity, Reckoned};
use crate::bounds::{Unusable, in_order};
use crate::et0::hargreaves::{hargreaves_mm, hargreaves_with_mean_mm};
use crate::et0::penman_monteith::{ASSUMED_WIND_MS, KRS_INLAND};
use crate::et0::{Et0, EtInputs, HumidityGiven, RadiationGiven, WindGiven, penman_monteith};
use crate::sun;

const UNIT: &str = "mm/d";
const PM: &str = "FAO-56 Penman-Monteith";
const PM_SOURCE: &str =
    "FAO-56 equation 6, missing data by its chapter 3; Rs/Rso held at 0.3 or more by ASCE-EWRI 2005";
const SOIL_HEAT_FLUX: Input =
    Input::number("soil_heat_flux", "MJ m-2 d-1", -10.0, 10.0, "heat going into the soil, 0 for a day").optional();
const SERIES: Input = Input::new(
    "series",
    Kind::Series,
    "daily record the day was taken from; what it holds of the day must agree with the inputs",
)
.optional();

const REAL_DAY: &[Input] = &[
    SERIES,
    DATE,
    LATITUDE,
    ELEVATION,
    TMIN,
    TMAX,
    EA.optional(),
    TDEW.optional(),
    RHMAX.optional(),
    RHMIN.optional(),
    RHMEAN.optional(),
    WIND.optional(),
    WIND_HEIGHT.optional(),
    U2.optional(),
    SOLAR.optional(),
    SUNSHINE.optional(),
    KRS.optional(),
    SOIL_HEAT_FLUX,
];

pub(super) const ALL: &[Quantity] = &[
    Quantity {
        name: "et0_pm_daily",
        title: "reference evapotranspiration of a day",
        inputs: &[
            LATITUDE,
            ELEVATION,
            DAY_OF_YEAR,
            TMIN,
            TMAX,
            EA.optional(),
            TDEW.optional(),
            RHMAX.optional(),
            RHMIN.optional(),
            RHMEAN.optional(),
            WIND.optional(),
            WIND_HEIGHT.optional(),
            U2.optional(),
            SOLAR.optional(),
            SUNSHINE.optional(),
            KRS.optional(),
            SOIL_HEAT_FLUX,
        ],
        unit: UNIT,
        about: "water that short, well-watered grass gives off; what is not given is assumed and said",
        method: PM,
        source: PM_SOURCE,
        reckon: |given| daily(given, given.day_of_year()?),
    },
    Quantity {
        name: "et0_pm_monthly",
        title: "reference evapotranspiration of a month's mean day",
        inputs: &[
            LATITUDE,
            ELEVATION,
            DAY_OF_YEAR,
            TMIN,
            TMAX,
            EA.optional(),
            TDEW.optional(),
            RHMAX.optional(),
            RHMIN.optional(),
            RHMEAN.optional(),
            WIND.optional(),
            WIND_HEIGHT.optional(),
            U2.optional(),
            SOLAR.optional(),
            SUNSHINE.optional(),
            KRS.optional(),
            SOIL_HEAT_FLUX,
        ],
        unit: UNIT,
        about: "from a month's means on its middle day, with the month's soil heat flux",
        method: PM,
        source: PM_SOURCE,
        reckon: |given| daily(given, given.day_of_year()?),
    },
    Quantity {
        name: "et0_pm_month_normals",
        title: "reference evapotranspiration from monthly normals",
        inputs: &[
            LATITUDE,
            ELEVATION,
            MONTH,
            TMIN,
            TMAX,
            EA.optional(),
            TDEW.optional(),
            RHMAX.optional(),
            RHMIN.optional(),
            RHMEAN.optional(),
            WIND.optional(),
            WIND_HEIGHT.optional(),
            U2.optional(),
            SOLAR.optional(),
            SUNSHINE.optional(),
            KRS.optional(),
            SOIL_HEAT_FLUX,
        ],
        unit: UNIT,
        about: "from a month's normals on its middle day; soil heat flux 0 unless given",
        method: PM,
        source: PM_SOURCE,
        reckon: |given| daily(given, sun::middle_of_month(month(given.whole("month")?)?)),
    },
    Quantity {
        name: "et0_pm_missing_data",
        title: "reference evapotranspiration from temperature by the missing-data rules",
        inputs: &[
            LATITUDE,
            ELEVATION,
            DAY_OF_YEAR,
            TMIN,
            TMAX,
            KRS,
            Input::number("u2_assumed", "m/s", 0.0, 60.0, "wind speed at 2 m taken for granted").optional(),
            Input::choice("ea_rule", &["e0(tmin)"], "the air at dawn is saturated").optional(),
        ],
        unit: UNIT,
        about: "vapour pressure from the minimum, wind 2 m/s, radiation from the temperature range",
        method: PM,
        source: "FAO-56 equations 6, 48 and 50",
        reckon: |given| {
            let ms = given.maybe("u2_assumed").unwrap_or(ASSUMED_WIND_MS);
            let et0 = penman_monteith(&EtInputs {
                wind: Some(WindGiven { ms, height_m: 2.0 }),
                ..inputs(given, given.day_of_year()?)?
            })?;
            Ok(with_notes(et0))
        },
    },
    Quantity {
        name: "et0_pm_daily_real_day",
        title: "reference evapotranspiration of a day of a record",
        inputs: REAL_DAY,
        unit: UNIT,
        about: "as et0_pm_daily, for a date",
        method: PM,
        source: PM_SOURCE,
        reckon: real_day,
    },
    Quantity {
        name: "et0_pm_dark_day",
        title: "reference evapotranspiration of a dark day of a record",
        inputs: REAL_DAY,
        unit: UNIT,
        about: "as et0_pm_daily_real_day, where the sky is darker than 0.3 of a clear one",
        method: PM,
        source: PM_SOURCE,
        reckon: real_day,
    },
    Quantity {
        name: "et0_hs",
        title: "reference evapotranspiration from temperature",
        inputs: &[LATITUDE, DAY_OF_YEAR, TMIN, TMAX],
        unit: UNIT,
        about: "for places where nothing but temperature is known",
        method: "Hargreaves-Samani with a latent heat of 2.45 MJ/kg",
        source: "FAO-56 equation 52",
        reckon: |given| {
            let (tmin_c, tmax_c) = extremes(given)?;
            let ra_mj = sun::extraterrestrial_mj(given.number("latitude")?, given.day_of_year()?);
            Ok(hargreaves_mm(tmin_c, tmax_c, ra_mj).into())
        },
    },
    Quantity {
        name: "et0_hs_given_ra",
        title: "reference evapotranspiration from temperature and radiation above the air",
        inputs: &[
            RA,
            TMIN,
            TMAX,
            Input::number("tmean", "C", -90.0, 60.0, "mean temperature, else half the sum").optional(),
        ],
        unit: UNIT,
        about: "as et0_hs, with the extraterrestrial radiation at hand",
        method: "Hargreaves-Samani with a latent heat of 2.45 MJ/kg",
        source: "FAO-56 equation 52",
        reckon: |given| {
            let (tmin_c, tmax_c) = extremes(given)?;
            let tmean_c = given.maybe("tmean").unwrap_or((tmin_c + tmax_c) / 2.0);
            in_order("tmin", tmin_c, "tmean", tmean_c, "C")?;
            in_order("tmean", tmean_c, "tmax", tmax_c, "C")?;
            Ok(hargreaves_with_mean_mm(tmean_c, tmin_c, tmax_c, given.number("ra")?).into())
        },
    },
];

fn extremes(given: &Given<'_>) -> Result<(f64, f64), Unusable> {
    let (tmin_c, tmax_c) = (given.number("tmin")?, given.number("tmax")?);
    in_order("tmin", tmin_c, "tmax", tmax_c, "C")?;
    Ok((tmin_c, tmax_c))
}

fn only_one_of(given: &Given<'_>, names: &[&'static str]) -> Result<(), Unusable> {
    let mut there = names.iter().copied().filter(|name| given.has(name));
    match (there.next(), there.next()) {
        (Some(field), Some(other)) => Err(Unusable::said_twice(field, other)),
        _ => Ok(()),
    }
}

fn inputs(given: &Given<'_>, day_of_year: u16) -> Result<EtInputs, Unusable> {
    only_one_of(given, &["ea", "tdew", "rhmean", "rhmax"])?;
    only_one_of(given, &["ea", "tdew", "rhmean", "rhmin"])?;
    only_one_of(given, &["u2", "wind"])?;
    only_one_of(given, &["solar", "sunshine"])?;
    let humidity = if let Some(kpa) = given.maybe("ea") {
        HumidityGiven::Ea { kpa }
    } else if let Some(c) = given.maybe("tdew") {
        HumidityGiven::Dew { c }
    } else if let Some(pct) = given.maybe("rhmean") {
        HumidityGiven::RhMean { pct }
    } else {
        match (given.maybe("rhmax"), given.maybe("rhmin")) {
            (Some(max_pct), Some(min_pct)) => HumidityGiven::RhMaxMin { max_pct, min_pct },
            (Some(pct), None) => HumidityGiven::RhMax { pct },
            (None, None) => HumidityGiven::None,
            (None, Some(_)) => {
                return Err(Unusable::missing("rhmax", "rhmin is used only beside rhmax"));
            }
        }
    };
    let wind = match (given.maybe("u2"), given.maybe("wind"), given.maybe("wind_height")) {
        (Some(ms), ..) => Some(WindGiven { ms, height_m: 2.0 }),
        (None, Some(ms), Some(height_m)) => Some(WindGiven { ms, height_m }),
        (None, Some(_), None) => {
            return Err(Unusable::missing("wind_height", "the height at which wind was measured"));
        }
        (None, None, Some(_)) => {
            return Err(Unusable::missing("wind", "wind_height says how high it was"));
        }
        (None, None, None) => None,
    };
    let radiation = match (given.maybe("solar"), given.maybe("sunshine")) {
        (Some(mj), _) => RadiationGiven::Solar { mj },
        (None, Some(hours)) => RadiationGiven::Sunshine { hours },
        (None, None) => RadiationGiven::None,
    };
    Ok(EtInputs {
        latitude_deg: given.number("latitude")?,
        elevation_m: given.number("elevation")?,
        day_of_year,
        tmin_c: given.number("tmin")?,
        tmax_c: given.number("tmax")?,
        humidity,
        wind,
        radiation,
        krs: given.maybe("kRs").unwrap_or(KRS_INLAND),
        soil_heat_flux_mj: given.maybe("soil_heat_flux").unwrap_or(0.0),
    })
}

fn daily(given: &Given<'_>, day_of_year: u16) -> Result<Reckoned, Unusable> {
    Ok(with_notes(penman_monteith(&inputs(given, day_of_year)?)?))
}

fn with_notes(et0: Et0) -> Reckoned {
    let mut reckoned = Reckoned::from(et0.mm_per_day);
    if et0.humidity_assumed {
        reckoned = reckoned.note("no humidity given: air at dawn taken as saturated");
    }
    if et0.wind_assumed {
        reckoned = reckoned.note("no wind given: 2 m/s taken");
    }
    if et0.radiation_assumed {
        reckoned = reckoned.note("no radiation given: taken from the temperature range");
    }
    reckoned
}

/// Columns that a record may have, with the input each must agree with.
const COLUMNS: &[(&str, &str)] = &[
    ("tmin_c", "tmin"),
    ("tmax_c", "tmax"),
    ("rh_mean_pct", "rhmean"),
    ("tdew_c", "tdew"),
    ("solar_mj_m2", "solar"),
    ("sunshine_h", "sunshine"),
];

fn real_day(given: &Given<'_>) -> Result<Reckoned, Unusable> {
    let date = given.date("date")?;
    if let Some(text) = given.maybe_text("series") {
        let series = Series::new(text)?;
        for &(column, input) in COLUMNS {
            let (Ok(at), Some(value)) = (series.column(column), given.maybe(input)) else {
                continue;
            };
            let mut there = false;
            for day in series.days([at]) {
                let (day, [recorded]) = day?;
                if day != date {
                    continue;
                }
                there = true;
                if recorded.is_some_and(|recorded| (recorded - value).abs() > 1e-6) {
                    return Err(Unusable::Contradiction {
                        field: "series",
                        other: "date",
                        reason: format!("{column} of that day is not {value}"),
                    });
                }
            }
            if !there {
                return Err(Unusable::Contradiction {
                    field: "series",
                    other: "date",
                    reason: format!("the record has no {date}"),
                });
            }
        }
    }
    let doy = u16::try_from(date.ordinal()).unwrap_or(366);
    daily(given, doy)
}
