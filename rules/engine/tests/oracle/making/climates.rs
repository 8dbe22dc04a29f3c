//! Climates: the 57 places, their mirror images, and invented extremes.

use lammas_agronomy::calendar::{DAYS_IN_MONTH, Day};
use lammas_agronomy::origin::Origin;
use lammas_agronomy::profile::{DailyWeather, Forecast, FrostTriple, GivenFrost, Profile};
use proptest::collection::vec;
use proptest::option::weighted;
use proptest::prelude::*;

/// Monthly normals of the 57 places; the file's own page says where they come from.
const STATIONS: &str = include_str!("../../../../agronomy/tests/data/station_normals.csv");

/// A place and its profile.
#[derive(Clone, Debug)]
pub(crate) struct Place {
    pub(crate) name: String,
    pub(crate) profile: Profile,
}

/// The 57 places.
pub(crate) fn places() -> Vec<Place> {
    let mut places: Vec<Place> = Vec::new();
    for line in STATIONS.lines().skip(1) {
        let fields: Vec<&str> = line.split(',').collect();
        let number = |at: usize| fields[at].parse::<f64>().unwrap();
        let month = fields[4].parse::<usize>().unwrap() - 1;
        if month == 0 {
            let mut profile = Profile::of_temperatures(number(1), [0.0; 12], [0.0; 12]);
            profile.longitude_deg = Some(number(2));
            profile.elevation_m = Some(number(3));
            profile.normals.rain_mm = Some([0.0; 12]);
            profile.tmin_sd_k = Some([0.0; 12]);
            places.push(Place { name: fields[0].to_owned(), profile });
        }
        let profile = &mut places.last_mut().unwrap().profile;
        profile.normals.tmin_c[month] = number(5);
        profile.normals.tmax_c[month] = number(6);
        match (fields[7], &mut profile.normals.rain_mm) {
            ("", _) => profile.normals.rain_mm = None,
            (_, Some(rain_mm)) => rain_mm[month] = number(7),
            _ => {}
        }
        profile.tmin_sd_k.as_mut().unwrap()[month] = number(8);
    }
    assert_eq!(places.len(), 57);
    places
}

/// A year whose temperatures follow one wave: mean, half the yearly range, half the daily range, and the warmest day (1 to 365).
pub(crate) fn year(latitude_deg: f64, mean_c: f64, amplitude_k: f64, half_day_k: f64, warmest: f64) -> Profile {
    let mut first = 0.0;
    let middles = DAYS_IN_MONTH.map(|length| {
        let middle = first + f64::from(length) / 2.0;
        first += f64::from(length);
        middle
    });
    let of = |by: f64| {
        middles.map(|middle| mean_c + by + amplitude_k * libm::cos(std::f64::consts::TAU * (middle - warmest) / 365.0))
    };
    Profile::of_temperatures(latitude_deg, of(-half_day_k), of(half_day_k))
}

/// The same with the warmest day in July, or in January south of the equator.
pub(crate) fn sine(latitude_deg: f64, mean_c: f64, amplitude_k: f64, half_day_k: f64) -> Profile {
    year(latitude_deg, mean_c, amplitude_k, half_day_k, if latitude_deg < 0.0 { 18.0 } else { 200.0 })
}

/// Invented extremes: no seasons, eternal frost, no frost but seasons, a short hot summer, hardly any growth.
pub(crate) fn extremes() -> Vec<Place> {
    let named = |name: &str, profile: Profile| Place { name: name.to_owned(), profile };
    let mut monsoon = sine(15.0, 26.0, 3.0, 5.0);
    monsoon.normals.rain_mm = Some([2.0, 2.0, 5.0, 20.0, 60.0, 180.0, 250.0, 220.0, 150.0, 70.0, 20.0, 5.0]);
    let mut twice_wet = sine(0.5, 21.0, 1.0, 5.0);
    twice_wet.normals.rain_mm = Some([30.0, 40.0, 120.0, 210.0, 130.0, 30.0, 20.0, 25.0, 30.0, 90.0, 160.0, 80.0]);
    vec![
        named("even", sine(1.0, 26.0, 0.3, 4.0)),
        named("ice", sine(78.0, -25.0, 12.0, 4.0)),
        named("frost free with seasons", sine(28.0, 20.0, 6.0, 4.0)),
        named("short hot summer", sine(50.0, 5.0, 24.0, 7.0)),
        named("hardly grows", sine(65.0, -4.0, 12.0, 4.0)),
        named("monsoon", monsoon),
        named("twice wet", twice_wet),
        named("mild south", sine(-37.0, 14.0, 5.0, 5.0)),
    ]
}

fn turned(mut months: [f64; 12]) -> [f64; 12] {
    months.rotate_right(6);
    months
}

/// The same climate on the other hemisphere: half a year later, at the opposite latitude.
pub(crate) fn mirrored(profile: &Profile) -> Profile {
    let mut other = profile.clone();
    other.latitude_deg = -profile.latitude_deg;
    other.normals.tmin_c = turned(profile.normals.tmin_c);
    other.normals.tmax_c = turned(profile.normals.tmax_c);
    // Each day is as wet: February's rain on the 31 days of August is more rain.
    other.normals.rain_mm = profile.normals.rain_mm.map(|rain_mm| {
        let lengths = DAYS_IN_MONTH.map(f64::from);
        let a_day = turned(std::array::from_fn(|at| rain_mm[at] / lengths[at]));
        std::array::from_fn(|at| a_day[at] * lengths[at])
    });
    other.tmin_sd_k = profile.tmin_sd_k.map(turned);
    other
}

fn weather(day: Day, tmin_c: f64, range_k: f64, rain_mm: f64) -> DailyWeather {
    let mut weather = DailyWeather::unknown(day);
    weather.tmin_c = Some(tmin_c);
    weather.tmax_c = Some(tmin_c + range_k);
    weather.rain_mm = Some(rain_mm);
    weather
}

/// A day: minimum °C, daily range K, rain mm.
type Weather = (f64, f64, f64);

/// What differs from place to place besides the normals.
#[derive(Clone, Debug)]
struct Extras {
    mirror: bool,
    no_rain: bool,
    estimated: bool,
    frost: Option<GivenFrost>,
    forecast: Option<(i32, Vec<Weather>)>,
    observed: Option<Vec<Weather>>,
}

fn frost() -> impl Strategy<Value = GivenFrost> {
    let day = |text: &str| Some(text.parse().unwrap());
    prop_oneof![
        Just(GivenFrost {
            last: FrostTriple { early: None, median: day("04-05"), late: None },
            first: FrostTriple { early: None, median: day("11-20"), late: None },
        }),
        Just(GivenFrost {
            last: FrostTriple { early: day("02-20"), median: day("03-15"), late: day("04-10") },
            first: FrostTriple { early: day("11-10"), median: day("12-05"), late: day("12-28") },
        }),
        Just(GivenFrost {
            last: FrostTriple::default(),
            first: FrostTriple { early: None, median: day("05-25"), late: None },
        }),
    ]
}

fn extras() -> impl Strategy<Value = Extras> {
    let day = || (-8.0..28.0_f64, 2.0..18.0_f64, 0.0..25.0_f64);
    let forecast = weighted(0.5, (-1_i32..=4, vec(day(), 3..=14)));
    let observed = weighted(0.3, vec(day(), 5..=40));
    (
        any::<bool>(),
        proptest::bool::weighted(0.15),
        proptest::bool::weighted(0.2),
        weighted(0.2, frost()),
        forecast,
        observed,
    )
        .prop_map(|(mirror, no_rain, estimated, frost, forecast, observed)| Extras {
            mirror,
            no_rain,
            estimated,
            frost,
            forecast,
            observed,
        })
}

/// Any climate, as it stands on a day.
pub(crate) fn climates() -> impl Strategy<Value = ClimateSpec> {
    let count = places().len() + extremes().len() * 3;
    (0..count, extras()).prop_map(|(at, extras)| ClimateSpec { at, extras })
}

/// A climate before the day is known.
#[derive(Clone, Debug)]
pub(crate) struct ClimateSpec {
    at: usize,
    extras: Extras,
}

impl ClimateSpec {
    /// The profile for a question on a day: forecast and records lie around it.
    pub(crate) fn on(&self, day: Day) -> Profile {
        let all: Vec<Place> = places()
            .into_iter()
            .chain(extremes().into_iter().flat_map(|place| [place.clone(), place.clone(), place]))
            .collect();
        let mut profile = all[self.at].profile.clone();
        let extras = &self.extras;
        if extras.mirror {
            profile = mirrored(&profile);
        }
        if extras.no_rain {
            profile.normals.rain_mm = None;
        }
        if extras.estimated {
            profile.origin = Origin::Estimated;
        }
        profile.frost = extras.frost;
        if let Some((age, days)) = &extras.forecast {
            let issued = day - *age;
            let days = days
                .iter()
                .zip(0..)
                .map(|((tmin, range, rain), ahead)| weather(issued + ahead, *tmin, *range, *rain))
                .collect();
            profile.forecast = Some(Forecast { issued, days });
        }
        if let Some(days) = &extras.observed {
            let first = day - i32::try_from(days.len()).unwrap();
            profile.observations = days
                .iter()
                .zip(0..)
                .map(|((tmin, range, rain), at)| weather(first + at, *tmin, *range, *rain))
                .collect();
        }
        assert_eq!(profile.check(), Ok(()));
        profile
    }
}
