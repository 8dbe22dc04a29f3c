//! Hardiness zones, heat zones and Köppen classes of whole places.

use lammas_agronomy::origin::Origin;
use lammas_agronomy::season::{Season, SiteShift};

use crate::place::{near, season, station, stations};
use crate::records::record_of;

/// Half zones and classes of the published checks for these records: calendar-year means -16.15, 26.19, 36.19 and
/// 15.75 °F, the class by climaclass 0.3.0; heat zones from the counted days.
#[test]
fn records_have_the_classes_of_the_published_checks() {
    for (series, zone, heat, koppen) in [
        ("champion_nebraska_daily_2006_2017.csv", "5a", 7, "BSk"),
        ("cordoba_south_daily_2010_2021.csv", "9b", 8, "Cwa"),
        ("de_bilt_daily_2010_2019.csv", "8b", 2, "Cfb"),
        ("tunis_daily_1994_2001.csv", "10b", 8, "BSh"),
    ] {
        let season = Season::new(&record_of(series).profile, SiteShift::default());
        let (found, _) = season.hardiness_zone().unwrap();
        assert_eq!(found.to_string(), zone, "{series}");
        assert_eq!((season.heat_zone(), season.heat_days().1), (heat, Origin::Measured), "{series}");
        assert_eq!(season.koppen(), Some(koppen), "{series}");
    }
}

/// Of five records 13.2, 69.0, 97.8, 99.9 and 4.8 heat days a year were counted; from their normals the likely error
/// is some 10 days.
#[test]
fn heat_days_from_normals_come_near_the_counted_ones() {
    for (name, counted) in [("Champion NE", 69.0), ("Cordoba AR", 97.8), ("Tunis TN", 99.9), ("De Bilt NL", 4.8)] {
        let (days, origin) = season(&station(name)).heat_days();
        near(days, counted, 10.0);
        assert_eq!(origin, Origin::Computed);
    }
}

#[test]
fn a_frost_hollow_lies_in_a_zone_as_cold_or_colder() {
    for place in stations() {
        let level = Season::new(&place.profile, SiteShift::default());
        let hollow = Season::new(&place.profile, SiteShift { frost_hollow: true });
        assert!(hollow.hardiness_zone().unwrap().0 <= level.hardiness_zone().unwrap().0, "{}", place.name);
        assert_eq!(hollow.heat_zone(), level.heat_zone());
    }
}

#[test]
fn without_rain_there_is_no_koppen_class() {
    let mut profile = station("De Bilt NL");
    profile.normals.rain_mm = None;
    assert_eq!(season(&profile).koppen(), None);
}
