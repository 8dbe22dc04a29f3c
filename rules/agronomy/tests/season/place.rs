//! The 57 places, and small profiles for single questions.

use lammas_agronomy::calendar::{DAYS_IN_MONTH, Day};
use lammas_agronomy::profile::{DailyWeather, Profile};
use lammas_agronomy::season::{Season, SiteShift};

/// One of the 57 places of `station_normals.csv`.
pub(crate) struct Station {
    pub(crate) name: String,
    pub(crate) profile: Profile,
}

#[expect(clippy::disallowed_methods, reason = "tests read their data from files")]
fn read(path: &str) -> String {
    std::fs::read_to_string(path).unwrap_or_else(|error| panic!("{path}: {error}"))
}

fn data(name: &str) -> String {
    read(&format!("{}/tests/data/{name}", env!("CARGO_MANIFEST_DIR")))
}

pub(crate) fn json(name: &str) -> serde_json::Value {
    serde_json::from_str(&data(name)).unwrap()
}

/// A daily record of the repository's shared test data.
pub(crate) fn record_csv(name: &str) -> String {
    read(&format!("{}/../../tests/data/{name}", env!("CARGO_MANIFEST_DIR")))
}

/// The climate grid, unpacked.
#[expect(clippy::disallowed_methods, reason = "tests read their data from files")]
pub(crate) fn climate_grid() -> Vec<u8> {
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/../climatology/climate_grid_025.bin.zst");
    let packed = std::fs::read(path).unwrap();
    let mut unpacked = Vec::new();
    let mut decoder = ruzstd::decoding::StreamingDecoder::new(packed.as_slice()).unwrap();
    std::io::Read::read_to_end(&mut decoder, &mut unpacked).unwrap();
    unpacked
}

/// The 57 places, with the measured spread of the daily minimum.
pub(crate) fn stations() -> Vec<Station> {
    let text = data("station_normals.csv");
    let mut stations: Vec<Station> = Vec::new();
    for line in text.lines().skip(1) {
        let fields: Vec<&str> = line.split(',').collect();
        let number = |at: usize| fields[at].parse::<f64>().unwrap();
        let month = number(4) as usize - 1;
        if month == 0 {
            let mut profile = Profile::of_temperatures(number(1), [0.0; 12], [0.0; 12]);
            profile.longitude_deg = Some(number(2));
            profile.elevation_m = Some(number(3));
            profile.normals.rain_mm = Some([0.0; 12]);
            profile.tmin_sd_k = Some([0.0; 12]);
            stations.push(Station { name: fields[0].to_owned(), profile });
        }
        let profile = &mut stations.last_mut().unwrap().profile;
        profile.normals.tmin_c[month] = number(5);
        profile.normals.tmax_c[month] = number(6);
        if fields[7].is_empty() {
            profile.normals.rain_mm = None;
        } else if let Some(rain_mm) = &mut profile.normals.rain_mm {
            rain_mm[month] = number(7);
        }
        profile.tmin_sd_k.as_mut().unwrap()[month] = number(8);
    }
    assert_eq!(stations.len(), 57);
    for station in &stations {
        assert_eq!(station.profile.check(), Ok(()), "{}", station.name);
    }
    stations
}

pub(crate) fn station(name: &str) -> Profile {
    stations().into_iter().find(|station| station.name == name).unwrap().profile
}

pub(crate) fn season(profile: &Profile) -> Season {
    Season::new(profile, SiteShift::default())
}

/// The same climate on the other hemisphere: half a year later, at the opposite latitude.
pub(crate) fn mirrored(profile: &Profile) -> Profile {
    let turn = |mut months: [f64; 12]| {
        months.rotate_right(6);
        months
    };
    let mut other = profile.clone();
    other.latitude_deg = -profile.latitude_deg;
    other.normals.tmin_c = turn(profile.normals.tmin_c);
    other.normals.tmax_c = turn(profile.normals.tmax_c);
    // each day is as wet: February's rain on the 31 days of August is more rain
    other.normals.rain_mm = profile.normals.rain_mm.map(|rain_mm| {
        let mut a_day = rain_mm;
        for (mm, days) in a_day.iter_mut().zip(DAYS_IN_MONTH) {
            *mm /= f64::from(days);
        }
        let mut rain_mm = turn(a_day);
        for (mm, days) in rain_mm.iter_mut().zip(DAYS_IN_MONTH) {
            *mm *= f64::from(days);
        }
        rain_mm
    });
    other.tmin_sd_k = profile.tmin_sd_k.map(turn);
    other
}

pub(crate) fn day(date: &str) -> Day {
    Day::supported(date.parse().unwrap()).unwrap()
}

/// A day of weather with both temperatures.
pub(crate) fn weather(day: Day, tmin_c: f64, tmax_c: f64) -> DailyWeather {
    DailyWeather { tmin_c: Some(tmin_c), tmax_c: Some(tmax_c), ..DailyWeather::unknown(day) }
}

pub(crate) fn near(got: f64, expected: f64, tolerance: f64) {
    assert!((got - expected).abs() <= tolerance, "got {got}, expected {expected} within {tolerance}");
}
