//! Every field of a question for advice is broken in every way that it can be: the answer names that very place.

use lammas_tests::server::Server;
use serde_json::{Value, json};

/// A question that says everything that can be said today.
fn everything() -> Value {
    let year = |value: f64| json!(vec![value; 12]);
    let day = |date: &str| json!({"date": date, "tmin_c": 14.0, "tmax_c": 33.5, "rain_mm": 0.5, "wind_kmh": 9.0});
    json!({
        "climate": {"latitude": 34.2, "longitude": -118.6, "elevation_m": 230.0,
            "normals": {"tmin_c": [5.0, 5.8, 7.2, 9.0, 12.0, 15.0, 18.0, 18.2, 16.0, 12.2, 8.0, 5.2],
                "tmax_c": [19.5, 20.5, 22.5, 25.5, 28.5, 33.0, 36.8, 37.0, 33.4, 28.0, 22.8, 19.0],
                "rain_mm": year(10.0), "rh_pct": year(50.0), "wind_ms": year(2.0), "sunshine_h": year(8.0)},
            "origin": "measured",
            "counted_frost": {"seasons": 12, "share_pct": 100.0, "killing_share_pct": 75.0,
                "last": {"early": "01-10", "median": "02-01", "late": "02-25"},
                "first": {"early": "12-01", "median": "12-20", "late": "12-30"},
                "last_killing": "01-20", "first_killing": "12-25"},
            "frost": {"last": {"early": "01-10", "median": "02-01", "late": "02-25"},
                "first": {"early": "12-01", "median": "12-20", "late": "12-30"}},
            "extreme_min_c": -2.0, "heat_days_a_year": 61.5, "tmin_sd_k": year(2.5), "observations": [day("2026-09-14")],
            "forecast": {"issued": "2026-09-15", "days": [day("2026-09-15"), day("2026-09-16")]},
            "differences": {"nights_k": -1.0, "afternoons_k": 0.5, "summer_afternoons_k": -2.0, "last_frost_days": 7,
                "first_frost_days": -14, "frost_pocket": false, "warm_wall": true, "roof": false}},
        "date": "2026-09-15",
        "plant": {"type": "rose", "traits": {"flowering": "repeat"}, "age_years": 4.0, "planted_on": "2022-02-01",
            "height_m": 1.2, "canopy_diameter_m": 0.9, "trunk_diameter_cm": 4.0, "stage": "heat-rest",
            "stage_since": "2026-08-01", "bearing": false, "hips_wanted": false, "just_bought": false, "in_leaf": true},
        "site": {"planting": "container", "container_volume_l": 40.0, "container_material": "clay",
            "exposure": "afternoon-sun", "wind": "sheltered", "reflected_heat": true, "mulched": true,
            "frost_hollow": false, "soil": {"texture": "clay-loam", "ph": 8.2, "ec_ds_m": 1.1, "drainage": "good",
            "moisture": "dry"}, "pets": true, "children": false, "near_water": false, "bees_working": false,
            "food_use": false, "region": "US-CA", "region_flags": ["water-ban"]},
        "water": {"method": "basin", "source_alkaline": true, "ec_ds_m": 0.7, "restricted_days": ["monday", "friday"]},
        "weather": {"leaf_wet_h": 3.0},
        "wishes": ["transplant"],
        "condition": {"signs": [{"sign": "spent-blooms", "severity": "moderate", "share_pct": 20.0, "since": "2026-09-01"}],
            "not_seen": ["webbing"], "looked_closely": true, "vigour": "normal", "problems": ["heat-scorch"]},
        "history": [{"job": "feed", "material": "fish-emulsion", "date": "2026-09-01", "label_days_to_harvest": 1},
            {"rule": "rose.deep-soak", "date": "2026-09-03"}],
        "rule_sets": ["core"], "language": "en", "units": "both", "detail": "full", "recall": false, "limit": 5
    })
}

/// Fields whose text is free: any word will do.
const FREE: [&str; 1] = ["/site/region_flags/0"];

/// The pointer of every leaf, and of every object.
fn walk(value: &Value, at: &str, leaves: &mut Vec<String>, objects: &mut Vec<String>) {
    match value {
        Value::Object(members) => {
            objects.push(at.to_owned());
            for (name, member) in members {
                walk(member, &format!("{at}/{name}"), leaves, objects);
            }
        }
        Value::Array(entries) => {
            for (place, entry) in entries.iter().enumerate() {
                walk(entry, &format!("{at}/{place}"), leaves, objects);
            }
        }
        _ => leaves.push(at.to_owned()),
    }
}

#[test]
fn the_whole_question_is_answered() {
    for question in [everything(), other_normals()] {
        let answer = Server::start().post("/v1/advice", &question);
        assert_eq!(answer.status, 200, "{:?}", answer.body);
    }
}

/// The same with the other two ways of telling humidity and radiation.
fn other_normals() -> Value {
    let mut question = everything();
    let normals = question["climate"]["normals"].as_object_mut().expect("normals");
    for (gone, new, value) in [("rh_pct", "dew_point_c", 4.0), ("sunshine_h", "solar_mj", 15.0)] {
        normals.remove(gone);
        normals.insert(new.to_owned(), json!(vec![value; 12]));
    }
    question
}

#[test]
fn every_field_that_is_broken_is_named() {
    let server = Server::start();
    all_named(&server, "/v1/advice", &everything(), 600);
    all_named(&server, "/v1/advice", &other_normals(), 600);
}

#[test]
fn every_field_of_a_diagnosis_that_is_broken_is_named() {
    let (server, mut whole) = (Server::start(), everything());
    let members = whole.as_object_mut().expect("an object");
    for of_advice_only in ["wishes", "units", "detail", "recall", "limit"] {
        members.remove(of_advice_only);
    }
    assert_eq!(server.post("/v1/diagnosis", &whole).status, 200);
    all_named(&server, "/v1/diagnosis", &whole, 600);
    whole.as_object_mut().expect("an object").remove("climate");
    all_named(&server, "/v1/diagnosis", &whole, 100);
}

#[test]
fn every_field_of_a_record_that_is_broken_is_named() {
    let day = |date: &str| json!({"date": date, "tmin_c": 1.5, "tmax_c": 9.0, "precip_mm": 0.5});
    let whole = json!({"latitude": 40.4, "longitude": -101.7, "elevation_m": 1000.0, "recent_days": 5, "language": "en",
        "days": [day("2025-01-01"), day("2025-01-02")]});
    all_named(&Server::start(), "/v1/climate-profiles", &whole, 40);
}

fn all_named(server: &Server, path: &str, whole: &Value, least: usize) {
    let (mut leaves, mut objects) = (Vec::new(), Vec::new());
    walk(whole, "", &mut leaves, &mut objects);
    let mut tried = 0;
    let mut silent = Vec::new();
    let mut broken = |at: &str, value: Value, named: &str| {
        let mut question = whole.clone();
        *question.pointer_mut(at).expect("it is there") = value.clone();
        let answer = server.post(path, &question);
        let is_named = (400..500).contains(&answer.status)
            && answer.errors().iter().any(|(pointer, detail)| pointer == named && !detail.is_empty());
        tried += 1;
        if !is_named {
            silent.push(format!(
                "{at} = {value}: {} {}",
                answer.status,
                answer.body.chars().take(300).collect::<String>()
            ));
        }
    };
    for at in &leaves {
        let value = whole.pointer(at).expect("it is there");
        broken(at, json!({"wrong": true}), at);
        match value {
            Value::Number(_) => {
                broken(at, json!(1e7), at);
                broken(at, json!(-1e7), at);
                broken(at, json!("twelve"), at);
            }
            Value::Bool(_) => broken(at, json!("perhaps"), at),
            Value::String(_) if !FREE.contains(&at.as_str()) => {
                broken(at, json!("no-such-word"), at);
                broken(at, json!(7), at);
            }
            _ => {}
        }
    }
    for at in &objects {
        let mut object = whole.pointer(at).expect("it is there").clone();
        object["no_such_field"] = json!(1);
        broken(at, object, &format!("{at}/no_such_field"));
    }
    assert!(tried >= least, "only {tried} were tried");
    assert_eq!(silent, Vec::<String>::new(), "{} of {tried}", silent.len());
}
