//! How long the reckonings take that a season asks for 365 times.

use std::hint::black_box;

use criterion::{Criterion, criterion_group, criterion_main};
use lammas_agronomy::degree_days::{Cutoff, Thresholds, single_sine};
use lammas_agronomy::et0::{EtInputs, HumidityGiven, RadiationGiven, WindGiven, penman_monteith};
use lammas_agronomy::quantity;
use lammas_agronomy::sun;

fn day() -> EtInputs {
    EtInputs {
        latitude_deg: 50.8,
        elevation_m: 100.0,
        day_of_year: 187,
        tmin_c: 12.3,
        tmax_c: 21.5,
        humidity: HumidityGiven::RhMaxMin { max_pct: 84.0, min_pct: 63.0 },
        wind: Some(WindGiven { ms: 2.078, height_m: 2.0 }),
        radiation: RadiationGiven::Sunshine { hours: 9.25 },
        krs: 0.16,
        soil_heat_flux_mj: 0.0,
    }
}

fn quantities(c: &mut Criterion) {
    let full = day();
    c.bench_function("et0 penman-monteith", |b| {
        b.iter(|| penman_monteith(black_box(&full)));
    });

    let bare = EtInputs { humidity: HumidityGiven::None, wind: None, radiation: RadiationGiven::None, ..day() };
    c.bench_function("et0 penman-monteith from temperature", |b| {
        b.iter(|| penman_monteith(black_box(&bare)));
    });

    let thresholds = Thresholds { lower_c: 10.0, upper_c: Some((31.0, Cutoff::Horizontal)) };
    c.bench_function("single sine", |b| {
        b.iter(|| single_sine(black_box(4.0), black_box(33.0), black_box(thresholds)));
    });

    c.bench_function("sun day", |b| {
        b.iter(|| sun::day(black_box(50.8), black_box(187)));
    });

    let need = quantity::find("canopy_area").ok();
    c.bench_function("canopy area by name, numbers", |b| {
        b.iter(|| need.map(|q| q.reckon_numbers(black_box(&[("canopy_diameter", 0.9)]))));
    });
}

criterion_group!(benches, quantities);
criterion_main!(benches);
