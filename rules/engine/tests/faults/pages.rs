//! Pages of the checks, as files.

use lammas_engine::check::page;

#[test]
#[expect(clippy::disallowed_methods, reason = "the test looks at the folder itself")]
fn every_page_belongs_to_a_check() {
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/src/check/pages");
    let mut pages = 0;
    for file in std::fs::read_dir(folder).expect("the pages are there") {
        let path = file.expect("a file").path();
        let code = path.file_stem().and_then(|stem| stem.to_str()).expect("a name").to_owned();
        let text = std::fs::read_to_string(&path).expect("a text");
        assert_eq!(page(&code), Some(text.as_str()), "{code} is no check, or shows another page");
        pages += 1;
    }
    assert_eq!(pages, lammas_engine::check::CHECKS.len());
}
