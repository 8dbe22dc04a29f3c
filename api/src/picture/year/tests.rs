//! What is drawn, read back with an XML parser.

use lammas_agronomy::profile::{DailyWeather, Forecast, Profile};
use lammas_agronomy::season::SiteShift;
use lammas_engine::explain::season::whole;
use lammas_engine::explain::words::date;
use roxmltree::{Document, Node};

use super::*;
use crate::picture::canvas::WIDTH;
use crate::picture::measure;
use crate::picture::palette::{HEADING_SIZE, TEXT_SIZE};
use crate::sets::embedded;

/// A picture with what it was drawn from.
struct Drawn {
    season: SeasonWhole<'static>,
    svg: String,
    span: Span,
}

fn day(year: i32, month: u32, day: u32) -> Day {
    Day::from_date(chrono::NaiveDate::from_ymd_opt(year, month, day).expect("a date"))
}

fn drawn(profile: Profile, on: Day, language: &str) -> Drawn {
    // The season borrows from it, and the tests look at both.
    let climate = Box::leak(Box::new(Climate::new(None, profile, SiteShift::default())));
    let season = whole(climate, on, language);
    let year = Year { climate, season: &season, day: on, is_today: false, place: "Here & <there>", language };
    let svg = draw(year);
    let span = Span::of(&season, on);
    Drawn { season, svg, span }
}

/// Registered climates, and the odd ones: no rain, all frost, polar, on the equator.
fn places() -> Vec<(String, Profile)> {
    let set = embedded::set().expect("it loads");
    let registered = set.pack.climates.iter().map(|filed| {
        let profile = lammas_engine::question::understand::profile(&filed.entry.profile, "").expect("sound");
        (filed.entry.id.value.clone(), profile)
    });
    let polar_c = [-13.0, -14.0, -13.0, -10.0, -3.0, 2.0, 5.0, 4.0, 0.0, -6.0, -9.0, -12.0];
    let odd = [
        ("even", Profile::of_temperatures(0.0, [18.0; 12], [29.0; 12])),
        ("all frost", Profile::of_temperatures(-88.0, [-60.0; 12], [-20.0; 12])),
        ("polar", Profile::of_temperatures(78.2, polar_c, polar_c.map(|tmin_c| tmin_c + 5.0))),
        ("no range", Profile::of_temperatures(40.0, [10.0; 12], [10.0; 12])),
    ];
    registered.chain(odd.map(|(name, profile)| (name.to_owned(), profile))).collect()
}

/// A profile with its weather: 40 days before the day with a gap, ten days of forecast.
fn with_weather(mut profile: Profile, on: Day) -> Profile {
    let weather = |day: Day, tmin_c: f64| DailyWeather {
        tmin_c: Some(tmin_c),
        tmax_c: Some(tmin_c + 11.5),
        rain_mm: Some(if day.number() % 5 == 0 { 9.0 } else { 0.0 }),
        ..DailyWeather::unknown(day)
    };
    profile.observations = (1..=40).rev().filter(|ago| *ago != 20).map(|ago| weather(on - ago, 3.0)).collect();
    profile.forecast = Some(Forecast { issued: on, days: (0..10).map(|ahead| weather(on + ahead, 31.0)).collect() });
    profile
}

fn elements<'a>(document: &'a Document<'_>, name: &'static str) -> impl Iterator<Item = Node<'a, 'a>> {
    document.root_element().descendants().filter(move |node| node.tag_name().name() == name)
}

fn text_of(svg: &str, name: &'static str) -> String {
    let document = Document::parse(svg).expect("XML");
    elements(&document, name).next().and_then(|node| node.text()).unwrap_or_default().to_owned()
}

fn number(node: &Node<'_, '_>, name: &str) -> f64 {
    node.attribute(name).and_then(|value| value.parse().ok()).unwrap_or_else(|| panic!("{name} of {node:?}"))
}

/// Left, top, right, bottom of each text, with it.
fn boxes(svg: &str) -> Vec<(f64, f64, f64, f64, String)> {
    let document = Document::parse(svg).expect("XML");
    elements(&document, "text")
        .map(|node| {
            let text = node.text().unwrap_or_default();
            let size = if node.attribute("class") == Some("heading") { HEADING_SIZE } else { TEXT_SIZE };
            let wide = measure::width(text, size);
            let (x, y) = (number(&node, "x"), number(&node, "y"));
            let left = match node.attribute("text-anchor") {
                Some("middle") => x - wide / 2.0,
                Some("end") => x - wide,
                _ => x,
            };
            // Capitals are some 0.73 of the size high, and tails hang some 0.2 below (read off DejaVu Sans).
            (left, y - 0.73 * size, left + wide, y + 0.2 * size, text.to_owned())
        })
        .collect()
}

#[test]
fn no_text_covers_another_and_none_sticks_out() {
    for (name, profile) in places() {
        for language in ["en", "es"] {
            for on in [day(2026, 1, 1), day(2026, 3, 20), day(2028, 2, 29), day(2026, 6, 21), day(2026, 12, 20)] {
                let svg = drawn(with_weather(profile.clone(), on), on, language).svg;
                let document = Document::parse(&svg).expect("XML");
                let height: f64 = document
                    .root_element()
                    .attribute("viewBox")
                    .and_then(|all| all.rsplit(' ').next()?.parse().ok())
                    .expect("a height");
                let boxes = boxes(&svg);
                for (place, one) in boxes.iter().enumerate() {
                    let inside = one.0 >= 0.0 && one.1 >= 0.0 && one.2 <= WIDTH + 0.1 && one.3 <= height;
                    assert!(inside, "{name} {language} {on:?}: {one:?}");
                    for other in boxes.iter().skip(place + 1) {
                        // Rounding to a tenth moves a text by less than this.
                        let near = 0.2;
                        let apart = one.2 <= other.0 + near
                            || other.2 <= one.0 + near
                            || one.3 <= other.1 + near
                            || other.3 <= one.1 + near;
                        assert!(apart, "{name} {language} {on:?}: {one:?} {other:?}");
                    }
                }
            }
        }
    }
}

#[test]
fn every_number_of_a_picture_is_a_number() {
    for (name, profile) in places() {
        let svg = drawn(profile, day(2026, 9, 15), "en").svg;
        for word in ["NaN", "inf", "\"\"", "-0 ", "-0.0"] {
            assert!(!svg.contains(word), "{name}: {word}");
        }
        let document = Document::parse(&svg).expect("XML");
        for path in elements(&document, "path") {
            let way = path.attribute("d").expect("a way");
            let all = way.trim_end_matches('z').split(['M', 'L', ' ']).filter(|part| !part.is_empty());
            for number in all {
                let number: f64 = number.parse().unwrap_or_else(|_| panic!("{name}: {number}"));
                assert!((0.0..2000.0).contains(&number), "{name}: {number}");
            }
        }
    }
}

#[test]
fn the_text_of_a_picture_has_every_marker_with_its_date_or_its_state() {
    for (name, profile) in places() {
        for language in ["en", "es"] {
            let Drawn { season, svg, span } = drawn(profile.clone(), day(2026, 9, 15), language);
            let text = text_of(&svg, "desc");
            for marker in &season.brief.markers {
                match marker.nearest {
                    Some(nearest) => {
                        let on = span.on(Day::from_date(nearest).climate_day());
                        assert!(span.has(on), "{name}: {}", marker.name);
                        let mut told = format!("{}: {}", marker.words, date(on, language));
                        if let Some(error) = marker.likely_error_days {
                            told.push_str(&format!(" (± {error} "));
                        }
                        assert!(text.contains(&told), "{name} {language}: {told} in {text}");
                    }
                    None => {
                        let says = match (marker.state, language) {
                            ("never", "en") => "Its season never comes here: ",
                            ("never", _) => "Su época nunca llega aquí: ",
                            ("always", "en") => "Its season never ends here: ",
                            ("always", _) => "Su época nunca acaba aquí: ",
                            ("even", "en") => "The year is too even to have it: ",
                            ("even", _) => "El año es demasiado parejo para tenerlo: ",
                            (_, "en") => "Not known: ",
                            _ => "No se sabe: ",
                        };
                        // The names up to the end of a sentence that begins so.
                        let listed = text.split(says).skip(1).filter_map(|rest| rest.split('.').next());
                        let found = listed.into_iter().any(|names| names.contains(&marker.words));
                        assert!(found, "{name} {language}: {} {says} in {text}", marker.words);
                    }
                }
            }
        }
    }
}

#[test]
fn the_text_of_a_picture_has_the_numbers_of_the_day_and_all_that_is_written_in_it() {
    for (name, profile) in places() {
        let on = day(2026, 9, 15);
        let Drawn { season, svg, .. } = drawn(with_weather(profile, on), on, "en");
        let text = text_of(&svg, "desc");
        let brief = &season.brief;
        for told in [
            format!("usual minimum {:.1} °C", brief.tmin_c + 0.0),
            format!("maximum {:.1} °C", brief.tmax_c + 0.0),
            format!("ET0 {:.1} mm a day", brief.et0_mm_day),
            format!("{:.1} h of daylight", brief.daylength_h),
            "Observed 6 August to 14 September: minimum down to 3.0 °C (37 °F), maximum up to 14.5 °C (58 °F), rain"
                .to_owned(),
            "Forecast 15 September to 24 September: minimum down to 31.0 °C".to_owned(),
        ] {
            assert!(text.contains(&told), "{name}: {told} in {text}");
        }
        // Sentences of the picture, its axes and names apart, stand in the text word for word.
        let document = Document::parse(&svg).expect("XML");
        let lines: Vec<&str> = elements(&document, "text")
            .filter(|node| node.attribute("class").is_none() && number(node, "x") < 10.0)
            .filter_map(|node| node.text())
            .collect();
        assert!(lines.len() > 6, "{name}: {lines:?}");
        for line in lines {
            assert!(text.contains(&line.replace(measure::NO_BREAK, " ")), "{name}: {line} in {text}");
        }
    }
}

#[test]
fn missing_rain_is_said_and_not_drawn() {
    let dry = drawn(Profile::of_temperatures(40.0, [5.0; 12], [20.0; 12]), day(2026, 9, 15), "en").svg;
    assert!(text_of(&dry, "desc").contains("Rain is not known here."));
    assert!(boxes(&dry).iter().any(|(.., text)| text == "Rain is not known here."));
    let steps = |svg: &str| {
        let document = Document::parse(svg).expect("XML");
        elements(&document, "path").filter(|node| node.attribute("class") == Some("step rain")).count()
    };
    assert_eq!(steps(&dry), 0);
    let mut rainy = Profile::of_temperatures(40.0, [5.0; 12], [20.0; 12]);
    rainy.normals.rain_mm = Some([0.0; 12]);
    let no_rain_falls = drawn(rainy, day(2026, 9, 15), "en").svg;
    assert_eq!(steps(&no_rain_falls), 1);
    assert!(text_of(&no_rain_falls, "desc").contains("Rain: 0 mm (0 in) a year"));
}

#[test]
fn the_year_begins_where_the_warm_half_is_not_torn() {
    let begins = |latitude_deg: f64, warmest_first: bool, on: Day| {
        let mut tmin_c = [4.0, 5.0, 8.0, 11.0, 14.0, 17.0, 19.0, 18.0, 15.0, 12.0, 8.0, 5.0];
        if warmest_first {
            tmin_c.rotate_left(6);
        }
        drawn(Profile::of_temperatures(latitude_deg, tmin_c, tmin_c.map(|c| c + 10.0)), on, "en").span.first().date()
    };
    // The solstices fall on 21 or 22 December and on 20 or 21 June (almanacs); FAO-56 equation 24 is good to a day.
    for (latitude_deg, warmest_first, on, solstice) in [
        (40.0, false, day(2026, 9, 15), day(2025, 12, 21)),
        (40.0, false, day(2026, 12, 31), day(2026, 12, 21)),
        (-40.0, true, day(2026, 9, 15), day(2026, 6, 21)),
        (-40.0, true, day(2026, 2, 1), day(2025, 6, 21)),
    ] {
        let begun = Day::from_date(begins(latitude_deg, warmest_first, on));
        assert!((begun - solstice).abs() <= 1, "{latitude_deg} {begun:?}");
    }
    let coldest_week = begins(2.0, false, day(2026, 9, 15)).to_string();
    assert!(coldest_week.as_str() > "2025-12-25" && coldest_week.as_str() < "2026-02-15", "{coldest_week}");
    let even = drawn(Profile::of_temperatures(0.0, [20.0; 12], [30.0; 12]), day(2026, 9, 15), "en");
    assert_eq!(even.span.first(), day(2026, 1, 1));
}

#[test]
fn a_year_has_a_tick_for_each_of_its_weeks() {
    let svg = drawn(Profile::of_temperatures(40.0, [5.0; 12], [20.0; 12]), day(2026, 9, 15), "en").svg;
    let document = Document::parse(&svg).expect("XML");
    let ticks = elements(&document, "line")
        .filter(|node| node.attribute("class") == Some("axis"))
        .filter(|node| (number(node, "y2") - number(node, "y1") - 3.0).abs() < 0.01);
    // 52 weeks have 53 ends, in each of the three panels.
    assert_eq!(ticks.count(), 3 * 53);
}

#[test]
fn observed_days_and_forecast_days_are_drawn_apart() {
    let on = day(2026, 9, 15);
    let profile = with_weather(Profile::of_temperatures(40.0, [5.0; 12], [20.0; 12]), on);
    let count = |svg: &str, name: &'static str, class: &str| {
        let document = Document::parse(svg).expect("XML");
        elements(&document, name).filter(|node| node.attribute("class") == Some(class)).count()
    };
    let Drawn { svg, .. } = drawn(profile.clone(), on, "en");
    // 39 days and five strokes in the key; one outline and its key, rain of seven days on two sides of a gap and its key.
    assert_eq!(count(&svg, "line", "seen"), 39 + 5);
    assert_eq!(count(&svg, "path", "told"), 2 + 3);
    assert_eq!(count(&svg, "path", "ahead"), 2);
    // A forecast that is too old for the day is said, not drawn.
    let mut stale = profile;
    stale.forecast = stale.forecast.map(|forecast| Forecast { issued: on - 9, ..forecast });
    let Drawn { svg, .. } = drawn(stale, on, "en");
    assert_eq!(count(&svg, "path", "ahead"), 0);
    assert!(text_of(&svg, "desc").contains("Forecast: not used"));
}

#[test]
fn a_picture_runs_nothing_and_loads_nothing() {
    let svg = drawn(Profile::of_temperatures(40.0, [5.0; 12], [20.0; 12]), day(2026, 9, 15), "en").svg;
    let document = Document::parse(&svg).expect("XML");
    for node in document.descendants().filter(Node::is_element) {
        assert!(!["script", "image", "use", "a", "foreignObject"].contains(&node.tag_name().name()), "{node:?}");
        for attribute in node.attributes() {
            assert!(!attribute.name().starts_with("on") && attribute.name() != "href", "{attribute:?}");
        }
    }
    assert_eq!(document.root_element().attribute("role"), Some("img"));
    assert_eq!(text_of(&svg, "title"), "A year in: Here & <there>");
}
