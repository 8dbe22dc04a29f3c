//! Plants by what customers call them.

use lammas::problem::kinds::{BAD_QUERY, UNKNOWN_PLANT};
use lammas_tests::server::Server;
use serde_json::json;

#[test]
fn a_plant_is_found_by_what_customers_call_it_and_its_kind_with_it() {
    let server = Server::start();
    for (query, plant, how, traits) in [
        ("q=lemon+tree", "citrus", "synonym", json!({"kind": "lemon"})),
        ("q=mata+de+tomate&language=es", "tomato", "name", json!({})),
        ("q=Citrus+limon", "citrus", "scientific", json!({"kind": "lemon"})),
        ("q=hortencia", "hydrangea", "misspelling", json!({})),
        ("q=ROSES", "rose", "synonym", json!({})),
    ] {
        let page = server.get(&format!("/v1/plants?{query}")).ok();
        let first = &page["items"][0];
        assert_eq!((&page["known"], &first["id"]), (&json!(true), &json!(plant)), "{query}: {page}");
        assert_eq!(first["found"]["traits"], traits, "{query}: {page}");
        assert_eq!(first["found"]["how"], how, "{query}: {page}");
    }
    let page = server.get("/v1/plants?limit=2").ok();
    assert!(
        page["known"].is_null() && page["items"][0]["found"].is_null() && page["next_cursor"].is_string(),
        "{page}"
    );
}

#[test]
fn a_plant_that_is_not_there_is_said_not_to_be_known_with_the_nearest() {
    let server = Server::start();
    let page = server.get("/v1/plants?q=rose+of+sharon").ok();
    assert_eq!(page["known"], json!(false));
    assert!(page["items"].as_array().is_some_and(|items| items.iter().all(|item| item["found"]["how"] == "near")));
    assert_eq!(server.get("/v1/plants?q=zzzzzz").ok()["items"], json!([]));
    for query in ["q=", "q=rose&cursor=61"] {
        assert!(!server.get(&format!("/v1/plants?{query}")).problem(BAD_QUERY).errors.is_empty(), "{query}");
    }
    assert_eq!(server.get(&format!("/v1/plants?q={}", "x".repeat(501))).problem(BAD_QUERY).errors[0].pointer, "/q");
}

#[test]
fn advice_takes_the_plant_by_its_name_and_what_is_said_of_its_kind_wins() {
    let server = Server::start();
    let mut question =
        json!({"climate": {"id": "hot-dry-valley"}, "date": "2026-09-15", "plant": {"type": "Meyer lemon tree"}});
    let answer = server.post("/v1/advice", &question).ok();
    assert_eq!((&answer["asked"]["plant"], &answer["asked"]["traits"]), (&json!("citrus"), &json!({"kind": "lemon"})));
    question["plant"]["traits"] = json!({"kind": "lime"});
    assert_eq!(server.post("/v1/advice", &question).ok()["asked"]["traits"], json!({"kind": "lime"}));
    question["plant"] = json!({"type": "lemmon tree"});
    let problem = server.post("/v1/advice", &question).problem(UNKNOWN_PLANT);
    assert!(problem.errors[0].detail.contains("did you mean `lemon`"), "{problem:?}");
}
