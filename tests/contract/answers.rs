//! Real answers against the published schema and the types it is made from: every question of every scenario, in every
//! language.

use jsonschema::Draft;
use lammas::sets::embedded;
use lammas::v1::advice::answer::AdviceAnswer;
use lammas::v1::diagnosis::answer::DiagnosisAnswer;
use lammas::v1::rules::answer::RuleAnswer;
use lammas::v1::season::answer::SeasonAnswer;
use lammas_tests::server::Server;
use serde_json::{Value, json};

use crate::document::document;

fn validator(schema: &str) -> jsonschema::Validator {
    let whole = json!({"$schema": "https://json-schema.org/draft/2020-12/schema",
        "$ref": format!("#/components/schemas/{schema}"), "components": document()["components"]});
    jsonschema::options().with_draft(Draft::Draft202012).build(&whole).expect("a sound schema")
}

#[test]
fn every_answer_to_a_scenario_fits_the_document_and_reads_back_as_it_was() {
    let (server, schema, set) = (Server::start(), validator("AdviceAnswer"), embedded::set().expect("it loads"));
    assert!(set.pack.scenarios.len() > 50);
    for scenario in &set.pack.scenarios {
        for (language, detail) in [("en", "full"), ("es", "full"), ("en", "standard"), ("es", "brief")] {
            let mut question = serde_json::to_value(&scenario.entry.ask).expect("JSON");
            question["language"] = json!(language);
            question["detail"] = json!(detail);
            if detail == "brief" {
                question["limit"] = json!(2);
            }
            let answer = server.post("/v1/advice", &question);
            let sent = answer.ok();
            let misfits: Vec<String> =
                schema.iter_errors(&sent).map(|e| format!("{}: {e}", e.instance_path())).collect();
            assert_eq!(misfits, Vec::<String>::new(), "{} {language} {detail}", scenario.file);
            let read: AdviceAnswer =
                serde_json::from_str(&answer.body).unwrap_or_else(|e| panic!("{} {detail}: {e}", scenario.file));
            let back: Value = serde_json::to_value(read).expect("JSON");
            assert!(back == sent, "{} {language} {detail} reads back as something else", scenario.file);
        }
    }
}

#[test]
fn every_season_fits_the_document_and_reads_back_as_it_was() {
    let (server, schema, set) = (Server::start(), validator("SeasonAnswer"), embedded::set().expect("it loads"));
    for climate in &set.pack.climates {
        for (date, language) in [("2026-01-15", "en"), ("2028-02-29", "es"), ("2026-09-15", "en")] {
            let question = json!({"climate": {"id": climate.entry.id.value}, "date": date, "language": language});
            let sent = server.post("/v1/season", &question).ok();
            let misfits: Vec<String> =
                schema.iter_errors(&sent).map(|e| format!("{}: {e}", e.instance_path())).collect();
            assert_eq!(misfits, Vec::<String>::new(), "{} {date}", climate.entry.id.value);
            let read: SeasonAnswer = serde_json::from_value(sent.clone()).expect("it fits");
            assert!(serde_json::to_value(read).expect("JSON") == sent, "{} {date}", climate.entry.id.value);
        }
    }
}

#[test]
fn every_diagnosis_of_the_signs_of_a_scenario_fits_the_document_and_reads_back_as_it_was() {
    let (server, schema, set) = (Server::start(), validator("DiagnosisAnswer"), embedded::set().expect("it loads"));
    let mut tried = 0;
    for scenario in &set.pack.scenarios {
        let ask = serde_json::to_value(&scenario.entry.ask).expect("JSON");
        if ask["condition"]["signs"].as_array().is_none_or(Vec::is_empty) {
            continue;
        }
        for (language, has_climate) in [("en", true), ("es", true), ("es", false)] {
            let mut question = json!({"plant": ask["plant"], "condition": ask["condition"], "site": ask["site"],
                "water": ask["water"], "date": ask["date"], "language": language});
            if has_climate {
                question["climate"] = ask["climate"].clone();
            }
            let answer = server.post("/v1/diagnosis", &question);
            let sent = answer.ok();
            let misfits: Vec<String> =
                schema.iter_errors(&sent).map(|e| format!("{}: {e}", e.instance_path())).collect();
            assert_eq!(misfits, Vec::<String>::new(), "{} {language}", scenario.file);
            let read: DiagnosisAnswer =
                serde_json::from_str(&answer.body).unwrap_or_else(|e| panic!("{}: {e}", scenario.file));
            assert!(serde_json::to_value(read).expect("JSON") == sent, "{} {language}", scenario.file);
            tried += 1;
        }
    }
    assert!(tried > 100, "only {tried}");
}

#[test]
fn every_rule_fits_the_document_and_reads_back_as_it_was() {
    let (server, schema, set) = (Server::start(), validator("RuleAnswer"), embedded::set().expect("it loads"));
    for info in &set.rules {
        let sent = server.get(&format!("/v1/rules/{}?language=es", info.id)).ok();
        let misfits: Vec<String> = schema.iter_errors(&sent).map(|e| format!("{}: {e}", e.instance_path())).collect();
        assert_eq!(misfits, Vec::<String>::new(), "{}", info.id);
        let read: RuleAnswer = serde_json::from_value(sent.clone()).unwrap_or_else(|e| panic!("{}: {e}", info.id));
        assert!(serde_json::to_value(read).expect("JSON") == sent, "{}", info.id);
    }
}
