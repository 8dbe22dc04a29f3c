//! What a season costs: cold from a profile, and the answers that are worked out when first asked for.

use std::hint::black_box;

use criterion::{Criterion, criterion_group, criterion_main};
use lammas_agronomy::calendar::{ClimateDay, Day};
use lammas_agronomy::marker::{Marker, Threshold};
use lammas_agronomy::profile::{Humidity, Profile};
use lammas_agronomy::season::{Aggregate, Season, Series, SiteShift};

/// De Bilt, means of 2010-2019 of the public record of station 260 (KNMI), humidity from memory.
fn profile() -> Profile {
    let mut profile = Profile::of_temperatures(
        52.1,
        [0.8, 0.3, 2.1, 4.6, 7.9, 11.1, 13.2, 12.3, 9.8, 7.6, 3.9, 2.6],
        [5.9, 6.7, 10.7, 15.1, 18.2, 21.2, 23.5, 22.6, 19.5, 15.4, 10.0, 7.5],
    );
    profile.elevation_m = Some(2.0);
    profile.normals.rain_mm = Some([77.0, 58.0, 50.0, 41.0, 58.0, 69.0, 88.0, 90.0, 74.0, 80.0, 73.0, 89.0]);
    profile.normals.humidity =
        Some(Humidity::RhMean([87.0, 84.0, 80.0, 75.0, 75.0, 76.0, 77.0, 79.0, 83.0, 86.0, 89.0, 89.0]));
    profile
}

fn season(c: &mut Criterion) {
    let profile = profile();
    let on = Day::from_date("2026-05-10".parse().unwrap_or_default());
    let new = || Season::new(&profile, SiteShift::default());
    let hollow = || Season::new(&profile, SiteShift { frost_hollow: true });
    c.bench_function("season/cold", |b| b.iter(|| black_box(new())));
    c.bench_function("season/cold in a frost hollow", |b| {
        b.iter(|| black_box(hollow()));
    });
    c.bench_function("season/cold and first et0", |b| {
        b.iter(|| new().curve(Series::Et0, ClimateDay::around(129)));
    });
    c.bench_function("season/cold and first heat_left", |b| {
        b.iter(|| new().heat_left_cd(on));
    });
    c.bench_function("season/cold and first extreme minimum", |b| {
        b.iter(|| new().extreme_min_c());
    });
    c.bench_function("season/cold and first chill", |b| {
        b.iter(|| new().chill(on));
    });
    let season = new();
    c.bench_function("season/mean of 7 days", |b| {
        b.iter(|| season.past(Aggregate::Mean, Series::Tmax, 7, black_box(on)));
    });
    let Some(threshold) = Threshold::new(27.0) else {
        return;
    };
    c.bench_function("season/crossing", |b| {
        b.iter(|| season.marker(black_box(Marker::Falls(Series::Tmax, threshold))));
    });
    c.bench_function("season/heat_reached", |b| {
        b.iter(|| season.heat_reached(300.0, 5.0, black_box(on)));
    });
    c.bench_function("season/climate day of a day", |b| {
        b.iter(|| black_box(on).climate_day());
    });
}

criterion_group!(benches, season);
criterion_main!(benches);
