//! The southern hemisphere is the northern one half a year later.

use lammas_agronomy::calendar::{ClimateDay, Day};
use lammas_agronomy::curve::{Row, Series};
use lammas_agronomy::marker::{Marker, Span, Turn, rains};

use crate::place::{mirrored, season, stations};

#[test]
fn every_marker_moves_by_half_a_year() {
    for place in stations() {
        let north = season(&place.profile);
        let south = season(&mirrored(&place.profile));
        // rain is spread over calendar months, so its season is turned day by day below
        for marker in Marker::FIXED.into_iter().filter(|marker| marker.turn() != Turn::Wet) {
            let (here, there) = (north.marker(marker), south.marker(marker));
            assert_eq!(here.as_str(), there.as_str(), "{} {marker}", place.name);
            if let (Some(here), Some(there)) = (here.day(), there.day()) {
                // the halves of the year differ by up to three days, February being short
                let off = there.days_from(here.plus(182));
                assert!(off.abs() <= 3, "{} {marker}: {here} and {there}", place.name);
            }
        }
        assert_eq!(north.climate(), south.climate(), "{}", place.name);
    }
}

#[test]
fn rains_turn_with_the_year_day_by_day() {
    for place in stations() {
        if place.profile.normals.rain_mm.is_none() {
            continue;
        }
        let season = season(&place.profile);
        let here = Row::from_fn(|day| season.curve(Series::Rain, day).unwrap());
        let there = Row::from_fn(|day| here.at(day.plus(-182)));
        let turned = |span: Span| match span {
            Span::Seasonal { start, end } => Span::Seasonal { start: start.plus(182), end: end.plus(182) },
            absent => absent,
        };
        let ((first, second), mirrored) = (rains(&here), rains(&there));
        assert_eq!((turned(first), turned(second)), mirrored, "{}", place.name);
    }
}

#[test]
fn warmth_that_is_left_is_the_same_half_a_year_later() {
    let new_year = Day::from_date("2025-01-01".parse().unwrap());
    for place in stations() {
        let north = season(&place.profile);
        let south = season(&mirrored(&place.profile));
        for day in ClimateDay::all().step_by(30) {
            let north_cd = north.heat_left_cd(new_year + day.index() as i32);
            let there = ClimateDay::around(day.index() as i32 + 182).in_year(2025);
            let south_cd = south.heat_left_cd(there);
            // at an edge one may already count as over, so only days well inside are compared
            if north_cd > 200.0 && south_cd > 200.0 {
                let off = (north_cd - south_cd).abs();
                assert!(off < 120.0, "{} {day}: {north_cd} {south_cd}", place.name);
            }
        }
    }
}
