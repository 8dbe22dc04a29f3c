//! A node takes releases from the store, tests each, and goes on without the store.

use std::path::Path;
use std::time::{Duration, Instant};

use actix_web::rt::System;
use lammas::publishing::Desk;
use lammas::sets::folder;
use lammas::store::place::StorePlace;
use lammas::store::tables::releases;
use lammas_tests::server::{Server, small};
use lammas_tests::stores::both;
use serde_json::Value;

const MINI: &str = concat!(env!("CARGO_MANIFEST_DIR"), "/../rules/engine/tests/data/mini");

fn node(place: &StorePlace) -> Server {
    let mut settings = small();
    settings.rules.packs = vec![MINI.into()];
    settings.store.address = Some(place.server().map_or_else(|| place.folder().display().to_string(), str::to_owned));
    settings.store.files = place.server().map(|_| place.folder().to_owned());
    Server::with(settings, |_| {})
}

fn told(server: &Server) -> Value {
    server.get("/health/ready").ok()["releases"].clone()
}

/// How long until a node says so.
fn until(server: &Server, what: impl Fn(&Value) -> bool) -> Duration {
    let begun = Instant::now();
    while !what(&told(server)) {
        assert!(begun.elapsed() < Duration::from_secs(60), "{}", told(server));
        std::thread::sleep(Duration::from_millis(20));
    }
    begun.elapsed()
}

fn publish(place: &StorePlace, version: &str) {
    let mut files = folder::files(Path::new(MINI)).expect("it is there");
    for file in &mut files {
        file.text = file.text.replace("version: \"2026.11.1\"", &format!("version: \"{version}\""));
    }
    System::new().block_on(async {
        let desk = Desk::open(place).await.expect("opens");
        let draft = desk.import(&files, "", "ana").await.expect("a draft");
        desk.publish(&draft.id, None, "ana", None).await.expect("a release");
        desk.store.close().await;
    });
}

fn serves(version: &'static str) -> impl Fn(&Value) -> bool {
    move |told| told["sets"][0]["version"] == version
}

#[test]
#[expect(clippy::print_stdout, reason = "how soon")]
fn every_node_serves_a_release_soon_after_it_was_published() {
    for (place, _folder) in both() {
        let (one, two) = (node(&place), node(&place));
        assert_eq!(told(&one)["from"], "store");
        publish(&place, "2099.1.1");
        let took = [until(&one, serves("2099.1.1")), until(&two, serves("2099.1.1"))];
        println!("{place:?}: served after {took:?}");
    }
}

#[test]
fn a_release_that_was_tampered_with_is_refused_and_the_old_one_stays() {
    for (place, _folder) in both() {
        let server = node(&place);
        System::new().block_on(async {
            let desk = Desk::open(&place).await.expect("opens");
            let mut work = desk.store.begin().await.expect("writes");
            let last = releases::after(&mut *work, 0).await.expect("read").pop().expect("the first");
            let forged = releases::Release { number: 2, place: 2, version: "2099.9.9".to_owned(), ..last };
            releases::insert(&mut *work, &forged).await.expect("whoever has the database can do so");
            work.tell_nodes().await.expect("told");
            work.commit().await.expect("kept");
        });
        until(&server, |told| told["refused"][0]["because"] == "the signature does not fit");
        assert_eq!(
            (told(&server)["sets"][0]["release"].as_i64(), told(&server)["newest"].as_i64()),
            (Some(1), Some(2))
        );
        let question = serde_json::json!({"climate": {"id": "valley"}, "plant": {"type": "rose"}, "date": "2026-09-15", "rule_sets": ["mini"]});
        assert_eq!(server.post("/v1/advice", &question).ok()["rule_sets"][0]["version"], "2026.11.1");
    }
}

#[test]
fn a_node_starts_from_its_last_signed_copy_while_the_store_is_away_and_follows_it_again() {
    let [_, (place, folder)] = both();
    publish(&place, "2099.1.1");
    let server = node(&place);
    until(&server, serves("2099.1.1"));
    until(&server, |_| folder.path().join("last-release.json").exists());
    drop(server);
    // The same keys and the same copy beside a server that is not there.
    let nobody = StorePlace::parse("postgres://app@127.0.0.1:1/app", Some(folder.path())).expect("a place");
    let server = node(&nobody);
    assert_eq!((told(&server)["from"].as_str(), told(&server)["store_reached"].as_bool()), (Some("copy"), Some(false)));
    assert!(serves("2099.1.1")(&told(&server)));
    drop(server);

    let path = folder.path().join("last-release.json");
    let copy = std::fs::read_to_string(&path).expect("the copy");
    std::fs::write(&path, copy.replacen("Cut back", "Cut down", 1)).expect("changed");
    let mut settings = small();
    settings.rules.packs = vec![MINI.into()];
    settings.store.address = nobody.server().map(str::to_owned);
    settings.store.files = Some(folder.path().to_owned());
    let refused =
        System::new().block_on(async { lammas::startup::bind(settings).err().map(|error| format!("{error:#}")) });
    assert!(refused.as_deref().is_some_and(|told| told.contains("does not count: it was changed")), "{refused:?}");
}
