use lammas::problem::kinds::UNKNOWN_PATH;
use lammas_tests::server::Server;

/// The texts between double quotes that name a file of the page.
fn named(text: &str, folder: &str) -> Vec<String> {
    let names = text.split('"').filter_map(|part| part.strip_prefix(folder));
    names.filter(|name| name.contains('.')).map(str::to_owned).collect()
}

#[test]
fn the_page_and_every_file_that_it_names_come_from_the_service() {
    let server = Server::start();
    let page = server.get("/");
    assert_eq!((page.status, page.header("content-type")), (200, "text/html; charset=utf-8"));
    let policy = page.header("content-security-policy");
    assert!(policy.contains("default-src 'none'") && !policy.contains("unsafe"), "{policy}");
    assert!(!page.body.contains("://"), "the page names another host");
    assert!(!page.body.contains(" style=") && !page.body.contains(" onclick"), "style or script in the page");

    let mut todo = named(&page.body, "home/");
    let mut seen: Vec<String> = Vec::new();
    while let Some(file) = todo.pop() {
        if seen.contains(&file) {
            continue;
        }
        let answer = server.get(&format!("/home/{file}"));
        let media = match file.rsplit('.').next() {
            Some("js") => "text/javascript; charset=utf-8",
            Some("css") => "text/css; charset=utf-8",
            _ => "image/svg+xml",
        };
        assert_eq!((answer.status, answer.header("content-type")), (200, media), "{file}");
        todo.extend(named(&answer.body, "./"));
        seen.push(file);
    }
    assert!(seen.len() > 15, "{seen:?}");
}

#[test]
fn a_file_that_has_not_changed_is_not_sent_again() {
    let server = Server::start();
    let tag = server.get("/home/start.js").header("etag").to_owned();
    let again = server.send("GET", "/home/start.js", &[("if-none-match", &tag)], b"");
    assert_eq!((again.status, again.body.as_str()), (304, ""));
    let other = server.send("GET", "/home/start.js", &[("if-none-match", "\"x\"")], b"");
    assert_eq!(other.status, 200);
}

#[test]
fn no_other_file_is_served() {
    let server = Server::start();
    for file in ["home.html", "..%2Fdocs.js", "x"] {
        let _ = server.get(&format!("/home/{file}")).problem(UNKNOWN_PATH);
    }
}
