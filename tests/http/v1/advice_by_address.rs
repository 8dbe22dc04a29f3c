use lammas::problem::kinds::{BAD_QUERY, Kind, UNKNOWN_CLIMATE, UNKNOWN_PLANT};
use lammas_tests::server::Server;
use serde_json::json;

const ROSE: &str = "/v1/advice?climate=hot-dry-valley&plant=rose&date=2026-09-15";

fn max_age(header: &str) -> u64 {
    let age = header.strip_prefix("public, max-age=").unwrap_or_else(|| panic!("`{header}` can't be kept"));
    age.parse().expect("seconds")
}

#[test]
fn advice_by_address_is_the_one_that_is_posted() {
    let server = Server::start();
    let posted = server.post(
        "/v1/advice",
        &json!({"climate": {"id": "hot-dry-valley"}, "date": "2026-09-15",
            "plant": {"type": "rose", "traits": {"flowering": "repeat", "form": "shrub"}},
            "condition": {"signs": [{"sign": "spent-blooms"}, {"sign": "crowded-centre"}]},
            "language": "es", "units": "si", "detail": "full", "limit": 2}),
    );
    let got = server.get(&format!(
        "{ROSE}&traits=flowering:repeat,form:shrub&signs=spent-blooms,%20crowded-centre&language=es&units=si&detail=full&limit=2"
    ));
    assert_eq!(got.ok(), posted.ok());
    assert_eq!(got.header("etag"), posted.header("etag"), "the tag is that of the bytes");
    assert_eq!(got.header("content-language"), "es");
    assert_ne!(server.get(ROSE).header("etag"), got.header("etag"));
}

#[test]
fn no_signs_and_an_empty_list_of_signs_are_two_things() {
    let server = Server::start();
    let status = |query: &str| {
        let answer = server.get(&format!("{ROSE}{query}")).ok();
        answer["asked"]["not_seen"].is_string()
    };
    assert!(!status(""), "nothing is known");
    assert!(status("&signs="), "none is seen");
}

#[test]
fn a_reader_who_has_the_answer_gets_none_again() {
    let server = Server::start();
    let first = server.get(ROSE);
    let tag = first.header("etag").to_owned();
    assert!(tag.starts_with("W/\""), "{tag}");
    for known in [tag.clone(), tag.trim_start_matches("W/").to_owned(), format!("\"other\", {tag}"), "*".to_owned()] {
        let again = server.send("GET", ROSE, &[("if-none-match", &known)], b"");
        assert_eq!((again.status, again.body.as_str()), (304, ""), "{known}");
        // RFC 9110, section 15.4.5: what a 200 would have said of keeping is said again.
        for header in ["etag", "cache-control", "vary", "access-control-allow-origin"] {
            assert_eq!(again.header(header), first.header(header), "{header}");
        }
    }
    for other in ["W/\"0\"", "", "no tag"] {
        assert_eq!(server.send("GET", ROSE, &[("if-none-match", other)], b"").status, 200, "{other}");
    }
    let spanish = server.send("GET", ROSE, &[("if-none-match", &tag), ("accept-language", "es")], b"");
    assert_eq!((spanish.status, spanish.header("content-language")), (200, "es"));
    let head = server.send("HEAD", ROSE, &[], b"");
    assert_eq!((head.status, head.header("etag"), head.body.as_str()), (200, tag.as_str(), ""));
}

#[test]
fn an_answer_may_be_kept_for_an_hour_at_most_and_not_past_midnight_when_it_is_for_today() {
    let server = Server::start();
    assert_eq!(max_age(server.get(ROSE).header("cache-control")), 3600, "a day that is over does not change");
    let today = server.get("/v1/advice?climate=hot-dry-valley&plant=rose");
    assert_eq!(today.ok()["date_origin"], "assumed");
    assert!(max_age(today.header("cache-control")) <= 3600, "{today:?}");
    assert_eq!(
        server
            .post("/v1/advice", &json!({"climate": {"id": "cold-inland"}, "plant": {"type": "rose"}}))
            .header("cache-control"),
        "no-store"
    );
    assert!(today.header("vary").contains("accept-language"), "{today:?}");
}

#[test]
fn any_web_site_may_read_and_none_may_post_from_its_pages() {
    let server = Server::start();
    for path in [ROSE, "/v1/season?climate=cold-inland", "/v1/plants", "/v1/rules/rose.deep-soak", "/v1/advice"] {
        let answer = server.send("GET", path, &[("origin", "https://garden-club.example")], b"");
        assert_eq!(answer.header("access-control-allow-origin"), "*", "{path} {}", answer.status);
        assert_eq!(answer.header("access-control-allow-credentials"), "", "{path}");
    }
    let posted = server.post("/v1/advice", &json!({}));
    assert_eq!(posted.header("access-control-allow-origin"), "");
    assert_eq!(server.get("/health/live").header("access-control-allow-origin"), "");
}

#[test]
fn every_parameter_that_is_broken_is_named() {
    let server = Server::start();
    let place = "climate=hot-dry-valley&plant=rose";
    let rows: [(String, Kind, &str); 18] = [
        ("plant=rose".to_owned(), BAD_QUERY, "/climate"),
        ("climate=hot-dry-valley".to_owned(), BAD_QUERY, "/plant"),
        ("climate=atlantis&plant=rose".to_owned(), UNKNOWN_CLIMATE, "/climate"),
        (format!("climate={}&plant=rose", "x".repeat(101)), BAD_QUERY, "/climate"),
        ("climate=hot-dry-valley&plant=triffid".to_owned(), UNKNOWN_PLANT, "/plant"),
        (format!("{place}&date=15.9.2026"), BAD_QUERY, "/date"),
        (format!("{place}&date=0900-01-01"), BAD_QUERY, "/date"),
        (format!("{place}&signs=spent-bloom"), BAD_QUERY, "/signs"),
        (format!("{place}&signs={}", "spent-blooms,".repeat(101)), BAD_QUERY, "/signs"),
        (format!("{place}&traits=flowering"), BAD_QUERY, "/traits"),
        (format!("{place}&traits=flowering:often"), BAD_QUERY, "/traits"),
        (format!("{place}&traits=colour:red"), BAD_QUERY, "/traits"),
        (format!("{place}&traits=form:bush,form:shrub"), BAD_QUERY, "/traits"),
        (format!("{place}&language=fr"), BAD_QUERY, "/language"),
        (format!("{place}&units=metric"), BAD_QUERY, "/units"),
        (format!("{place}&detail=all"), BAD_QUERY, "/detail"),
        (format!("{place}&limit=0"), BAD_QUERY, "/limit"),
        (format!("{place}&site=ground"), BAD_QUERY, "/site"),
    ];
    for (query, kind, at) in rows {
        let problem = server.get(&format!("/v1/advice?{query}")).problem(kind);
        assert!(problem.errors.iter().all(|e| e.pointer == at && !e.detail.is_empty()), "{query}: {problem:?}");
        assert!(!problem.errors.is_empty(), "{query}");
    }
}
