//! A gardener's words: to find signs by, and to tell what is seen.

use lammas::problem::kinds::{BAD_QUERY, INVALID_REQUEST};
use lammas_tests::server::Server;
use serde_json::{Value, json};

fn ids(list: &Value) -> Vec<&str> {
    list.as_array()
        .expect("a list")
        .iter()
        .map(|item| item["id"].as_str().or(item["sign"].as_str()).expect("an id"))
        .collect()
}

fn rose(words: &str) -> Value {
    json!({"climate": {"id": "hot-dry-valley"}, "date": "2026-09-15", "plant": {"type": "rose", "age_years": 4}, "condition": {"words": words}})
}

#[test]
fn signs_are_found_by_lay_words_in_both_languages() {
    let server = Server::start();
    for (query, sign, matched) in [
        ("q=buds+stay+shut+and+brown", "buds-stay-shut", json!(["buds", "stay", "shut", "brown"])),
        ("q=los+capuyos+no+abren&language=es", "buds-stay-shut", json!(["capuyos", "abren"])),
        ("q=BLAK%20SPOTTS&plant=rose", "black-spots", json!(["BLAK", "SPOTTS"])),
        ("q=pasto+con+calvas&plant=c%C3%A9sped&language=es", "thin-turf", json!(["pasto", "calvas"])),
    ] {
        let page = server.get(&format!("/v1/signs?{query}")).ok();
        assert_eq!(ids(&page["items"])[0], sign, "{query}");
        assert_eq!(page["items"][0]["matched"], matched, "{query}");
        assert!(page["next_cursor"].is_null());
    }
    let spanish = server.send("GET", "/v1/signs?q=sticky+leaves", &[("accept-language", "es")], b"").ok();
    assert_eq!(
        (&spanish["items"][0]["id"], &spanish["items"][0]["name"]),
        (&json!("sticky-leaves"), &json!("Hojas pegajosas"))
    );
    for query in ["q=sin+manchas", "q=no+spots", "q=umbrella"] {
        assert_eq!(server.get(&format!("/v1/signs?{query}")).ok()["items"], json!([]), "{query}");
    }
    assert_eq!(server.get("/v1/signs?q=holes&limit=2").ok()["items"].as_array().map(Vec::len), Some(2));
}

#[test]
fn the_signs_of_a_plant_are_those_that_its_rules_speak_of() {
    let server = Server::start();
    let of = |plant: &str| ids(&server.get(&format!("/v1/signs?limit=200&plant={plant}")).ok()["items"]).join(" ");
    assert!(of("lawn").contains("thin-turf") && !of("lawn").contains("black-spots"));
    assert!(of("rose").contains("black-spots") && !of("rose").contains("thin-turf"));
    let found = server.get("/v1/signs?q=brown+patches&plant=lawn&limit=200").ok();
    assert!(ids(&found["items"]).iter().all(|id| of("lawn").contains(id)), "{found}");
    assert!(server.get("/v1/signs?limit=1&plant=rose").ok()["next_cursor"].is_string());
}

#[test]
fn a_search_that_can_not_be_made_is_refused_by_name() {
    let server = Server::start();
    let long = "x".repeat(501);
    for (query, at, words) in [
        ("q=", "/q", "expected a few words"),
        ("q=+%20", "/q", "expected a few words"),
        (&format!("q={long}"), "/q", "at most 500 characters, found 501"),
        ("q=a&cursor=61", "/cursor", "expected no cursor"),
        ("q=a&limit=201", "/limit", "200"),
        ("plant=roze", "/plant", "unknown plant `roze`, did you mean `rose`?"),
    ] {
        let problem = server.get(&format!("/v1/signs?{query}")).problem(BAD_QUERY);
        assert_eq!((problem.errors.len(), problem.errors[0].pointer.as_str()), (1, at), "{query}: {problem:?}");
        assert!(problem.errors[0].detail.contains(words), "{query}: {problem:?}");
    }
}

#[test]
fn buds_that_stay_shut_and_brown_are_understood_and_count_as_seen() {
    let server = Server::start();
    let answer = server.post("/v1/advice", &rose("buds stay shut and brown")).ok();
    let heard = json!([{"sign": "buds-stay-shut", "name": "Buds stay shut", "text": "buds stay shut and brown"}]);
    assert_eq!(answer["understood"], heard);
    assert_eq!((&answer["unsure"], &answer["not_understood"]), (&json!([]), &json!([])));
    assert_eq!(answer["asked"]["signs"], json!([{"sign": "buds-stay-shut"}]));
    let nothing =
        json!({"climate": {"id": "hot-dry-valley"}, "date": "2026-09-15", "plant": {"type": "rose", "age_years": 4}});
    let before = server.post("/v1/advice", &nothing).ok();
    assert!(before["understood"].is_null() && before["unsure"].is_null() && before["not_understood"].is_null());
    assert_eq!(before["asked"]["signs"], Value::Null);
    assert_ne!(before["digest"], answer["digest"]);
}

#[test]
fn what_is_unsure_is_asked_about_and_what_is_not_understood_is_said() {
    let words = "yellow leaves. no holes. my car is blue; ants on the stems";
    let answer = Server::start().post("/v1/advice", &rose(words)).ok();
    assert_eq!(ids(&answer["understood"]), ["ants-on-stems"]);
    assert_eq!(answer["unsure"][0]["text"], "yellow leaves");
    let could_be = ids(&answer["unsure"][0]["could_be"]);
    assert!((2..=4).contains(&could_be.len()), "{could_be:?}");
    assert_eq!(answer["not_understood"], json!([{"text": "no holes"}, {"text": "my car is blue"}]));
    let question = &answer["questions"][0];
    assert_eq!(
        (&question["text"], &question["pointer"]),
        (&json!("You say “yellow leaves”. Which of these is it?"), &json!("/condition/signs"))
    );
    let values: Vec<&str> =
        question["answers"].as_array().expect("answers").iter().filter_map(|a| a["value"]["sign"].as_str()).collect();
    assert_eq!(values, could_be);
    let spanish = Server::start()
        .send(
            "POST",
            "/v1/advice",
            &[("content-type", "application/json"), ("accept-language", "es")],
            rose("hojas amarillas").to_string().as_bytes(),
        )
        .ok();
    assert_eq!(spanish["questions"][0]["text"], "Dice «hojas amarillas». ¿Cuál de estos es?");
}

#[test]
fn words_have_an_end() {
    let server = Server::start();
    let _ = server.post("/v1/advice", &rose(&"é".repeat(500))).ok();
    let problem = server.post("/v1/advice", &rose(&"é".repeat(501))).problem(INVALID_REQUEST);
    assert_eq!(problem.errors[0].pointer, "/condition/words");
    assert_eq!(problem.errors[0].detail, "expected at most 500 characters, found 501");
    for words in ["", " ", "…", "🌹🌹🌹", "\u{301}\u{301}", "'''", "، ؟", "no no no no", "and and , , and"] {
        let answer = server.post("/v1/advice", &rose(words)).ok();
        assert_eq!(answer["understood"], json!([]), "{words}");
    }
}

#[test]
fn the_words_are_the_same_on_every_face() {
    let server = Server::start();
    let with = |name: &str, value: Value| {
        let mut question = rose("buds stay shut and brown");
        question[name] = value;
        server.post("/v1/advice", &question).ok()["understood"].clone()
    };
    let whole = with("detail", json!("full"));
    for (name, value) in [("detail", json!("brief")), ("units", json!("us")), ("limit", json!(1))] {
        assert_eq!(with(name, value), whole, "{name}");
    }
}
