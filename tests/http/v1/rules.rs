use lammas::problem::kinds::{BAD_QUERY, RULE_NOT_FOUND};
use lammas::sets::embedded;
use lammas_tests::server::Server;
use serde_json::Value;

fn words(value: &Value) -> &str {
    value["words"].as_str().unwrap_or_default()
}

#[test]
fn a_rule_is_told_in_plain_words_with_its_sources() {
    let rule = Server::start().get("/v1/rules/rose.renewal-cut").ok();
    assert_eq!(rule["rule_set"]["name"], "core");
    assert_eq!(rule["windows"][0]["opens"]["rule"], "hot_season.end - 4 weeks else warmest_week - 1 week");
    assert_eq!(
        words(&rule["windows"][0]["opens"]),
        "4 weeks before the end of the hot season; where that never comes: 1 week before the warmest week"
    );
    assert!(words(&rule["when"]).contains("you see spent blooms"), "{rule}");
    assert_eq!(words(&rule["holds"][0]["if"]), "warmth left before frost is under 550 °Cd");
    assert!(words(&rule["for"]["where"]).contains("again and again"), "{rule}");
    assert!(rule["sources"].as_array().is_some_and(|sources| !sources.is_empty()), "{rule}");
    assert_eq!((&rule["evidence"], &rule["evidence_words"]), (&"common-practice".into(), &"common practice".into()));
    // The value of a fact belongs to an answer; here its name stands.
    assert!(rule["why"].as_str().is_some_and(|why| why.contains("[warmth left before frost]")), "{rule}");
}

#[test]
fn a_rule_names_the_guards_that_bind_it_and_a_guard_what_it_blocks() {
    let server = Server::start();
    let soap = server.get("/v1/rules/rose.aphid-soap").ok();
    let guards: Vec<&str> =
        soap["guards"].as_array().expect("guards").iter().filter_map(|guard| guard["id"].as_str()).collect();
    assert!(guards.contains(&"guard.no-sprays-in-heat"), "{guards:?}");
    assert!(soap["cautions"].as_array().is_some_and(|cautions| cautions.len() > 3), "{soap}");
    let guard = server.get("/v1/rules/guard.no-sprays-in-heat").ok();
    assert_eq!(guard["kind"], "avoid");
    assert!(guard["blocks"]["classes"].as_array().is_some_and(|classes| !classes.is_empty()), "{guard}");
}

#[test]
fn a_number_below_zero_is_the_same_cold_in_both_units() {
    let rule = Server::start().get("/v1/rules/rose.mound").ok();
    assert!(words(&rule["when"]).contains("-5 °C (23 °F)"), "{rule}");
}

#[test]
fn every_rule_is_told_in_both_languages_and_no_name_is_left_as_the_rule_writes_it() {
    let (server, set) = (Server::start(), embedded::set().expect("it loads"));
    for info in &set.rules {
        for language in ["en", "es"] {
            let answer = server.get(&format!("/v1/rules/{}?language={language}", info.id));
            let rule = answer.ok();
            assert_eq!(answer.header("content-language"), language);
            let mut said =
                vec![rule["season"].as_str().expect("a season"), words(&rule["when"]), words(&rule["for"]["where"])];
            said.extend(rule["holds"].as_array().expect("holds").iter().map(|hold| words(&hold["if"])));
            for text in said {
                for code in ["_", "signs has", " >= ", " <= ", "tmax", "{", "not ("] {
                    assert!(!text.contains(code), "{} {language}: {text}", info.id);
                }
            }
        }
    }
}

#[test]
fn spanish_is_spoken_to_who_asks_for_it_by_header() {
    let answer = Server::start().send("GET", "/v1/rules/rose.deep-soak", &[("accept-language", "es-MX")], b"");
    assert_eq!(answer.header("content-language"), "es");
    assert!(answer.ok()["notice"].as_str().is_some_and(|notice| notice.starts_with("La etiqueta")));
}

#[test]
fn a_rule_that_is_none_is_answered_with_the_nearest_ids() {
    let server = Server::start();
    for (id, near) in [
        ("rose.renewal-cot", "did you mean `rose.renewal-cut`?"),
        ("renewal", "did you mean `rose.renewal-cut`?"),
        ("umbrella-stand", "the `id` of each task"),
    ] {
        let problem = server.get(&format!("/v1/rules/{id}")).problem(RULE_NOT_FOUND);
        assert!(problem.detail.contains(near), "{id}: {}", problem.detail);
    }
    let problem = server.get("/v1/rules/rose.deep-soak?lang=en").problem(BAD_QUERY);
    assert_eq!(problem.errors[0].pointer, "/lang");
    let problem = server.get("/v1/rules/rose.deep-soak?language=fr").problem(BAD_QUERY);
    assert_eq!(problem.errors[0].pointer, "/language");
}
