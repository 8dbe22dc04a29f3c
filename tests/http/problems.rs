//! Each kind of problem is provoked once; the table is walked, so a kind without a way to provoke it fails.

use std::sync::OnceLock;
use std::time::Duration;

use actix_web::{HttpResponse, web};
use lammas::problem::extractors::PathParts;
use lammas::problem::kinds::{self, KINDS, Kind};
use lammas_tests::answer::Answer;
use lammas_tests::editor::Editor;
use lammas_tests::server::{Server, small};
use serde::Deserialize;

const ET0: &str = "/v1/quantities/et0_hs";
const ADVICE: &str = "/v1/advice";
const JSON: (&str, &str) = ("content-type", "application/json");

#[derive(Deserialize)]
struct Numbered {
    number: u16,
}

/// The published server, with small limits and three calls that misbehave.
fn server() -> Server {
    let mut settings = small();
    settings.deadlines.body_ms = 200;
    settings.deadlines.answer_ms = 600;
    settings.limits.nesting = 8;
    Server::with(settings, |config| {
        config
            .route("/panics", web::get().to(|| async { panic!("at src/secret.rs") as HttpResponse }))
            .route(
                "/sleeps",
                web::get().to(|| async {
                    actix_web::rt::time::sleep(Duration::from_secs(30)).await;
                    HttpResponse::Ok().finish()
                }),
            )
            .route(
                "/beds/{number}",
                web::get().to(|PathParts(bed): PathParts<Numbered>| async move {
                    HttpResponse::Ok().body(bed.number.to_string())
                }),
            );
    })
}

fn provoke(kind: Kind, server: &Server) -> Option<Answer> {
    Some(match kind.slug {
        "bad-json" => server.post_text(ET0, "{"),
        "nested-too-deep" => server.post_text(ET0, &format!("{}{}", "[".repeat(9), "]".repeat(9))),
        "bad-query" => server.get("/v1/quantities?page=2"),
        "bad-path" => server.get("/beds/north"),
        "unknown-path" => server.get("/v2/quantities"),
        "unknown-quantity" => server.post_text("/v1/quantities/wisdom", "{\"inputs\": {}}"),
        "unknown-problem" => server.get("/problems/bad-jason"),
        "method-not-allowed" => server.send("DELETE", "/v1/quantities", &[], b""),
        "not-acceptable" => server.send("GET", "/v1/quantities", &[("accept-encoding", "identity;q=0, br")], b""),
        "body-too-large" => server.post_text(ET0, &" ".repeat(64 * 1024 + 1)),
        "unsupported-media-type" => server.send("POST", ET0, &[("content-type", "text/plain")], b"{}"),
        "invalid-request" => server.post_text(ET0, "{}"),
        "climate-not-found" => server.get("/v1/climates/atlantis"),
        "rule-not-found" => server.get("/v1/rules/rose.renewal-cot"),
        "unknown-plant" => {
            server.post_text(ADVICE, r#"{"climate": {"id": "cold-inland"}, "plant": {"type": "triffid"}}"#)
        }
        "unknown-climate" => server.post_text(ADVICE, r#"{"climate": {"id": "atlantis"}, "plant": {"type": "rose"}}"#),
        "unknown-rule-set" => server.post_text(
            ADVICE,
            r#"{"climate": {"id": "cold-inland"}, "plant": {"type": "rose"}, "rule_sets": ["house"]}"#,
        ),
        "not-available-yet" => server.post_text(ADVICE, r#"{"climate": {"area": "north"}, "plant": {"type": "rose"}}"#),
        "not-on-land" => server.post_text("/v1/season", r#"{"climate": {"latitude": -40, "longitude": -120}}"#),
        "broken" => server.get("/panics"),
        "not-ready" => {
            server.ready.set(false);
            server.get("/health/ready")
        }
        "deadline-passed" => server.get("/sleeps"),
        "no-store" => server.get("/v1/editor/releases"),
        other => return editors(other),
    })
}

/// Those of the editors' calls, on a service with a store.
fn editors(slug: &str) -> Option<Answer> {
    static EDITOR: OnceLock<Editor> = OnceLock::new();
    let editor = EDITOR.get_or_init(Editor::start);
    let undo = "/v1/editor/rule-sets/mini/undo";
    Some(match slug {
        "no-key" => editor.server.get("/v1/editor/releases"),
        "key-in-address" => editor.server.get(&format!("/v1/editor/releases?key={}", editor.key)),
        "key-lacks-scope" => editor.send_as(&editor.weak, "POST", undo, &[("idempotency-key", "a")], "{}"),
        "idempotency-key-needed" => editor.send("POST", undo, &[], "{}"),
        "still-running" => {
            editor.take(undo, "r", "{}");
            editor.send("POST", undo, &[("idempotency-key", "r")], "{}")
        }
        "idempotency-key-of-another" => {
            editor.take(undo, "a", "{ }");
            editor.send("POST", undo, &[("idempotency-key", "a")], "{}")
        }
        "not-in-store" => editor.send("GET", "/v1/editor/drafts/draft-none", &[], ""),
        "match-needed" => editor.send("PUT", "/v1/editor/drafts/draft-none", &[], "{\"files\": []}"),
        "changed-meanwhile" => {
            let draft = editor.draft();
            editor.send("PUT", &format!("/v1/editor/drafts/{draft}"), &[("if-match", "\"7\"")], &editor.files())
        }
        "not-publishable" => {
            let draft = editor.draft();
            let headers = [("if-match", "\"1\""), ("idempotency-key", "b")];
            editor.send("POST", &format!("/v1/editor/drafts/{draft}/publish"), &headers, "{}")
        }
        "store-away" => editor.while_another_writes(|| editor.send("POST", undo, &[("idempotency-key", "c")], "{}")),
        _ => return None,
    })
}

#[test]
fn every_kind_of_problem_can_be_met_and_is_described_at_its_type() {
    let server = server();
    for kind in KINDS {
        if *kind != kinds::BODY_TOO_SLOW {
            let answer = provoke(*kind, &server).unwrap_or_else(|| panic!("nothing provokes `{}`", kind.slug));
            let problem = answer.problem(*kind);
            assert!(!problem.detail.ends_with('.'), "{}", problem.detail);
            assert!(
                !problem.detail.starts_with(char::is_uppercase) || problem.detail.starts_with("EOF"),
                "{problem:?}"
            );
        }
        let described = server.get(&kind.type_uri()).ok();
        assert_eq!(described["type"], kind.type_uri());
        assert_eq!(described["status"], kind.status);
    }
}

#[test]
fn a_body_that_does_not_arrive_is_not_waited_for() {
    // The head announces ten bytes and two come.
    let head = format!("POST {ET0} HTTP/1.1\r\nhost: here\r\ncontent-type: application/json\r\ncontent-length: 10\r\n");
    let answer = server().raw(&format!("{head}connection: close\r\n\r\n{{}}"));
    let (status, kind) = (kinds::BODY_TOO_SLOW.status, kinds::BODY_TOO_SLOW.type_uri());
    assert!(answer.starts_with(&format!("HTTP/1.1 {status}")), "{answer}");
    assert!(answer.contains(&format!("\"type\":\"{kind}\"")), "{answer}");
}

#[test]
fn a_body_is_refused_by_its_announced_length_and_by_its_real_one() {
    let server = server();
    let head = format!("POST {ET0} HTTP/1.1\r\nhost: here\r\nconnection: close\r\ncontent-type: application/json\r\n");
    let announced = server.raw(&format!("{head}content-length: 99999999\r\n\r\n"));
    assert!(announced.starts_with("HTTP/1.1 413"), "{announced}");
    let chunk = format!("10000\r\n{}\r\n", " ".repeat(0x10000));
    let streamed = server.raw(&format!("{head}transfer-encoding: chunked\r\n\r\n{chunk}1\r\n \r\n0\r\n\r\n"));
    assert!(streamed.starts_with("HTTP/1.1 413"), "{streamed}");
    let fits = server.post_text(ET0, &" ".repeat(64 * 1024));
    let _ = fits.problem(kinds::BAD_JSON);
}

#[test]
fn only_json_in_utf_8_that_is_not_compressed_is_read() {
    let server = server();
    let body = br#"{"inputs": {"latitude": 45.72, "day_of_year": 196, "tmin": 14.8, "tmax": 26.6}}"#;
    for media in [
        "application/json",
        "Application/JSON; charset=UTF-8",
        "application/vnd.garden+json",
        "application/json;charset=\"utf-8\"",
    ] {
        assert_eq!(server.send("POST", ET0, &[("content-type", media)], body).status, 200, "{media}");
    }
    for media in ["application/json; charset=latin1", "text/json", "application/x-www-form-urlencoded", "json", ""] {
        let _ = server.send("POST", ET0, &[("content-type", media)], body).problem(kinds::UNSUPPORTED_MEDIA_TYPE);
    }
    let _ = server.send("POST", ET0, &[], body).problem(kinds::UNSUPPORTED_MEDIA_TYPE);
    let packed = server.send("POST", ET0, &[JSON, ("content-encoding", "gzip")], body);
    let _ = packed.problem(kinds::UNSUPPORTED_MEDIA_TYPE);
    assert_eq!(packed.header("accept-encoding"), "identity");
}

#[test]
fn a_server_goes_on_after_a_panic() {
    let server = server();
    for _ in 0..3 {
        let _ = server.get("/panics").problem(kinds::BROKEN);
    }
    assert_eq!(server.get("/health/live").status, 200);
}

#[test]
fn a_part_of_a_path_is_read_and_its_faults_are_named() {
    let server = server();
    assert_eq!(server.get("/beds/7").body, "7");
    let north = server.get("/beds/north").problem(kinds::BAD_PATH);
    assert_eq!(north.errors[0].pointer, "/number");
    for name in ["%FF", "a%00b", &"x".repeat(201)] {
        let problem = server.get(&format!("/problems/{name}")).problem(kinds::BAD_PATH);
        assert_eq!(problem.errors[0].pointer, "/slug", "{name}");
    }
    let encoded = server.get("/problems/a%2Fb%2541").problem(kinds::UNKNOWN_PROBLEM);
    assert!(encoded.detail.contains("`a/b%41`"), "{}", encoded.detail);
}
