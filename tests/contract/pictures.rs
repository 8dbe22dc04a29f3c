//! Answers that are pictures: every one that the document names is sent, and read by an XML parser.

use lammas_tests::server::Server;

use crate::document::{document, operations};
use crate::examples::filled;

#[test]
fn every_picture_of_the_document_is_answered_as_well_formed_svg() {
    let (document, server) = (document(), Server::start());
    let mut tried = 0;
    for (path, method, operation) in operations(&document) {
        let described = &operation["responses"]["200"]["content"]["image/svg+xml"];
        if described.is_null() {
            continue;
        }
        let headers = [("accept", "image/svg+xml"), ("content-type", "application/json")];
        let example = &operation["requestBody"]["content"]["application/json"]["example"];
        let body = if example.is_null() { String::new() } else { example.to_string() };
        let answer = server.send(&method, &filled(&path, &operation), &headers, body.as_bytes());
        assert_eq!((answer.status, answer.header("content-type")), (200, "image/svg+xml"), "{method} {path}");
        for svg in [answer.body.as_str(), described["example"].as_str().expect("an example")] {
            let read = roxmltree::Document::parse(svg).unwrap_or_else(|error| panic!("{method} {path}: {error}"));
            let root = read.root_element();
            assert!(root.has_tag_name(("http://www.w3.org/2000/svg", "svg")), "{method} {path}");
            assert_eq!(root.attribute("role"), Some("img"), "{method} {path}");
            for told in ["title", "desc"] {
                let text = root.children().find(|node| node.tag_name().name() == told).and_then(|node| node.text());
                assert!(text.is_some_and(|text| !text.is_empty()), "{method} {path}: {told}");
            }
        }
        tried += 1;
    }
    assert_eq!(tried, 2, "the season, posted and by address");
}
