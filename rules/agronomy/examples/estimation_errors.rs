//! By how much a climate is off that was not measured: prints a table of errors over the open daily records in
//! `tests/data`, each place as its record tells it, as its monthly normals tell it, and as its coordinates do.
//!
//! `cargo run --release -p lammas-agronomy --example estimation_errors`
#![allow(clippy::print_stdout, reason = "printing is what it is for")]
#![expect(clippy::disallowed_methods, reason = "it reads its data from files")]

use std::error::Error;
use std::fs;
use std::io::Read;
use std::path::Path;

use lammas_agronomy::calendar::ClimateDay;
use lammas_agronomy::climatology::{Coordinates, Grid};
use lammas_agronomy::et0::{EtInputs, HumidityGiven, RadiationGiven, WindGiven, penman_monteith};
use lammas_agronomy::marker::{Marker, Share};
use lammas_agronomy::profile::Profile;
use lammas_agronomy::record::{Place, Record, read_csv};
use lammas_agronomy::season::{Season, Series, SiteShift};

/// Record, latitude, longitude, elevation. The coordinates of the first two and of Tunis are from memory, rounded.
const PLACES: [(&str, f64, f64, f64); 5] = [
    ("champion_nebraska_daily_2006_2017", 40.47, -101.75, 1000.0),
    ("cordoba_south_daily_2010_2021", -31.4, -64.2, 430.0),
    ("de_bilt_daily_2010_2019", 52.1, 5.18, 2.0),
    ("tunis_daily_1994_2001", 36.83, 10.23, 4.0),
    ("seattle_daily_2012_2015", 47.45, -122.3, 130.0),
];

/// What was measured at a place.
struct Truth {
    profile: Profile,
    frost: Option<[Option<ClimateDay>; 6]>,
    et0_mm: Option<[f64; 12]>,
}

fn main() -> Result<(), Box<dyn Error>> {
    let top = Path::new(env!("CARGO_MANIFEST_DIR")).join("../..");
    let packed = fs::read(top.join("rules/climatology/climate_grid_025.bin.zst"))?;
    let mut bytes = Vec::new();
    ruzstd::decoding::StreamingDecoder::new(packed.as_slice())?.read_to_end(&mut bytes)?;
    let grid = Grid::read(&bytes)?;

    println!(
        "| record | known | last frost 10/50/90, days | first frost 10/50/90, days | extreme minimum, K | tmin, K | tmax, K | ET0, mm/day |"
    );
    println!("| --- | --- | --- | --- | --- | --- | --- | --- |");
    let mut all: Vec<(&str, Errors)> = Vec::new();
    for (name, latitude_deg, longitude_deg, elevation_m) in PLACES {
        let text = fs::read_to_string(top.join(format!("tests/data/{name}.csv")))?;
        let rows = read_csv(&text).map_err(|faults| format!("{faults:?}"))?.rows;
        let place = Place { latitude_deg, longitude_deg: Some(longitude_deg), elevation_m: Some(elevation_m) };
        let record = Record::new(rows).map_err(|faults| format!("{faults:?}"))?;
        let profile = record.profile(&place).map_err(|faults| format!("{faults:?}"))?.profile;
        let frost = profile.counted_frost.map(|frost| {
            let ([a, b, c], [d, e, f]) = (frost.last.days(), frost.first.days());
            [a, b, c, d, e, f]
        });
        let et0_mm = measured_et0(&text, latitude_deg, elevation_m);
        let truth = Truth { profile, frost, et0_mm };

        // The record's own normals and spread, without the frost that was counted in it.
        let mut own = truth.profile.clone();
        (own.counted_frost, own.extreme_min_c, own.observations) = (None, None, Vec::new());
        let mut normals = own.clone();
        normals.tmin_sd_k = None;
        let estimate = |elevation_m| grid.estimate(Coordinates { latitude_deg, longitude_deg, elevation_m });
        for (known, profile) in [
            ("record: normals and spread", own),
            ("normals only", normals),
            ("coordinates and elevation", estimate(Some(elevation_m))?.profile),
            ("coordinates only", estimate(None)?.profile),
        ] {
            let errors = Errors::of(&profile, &truth);
            println!("| {} | {known} | {} |", name.split("_daily").next().unwrap_or(name), errors.shown(true));
            all.push((known, errors));
        }
    }
    // Every place has the same four rows.
    for (known, _) in all.iter().take(4) {
        let of_known: Vec<&Errors> = all.iter().filter(|(other, _)| other == known).map(|(_, errors)| errors).collect();
        println!("| **mean size** | {known} | {} |", Errors::mean_size(&of_known).shown(false));
    }
    println!(
        "\nDays: reckoned less counted, a dash where one of them does not exist or nothing was counted. tmin, tmax, ET0: mean absolute error of the twelve months. Mean size: of the absolute errors, over the records that have one."
    );
    Ok(())
}

/// By how much a profile is off; none where it can't be told.
struct Errors {
    /// Last frost by 10, 50, 90 % of years, then first frost.
    frost_days: [Option<f64>; 6],
    extreme_min_k: Option<f64>,
    tmin_k: Option<f64>,
    tmax_k: Option<f64>,
    et0_mm: Option<f64>,
}

impl Errors {
    fn of(profile: &Profile, truth: &Truth) -> Self {
        let season = Season::new(profile, SiteShift::default());
        let markers = [Marker::LastFrost as fn(Share) -> Marker, Marker::FirstFrost];
        let mut frost_days = [None; 6];
        let reckoned = markers.into_iter().flat_map(|marker| Share::ALL.map(marker));
        for ((error, marker), counted) in frost_days.iter_mut().zip(reckoned).zip(truth.frost.unwrap_or_default()) {
            *error = season.marker(marker).day().zip(counted).map(|(day, counted)| f64::from(day.days_from(counted)));
        }
        let extreme = truth.profile.extreme_min_c.zip(season.extreme_min_c());
        let (got, real) = (&profile.normals, &truth.profile.normals);
        Self {
            frost_days,
            extreme_min_k: extreme.map(|(counted, (reckoned, _))| reckoned - counted),
            tmin_k: Some(mean_error(&got.tmin_c, &real.tmin_c)),
            tmax_k: Some(mean_error(&got.tmax_c, &real.tmax_c)),
            et0_mm: truth.et0_mm.map(|real| mean_error(&monthly_et0(&season), &real)),
        }
    }

    fn mean_size(all: &[&Self]) -> Self {
        let mean = |field: &dyn Fn(&Self) -> Option<f64>| {
            let sizes: Vec<f64> = all.iter().filter_map(|errors| field(errors)).map(f64::abs).collect();
            (!sizes.is_empty()).then(|| sizes.iter().sum::<f64>() / sizes.len() as f64)
        };
        Self {
            frost_days: std::array::from_fn(|place| mean(&|errors| errors.frost_days.get(place).copied().flatten())),
            extreme_min_k: mean(&|errors| errors.extreme_min_k),
            tmin_k: mean(&|errors| errors.tmin_k),
            tmax_k: mean(&|errors| errors.tmax_k),
            et0_mm: mean(&|errors| errors.et0_mm),
        }
    }

    /// The cells of its row; days and the extreme may have a sign.
    fn shown(&self, signed: bool) -> String {
        let cell = |error: Option<f64>, show: &dyn Fn(f64) -> String| error.map_or_else(|| "-".to_owned(), show);
        let days = |days: f64| if signed { format!("{days:+.0}") } else { format!("{days:.0}") };
        let days = self.frost_days.map(|error| cell(error, &days));
        let [last, first] = [days.get(..3), days.get(3..)].map(|days| days.unwrap_or_default().join(" "));
        let extreme =
            cell(self.extreme_min_k, &|kelvin| if signed { format!("{kelvin:+.1}") } else { format!("{kelvin:.1}") });
        let [tmin, tmax] = [self.tmin_k, self.tmax_k].map(|error| cell(error, &|kelvin| format!("{kelvin:.1}")));
        let et0 = cell(self.et0_mm, &|mm| format!("{mm:.2}"));
        format!("{last} | {first} | {extreme} | {tmin} | {tmax} | {et0}")
    }
}

fn mean_error(got: &[f64; 12], real: &[f64; 12]) -> f64 {
    got.iter().zip(real).map(|(got, real)| (got - real).abs()).sum::<f64>() / 12.0
}

fn monthly_et0(season: &Season) -> [f64; 12] {
    let mut sums = [(0.0, 0.0); 12];
    for day in ClimateDay::all() {
        if let (Some(sum), Some(mm)) = (sums.get_mut(day.month_index()), season.curve(Series::Et0, day)) {
            *sum = (sum.0 + mm, sum.1 + 1.0);
        }
    }
    sums.map(|(sum, days)| sum / days)
}

/// Monthly means of daily Penman-Monteith from measured wind, radiation and humidity, where a record has them.
fn measured_et0(text: &str, latitude_deg: f64, elevation_m: f64) -> Option<[f64; 12]> {
    let mut lines = text.lines();
    let names: Vec<&str> = lines.next()?.split(',').collect();
    let column = |name: &str| names.iter().position(|column| *column == name);
    let wanted = ["tmin_c", "tmax_c", "wind10_m_s", "solar_mj_m2", "rh_mean_pct"].map(column);
    let mut sums = [(0.0, 0.0); 12];
    for line in lines {
        let fields: Vec<&str> = line.split(',').collect();
        let date: chrono::NaiveDate = fields.first()?.parse().ok()?;
        let mut numbers = [0.0; 5];
        for (number, column) in numbers.iter_mut().zip(wanted) {
            *number = fields.get(column?)?.parse().ok()?;
        }
        let [tmin_c, tmax_c, wind_ms, solar_mj, rh_pct] = numbers;
        let day = u16::try_from(chrono::Datelike::ordinal(&date)).ok()?;
        let et0 = penman_monteith(&EtInputs {
            latitude_deg,
            elevation_m,
            day_of_year: day,
            tmin_c,
            tmax_c,
            humidity: HumidityGiven::RhMean { pct: rh_pct },
            wind: Some(WindGiven { ms: wind_ms, height_m: 10.0 }),
            radiation: RadiationGiven::Solar { mj: solar_mj },
            krs: penman_monteith::KRS_INLAND,
            soil_heat_flux_mj: 0.0,
        });
        let sum = sums.get_mut(chrono::Datelike::month0(&date) as usize)?;
        *sum = (sum.0 + et0.ok()?.mm_per_day, sum.1 + 1.0);
    }
    Some(sums.map(|(sum, days)| sum / days))
}
