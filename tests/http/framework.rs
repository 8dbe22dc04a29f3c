//! What the framework would answer by itself, answered in our form.

use actix_web::{HttpResponse, web};
use lammas::problem::kinds::{BAD_JSON, INVALID_REQUEST, METHOD_NOT_ALLOWED, UNKNOWN_PATH};
use lammas::routes::{CALLS, allowed, paths};
use lammas_tests::server::{Server, small};
use serde_json::json;

const ET0: &str = "/v1/quantities/et0_hs";

#[test]
fn a_path_that_is_not_served_is_said_to_be_so() {
    let server = Server::start();
    for path in ["/v1", "/v1/quantities/", "/v1/quantities/et0_hs/more", "/V1/quantities", "//"] {
        let _ = server.get(path).problem(UNKNOWN_PATH);
    }
}

#[test]
fn a_method_that_a_path_does_not_take_is_answered_with_those_it_takes() {
    let server = Server::start();
    for path in paths() {
        let taken: Vec<_> = CALLS.iter().filter(|call| call.path == path).map(|call| call.method).collect();
        let real = path.replace("{name}", "et0_hs").replace("{slug}", "bad-json").replace("{file}", "start.js");
        for method in ["GET", "HEAD", "POST", "PUT", "PATCH", "DELETE", "OPTIONS", "TRACE", "BREW"] {
            let answers_as = if method == "HEAD" { "GET" } else { method };
            if taken.contains(&answers_as) {
                continue;
            }
            let answer = server.send(method, &real, &[], b"");
            assert_eq!(answer.status, 405, "{method} {real}");
            assert_eq!(answer.header("allow"), allowed(path), "{method} {real}");
            if method != "HEAD" {
                let _ = answer.problem(METHOD_NOT_ALLOWED);
            }
        }
    }
}

#[test]
fn head_is_answered_like_get_without_the_body() {
    let server = Server::start();
    for path in paths().filter(|path| !path.contains('{') && allowed(path).contains("HEAD")) {
        let identity = [("accept-encoding", "identity")];
        let (get, head) = (server.send("GET", path, &identity, b""), server.send("HEAD", path, &identity, b""));
        assert_eq!((head.status, head.body.as_str()), (get.status, ""), "{path}");
        for header in ["content-type", "content-length", "cache-control", "location"] {
            assert_eq!(head.header(header), get.header(header), "{path} {header}");
        }
    }
    let raw = server.raw("HEAD /health/live HTTP/1.1\r\nhost: here\r\nconnection: close\r\n\r\n");
    assert!(raw.starts_with("HTTP/1.1 200") && raw.ends_with("\r\n\r\n"), "{raw}");
    let raw = server.raw("HEAD /nowhere HTTP/1.1\r\nhost: here\r\nconnection: close\r\n\r\n");
    assert!(raw.starts_with("HTTP/1.1 404") && raw.ends_with("\r\n\r\n"), "{raw}");
}

#[test]
fn a_body_that_is_not_json_is_answered_with_line_and_column() {
    let server = Server::start();
    for (body, words) in [
        ("{\"inputs\":\n{,}}", "line 2 column 2"),
        ("{\"inputs\": {}", "EOF while parsing"),
        (" ", "expected a JSON body, found none"),
        ("{\"inputs\": {\"a\": 1e999}}", "number out of range"),
        ("{\"inputs\": {}} x", "trailing characters"),
        ("{\"inputs\": {\"a\": NaN}}", "expected value"),
    ] {
        let problem = server.post_text(ET0, body).problem(BAD_JSON);
        assert!(problem.detail.contains(words), "{body}: {}", problem.detail);
    }
}

#[test]
fn a_body_of_the_wrong_shape_is_answered_with_every_wrong_place() {
    let server = Server::start();
    for (body, errors) in [
        (
            json!({"input": {}}),
            vec![("/input", "unknown field `input`, did you mean `inputs`?"), ("/inputs", "missing field `inputs`")],
        ),
        (json!({"inputs": 3}), vec![("/inputs", "expected an object, found `3`")]),
        (json!([{}]), vec![("", "expected an object, found a list")]),
        (json!({"inputs": {"a/b": {"value": 1}}}), vec![("/inputs/a~1b", "a/b")]),
    ] {
        let answer = server.post(ET0, &body);
        let _ = answer.problem(INVALID_REQUEST);
        let found = answer.errors();
        for (at, (pointer, words)) in errors.iter().enumerate() {
            assert!(found[at].0 == *pointer && found[at].1.contains(words), "{body}: {found:?}");
        }
    }
    let twice = server.post_text(ET0, "{\"inputs\": {}, \"inputs\": {}}").problem(INVALID_REQUEST);
    assert!(twice.errors[0].detail.contains("`inputs` stands twice"), "{twice:?}");
}

#[test]
fn an_answer_is_compressed_for_those_who_ask() {
    let server = Server::start();
    let plain = server.send("GET", "/openapi.json", &[("accept-encoding", "identity")], b"");
    assert_eq!(plain.header("content-encoding"), "");
    let raw = server.send("HEAD", "/openapi.json", &[("accept-encoding", "gzip")], b"");
    assert_eq!(raw.header("content-encoding"), "gzip");
}

#[test]
fn a_failure_that_has_no_kind_is_answered_by_its_status() {
    let server = Server::with(small(), |config| {
        config.route("/teapot", web::get().to(|| async { HttpResponse::ImATeapot().body("src/teapot.rs") }));
    });
    let problem = server.get("/teapot").any_problem();
    assert_eq!((problem.kind.as_str(), problem.status, problem.title.as_str()), ("about:blank", 418, "I'm a teapot"));
}

#[test]
fn the_caller_may_bring_a_request_id_if_it_is_one() {
    let server = Server::start();
    let brought = server.send("GET", "/nowhere", &[("x-request-id", "till-7.2026")], b"");
    assert_eq!(brought.any_problem().request_id.as_deref(), Some("till-7.2026"));
    let strange = server.send("GET", "/nowhere", &[("x-request-id", "a b;c")], b"");
    assert_ne!(strange.header("x-request-id"), "a b;c");
    assert_ne!(server.get("/health/live").header("x-request-id"), server.get("/health/live").header("x-request-id"));
}
