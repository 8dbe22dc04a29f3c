use serde_json::{Value, json};
use utoipa::openapi::RefOr;
use utoipa::openapi::schema::Schema;

use super::*;
use crate::openapi::document::schemas_of;

/// The same number in every month.
fn year(value: f64) -> Value {
    json!(vec![value; 12])
}

/// A request that says everything.
fn everything() -> Value {
    let day = json!({"date": "2026-09-14", "tmin_c": 14.0, "tmax_c": 33.5, "rain_mm": 0.0, "wind_kmh": 9.0});
    let months = year(10.0);
    json!({
        "climate": {"latitude": 34.2, "longitude": -118.6, "elevation_m": 230,
            "normals": {"tmin_c": months, "tmax_c": year(24.0), "rain_mm": months, "rh_pct": year(50.0),
                "wind_ms": year(2.0), "sunshine_h": year(8.0)},
            "frost": {"last": {"early": "01-10", "median": "02-01", "late": "02-29"}, "first": {"median": "12-20"}},
            "extreme_min_c": -2.0, "heat_days_a_year": 61.5, "tmin_sd_k": year(2.5), "observations": [day.clone()],
            "forecast": {"issued": "2026-09-15", "days": [day]}},
        "date": "2026-09-15",
        "plant": {"type": "rose", "traits": {"flowering": "repeat"}, "age_years": 4, "planted_on": "2022-02-01",
            "height_m": 1.2, "canopy_diameter_m": 0.9, "trunk_diameter_cm": 4, "stage": "heat-rest",
            "stage_since": "2026-08-01", "bearing": false, "hips_wanted": false, "just_bought": false, "in_leaf": true},
        "site": {"planting": "container", "container_volume_l": 40, "container_material": "clay",
            "exposure": "afternoon-sun", "wind": "sheltered", "reflected_heat": true, "mulched": true,
            "frost_hollow": false, "soil": {"texture": "clay-loam", "ph": 8.2, "ec_ds_m": 1.1, "drainage": "good",
            "moisture": "dry"}, "pets": true, "children": false, "near_water": false, "bees_working": false,
            "food_use": false, "region": "US-CA", "region_flags": ["water-ban"]},
        "water": {"method": "basin", "source_alkaline": true, "ec_ds_m": 0.7, "restricted_days": ["monday", "friday"]},
        "weather": {"leaf_wet_h": 3},
        "wishes": ["transplant"],
        "condition": {"signs": [{"sign": "spent-blooms"}, {"sign": "skeletonised-leaves", "severity": "moderate",
            "share_pct": 20, "since": "2026-09-01"}], "not_seen": ["webbing"], "looked_closely": true,
            "words": "buds stay shut and brown", "vigour": "normal", "problems": ["rose-slug"]},
        "history": [{"job": "feed", "material": "fish-emulsion", "date": "2026-09-01"},
            {"rule": "rose.treat-slug", "date": "2026-09-03", "label_days_to_harvest": 1}],
        "rule_sets": ["core"], "language": "en", "units": "both", "detail": "full", "recall": false, "limit": 5,
        "as_of": "2026-09-15T12:00:00Z"
    })
}

fn read(value: Value) -> AdviceRequest {
    serde_json::from_value(value).expect("the request fits")
}

fn pointers(request: &AdviceRequest) -> Vec<String> {
    match request.check() {
        Ok(()) => Vec::new(),
        Err(problem) => problem.errors().iter().map(|error| error.pointer.clone()).collect(),
    }
}

/// Every schema that a value meets, with its pointer.
fn walk(value: &Value, schema: &Value, all: &Value, at: &str, meet: &mut dyn FnMut(&str, &Value)) {
    let schema = resolved(schema, all);
    meet(at, schema);
    match value {
        Value::Object(members) => {
            for (name, member) in members {
                if let Some(schema) = schema["properties"].get(name) {
                    walk(member, schema, all, &format!("{at}/{name}"), meet);
                } else {
                    assert!(schema["additionalProperties"].is_object(), "`{at}/{name}` stands in no schema");
                }
            }
            for name in schema["properties"].as_object().into_iter().flat_map(|object| object.keys()) {
                meet(&format!("{at}/{name}"), resolved(&schema["properties"][name], all));
            }
        }
        Value::Array(entries) => {
            for (place, entry) in entries.iter().enumerate() {
                walk(entry, &schema["items"], all, &format!("{at}/{place}"), meet);
            }
        }
        _ => {}
    }
}

fn resolved<'a>(schema: &'a Value, all: &'a Value) -> &'a Value {
    let schema = schema["oneOf"].as_array().and_then(|any| any.iter().find(|s| s["type"] != "null")).unwrap_or(schema);
    match schema["$ref"].as_str() {
        Some(name) => &all[name.rsplit('/').next().expect("a name")],
        None => schema,
    }
}

fn schemas() -> Value {
    let schemas: Vec<(String, RefOr<Schema>)> = schemas_of::<AdviceRequest>().into_iter().collect();
    let object = schemas.into_iter().map(|(name, schema)| (name, serde_json::to_value(schema).expect("JSON")));
    Value::Object(object.collect())
}

#[test]
fn a_request_that_says_everything_is_read_and_has_no_fault() {
    assert_eq!(pointers(&read(everything())), Vec::<String>::new());
}

#[test]
fn a_point_and_a_plant_are_enough() {
    let request = read(json!({"climate": {"latitude": -34.2, "longitude": 18.4}, "plant": {"type": "rose"}}));
    assert_eq!(pointers(&request), Vec::<String>::new());
    assert_eq!((request.date, request.history, request.condition), (None, None, None));
}

#[test]
fn the_schema_and_the_check_know_the_same_ranges_and_lengths() {
    let (schemas, request) = (schemas(), everything());
    let mut limits = Vec::new();
    walk(&request, &schemas["AdviceRequest"], &schemas, "", &mut |at, schema| {
        for bound in ["minimum", "maximum", "maxItems", "maxLength"] {
            // Lists of twelve months are bounded by their type.
            if let Some(value) = schema[bound].as_f64().filter(|_| schema["minItems"].is_null()) {
                limits.push((at.to_owned(), bound, value));
            }
        }
    });
    limits.sort_by(|a, b| (&a.0, a.1).cmp(&(&b.0, b.1)));
    limits.dedup();
    let mut checked = 0;
    for (at, bound, value) in limits {
        if request.pointer(&at).is_none() {
            continue; // one of the forms that this request does not use: tested below
        }
        let put = |value: Value| {
            let mut changed = everything();
            *changed.pointer_mut(&at).expect("found before") = value;
            serde_json::from_value::<AdviceRequest>(changed).map(|request| pointers(&request))
        };
        let list_of = |length: f64| {
            let one = request.pointer(&at).and_then(|list| list.get(0)).cloned().expect("no empty list here");
            Value::Array(vec![one; length as usize])
        };
        let (within, beyond) = match bound {
            "minimum" => (json!(value), json!(value - 1.0)),
            "maximum" if at.ends_with("harvest") || at == "/limit" => (json!(value as u16), json!(value as u16 + 1)),
            "maximum" => (json!(value), json!(value + 1.0)),
            "maxItems" => (list_of(value), list_of(value + 1.0)),
            _ => (json!("x".repeat(value as usize)), json!("x".repeat(value as usize + 1))),
        };
        let within = if at == "/limit" && bound == "minimum" { json!(1) } else { within };
        let within = if at.ends_with("harvest") && bound == "minimum" { json!(0) } else { within };
        assert_eq!(put(within).expect("within fits"), Vec::<String>::new(), "{at} {bound} {value}");
        if let Ok(found) = put(beyond) {
            assert_eq!(found, [at.as_str()], "{at} beyond {bound} {value}");
        } else {
            assert_eq!(bound, "minimum", "{at}: only a whole number below nought fails earlier");
        }
        checked += 1;
    }
    assert!(checked > 40, "only {checked} limits were found");
}

#[test]
fn a_climate_is_given_in_one_form() {
    for (climate, wrong) in [
        (json!({"id": "demo-dry-valley"}), vec![]),
        (json!({"area": "north"}), vec![]),
        (json!({}), vec!["/climate"]),
        (json!({"latitude": 34.2}), vec!["/climate/longitude"]),
        (json!({"longitude": 34.2}), vec!["/climate"]),
        (json!({"id": "a", "area": "b"}), vec!["/climate/area"]),
        (json!({"id": "a", "latitude": 95, "longitude": 1}), vec!["/climate/latitude", "/climate/latitude"]),
        (json!({"id": "x".repeat(101)}), vec!["/climate/id"]),
        (json!({"area": "x".repeat(101)}), vec!["/climate/area"]),
        (
            json!({"latitude": 1, "normals": {"tmin_c": year(1.0), "tmax_c": year(2.0), "rh_pct": year(50.0),
                "dew_point_c": year(1.0), "sunshine_h": year(5.0), "solar_mj": year(9.0)}}),
            vec!["/climate/normals/dew_point_c", "/climate/normals/solar_mj"],
        ),
    ] {
        let said = climate.to_string();
        assert_eq!(pointers(&read(json!({"climate": climate, "plant": {"type": "rose"}}))), wrong, "{said}");
    }
}

#[test]
fn what_does_not_go_together_is_said() {
    let mut request = everything();
    request["rule_sets"] = json!(["core@2026.9.1"]);
    request["history"] = json!([{"date": "2026-09-01"}]);
    request["site"]["region"] = json!("California");
    assert_eq!(pointers(&read(request)), ["/site/region", "/history/0", "/as_of"]);
}

#[test]
fn the_engine_is_told_all_that_was_said() {
    let mut request = everything();
    request["climate"]["frost"]["last"]["late"] = json!("02-28"); // what 29 February is taken for
    let direct: Said = serde_json::from_value(request.clone()).expect("the engine reads the same members");
    let through = Said::from(read(request));
    let value = |said: &Said| serde_json::to_value(said).expect("JSON");
    assert_eq!(value(&through), value(&direct));

    let least = json!({"climate": {"latitude": -34.2, "longitude": 18.4}, "plant": {"type": "rose"}});
    let direct: Said = serde_json::from_value(least.clone()).expect("the engine reads the same members");
    assert_eq!(value(&Said::from(read(least))), value(&direct));
}
