//! What a profile of fifty years of daily records costs.

use std::hint::black_box;

use criterion::{Criterion, criterion_group, criterion_main};
use lammas_agronomy::calendar::Day;
use lammas_agronomy::profile::DailyWeather;
use lammas_agronomy::record::{Place, Record, read_csv};

/// A record that is made up: a wave over the year with a wobble.
fn days() -> Vec<DailyWeather> {
    let first = Day::from_date("1975-01-01".parse().unwrap_or_default());
    (0..50 * 365 + 12)
        .map(|ahead| {
            let year = f64::from(ahead) / 365.25 * std::f64::consts::TAU;
            let wobble = f64::from((ahead * 7919) % 97) / 12.0 - 4.0;
            let mean_c = 9.0 - 11.0 * libm::cos(year) + wobble;
            DailyWeather {
                tmin_c: Some((mean_c - 5.0).round()),
                tmax_c: Some((mean_c + 5.0).round()),
                rain_mm: Some(f64::from(ahead % 5)),
                ..DailyWeather::unknown(first + ahead)
            }
        })
        .collect()
}

fn record(c: &mut Criterion) {
    let days = days();
    let text: String = std::iter::once("date,tmin_c,tmax_c,precip_mm\n".to_owned())
        .chain(days.iter().map(|day| {
            let shown = |value: Option<f64>| value.map_or_else(String::new, |value| value.to_string());
            format!("{},{},{},{}\n", day.day.date(), shown(day.tmin_c), shown(day.tmax_c), shown(day.rain_mm))
        }))
        .collect();
    let place = Place { latitude_deg: 48.0, longitude_deg: None, elevation_m: None };
    c.bench_function("record/50 years to a profile", |b| {
        b.iter(|| Record::new(black_box(days.clone())).map(|record| record.profile(&place)));
    });
    c.bench_function("record/50 years of text to a profile", |b| {
        b.iter(|| read_csv(black_box(&text)).map(|read| Record::new(read.rows).map(|record| record.profile(&place))));
    });
}

criterion_group!(benches, record);
criterion_main!(benches);
