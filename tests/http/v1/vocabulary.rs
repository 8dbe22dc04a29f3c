use std::collections::BTreeSet;

use lammas::problem::kinds::{BAD_PATH, BAD_QUERY, CLIMATE_NOT_FOUND};
use lammas::sets::embedded;
use lammas_tests::server::Server;
use serde_json::Value;

const LISTS: [&str; 8] = ["plants", "signs", "facts", "jobs", "materials", "problems", "sources", "climates"];

fn all(server: &Server, list: &str, language: &str, limit: usize) -> Vec<Value> {
    let (mut found, mut cursor) = (Vec::new(), String::new());
    loop {
        let page = server.get(&format!("/v1/{list}?limit={limit}&language={language}{cursor}")).ok();
        let items = page["items"].as_array().expect("a list");
        assert!((1..=limit).contains(&items.len()), "{list}");
        found.extend(items.iter().cloned());
        match page["next_cursor"].as_str() {
            Some(next) => cursor = format!("&cursor={next}"),
            None => return found,
        }
    }
}

fn key(item: &Value) -> String {
    item["id"].as_str().or(item["name"].as_str()).expect("a key").to_owned()
}

#[test]
fn every_list_comes_page_by_page_whole_and_in_order() {
    let (server, set) = (Server::start(), embedded::set().expect("it loads"));
    let count = |list: &str| match list {
        "plants" => set.pack.plants.len(),
        "signs" => set.pack.signs.len(),
        "jobs" => set.pack.jobs.len(),
        "materials" => set.pack.materials.len(),
        "problems" => set.pack.problems.len(),
        "sources" => set.pack.sources.len(),
        "climates" => set.pack.climates.len(),
        _ => 0,
    };
    for list in LISTS {
        let keys: Vec<String> = all(&server, list, "en", 7).iter().map(key).collect();
        assert!(keys.is_sorted() && keys.iter().collect::<BTreeSet<_>>().len() == keys.len(), "{list}: {keys:?}");
        if list == "facts" {
            assert!(keys.len() > 80, "{keys:?}");
        } else {
            assert_eq!(keys.len(), count(list), "{list}");
        }
        assert_eq!(all(&server, list, "en", 200).iter().map(key).collect::<Vec<_>>(), keys, "{list}");
    }
}

#[test]
fn a_list_speaks_the_language_that_is_asked_for() {
    let server = Server::start();
    for list in LISTS {
        let (english, spanish) = (all(&server, list, "en", 200), all(&server, list, "es", 200));
        assert_eq!(english.iter().map(key).collect::<Vec<_>>(), spanish.iter().map(key).collect::<Vec<_>>());
        if list != "sources" {
            assert_ne!(english, spanish, "{list}");
        }
    }
    let answer = server.send("GET", "/v1/signs?limit=1", &[("accept-language", "es")], b"");
    assert_eq!((answer.header("content-language"), answer.header("vary")), ("es", "accept-language"));
    assert!(
        answer.header("cache-control").contains("max-age=3600") && answer.header("etag").starts_with("W/\""),
        "{answer:?}"
    );
}

#[test]
fn a_form_can_be_built_from_the_facts() {
    let server = Server::start();
    let facts = all(&server, "facts", "en", 200);
    let fact = |name: &str| facts.iter().find(|fact| fact["name"] == name).unwrap_or_else(|| panic!("no `{name}`"));
    let ph = fact("soil.ph");
    assert_eq!((&ph["type"], &ph["pointer"]), (&Value::from("number"), &Value::from("/site/soil/ph")));
    assert_eq!((ph["min"].as_f64(), ph["max"].as_f64(), ph["step"].as_f64()), (Some(2.0), Some(12.0), Some(0.1)));
    assert!(ph["question"].as_str().is_some_and(|question| question.ends_with('?')), "{ph}");
    let exposure = fact("site.exposure");
    assert_eq!((&exposure["when_missing"], &exposure["assumed"]), (&Value::from("assumed"), &Value::from("full-sun")));
    assert_eq!(exposure["choices"].as_array().map(Vec::len), Some(4));
    assert_eq!(fact("soil.moisture")["of_the_day"], true);
}

#[test]
fn a_plant_is_listed_with_its_names_traits_and_stages() {
    let plants = all(&Server::start(), "plants", "es", 200);
    let rose = plants.iter().find(|plant| plant["id"] == "rose").expect("a rose");
    assert_eq!(rose["name"], "Rosal");
    assert!(rose["scientific"].as_array().is_some_and(|names| names.contains(&"Rosa".into())));
    let flowering =
        rose["traits"].as_array().and_then(|traits| traits.iter().find(|t| t["id"] == "flowering")).expect("a trait");
    assert_eq!(flowering["usual"], "repeat");
    assert!(flowering["question"].as_str().is_some_and(|question| question.starts_with('¿')), "{flowering}");
    assert!(
        rose["stages"]
            .as_array()
            .is_some_and(|stages| stages.iter().any(|stage| stage["id"] == "heat-rest" && stage["name"] != ""))
    );
}

#[test]
fn a_climate_is_shown_as_it_could_stand_in_a_request() {
    let server = Server::start();
    let climate = server.get("/v1/climates/cold-inland?language=es").ok();
    assert_eq!(climate["name"], "Interior frío");
    assert_eq!(climate["climate"]["normals"]["tmin_c"].as_array().map(Vec::len), Some(12));
    let problem = server.get("/v1/climates/cold-inlan").problem(CLIMATE_NOT_FOUND);
    assert!(problem.detail.contains("did you mean `cold-inland`?"), "{problem:?}");
    let _ = server.get("/v1/climates/%FF").problem(BAD_PATH);
    let _ = server.get("/v1/climates/cold-inland?limit=3").problem(BAD_QUERY);
}

#[test]
fn a_wrong_parameter_of_a_list_is_named() {
    let server = Server::start();
    for list in LISTS {
        let problem = server.get(&format!("/v1/{list}?limit=0&cursor=zz")).problem(BAD_QUERY);
        assert_eq!(problem.errors.len(), 2, "{list}");
        let problem = server.get(&format!("/v1/{list}?language=fr")).problem(BAD_QUERY);
        assert_eq!(problem.errors[0].pointer, "/language", "{list}");
        let problem = server.get(&format!("/v1/{list}?page=2")).problem(BAD_QUERY);
        assert_eq!(problem.errors[0].pointer, "/page", "{list}");
    }
}
