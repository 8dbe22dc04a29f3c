//! The climate as it is said into a profile.

use lammas_agronomy::calendar::{ClimateDay, Day};
use lammas_agronomy::origin::Origin;
use lammas_agronomy::profile::{
    CountedFrost, DailyWeather, Forecast, FrostTriple, GivenFrost, Humidity, Monthly, Normals, Profile, Radiation,
};

use super::super::pointer::Trouble;
use super::super::said::{ClimateSaid, CountedFrostSaid, DaySaid, FrostDatesSaid};
use super::differences::differing;

/// km/h in a m/s.
const KMH: f64 = 3.6;

/// The profile of a climate that is said whole, checked.
///
/// # Errors
/// Every field that can't be used, its pointer beginning with `base`.
pub fn profile(said: &ClimateSaid, base: &str) -> Result<Profile, Vec<Trouble>> {
    let mut troubles = Vec::new();
    let latitude_deg = said.latitude.unwrap_or_else(|| {
        troubles.push(Trouble::new(format!("{base}/latitude"), "the latitude is missing"));
        0.0
    });
    let Some(normals) = &said.normals else {
        troubles.push(Trouble::new(format!("{base}/normals"), "the monthly normals are missing"));
        return Err(troubles);
    };
    let here = format!("{base}/normals");
    let mut months = |name: &str, list: &[f64]| twelve(&format!("{here}/{name}"), name, list, &mut troubles);
    let tmin_c = months("tmin_c", &normals.tmin_c).unwrap_or([0.0; 12]);
    let tmax_c = months("tmax_c", &normals.tmax_c).unwrap_or([0.0; 12]);
    let mut optional = |name: &str, list: &Option<Vec<f64>>| list.as_ref().and_then(|list| months(name, list));
    let rain_mm = optional("rain_mm", &normals.rain_mm);
    let (rh, dew) = (optional("rh_pct", &normals.rh_pct), optional("dew_point_c", &normals.dew_point_c));
    let wind_ms = optional("wind_ms", &normals.wind_ms);
    let (sun, solar) = (optional("sunshine_h", &normals.sunshine_h), optional("solar_mj", &normals.solar_mj));
    let origin = match said.origin.as_deref() {
        None | Some("given") => Origin::Given,
        Some("measured") => Origin::Measured,
        Some(other) => {
            let known = ["given", "measured"];
            troubles.push(Trouble::unknown(format!("{base}/origin"), "origin", other, known));
            Origin::Given
        }
    };
    let mut profile = Profile::of_temperatures(latitude_deg, tmin_c, tmax_c);
    profile.longitude_deg = said.longitude;
    profile.elevation_m = said.elevation_m;
    profile.normals = Normals {
        tmin_c,
        tmax_c,
        rain_mm,
        humidity: rh.map(Humidity::RhMean).or(dew.map(Humidity::DewPoint)),
        wind_ms,
        radiation: solar.map(Radiation::SolarMj).or(sun.map(Radiation::SunshineHours)),
    };
    profile.origin = origin;
    completed(profile, said, base, troubles)
}

/// A profile that was estimated from the coordinates of a climate, with what else is said of it: frost dates, the coldest
/// night, the days of heat, the spread of the minimum, the weather. What is said wins.
///
/// # Errors
/// Every field that can't be used, its pointer beginning with `base`.
pub fn profile_on(estimated: Profile, said: &ClimateSaid, base: &str) -> Result<Profile, Vec<Trouble>> {
    completed(estimated, said, base, Vec::new())
}

fn completed(
    mut profile: Profile,
    said: &ClimateSaid,
    base: &str,
    mut troubles: Vec<Trouble>,
) -> Result<Profile, Vec<Trouble>> {
    profile.frost = said.frost.as_ref().map(|frost| GivenFrost {
        last: triple(&frost.last, &format!("{base}/frost/last"), &mut troubles),
        first: triple(&frost.first, &format!("{base}/frost/first"), &mut troubles),
    });
    profile.counted_frost =
        said.counted_frost.as_ref().map(|frost| counted(frost, &format!("{base}/counted_frost"), &mut troubles));
    profile.extreme_min_c = said.extreme_min_c;
    profile.heat_days_a_year = said.heat_days_a_year;
    if let Some(list) = &said.tmin_sd_k {
        profile.tmin_sd_k = twelve(&format!("{base}/tmin_sd_k"), "tmin_sd_k", list, &mut troubles);
        profile.tmin_sd_estimated = false;
    }
    profile.observations = said.observations.iter().flatten().map(day).collect();
    profile.forecast = said.forecast.as_ref().map(|forecast| Forecast {
        issued: Day::from_date(forecast.issued),
        days: forecast.days.iter().map(day).collect(),
    });
    if !troubles.is_empty() {
        return Err(troubles);
    }
    match profile.check() {
        Ok(()) => match &said.differences {
            Some(differences) => differing(&profile, differences, &format!("{base}/differences")),
            None => Ok(profile),
        },
        Err(faults) => {
            Err(faults.into_iter().map(|fault| Trouble::new(pointer(base, &fault.path), fault.words)).collect())
        }
    }
}

/// The profile's own path of a field as a pointer into the request.
fn pointer(base: &str, path: &str) -> String {
    let path = path
        .replace("/latitude_deg", "/latitude")
        .replace("/longitude_deg", "/longitude")
        .replace("/humidity", "/rh_pct")
        .replace("/radiation", "/sunshine_h")
        .replace("/share_with_frost", "/share_pct")
        .replace("/share_with_killing_frost", "/killing_share_pct");
    format!("{base}{path}")
}

fn twelve(pointer: &str, name: &str, list: &[f64], troubles: &mut Vec<Trouble>) -> Option<Monthly> {
    if let Ok(months) = Monthly::try_from(list) {
        return Some(months);
    }
    let detail = if list.is_empty() {
        format!("{name} is missing, expected 12 numbers, January to December")
    } else {
        format!("{name} has {} numbers, expected 12, January to December", list.len())
    };
    troubles.push(Trouble::new(pointer, detail));
    None
}

fn triple(said: &FrostDatesSaid, base: &str, troubles: &mut Vec<Trouble>) -> FrostTriple {
    let mut date = |name: &str, text: &Option<String>| month_day(text.as_ref(), &format!("{base}/{name}"), troubles);
    FrostTriple {
        early: date("early", &said.early),
        median: date("median", &said.median),
        late: date("late", &said.late),
    }
}

fn counted(said: &CountedFrostSaid, base: &str, troubles: &mut Vec<Trouble>) -> CountedFrost {
    let (last, first) = (
        triple(&said.last, &format!("{base}/last"), troubles),
        triple(&said.first, &format!("{base}/first"), troubles),
    );
    if said.seasons == 0 {
        troubles.push(Trouble::new(format!("{base}/seasons"), "expected 1 or more seasons, found `0`"));
    }
    for (name, share) in [("share_pct", said.share_pct), ("killing_share_pct", said.killing_share_pct)] {
        if !(0.0..=100.0).contains(&share) {
            troubles.push(Trouble::new(format!("{base}/{name}"), format!("{name} is {share}, expected 0 to 100 %")));
        }
    }
    CountedFrost {
        seasons: said.seasons,
        share_with_frost: said.share_pct / 100.0,
        share_with_killing_frost: said.killing_share_pct / 100.0,
        last,
        first,
        last_killing: month_day(said.last_killing.as_ref(), &format!("{base}/last_killing"), troubles),
        first_killing: month_day(said.first_killing.as_ref(), &format!("{base}/first_killing"), troubles),
    }
}

fn month_day(text: Option<&String>, pointer: &str, troubles: &mut Vec<Trouble>) -> Option<ClimateDay> {
    text?.parse::<ClimateDay>().map_err(|fault| troubles.push(Trouble::new(pointer, fault.to_string()))).ok()
}

fn day(said: &DaySaid) -> DailyWeather {
    let mut weather = DailyWeather::unknown(Day::from_date(said.date));
    weather.tmin_c = Some(said.tmin_c);
    weather.tmax_c = Some(said.tmax_c);
    weather.rain_mm = said.rain_mm;
    weather.wind_ms = said.wind_kmh.map(|kmh| kmh / KMH);
    weather
}
