//! What a profile from coordinates costs.
#![expect(clippy::disallowed_methods, reason = "a benchmark reads its data from a file")]

use std::hint::black_box;
use std::io::Read;

use criterion::{Criterion, criterion_group, criterion_main};
use lammas_agronomy::climatology::{Coordinates, Grid};

fn unpacked() -> Option<Vec<u8>> {
    let packed = std::fs::read(concat!(env!("CARGO_MANIFEST_DIR"), "/../climatology/climate_grid_025.bin.zst")).ok()?;
    let mut bytes = Vec::new();
    ruzstd::decoding::StreamingDecoder::new(packed.as_slice()).ok()?.read_to_end(&mut bytes).ok()?;
    Some(bytes)
}

fn coordinates(c: &mut Criterion) {
    c.bench_function("grid/unpack", |b| b.iter(unpacked));
    let Some(bytes) = unpacked() else { return };
    c.bench_function("grid/read", |b| b.iter(|| Grid::read(black_box(&bytes))));
    let Ok(grid) = Grid::read(&bytes) else { return };
    for (name, latitude_deg, longitude_deg) in
        [("De Bilt", 52.1, 5.18), ("Punjab", 30.9, 75.85), ("Yakutia", 62.03, 129.73), ("Fiji", -16.8, 179.9)]
    {
        let place = Coordinates { latitude_deg, longitude_deg, elevation_m: None };
        c.bench_function(&format!("estimate/{name}"), |b| b.iter(|| grid.estimate(black_box(place))));
    }
}

criterion_group!(benches, coordinates);
criterion_main!(benches);
