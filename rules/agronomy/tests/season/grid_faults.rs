//! Bytes that are no grid are refused with the reason.

use lammas_agronomy::climatology::Grid;

use crate::place::climate_grid;

fn fault(bytes: &[u8]) -> String {
    Grid::read(bytes).unwrap_err().to_string()
}

fn changed(at: usize, to: &[u8]) -> String {
    let mut bytes = climate_grid();
    bytes[at..at + to.len()].copy_from_slice(to);
    fault(&bytes)
}

#[test]
fn a_grid_that_is_cut_or_goes_on_is_refused() {
    let whole = climate_grid();
    assert_eq!(fault(b""), "the grid ends within its head: expected 4 bytes there, found 0");
    assert_eq!(fault(&whole[..10]), "the grid ends within its head: expected 4 bytes there, found 2");
    assert!(fault(&whole[..100]).starts_with("the grid ends within its index: "));
    assert!(fault(&whole[..8_000_000]).starts_with("the grid ends within its rain in mm: expected 629822 bytes there"));
    assert_eq!(
        fault(&whole[..whole.len() - 1]),
        "the grid ends within its land: expected 314911 bytes there, found 314910"
    );
    assert_eq!(fault(&[whole, vec![0; 3]].concat()), "3 bytes follow the end of the grid");
}

#[test]
fn a_head_that_fits_no_grid_is_refused_before_anything_is_made() {
    assert_eq!(changed(0, b"LCLX"), "the grid does not begin with `LCLG`");
    assert_eq!(changed(4, &[2, 0]), "the grid has layout 2, expected 1");
    assert_eq!(changed(6, &[3, 0]), "the grid has 721 rows and 1440 columns at a step of 3 quarter degrees");
    assert_eq!(changed(8, &[255; 4]), "the grid has 4294967295 rows and 1440 columns at a step of 1 quarter degrees");
    assert_eq!(changed(16, &[0, 0, 0, 0]), "the grid's index names 314911 points, its head 0");
    assert!(changed(20, &[255; 4]).starts_with("the grid ends within its index: "));
}

#[test]
fn runs_and_values_that_no_place_has_are_refused() {
    // The first row's count of runs stands at byte 24; the pole has none, so the runs of all rows after it shift.
    assert!(changed(24, &[1, 0]).contains("index"), "{}", changed(24, &[1, 0]));
    let whole = climate_grid();
    let land = whole.len() - 1;
    assert_eq!(changed(land, &[101]), "the land in % of point 314910 is 101, expected 0 to 100");
    // The first temperature: low byte first, its high byte after all low bytes.
    let index = u32::from_le_bytes(whole[20..24].try_into().unwrap()) as usize;
    let high = 24 + index + 314_911;
    assert!(changed(high, &[255]).starts_with("the temperature in 0.1 °C of point 0 is "));
}
