//! Every file of published values, run through the door of quantities.

use std::path::Path;

use lammas_agronomy::published::{Failure, check};

/// The cases of a file that fail. A file has at least as many cases as are counted
/// here, so that a file cut short is found out.
#[expect(clippy::disallowed_methods, reason = "the crate reads no files, its tests must")]
fn failures(file: &str, cases: usize) -> Vec<Failure> {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("../..");
    let read = |path: &str| std::fs::read_to_string(root.join(path)).map_err(|error| format!("`{path}`: {error}"));
    let report = check(&read(&format!("tests/published/{file}.json")).unwrap(), &read).unwrap();
    assert!(report.passed + report.failed.len() >= cases, "{file} has lost cases");
    report.failed
}

fn lines(failed: &[Failure]) -> String {
    failed.iter().map(|failure| format!("\n{failure}")).collect()
}

macro_rules! whole_file_passes {
    ($($test:ident: $file:literal has $cases:literal;)*) => {
        $(
            #[test]
            fn $test() {
                let failed = failures($file, $cases);
                assert!(failed.is_empty(), "{}", lines(&failed));
            }
        )*
    };
}

whole_file_passes! {
    the_sun_s_path_agrees_with_the_paper_and_the_almanac: "solar" has 54;
    radiation_agrees_with_the_paper: "radiation" has 57;
    vapour_pressure_agrees_with_the_paper_s_tables: "humidity" has 42;
    penman_monteith_agrees_with_the_paper_and_with_real_days: "et0_pm" has 77;
    hargreaves_agrees_with_the_paper_and_two_libraries: "et0_hargreaves" has 43;
    degree_days_agree_with_the_tables_and_real_years: "degree_days" has 216;
    soil_water_agrees_with_the_paper_s_examples: "soil_water" has 57;
    crop_coefficients_agree_with_the_paper: "coefficients" has 31;
    fertiliser_sums_agree_with_extension_sheets: "fertiliser" has 38;
    climate_classes_agree_with_another_program: "koppen" has 23;
    hardiness_zones_agree_with_the_printed_bands_and_real_years: "hardiness" has 36;
    heat_zones_agree_with_the_printed_bands_and_real_years: "heat_days" has 21;
    frost_dates_agree_with_counts_of_real_years: "frost" has 44;
    units_agree_with_their_definitions: "units" has 22;
    irrigation_sums_agree_with_worksheets_and_the_paper: "irrigation" has 15;
    sunrise_and_sunset_agree_with_two_almanacs: "sun_times" has 90;
    heat_stress_agrees_with_the_weather_service_and_three_libraries: "heat_stress" has 70;
    chill_agrees_with_a_library_and_real_winters: "chill" has 60;
    pest_models_agree_with_extension_lists_and_real_records: "pests" has 50;
    sulphur_and_lime_agree_with_their_tables: "soil_ph" has 29;
}
