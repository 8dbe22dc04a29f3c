//! The routes table and the document, both ways.

use std::collections::BTreeSet;

use lammas::openapi::document;
use lammas::problem::kinds::{ANY_CALL, KINDS};
use lammas::problem::wire::MEDIA_TYPE;
use lammas::routes::{CALLS, Call};
use serde_json::Value;

pub(crate) fn document() -> Value {
    serde_json::from_str(&document::text()).expect("JSON")
}

/// Every operation of the document: path, method in capitals, and itself.
pub(crate) fn operations(document: &Value) -> Vec<(String, String, Value)> {
    let paths = document["paths"].as_object().expect("paths");
    let each = |(path, item): (&String, &Value)| {
        let path = path.clone();
        let item = item.as_object().expect("a path item").clone();
        item.into_iter().map(move |(method, operation)| (path.clone(), method.to_uppercase(), operation))
    };
    paths.iter().flat_map(each).collect()
}

fn documented() -> impl Iterator<Item = &'static Call> {
    CALLS.iter().filter(|call| call.documented)
}

fn is_text(value: &Value) -> bool {
    value.as_str().is_some_and(|text| !text.trim().is_empty())
}

#[test]
fn every_call_of_the_table_stands_in_the_document_and_the_reverse() {
    let table: BTreeSet<_> =
        documented().map(|call| (call.path.to_owned(), call.method.to_owned(), call.operation)).collect();
    let document = document();
    let operations = operations(&document);
    let written: BTreeSet<_> = operations
        .iter()
        .map(|(path, method, operation)| {
            (path.clone(), method.clone(), operation["operationId"].as_str().expect("an id"))
        })
        .collect();
    assert_eq!(written, table);
    assert_eq!(operations.len(), documented().count());
}

#[test]
fn operations_are_named_by_what_they_do_and_each_name_stands_once() {
    let names: Vec<_> = documented().map(|call| call.operation).collect();
    assert_eq!(names.iter().collect::<BTreeSet<_>>().len(), names.len(), "{names:?}");
    for name in names {
        let (verb, noun) = name.split_once('_').unwrap_or_else(|| panic!("`{name}` is not a verb and a noun"));
        assert!(
            !verb.is_empty() && !noun.is_empty() && name.bytes().all(|b| b.is_ascii_lowercase() || b == b'_'),
            "{name}"
        );
    }
}

#[test]
fn every_operation_says_what_it_is_for() {
    let document = document();
    let tags: Vec<_> = document["tags"].as_array().expect("tags").iter().map(|tag| tag["name"].clone()).collect();
    for (path, method, operation) in operations(&document) {
        assert!(is_text(&operation["summary"]) && is_text(&operation["description"]), "{method} {path}");
        assert!(
            !operation["description"].as_str().is_some_and(|text| text.contains("# ")),
            "{method} {path}: notes for programmers"
        );
        let named = operation["tags"].as_array().expect("tags");
        assert!(!named.is_empty() && named.iter().all(|tag| tags.contains(tag)), "{method} {path}: {named:?}");
        for parameter in operation["parameters"].as_array().into_iter().flatten() {
            assert!(is_text(&parameter["description"]), "{method} {path}: {parameter}");
            assert!(parameter["required"].is_boolean(), "{method} {path}: {parameter}");
        }
        for (status, answer) in operation["responses"].as_object().expect("answers") {
            assert!(is_text(&answer["description"]), "{method} {path} {status}");
        }
    }
}

#[test]
fn every_operation_lists_the_problems_that_the_table_gives_it() {
    let document = document();
    for call in documented() {
        let operation = &document["paths"][call.path][call.method.to_lowercase()];
        for kind in call.problems.iter().copied().flatten().chain(ANY_CALL) {
            let answer = &operation["responses"][kind.status.to_string()];
            assert_eq!(
                answer["content"][MEDIA_TYPE]["schema"]["$ref"], "#/components/schemas/Problem",
                "{}",
                call.path
            );
            let named = format!("`{}`", kind.slug);
            assert!(answer["description"].as_str().is_some_and(|text| text.contains(&named)), "{} {named}", call.path);
        }
    }
}

#[test]
fn every_kind_of_problem_is_given_by_some_call() {
    let given: BTreeSet<_> = documented()
        .flat_map(|call| call.problems.iter().copied().flatten())
        .chain(ANY_CALL)
        .map(|kind| kind.slug)
        .collect();
    // These two are no call's: they say that there is no such call.
    let apart = ["unknown-path", "method-not-allowed"];
    for kind in KINDS {
        assert!(given.contains(kind.slug) != apart.contains(&kind.slug), "{}", kind.slug);
    }
}

#[test]
fn every_schema_that_is_named_is_there_and_used_and_every_member_is_described() {
    let document = document();
    let text = document.to_string();
    let schemas = document["components"]["schemas"].as_object().expect("schemas");
    let named: BTreeSet<&str> =
        text.split("\"#/components/schemas/").skip(1).filter_map(|rest| rest.split('"').next()).collect();
    assert_eq!(named, schemas.keys().map(String::as_str).collect::<BTreeSet<_>>());
    for (name, schema) in schemas {
        assert!(is_text(&schema["description"]), "{name}");
        for (member, schema) in schema["properties"].as_object().into_iter().flatten() {
            assert!(
                is_text(&schema["description"])
                    || schema["$ref"].is_string()
                    || is_text(&schema["oneOf"][0]["description"]),
                "{name}.{member}: {schema}"
            );
        }
    }
}
