//! Real daily records, from the file to advice: what comes out must be true of the place. What is known of the places
//! is recalled from climate tables, each said beside it; the tolerances allow for a record of other years than theirs.

use std::path::Path;

use chrono::NaiveDate;
use lammas_tests::server::Server;
use serde_json::{Value, json};

struct Recorded {
    made: Value,
    season: Value,
    advice: Value,
}

/// The profile of a record, the season that it makes on 15 September, and advice there for a rose in its fifth year with
/// spent blooms.
fn record(file: &str, place: &str) -> Recorded {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("data").join(file);
    let text = std::fs::read(&path).unwrap_or_else(|error| panic!("{}: {error}", path.display()));
    let server = Server::start();
    let path = format!("/v1/climate-profiles?{place}");
    let made = server.send("POST", &path, &[("content-type", "text/csv")], &text).ok();
    let climate = &made["climate"];
    let season = server.post("/v1/season", &json!({"climate": climate, "date": "2026-09-15"})).ok();
    let rose = json!({"climate": climate, "date": "2026-09-15", "detail": "full",
        "plant": {"type": "rose", "traits": {"flowering": "repeat", "form": "shrub"}, "age_years": 4},
        "condition": {"signs": [{"sign": "spent-blooms"}, {"sign": "crowded-centre"}]}});
    let advice = server.post("/v1/advice", &rose).ok();
    assert_eq!(advice["climate"]["sha256"], made["climate_sha256"], "{file}: the profile goes in as it came out");
    assert_eq!(advice["climate"]["origin"], "measured", "{file}");
    Recorded { made, season, advice }
}

impl Recorded {
    fn normal(&self, name: &str, month: usize) -> f64 {
        self.made["climate"]["normals"][name][month - 1].as_f64().expect("a number")
    }

    fn near(&self, name: &str, month: usize, known: f64, tolerance: f64) {
        let found = self.normal(name, month);
        assert!((found - known).abs() <= tolerance, "{name} of month {month} is {found}, known {known} ± {tolerance}");
    }

    fn rain_of_year(&self, known_mm: f64, tolerance_mm: f64) {
        let found: f64 = (1..=12).map(|month| self.normal("rain_mm", month)).sum();
        assert!((found - known_mm).abs() <= tolerance_mm, "{found} mm a year, known {known_mm} ± {tolerance_mm}");
    }

    fn marker(&self, name: &str) -> &Value {
        let markers = self.season["markers"].as_array().expect("markers");
        markers.iter().find(|marker| marker["name"] == name).unwrap_or_else(|| panic!("no marker `{name}`"))
    }

    /// A marker within days of a day of the year.
    fn around(&self, name: &str, month: u32, day: u32, days: i64) {
        let marker = self.marker(name);
        let found: NaiveDate =
            marker["nearest"].as_str().and_then(|d| d.parse().ok()).unwrap_or_else(|| panic!("{marker}"));
        let off = (-1..=1)
            .filter_map(|years| NaiveDate::from_ymd_opt(2026 + years, month, day))
            .map(|known| (found - known).num_days().abs())
            .min();
        assert!(off.is_some_and(|off| off <= days), "{name} on {found}, known about {month}-{day} ± {days} days");
    }

    /// The days of heat that were counted in the record come back as a fact of the season, not reckoned anew.
    fn heat_days(&self, counted: f64) {
        assert_eq!(self.made["climate"]["heat_days_a_year"], counted);
        let facts = self.season["facts"].as_array().expect("facts");
        let fact = facts.iter().find(|fact| fact["name"] == "climate.heat_days").expect("the fact");
        assert_eq!(fact["value"].as_f64(), Some(counted.round()), "{fact}");
        assert_eq!(fact["origin"], "measured");
    }

    fn list(&self, list: &str) -> Vec<&str> {
        self.advice[list].as_array().expect("a list").iter().filter_map(|entry| entry["id"].as_str()).collect()
    }
}

#[test]
fn the_high_plains_have_frost_in_two_weeks_and_the_rose_is_left_to_harden() {
    let champion = record("champion_nebraska_daily_2006_2017.csv", "latitude=40.4&longitude=-101.7&elevation_m=1000");
    assert_eq!(champion.made["quality"]["gap_count"], 0);
    // Imperial, Nebraska, 1991-2020: January -9/5 °C, July 16/32 °C, 500 mm; half of the years have their last 0 °C by
    // about 5 May and their first by about 1 October (national climate normals and freeze tables, from memory).
    champion.near("tmin_c", 1, -9.5, 2.5);
    champion.near("tmax_c", 7, 32.0, 2.0);
    champion.rain_of_year(480.0, 100.0);
    // 828 maxima above 30 °C in twelve years, counted in the file.
    champion.heat_days(69.0);
    champion.around("last_frost.median", 5, 5, 10);
    champion.around("first_frost.median", 10, 1, 10);
    assert_eq!(champion.marker("first_frost.median")["origin"], "measured");
    // Hardiness zone 5b, -26.1 to -23.3 °C, of the 2012 map (from memory), give or take a half zone.
    let coldest = champion.made["climate"]["extreme_min_c"].as_f64().expect("a number");
    assert!((-28.9..=-20.6).contains(&coldest), "{coldest}");
    assert!(champion.list("held").contains(&"rose.renewal-cut"), "{:?}", champion.list("held"));
    assert!(champion.list("notes").contains(&"rose.now-it-hardens"), "{:?}", champion.list("notes"));
    assert!(!champion.list("tasks").contains(&"rose.feed-liquid"));
}

#[test]
fn by_the_north_sea_it_is_too_late_for_a_cut_too() {
    let de_bilt = record("de_bilt_daily_2010_2019.csv", "latitude=52.10&longitude=5.18&elevation_m=2");
    // De Bilt, 1991-2020: January mean 3.6 °C, July 18.3 °C, 850 mm a year (KNMI normals, from memory).
    for (month, mean) in [(1, 3.6), (7, 18.3)] {
        let found = (de_bilt.normal("tmin_c", month) + de_bilt.normal("tmax_c", month)) / 2.0;
        assert!((found - mean).abs() <= 1.5, "month {month}: {found}");
    }
    de_bilt.rain_of_year(850.0, 100.0);
    // Night frost until late April, again from early November (KNMI, from memory).
    de_bilt.around("last_frost.median", 4, 25, 15);
    de_bilt.around("first_frost.median", 11, 1, 15);
    assert_eq!(de_bilt.marker("hot_season.start")["state"], "never");
    assert_eq!(de_bilt.made["ignored_columns"], json!(["wind10_m_s", "sunshine_h", "solar_mj_m2", "rh_mean_pct"]));
    assert!(!de_bilt.list("tasks").contains(&"rose.renewal-cut"), "{:?}", de_bilt.list("tasks"));
}

#[test]
fn four_years_are_too_few_to_count_frost_in_and_that_is_said() {
    let seattle = record("seattle_daily_2012_2015.csv", "latitude=47.45&longitude=-122.31&elevation_m=113");
    // Seattle-Tacoma, 1981-2010: January 2.7/8.4 °C, August 13.3/24.5 °C, 950 mm; last 0 °C about 10 March, first about
    // 16 November (NOAA normals and freeze tables, from memory). The four years were warmer than most.
    seattle.near("tmin_c", 1, 2.7, 2.0);
    seattle.near("tmax_c", 8, 24.5, 2.5);
    seattle.rain_of_year(950.0, 250.0);
    assert!(seattle.made["climate"]["heat_days_a_year"].is_null());
    seattle.around("last_frost.median", 3, 10, 15);
    seattle.around("first_frost.median", 11, 16, 15);
    assert!(seattle.made["climate"]["counted_frost"].is_null());
    assert_eq!(seattle.marker("first_frost.median")["origin"], "computed");
    assert!(seattle.made["unknown"][0]["words"].as_str().is_some_and(|words| words.contains("Fewer than 8 seasons")));
}

#[test]
fn on_the_african_coast_nothing_waits_for_frost_and_the_rose_is_cut() {
    let tunis = record("tunis_daily_1994_2001.csv", "latitude=36.8&longitude=10.2&elevation_m=4");
    // Tunis, 1981-2010: January 7.6/15.7 °C, August 21.4/33.3 °C, 470 mm, most of it from October to March; no frost in
    // a usual year (national weather service's normals, from memory).
    tunis.near("tmin_c", 1, 7.6, 1.5);
    tunis.near("tmax_c", 8, 33.3, 2.0);
    tunis.rain_of_year(470.0, 90.0);
    // 799 maxima above 30 °C in eight years, counted in the file.
    tunis.heat_days(99.88);
    assert_eq!(tunis.marker("first_frost.median")["state"], "never");
    tunis.around("warmest_week", 8, 1, 15);
    assert!(tunis.list("tasks").contains(&"rose.renewal-cut"), "{:?}", tunis.list("tasks"));
}

#[test]
fn south_of_the_equator_september_is_spring_and_the_last_frost_is_near() {
    let cordoba = record("cordoba_south_daily_2010_2021.csv", "latitude=-31.4&longitude=-64.2&elevation_m=430");
    // Cordoba, Argentina, 1991-2020: January 18/31 °C, July 4.5/18.5 °C, 800 to 900 mm, most of it from October to March;
    // frost between early June and early September (national weather service, from memory).
    cordoba.near("tmax_c", 1, 31.0, 2.5);
    cordoba.near("tmin_c", 7, 4.5, 2.5);
    cordoba.around("first_frost.median", 6, 8, 21);
    cordoba.around("last_frost.median", 9, 1, 21);
    cordoba.around("warmest_week", 1, 5, 21);
    cordoba.around("rains.start", 10, 5, 21);
    assert_eq!(cordoba.season["half"], "warming");
    assert!(!cordoba.list("tasks").contains(&"rose.renewal-cut"), "{:?}", cordoba.list("tasks"));
    assert!(!cordoba.list("notes").contains(&"rose.now-it-hardens"));
}

/// Fallon, Nevada: high desert; July about 34 °C by day, January about -7 °C by night (from memory), 2015 a mild year.
#[test]
fn one_year_in_the_high_desert_without_rain_gives_a_season_and_says_what_it_does_not_tell() {
    let fallon = record("fallon_nv_daily_2015.csv", "latitude=39.4575&longitude=-118.774&elevation_m=1208.5");
    fallon.near("tmax_c", 7, 34.0, 4.0);
    fallon.near("tmin_c", 1, -7.0, 4.0);
    assert!(fallon.made["climate"]["normals"]["rain_mm"].is_null());
    assert!(fallon.made["unknown"].to_string().contains("rain"), "{}", fallon.made["unknown"]);
    fallon.around("last_frost.median", 5, 5, 28);
    fallon.around("first_frost.median", 10, 3, 28);
    assert!(fallon.advice["status"].as_str().is_some_and(|status| status != "needs-facts"));
}
