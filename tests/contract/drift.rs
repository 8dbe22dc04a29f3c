//! The document that is kept in the repository is the one that the code makes.

use std::path::Path;

use lammas::openapi::document;

#[test]
fn the_kept_document_is_the_one_that_the_code_makes() {
    let kept = Path::new(env!("CARGO_MANIFEST_DIR")).join("../openapi/openapi.json");
    let made = document::text();
    if std::env::var_os("LAMMAS_BLESS").is_some_and(|bless| bless == "1") {
        std::fs::create_dir_all(kept.parent().expect("a folder")).expect("the folder");
        std::fs::write(&kept, &made).expect("written");
    }
    let text = std::fs::read_to_string(&kept).expect("`openapi/openapi.json` is there");
    // The first line that differs says more than two documents.
    let differs = text.lines().zip(made.lines()).enumerate().find(|(_, (kept, made))| kept != made);
    assert_eq!(differs, None, "run the test again with LAMMAS_BLESS=1 and look at the difference");
    assert!(text == made, "the document has grown or shrunk at its end: run the test again with LAMMAS_BLESS=1");
}

#[test]
fn the_document_is_the_same_each_time_it_is_made() {
    assert!(document::text() == document::text());
    assert!(document::text().contains("\"openapi\": \"3.1.0\""));
}
