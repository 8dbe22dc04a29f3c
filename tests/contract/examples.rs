//! Every example of the document is sent; every answer fits its schema.

use lammas::problem::wire::MEDIA_TYPE;
use lammas_tests::server::Server;
use serde_json::{Value, json};

use crate::document::{document, operations};
use crate::schema::misfits;

/// A path with the examples of its parameters put in, those of the query that have one too.
pub(crate) fn filled(path: &str, operation: &Value) -> String {
    let mut path = path.to_owned();
    for parameter in operation["parameters"].as_array().into_iter().flatten() {
        let name = parameter["name"].as_str().expect("a name");
        let example = match &parameter["example"] {
            Value::Null => &parameter["schema"]["example"],
            example => example,
        };
        if example.is_null() {
            continue; // one that does not go with the others
        }
        let example = example.as_str().map_or_else(|| example.to_string(), str::to_owned);
        match parameter["in"].as_str() {
            Some("path") => path = path.replace(&format!("{{{name}}}"), &example),
            _ => path.push_str(&format!(
                "{}{name}={}",
                if path.contains('?') { '&' } else { '?' },
                example.replace(' ', "+")
            )),
        }
    }
    path
}

#[test]
fn every_example_is_answered_and_fits_its_schema() {
    let (document, server) = (document(), Server::start());
    for (path, method, operation) in operations(&document) {
        if path.starts_with("/v1/editor/") {
            continue; // they need a store, a key and a draft: `tests/http/v1/editor.rs` goes through them
        }
        let request = &operation["requestBody"]["content"]["application/json"];
        let called = filled(&path, &operation);
        let answer = if operation["requestBody"].is_null() {
            server.send(&method, &called, &[], b"")
        } else {
            let example = &request["example"];
            assert!(!example.is_null(), "{method} {path} has no example of its body");
            assert_eq!(misfits(&document, &request["schema"], example), Vec::<String>::new(), "{method} {path}");
            server.send(&method, &called, &[("content-type", "application/json")], example.to_string().as_bytes())
        };
        let status = answer.status.to_string();
        assert!(status.starts_with('2'), "{method} {called}: {answer:?}");
        let media = answer.header("content-type").split(';').next().expect("a media type").to_owned();
        let described = &operation["responses"][&status]["content"][media];
        assert!(!described.is_null(), "{method} {path} {status} is not described");
        assert_eq!(misfits(&document, &described["schema"], &answer.json()), Vec::<String>::new(), "{method} {path}");
    }
}

#[test]
fn every_good_answer_has_an_example_that_fits_its_schema() {
    let document = document();
    for (path, method, operation) in operations(&document) {
        for (status, answer) in operation["responses"].as_object().expect("answers") {
            for (media, content) in answer["content"].as_object().into_iter().flatten() {
                if media == MEDIA_TYPE {
                    continue;
                }
                assert!(!content["example"].is_null(), "{method} {path} {status} {media} has no example");
                let misfits = misfits(&document, &content["schema"], &content["example"]);
                assert_eq!(misfits, Vec::<String>::new(), "{method} {path} {status} {media}");
            }
        }
    }
}

#[test]
fn an_example_of_a_reckoning_is_what_comes_out_of_it() {
    let (document, server) = (document(), Server::start());
    let operation = &document["paths"]["/v1/quantities/{name}"]["post"];
    let asked = &operation["requestBody"]["content"]["application/json"]["example"];
    let answered = &operation["responses"]["200"]["content"]["application/json"]["example"];
    assert_eq!(&server.post("/v1/quantities/et0_hs", asked).ok(), answered);
}

#[test]
fn the_example_of_a_list_is_an_entry_of_it() {
    let (document, server) = (document(), Server::start());
    let example =
        &document["paths"]["/v1/quantities"]["get"]["responses"]["200"]["content"]["application/json"]["example"];
    let all = server.get("/v1/quantities?limit=200").ok();
    assert!(all["items"].as_array().is_some_and(|items| items.contains(&example["items"][0])), "{example}");
}

#[test]
fn problems_fit_their_schema() {
    let (document, server) = (document(), Server::start());
    let schema = json!({"$ref": "#/components/schemas/Problem"});
    for answer in
        [server.get("/nowhere"), server.get("/v1/quantities?page=2"), server.post("/v1/quantities/et0_hs", &json!({}))]
    {
        assert!(answer.status >= 400);
        assert_eq!(misfits(&document, &schema, &answer.json()), Vec::<String>::new());
    }
}

#[test]
fn the_served_document_is_this_one() {
    assert_eq!(Server::start().get("/openapi.json").ok(), document());
}
