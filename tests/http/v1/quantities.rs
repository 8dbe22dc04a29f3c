use lammas::problem::kinds::{BAD_QUERY, INVALID_REQUEST, UNKNOWN_QUANTITY};
use lammas_agronomy::quantity;
use lammas_tests::server::Server;
use serde_json::{Value, json};

/// FAO-56, example 20: Lyon, 15 July.
fn lyon() -> Value {
    json!({"latitude": {"value": 45.72, "unit": "deg"}, "day_of_year": {"value": 196, "unit": "d"},
        "tmin": {"value": 14.8, "unit": "C"}, "tmax": {"value": 26.6, "unit": "C"}})
}

#[test]
fn a_quantity_is_reckoned_with_its_method_and_source() {
    let server = Server::start();
    let answer = server.post("/v1/quantities/et0_hs", &json!({"inputs": lyon()})).ok();
    // FAO-56, example 20, last line: 5.0 mm a day, printed to 0.1.
    let value = answer["value"].as_f64().expect("a number");
    assert!((value - 5.0).abs() <= 0.05, "{value}");
    assert_eq!(answer["unit"], "mm/d");
    assert_eq!(answer["source"], "FAO-56 equation 52");
    assert!(answer["method"].as_str().is_some_and(|method| !method.is_empty()));
}

#[test]
fn inputs_may_come_in_other_units_or_bare() {
    let server = Server::start();
    let reckon = |inputs| server.post("/v1/quantities/et0_hs", &json!({"inputs": inputs})).ok()["value"].clone();
    let plain = reckon(lyon());
    assert_eq!(reckon(json!({"latitude": 45.72, "day_of_year": 196, "tmin": 14.8, "tmax": 26.6})), plain);
    let fahrenheit = reckon(json!({"latitude": 45.72, "day_of_year": 196, "tmin": {"value": 58.64, "unit": "F"},
        "tmax": {"value": 79.88, "unit": "F"}}));
    let apart = (fahrenheit.as_f64().expect("a number") - plain.as_f64().expect("a number")).abs();
    assert!(apart < 1e-9, "{fahrenheit} is not {plain}");
}

#[test]
fn every_wrong_input_is_named_at_once() {
    let server = Server::start();
    let wrong = json!({"inputs": {"latitude": {"value": 97, "unit": "deg"}, "tmin": {"value": 14.8, "unit": "kg"},
        "tmax": "warm", "dayofyear": 196}});
    let answer = server.post("/v1/quantities/et0_hs", &wrong);
    assert_eq!(answer.problem(INVALID_REQUEST).detail, "5 places need another look");
    let mut errors = answer.errors();
    errors.sort();
    let at: Vec<&str> = errors.iter().map(|(pointer, _)| pointer.as_str()).collect();
    assert_eq!(at, ["/inputs/day_of_year", "/inputs/dayofyear", "/inputs/latitude", "/inputs/tmax", "/inputs/tmin"]);
    assert!(errors[0].1.contains("`day_of_year` is missing"), "{errors:?}");
    assert!(errors[1].1.contains("did you mean `day_of_year`?"), "{errors:?}");
    assert!(errors[2].1.contains("97 deg") && errors[2].1.contains("-90 to 90 deg"), "{errors:?}");
    assert!(errors[4].1.contains("`kg`"), "{errors:?}");
}

#[test]
fn an_unknown_quantity_is_answered_with_the_nearest_name() {
    let server = Server::start();
    let problem = server.post("/v1/quantities/et0_h", &json!({"inputs": {}})).problem(UNKNOWN_QUANTITY);
    assert!(problem.detail.contains("`et0_h`") && problem.detail.contains("`et0_hs`"), "{}", problem.detail);
}

#[test]
fn the_list_comes_page_by_page_and_holds_every_quantity_once() {
    let server = Server::start();
    let (mut names, mut path, mut pages) = (Vec::new(), "/v1/quantities?limit=7".to_owned(), 0);
    loop {
        let page = server.get(&path).ok();
        let items = page["items"].as_array().expect("a list");
        assert!((1..=7).contains(&items.len()));
        names.extend(items.iter().map(|item| item["name"].as_str().expect("a name").to_owned()));
        pages += 1;
        match page["next_cursor"].as_str() {
            Some(cursor) => path = format!("/v1/quantities?limit=7&cursor={cursor}"),
            None => break,
        }
    }
    let mut all: Vec<_> = quantity::all().map(|quantity| quantity.name).collect();
    all.sort_unstable();
    assert_eq!(names, all);
    assert!(pages > 2, "{pages} pages");
}

#[test]
fn a_wrong_page_is_refused_with_every_wrong_parameter() {
    let server = Server::start();
    let answer = server.get("/v1/quantities?limit=many&curser=1");
    assert_eq!(answer.problem(BAD_QUERY).errors.len(), 2);
    assert_eq!(
        answer.errors(),
        [
            ("/limit".to_owned(), "expected a whole number from 0 to 65535, found the text `many`".to_owned()),
            ("/curser".to_owned(), "unknown field `curser`, did you mean `cursor`?".to_owned()),
        ]
    );
    for path in ["/v1/quantities?limit=0", "/v1/quantities?limit=201", "/v1/quantities?limit=1&limit=2"] {
        assert_eq!(server.get(path).problem(BAD_QUERY).errors[0].pointer, "/limit", "{path}");
    }
    assert_eq!(server.get("/v1/quantities?cursor=xyz").problem(BAD_QUERY).errors[0].pointer, "/cursor");
}
