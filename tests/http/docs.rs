use lammas::problem::kinds::UNKNOWN_PATH;
use lammas_tests::server::Server;

#[test]
fn the_page_and_all_that_it_loads_come_from_the_service() {
    let server = Server::start();
    let page = server.get("/docs/");
    assert_eq!(page.status, 200);
    assert_eq!(page.header("content-type"), "text/html; charset=utf-8");
    assert!(page.body.contains("<title>Lammas"), "{}", page.body);
    assert!(!page.body.contains("://"), "the page names another host");
    assert!(page.header("content-security-policy").contains("script-src 'self'"));
    let named = page.body.split('"').filter(|text| text.ends_with(".js") || text.ends_with(".css"));
    let mut files = 0;
    for file in named {
        let answer = server.get(&format!("/docs/{file}"));
        assert_eq!(answer.status, 200, "{file}");
        let media = if file.ends_with(".css") { "text/css" } else { "text/javascript" };
        assert!(answer.header("content-type").starts_with(media), "{file}: {}", answer.header("content-type"));
        files += 1;
    }
    assert_eq!(files, 3);
    assert!(server.get("/docs/start.js").body.contains("\"/openapi.json\""));
}

#[test]
fn the_address_without_a_slash_leads_to_the_one_with_it() {
    let answer = Server::start().get("/docs");
    assert_eq!((answer.status, answer.header("location")), (308, "/docs/"));
}

#[test]
fn no_other_file_is_served() {
    let server = Server::start();
    for file in ["index.html", "swagger-initializer.js", "..%2Fstart.js", "x"] {
        let _ = server.get(&format!("/docs/{file}")).problem(UNKNOWN_PATH);
    }
}
