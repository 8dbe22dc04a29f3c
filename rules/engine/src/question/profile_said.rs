//! A profile as a caller would say it: what a daily record comes out as, ready to be put into a question.

use lammas_agronomy::calendar::ClimateDay;
use lammas_agronomy::origin::Origin;
use lammas_agronomy::profile::{
    CountedFrost, DailyWeather, Forecast, FrostTriple, Humidity, Monthly, Profile, Radiation,
};

use super::said::{ClimateSaid, CountedFrostSaid, DaySaid, ForecastSaid, FrostDatesSaid, FrostSaid, NormalsSaid};

/// km/h in a m/s.
const KMH: f64 = 3.6;

/// The profile in a caller's words. Numbers are rounded to two decimals; days without both temperatures are left out,
/// as is what a caller has no words for (humidity of single days).
#[must_use]
pub fn said(profile: &Profile) -> ClimateSaid {
    let normals = &profile.normals;
    let (rh_pct, dew_point_c) = match &normals.humidity {
        Some(Humidity::RhMean(year)) => (Some(months(year)), None),
        Some(Humidity::DewPoint(year)) => (None, Some(months(year))),
        None => (None, None),
    };
    let (sunshine_h, solar_mj) = match &normals.radiation {
        Some(Radiation::SunshineHours(year)) => (Some(months(year)), None),
        Some(Radiation::SolarMj(year)) => (None, Some(months(year))),
        None => (None, None),
    };
    let observed = days(&profile.observations);
    ClimateSaid {
        latitude: Some(profile.latitude_deg),
        longitude: profile.longitude_deg,
        elevation_m: profile.elevation_m,
        origin: Some(if profile.origin == Origin::Measured { "measured" } else { "given" }.to_owned()),
        normals: Some(NormalsSaid {
            tmin_c: months(&normals.tmin_c),
            tmax_c: months(&normals.tmax_c),
            rain_mm: normals.rain_mm.as_ref().map(months),
            rh_pct,
            dew_point_c,
            wind_ms: normals.wind_ms.as_ref().map(months),
            sunshine_h,
            solar_mj,
        }),
        frost: profile.frost.map(|frost| FrostSaid { last: triple(&frost.last), first: triple(&frost.first) }),
        counted_frost: profile.counted_frost.as_ref().map(counted),
        extreme_min_c: profile.extreme_min_c.map(rounded),
        heat_days_a_year: profile.heat_days_a_year.map(rounded),
        tmin_sd_k: profile.tmin_sd_k.as_ref().map(months),
        observations: (!observed.is_empty()).then_some(observed),
        forecast: profile.forecast.as_ref().map(forecast),
        ..ClimateSaid::default()
    }
}

fn counted(frost: &CountedFrost) -> CountedFrostSaid {
    CountedFrostSaid {
        seasons: frost.seasons,
        share_pct: rounded(100.0 * frost.share_with_frost),
        killing_share_pct: rounded(100.0 * frost.share_with_killing_frost),
        last: triple(&frost.last),
        first: triple(&frost.first),
        last_killing: day_of_year(frost.last_killing),
        first_killing: day_of_year(frost.first_killing),
    }
}

fn triple(triple: &FrostTriple) -> FrostDatesSaid {
    FrostDatesSaid {
        early: day_of_year(triple.early),
        median: day_of_year(triple.median),
        late: day_of_year(triple.late),
    }
}

fn day_of_year(day: Option<ClimateDay>) -> Option<String> {
    day.map(|day| day.to_string())
}

fn forecast(forecast: &Forecast) -> ForecastSaid {
    ForecastSaid { issued: forecast.issued.date(), days: days(&forecast.days) }
}

fn days(days: &[DailyWeather]) -> Vec<DaySaid> {
    let said = |weather: &DailyWeather| {
        Some(DaySaid {
            date: weather.day.date(),
            tmin_c: rounded(weather.tmin_c?),
            tmax_c: rounded(weather.tmax_c?),
            rain_mm: weather.rain_mm.map(rounded),
            wind_kmh: weather.wind_ms.map(|speed| rounded(speed * KMH)),
        })
    };
    days.iter().filter_map(said).collect()
}

fn months(year: &Monthly) -> Vec<f64> {
    year.iter().copied().map(rounded).collect()
}

/// To two decimals, half away from zero: a hundredth of a degree is finer than any thermometer reads.
fn rounded(value: f64) -> f64 {
    crate::fact::step::Step::new(1, 100).round(value)
}

#[cfg(test)]
mod tests {
    use lammas_agronomy::calendar::Day;

    use super::*;
    use crate::question::understand;

    #[test]
    fn a_profile_that_was_said_is_understood_as_it_was() {
        let day = |month, day| ClimateDay::from_month_day(month, day);
        let mut profile = Profile::of_temperatures(40.4, [-9.25; 12], [12.5; 12]);
        profile.longitude_deg = Some(-101.7);
        profile.elevation_m = Some(1000.0);
        profile.normals.rain_mm = Some([31.25; 12]);
        profile.normals.humidity = Some(Humidity::DewPoint([-3.0; 12]));
        profile.normals.radiation = Some(Radiation::SolarMj([15.5; 12]));
        profile.normals.wind_ms = Some([2.5; 12]);
        profile.counted_frost = Some(CountedFrost {
            seasons: 12,
            share_with_frost: 1.0,
            share_with_killing_frost: 0.25,
            last: FrostTriple { early: day(4, 20), median: day(5, 8), late: day(5, 22) },
            // No late one: in some seasons it never came.
            first: FrostTriple { early: day(9, 20), median: day(10, 2), late: None },
            last_killing: day(4, 25),
            first_killing: None,
        });
        profile.extreme_min_c = Some(-27.5);
        profile.heat_days_a_year = Some(41.25);
        profile.tmin_sd_k = Some([4.25; 12]);
        let mut weather = DailyWeather::unknown(Day::from_ce(739_000));
        (weather.tmin_c, weather.tmax_c, weather.rain_mm, weather.wind_ms) =
            (Some(1.5), Some(9.25), Some(0.0), Some(2.5));
        profile.observations = vec![weather];
        profile.origin = Origin::Measured;
        assert_eq!(understand::profile(&said(&profile), "/climate"), Ok(profile));
    }
}
