use lammas::problem::kinds::NOT_READY;
use lammas_tests::server::Server;

#[test]
fn a_running_server_lives_and_is_ready() {
    let server = Server::start();
    assert_eq!(server.get("/health/live").ok()["status"], "live");
    assert_eq!(server.get("/health/ready").ok()["status"], "ready");
}

#[test]
fn a_server_that_wants_no_requests_still_lives() {
    let server = Server::start();
    server.ready.set(false);
    assert_eq!(server.get("/health/ready").problem(NOT_READY).status, 503);
    assert_eq!(server.get("/health/live").ok()["status"], "live");
    server.ready.set(true);
    assert_eq!(server.get("/health/ready").status, 200);
}
