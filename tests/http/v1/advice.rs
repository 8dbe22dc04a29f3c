//! The same rose in several places and states: what is advised, what is held, and until when.

use lammas_tests::server::Server;
use serde_json::{Value, json};

/// The rose of the hot dry valley, in the middle of September.
pub(crate) fn september_rose() -> Value {
    json!({"climate": {"id": "hot-dry-valley"}, "date": "2026-09-15",
        "plant": {"type": "rose", "traits": {"flowering": "repeat"}, "age_years": 4},
        "site": {"planting": "ground", "soil": {"texture": "clay-loam", "ph": 8.2}},
        "water": {"method": "basin", "source_alkaline": true},
        "condition": {"signs": [{"sign": "spent-blooms"}, {"sign": "scorched-petals"}, {"sign": "crowded-centre"}]},
        "detail": "full"})
}

fn ids(answer: &Value, list: &str) -> Vec<String> {
    let entries = answer[list].as_array().expect("a list");
    entries.iter().map(|entry| entry["id"].as_str().expect("an id").to_owned()).collect()
}

fn entry<'a>(answer: &'a Value, list: &str, id: &str) -> &'a Value {
    let entries = answer[list].as_array().expect("a list");
    entries
        .iter()
        .find(|entry| entry["id"] == id)
        .unwrap_or_else(|| panic!("`{id}` is not among {list}: {:?}", ids(answer, list)))
}

fn texts(list: &Value) -> String {
    list.as_array()
        .expect("a list")
        .iter()
        .map(|entry| entry["text"].as_str().unwrap_or_default())
        .collect::<Vec<_>>()
        .join(" ")
}

#[test]
fn a_rose_in_a_hot_dry_valley_is_cut_soaked_fed_and_shaded_in_september() {
    let answer = Server::start().post("/v1/advice", &september_rose()).ok();
    assert_eq!(answer["status"], "advised");
    let tasks = ids(&answer, "tasks");
    for id in [
        "rose.renewal-cut",
        "rose.deep-soak",
        "rose.iron-chelate",
        "rose.feed-liquid",
        "rose.compost-basin",
        "rose.shade-bare-canes",
    ] {
        assert!(tasks.iter().any(|task| task == id), "{id} is not in {tasks:?}");
    }
    assert!(!tasks.iter().any(|task| task == "rose.transplant"), "{tasks:?}");
    assert!(ids(&answer, "notes").contains(&"rose.scorch-is-heat".to_owned()));

    let cut = entry(&answer, "tasks", "rose.renewal-cut");
    assert_eq!(cut["priority"]["band"], "this-week");
    assert!(texts(&cut["check_first"]).contains("36 °C"), "{cut}");
    assert!(cut["steps"].as_array().is_some_and(|steps| steps.len() > 3));
    assert!(!cut["cautions"].as_array().expect("a list").is_empty());
    let expected: Vec<_> = cut["expect"].as_array().expect("a list").iter().map(|e| e["what"].clone()).collect();
    assert_eq!(expected, ["new-shoots", "bloom"]);
    assert!(cut["expect"][0]["from"].as_str() > Some("2026-09-15"), "{cut}");

    // Soaked before it is cut, and shaded only after.
    let place = |id: &str| tasks.iter().position(|task| task == id);
    assert!(
        place("rose.deep-soak") < place("rose.renewal-cut")
            && place("rose.renewal-cut") < place("rose.shade-bare-canes"),
        "{tasks:?}"
    );

    let soak = entry(&answer, "tasks", "rose.deep-soak");
    let amounts = soak["amounts"].as_array().expect("a list");
    let unit = |unit: &str| {
        amounts.iter().find(|amount| amount["unit"] == unit).unwrap_or_else(|| panic!("no {unit} in {soak}"))
    };
    assert_eq!((&unit("L")["basis"], &unit("days")["basis"]), (&json!("computed"), &json!("computed")));
    // A US gallon is 3.785411784 L (NIST Handbook 44, appendix C); both are rounded to two digits from the exact value.
    let (litres, gallons) = (unit("L")["value"].as_f64().expect("L"), unit("L")["us"]["value"].as_f64().expect("gal"));
    assert!((litres / 3.785_411_784 - gallons).abs() < 0.05 * gallons, "{litres} L is not {gallons} gal");
    assert!((1.0..=28.0).contains(&unit("days")["value"].as_f64().expect("days")));

    let iron = entry(&answer, "tasks", "rose.iron-chelate");
    let read: Vec<_> =
        iron["reasons"][0]["facts"].as_array().expect("facts").iter().map(|fact| fact["name"].clone()).collect();
    assert!(read.contains(&json!("soil.ph")) && read.contains(&json!("water.source_alkaline")), "{read:?}");
}

#[test]
fn a_cut_waits_with_a_date_when_41_degrees_are_forecast() {
    let mut question = september_rose();
    let days = [(15, 39), (16, 41), (17, 41), (18, 37), (19, 33), (20, 32), (21, 31)];
    let days: Vec<Value> = days
        .iter()
        .map(|(day, tmax)| json!({"date": format!("2026-09-{day}"), "tmin_c": 20, "tmax_c": tmax, "rain_mm": 0}))
        .collect();
    question["climate"]["forecast"] = json!({"issued": "2026-09-15", "days": days});
    let answer = Server::start().post("/v1/advice", &question).ok();
    let cut = entry(&answer, "held", "rose.renewal-cut");
    assert_eq!(cut["kind"], "hold");
    assert!(cut["because"].as_str().is_some_and(|because| because.contains("36 °C")), "{cut}");
    assert!(cut["look_again"].as_str() > Some("2026-09-15"), "{cut}");
    assert_eq!(entry(&answer, "tasks", "rose.shade-heat")["priority"]["band"], "now");
    assert_eq!((&answer["climate"]["forecast"], &answer["valid_until"]), (&json!("used"), &json!("2026-09-15")));
}

#[test]
fn where_frost_is_three_weeks_away_the_rose_is_left_to_harden() {
    let mut question = september_rose();
    question["climate"] = json!({"id": "cold-inland"});
    let answer = Server::start().post("/v1/advice", &question).ok();
    let cut = entry(&answer, "held", "rose.renewal-cut");
    assert!(cut["because"].as_str().is_some_and(|because| because.contains("Too little warmth")), "{cut}");
    assert_eq!(entry(&answer, "held", "rose.feed-liquid")["kind"], "guard");
    assert!(ids(&answer, "notes").contains(&"rose.now-it-hardens".to_owned()));
}

#[test]
fn south_of_the_equator_september_is_spring() {
    let mut question = september_rose();
    question["climate"] = json!({"id": "southern-temperate"});
    let answer = Server::start().post("/v1/advice", &question).ok();
    assert_eq!(answer["season"]["half"], "warming");
    assert!(!ids(&answer, "tasks").contains(&"rose.renewal-cut".to_owned()));
}

#[test]
fn where_there_is_no_frost_nothing_waits_for_it() {
    let mut question = september_rose();
    question["climate"] = json!({"id": "tropical-lowland"});
    let answer = Server::start().post("/v1/advice", &question).ok();
    assert!(ids(&answer, "tasks").contains(&"rose.tidy-cut".to_owned()), "{:?}", ids(&answer, "tasks"));
    assert_eq!(answer["season"]["frost_chance_pct"], 0.0);
    let markers = answer["season"]["markers"].as_array().expect("markers");
    assert!(
        markers.iter().any(|marker| marker["name"] == "first_frost.median" && marker["state"] == "never"),
        "{markers:?}"
    );
}

#[test]
fn a_rose_in_a_pot_drinks_from_its_pot() {
    let mut question = september_rose();
    let in_ground = Server::start().post("/v1/advice", &question).ok();
    question["site"] = json!({"planting": "container", "container_volume_l": 40, "container_material": "clay"});
    let in_pot = Server::start().post("/v1/advice", &question).ok();
    assert_ne!(ids(&in_ground, "tasks"), ids(&in_pot, "tasks"));
    assert_eq!(in_pot["asked"]["facts"]["site.container_volume"], 40.0);
}

#[test]
fn what_is_not_known_is_asked_for_and_what_is_assumed_is_said() {
    let question = json!({"climate": {"id": "hot-dry-valley"}, "date": "2026-09-15", "plant": {"type": "rose"}});
    let answer = Server::start().post("/v1/advice", &question).ok();
    let questions = answer["questions"].as_array().expect("questions");
    assert!(!questions.is_empty() && questions.len() <= 5, "{questions:?}");
    for question in questions {
        assert!(question["pointer"].as_str().is_some_and(|pointer| pointer.starts_with('/')), "{question}");
        let answers = question["answers"].as_array().expect("answers");
        assert!(
            answers.iter().any(|answer| answer["text"] == "I can't tell" && answer["value"].is_null()),
            "{question}"
        );
    }
    assert!(!answer["depends_on"].as_array().expect("a list").is_empty());
    assert!(answer["assumptions"].as_array().expect("a list").iter().all(|assumed| assumed["origin"] == "assumed"));
    assert!(
        answer["assumptions"].as_array().is_some_and(|list| list.iter().any(|a| a["name"] == "plant.trait(flowering)")),
        "{}",
        answer["assumptions"]
    );
}

#[test]
fn the_answer_to_a_question_may_be_put_where_it_says() {
    let server = Server::start();
    let mut question = json!({"climate": {"id": "hot-dry-valley"}, "date": "2026-09-15", "plant": {"type": "rose", "age_years": 4},
        "site": {"soil": {"texture": "loam"}}, "water": {}, "weather": {}, "condition": {"signs": [], "not_seen": [], "problems": []}, "history": [], "wishes": []});
    let answer = server.post("/v1/advice", &question).ok();
    let mut put = 0;
    for asked in answer["questions"].as_array().expect("questions") {
        for choice in asked["answers"].as_array().expect("answers") {
            let (Some(pointer), false) = (choice["pointer"].as_str(), choice["value"].is_null()) else { continue };
            let before = question.clone();
            let (parent, last) = pointer.rsplit_once('/').expect("a pointer");
            let holder = question.pointer_mut(parent).unwrap_or_else(|| panic!("nothing at `{parent}`"));
            match holder {
                Value::Array(list) if last == "-" => list.push(choice["value"].clone()),
                holder => holder[last] = choice["value"].clone(),
            }
            let _ = server.post("/v1/advice", &question).ok();
            question = before;
            put += 1;
        }
    }
    assert!(put >= 4, "only {put} answers could be put");
}

#[test]
fn today_is_taken_when_no_date_is_given_and_the_answer_says_so() {
    let mut question = september_rose();
    question.as_object_mut().expect("an object").remove("date");
    let answer = Server::start().post("/v1/advice", &question).ok();
    assert_eq!(answer["date_origin"], "assumed");
    let date: chrono::NaiveDate = answer["asked"]["date"].as_str().expect("a date").parse().expect("a date");
    let today = lammas::v1::question::today::now().date_naive();
    assert!((today - date).num_days().abs() <= 1, "{date} is not about {today}");
    assert_eq!(Server::start().post("/v1/advice", &september_rose()).ok()["date_origin"], "given");
}

#[test]
fn normals_written_out_are_answered_like_the_climate_they_are_of() {
    let server = Server::start();
    let registered = server.get("/v1/climates/hot-dry-valley").ok();
    let mut question = september_rose();
    question["climate"] = registered["climate"].clone();
    let (inline, by_id) =
        (server.post("/v1/advice", &question).ok(), server.post("/v1/advice", &september_rose()).ok());
    assert!(inline["climate"]["id"].is_null());
    assert_eq!(inline["climate"]["sha256"], by_id["climate"]["sha256"]);
    assert_eq!((&inline["tasks"], &inline["digest"]), (&by_id["tasks"], &by_id["digest"]));
}

#[test]
fn the_same_question_has_the_same_bytes_and_another_has_another_digest() {
    let server = Server::start();
    let (one, two) = (server.post("/v1/advice", &september_rose()), server.post("/v1/advice", &september_rose()));
    assert_eq!((one.body.as_str(), one.header("etag")), (two.body.as_str(), two.header("etag")));
    assert!(one.header("etag").starts_with("W/\""), "{one:?}");
    assert_eq!(one.header("cache-control"), "no-store");
    let mut later = september_rose();
    later["date"] = json!("2026-09-16");
    assert_ne!(server.post("/v1/advice", &later).ok()["digest"], one.ok()["digest"]);
}

#[test]
fn a_plant_may_be_called_by_any_of_its_names() {
    let server = Server::start();
    let digest = server.post("/v1/advice", &september_rose()).ok()["digest"].clone();
    for name in ["Rose", "rose bush", "rosal", "Rosa", " ROSAS DE JARDÍN ", "rosa de jardín", "rosa de papel"] {
        let mut question = september_rose();
        question["plant"]["type"] = json!(name);
        let answer = server.post("/v1/advice", &question);
        if name.contains("papel") {
            assert_eq!(answer.status, 422, "no such name stands in the set");
        } else {
            assert_eq!(answer.ok()["digest"], digest, "{name}");
        }
    }
}
