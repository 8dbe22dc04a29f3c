//! One story over the trait, told on SQLite and on a real PostgreSQL: the same results, the same refusals.

use lammas::store::open::open;
use lammas::store::tables::documents::Document;
use lammas::store::tables::{
    answered, audit, climates, documents, drafts, held_back, keys, product_maps, releases, schedules, sets, weather,
};
use lammas::store::{Store, StoreError, Transaction};
use lammas_engine::read::PackFile;
use lammas_tests::stores::{both, wait};

fn document(text: &str) -> Document {
    Document::of(&[PackFile { path: "pack.yaml".to_owned(), text: text.to_owned() }])
}

fn draft(id: &str, document: &Document) -> drafts::Draft {
    drafts::Draft {
        id: id.to_owned(),
        rule_set: "core".to_owned(),
        document: document.sha256.clone(),
        revision: 1,
        note: "später · año · 'quoted' \"twice\"; drop table draft".to_owned(),
        made_by: "ana".to_owned(),
        made_ms: 1_000,
        changed_by: "ana".to_owned(),
        changed_ms: 1_000,
        state: "open".to_owned(),
    }
}

fn release(number: i64, place: i64, document: &Document) -> releases::Release {
    releases::Release {
        number,
        rule_set: "core".to_owned(),
        place,
        version: format!("2026.11.{number}"),
        set_sha256: "a".repeat(64),
        document: document.sha256.clone(),
        held: "[]".to_owned(),
        how: "publish".to_owned(),
        draft: None,
        published_by: "ana".to_owned(),
        published_ms: number * 1_000,
        audit_sequence: number,
        audit_hash: "b".repeat(64),
        key_id: "k".to_owned(),
        signature: "s".to_owned(),
    }
}

async fn begin(store: &dyn Store) -> Box<dyn Transaction> {
    store.begin().await.expect("a turn to write")
}

fn refused<T: std::fmt::Debug>(result: Result<T, StoreError>, what: &str) {
    let error = result.expect_err(what);
    assert!(matches!(error, StoreError::Refused(_)), "{what}: {error}");
}

#[test]
fn the_story_of_both_stores() {
    for (place, _folder) in both() {
        wait(async {
            let store = open(&place).await.expect("opens");
            let store = store.as_ref();
            content(store).await;
            drafts_and_releases(store).await;
            schedules_and_holds(store).await;
            trail(store).await;
            keys_and_answers(store).await;
            registered(store).await;
            store.close().await;
            // Opened again, everything is still there and no migration runs twice.
            let store = open(&place).await.expect("opens again");
            let mut work = store.read().await.expect("reads");
            assert_eq!(sets::names(&mut *work).await.expect("names"), ["Zebra", "core", "été"]);
            assert_eq!(releases::newest_number(&mut *work).await.expect("a number"), 3);
        });
    }
}

async fn content(store: &dyn Store) {
    let first = document("name: core\n");
    let mut work = begin(store).await;
    sets::put_organisation(&mut *work, "club", "A club", 1).await.expect("an organisation");
    sets::put_organisation(&mut *work, "club", "Another title", 2).await.expect("again changes nothing");
    refused(sets::put(&mut *work, "core", "nobody", 1).await, "a set of nobody");
    drop(work); // what was refused ends the transaction
    let mut work = begin(store).await;
    sets::put_organisation(&mut *work, "club", "A club", 1).await.expect("an organisation");
    for name in ["core", "été", "Zebra"] {
        sets::put(&mut *work, name, "club", 1).await.expect("a set");
    }
    documents::put(&mut *work, &first, 1).await.expect("kept");
    documents::put(&mut *work, &first, 2).await.expect("again changes nothing");
    work.commit().await.expect("kept");

    let mut work = store.read().await.expect("reads");
    // By bytes, not by the manners of any language.
    assert_eq!(sets::names(&mut *work).await.expect("names"), ["Zebra", "core", "été"]);
    assert_eq!(sets::organisation(&mut *work, "core").await.expect("whose"), Some("club".to_owned()));
    assert_eq!(sets::organisation(&mut *work, "none").await.expect("whose"), None);
    assert_eq!(documents::get(&mut *work, &first.sha256).await.expect("there"), first);
    assert!(documents::get(&mut *work, &"0".repeat(64)).await.is_err());
    drop(work);

    // What is dropped is not kept, and a reader sees one moment.
    let mut reader = store.read().await.expect("reads");
    let before = sets::names(&mut *reader).await.expect("names");
    let mut work = begin(store).await;
    sets::put(&mut *work, "later", "club", 1).await.expect("a set");
    drop(work);
    let mut work = begin(store).await;
    documents::put(&mut *work, &document("seen later"), 1).await.expect("kept");
    work.commit().await.expect("kept");
    assert_eq!(sets::names(&mut *reader).await.expect("names"), before);
    assert!(
        documents::get(&mut *reader, &document("seen later").sha256).await.is_err(),
        "the reader's moment is before"
    );
}

async fn drafts_and_releases(store: &dyn Store) {
    let (first, second) = (document("name: core\n"), document("name: core\nversion: 2\n"));
    let mut work = begin(store).await;
    documents::put(&mut *work, &second, 1).await.expect("kept");
    drafts::insert(&mut *work, &draft("d-1", &first)).await.expect("a draft");
    drafts::insert(&mut *work, &drafts::Draft { changed_ms: 5_000, ..draft("d-2", &first) }).await.expect("a draft");
    work.commit().await.expect("kept");

    let mut work = begin(store).await;
    refused(drafts::insert(&mut *work, &draft("d-1", &first)).await, "a taken id");
    drop(work);
    let mut work = begin(store).await;
    let next =
        drafts::Draft { revision: 2, document: second.sha256.clone(), changed_ms: 9_000, ..draft("d-1", &first) };
    assert!(drafts::change(&mut *work, &next).await.expect("changed"));
    assert!(!drafts::change(&mut *work, &next).await.expect("asked"), "somebody was faster");
    work.commit().await.expect("kept");
    let mut work = store.read().await.expect("reads");
    assert_eq!(drafts::find(&mut *work, "d-1").await.expect("found"), Some(next));
    assert_eq!(drafts::find(&mut *work, "d-9").await.expect("asked"), None);
    let listed = drafts::list(&mut *work).await.expect("a list");
    assert_eq!(listed.iter().map(|d| d.id.as_str()).collect::<Vec<_>>(), ["d-1", "d-2"]);
    assert_eq!(releases::newest_number(&mut *work).await.expect("a number"), 0);
    drop(work);

    let mut work = begin(store).await;
    for (number, document) in [(1, &first), (2, &second), (3, &first)] {
        releases::insert(&mut *work, &release(number, number, document)).await.expect("a release");
    }
    work.tell_nodes().await.expect("told");
    work.commit().await.expect("kept");
    let mut work = begin(store).await;
    refused(releases::insert(&mut *work, &release(4, 3, &first)).await, "a taken place");
    drop(work);
    for statement in ["update release set version = 'x'", "delete from release", "update release set number = 7"] {
        let mut work = begin(store).await;
        refused(work.execute(statement, &[]).await, statement);
    }
    let mut work = store.read().await.expect("reads");
    assert_eq!(releases::newest_number(&mut *work).await.expect("a number"), 3);
    assert_eq!(releases::after(&mut *work, 1).await.expect("read"), [release(2, 2, &second), release(3, 3, &first)]);
    assert_eq!(
        releases::last_two(&mut *work, "core").await.expect("read"),
        [release(3, 3, &first), release(2, 2, &second)]
    );
    assert_eq!(releases::last_two(&mut *work, "none").await.expect("read"), []);
    let hash = releases::hash_of_version(&mut *work, "core", "2026.11.2").await.expect("read");
    assert_eq!(hash, Some("a".repeat(64)));
    assert_eq!(releases::hash_of_version(&mut *work, "core", "2026.11.20").await.expect("read"), None);
}

async fn schedules_and_holds(store: &dyn Store) {
    let first = document("name: core\n");
    let schedule = |id: &str, at_ms: i64| schedules::Schedule {
        id: id.to_owned(),
        draft: "d-1".to_owned(),
        rule_set: "core".to_owned(),
        document: first.sha256.clone(),
        at_ms,
        wall: "2027-03-01 06:00".to_owned(),
        zone: "Europe/Madrid".to_owned(),
        state: "waiting".to_owned(),
        made_by: "ana".to_owned(),
        made_ms: at_ms,
        ended_ms: None,
        release: None,
        told: String::new(),
    };
    let mut work = begin(store).await;
    schedules::insert(&mut *work, &schedule("s-2", 2_000)).await.expect("kept");
    schedules::insert(&mut *work, &schedule("s-1", 1_000)).await.expect("kept");
    let waiting = schedules::waiting(&mut *work).await.expect("read");
    assert_eq!(waiting, [schedule("s-1", 1_000), schedule("s-2", 2_000)]);
    assert!(schedules::end(&mut *work, "s-1", "fired", 1_001, Some(3), "").await.expect("ended"));
    assert!(!schedules::end(&mut *work, "s-1", "fired", 1_001, Some(3), "").await.expect("asked"), "once");
    work.commit().await.expect("kept");
    let mut work = begin(store).await;
    assert_eq!(schedules::waiting(&mut *work).await.expect("read").len(), 1);
    let listed = schedules::list(&mut *work).await.expect("read");
    assert_eq!(
        listed.iter().map(|s| (s.state.as_str(), s.release)).collect::<Vec<_>>(),
        [("waiting", None), ("fired", Some(3))]
    );

    let held = held_back::HeldBack {
        id: 0,
        rule_set: "core".to_owned(),
        kind: "rule".to_owned(),
        entry: "rose.oil".to_owned(),
        caution: String::new(),
        because: "{\"en\":\"burns\"}".to_owned(),
        made_by: "ana".to_owned(),
        made_ms: 5,
        verdict: None,
        reviewed_by: None,
        reviewed_ms: None,
        review_because: None,
    };
    assert_eq!(held_back::insert(&mut *work, &held).await.expect("kept"), 1);
    assert_eq!(held_back::insert(&mut *work, &held).await.expect("kept"), 2);
    assert!(held_back::review(&mut *work, 1, "keep", "right", "bo", 9).await.expect("reviewed"));
    assert!(!held_back::review(&mut *work, 1, "lift", "no", "bo", 9).await.expect("asked"), "once");
    let first = held_back::find(&mut *work, 1).await.expect("read").expect("there");
    assert_eq!((first.verdict.as_deref(), first.reviewed_by.as_deref()), (Some("keep"), Some("bo")));
    assert_eq!(held_back::list(&mut *work).await.expect("read").len(), 2);
    refused(held_back::insert(&mut *work, &held_back::HeldBack { kind: "plant".to_owned(), ..held }).await, "a kind");
}

async fn trail(store: &dyn Store) {
    let row = |sequence: i64, previous: &str| {
        let mut row = audit::AuditRow {
            sequence,
            at_ms: sequence,
            who: "ana".to_owned(),
            act: "publish".to_owned(),
            what: "core".to_owned(),
            detail: "{}".to_owned(),
            previous: previous.to_owned(),
            hash: String::new(),
        };
        row.hash = row.own_hash();
        row
    };
    let one = row(1, audit::BEFORE_THE_FIRST);
    let two = row(2, &one.hash);
    let mut work = begin(store).await;
    assert_eq!(audit::last(&mut *work).await.expect("read"), None);
    assert_eq!(audit::head(&mut *work).await.expect("read"), None);
    for row in [&one, &two] {
        audit::insert(&mut *work, row).await.expect("kept");
        let head = audit::Head {
            sequence: row.sequence,
            hash: row.hash.clone(),
            key_id: "k".to_owned(),
            signature: "s".to_owned(),
        };
        audit::set_head(&mut *work, &head).await.expect("kept");
        assert_eq!(audit::head(&mut *work).await.expect("read"), Some(head));
    }
    work.commit().await.expect("kept");
    let mut work = begin(store).await;
    assert_eq!(audit::last(&mut *work).await.expect("read"), Some(two.clone()));
    assert_eq!(audit::after(&mut *work, 0, 1).await.expect("read"), [one]);
    assert_eq!(audit::after(&mut *work, 1, 10).await.expect("read"), std::slice::from_ref(&two));
    refused(audit::insert(&mut *work, &two).await, "a taken place");
    drop(work);
    for statement in ["update audit set who = 'x'", "delete from audit where sequence = 2"] {
        let mut work = begin(store).await;
        refused(work.execute(statement, &[]).await, statement);
    }
}

async fn keys_and_answers(store: &dyn Store) {
    let key = keys::KeptKey {
        id: "k1".to_owned(),
        organisation: "club".to_owned(),
        name: "till".to_owned(),
        hash: "c".repeat(64),
        scopes: "publish".to_owned(),
        made_by: "ana".to_owned(),
        made_ms: 1,
        expires_ms: Some(10),
        revoked_ms: None,
        last_used_ms: None,
    };
    let mut work = begin(store).await;
    keys::insert(&mut *work, &key).await.expect("kept");
    keys::used(&mut *work, "k1", 7).await.expect("noted");
    assert!(keys::revoke(&mut *work, "k1", 8).await.expect("revoked"));
    assert!(!keys::revoke(&mut *work, "k1", 9).await.expect("asked"), "once");
    let found = keys::find(&mut *work, "k1").await.expect("read");
    assert_eq!(found, Some(keys::KeptKey { revoked_ms: Some(8), last_used_ms: Some(7), ..key.clone() }));
    assert_eq!(keys::find(&mut *work, "k2").await.expect("read"), None);
    assert_eq!(keys::list(&mut *work).await.expect("read").len(), 1);

    let (one, two) = ("1".repeat(64), "2".repeat(64));
    use answered::Known;
    assert_eq!(answered::take(&mut *work, "k1", "a", &one, 0).await.expect("taken"), Known::New);
    assert_eq!(answered::take(&mut *work, "k1", "a", &one, 1).await.expect("asked"), Known::Running);
    assert_eq!(answered::take(&mut *work, "k1", "a", &two, 1).await.expect("asked"), Known::Other);
    assert_eq!(
        answered::take(&mut *work, "k2", "a", &two, 1).await.expect("taken"),
        Known::New,
        "each caller has its own"
    );
    answered::done(&mut *work, "k1", "a", 201, "{}", "body").await.expect("written");
    let done = Known::Done(201, "{}".to_owned(), "body".to_owned());
    assert_eq!(answered::take(&mut *work, "k1", "a", &one, answered::RUNNING_MS + 2).await.expect("asked"), done);
    let taken = answered::take(&mut *work, "k2", "a", &two, answered::RUNNING_MS + 2).await;
    assert_eq!(taken.expect("taken"), Known::New, "what never ended is dead");
    answered::give_back(&mut *work, "k2", "a").await.expect("given back");
    assert_eq!(answered::take(&mut *work, "k2", "a", &one, answered::RUNNING_MS + 3).await.expect("taken"), Known::New);
    let taken = answered::take(&mut *work, "k1", "a", &two, answered::KEPT_MS + 1).await;
    assert_eq!(taken.expect("taken"), Known::New, "after a day it is gone");
    work.commit().await.expect("kept");
}

async fn registered(store: &dyn Store) {
    let mut work = begin(store).await;
    climates::put(&mut *work, "valley", "{\"a\":1}", "ana", 1).await.expect("kept");
    climates::put(&mut *work, "valley", "{\"a\":1}", "ana", 2).await.expect("the same again");
    let first = climates::newest(&mut *work, "valley").await.expect("read").expect("there");
    assert_eq!(first.made_ms, 1);
    climates::put(&mut *work, "valley", "{\"a\":2}", "ana", 3).await.expect("another content");
    assert_eq!(climates::newest(&mut *work, "valley").await.expect("read").expect("there").body, "{\"a\":2}");
    assert_eq!(climates::by_content(&mut *work, &first.sha256).await.expect("read"), Some(first));
    assert_eq!(climates::newest(&mut *work, "none").await.expect("read"), None);

    weather::put(&mut *work, "valley", 100, "x", 1).await.expect("kept");
    weather::put(&mut *work, "valley", 200, "y", 1).await.expect("kept");
    weather::put(&mut *work, "valley", 200, "z", 2).await.expect("the same issue again");
    assert_eq!(weather::newest(&mut *work, "valley", 150).await.expect("read"), Some((100, "x".to_owned())));
    assert_eq!(weather::newest(&mut *work, "valley", 300).await.expect("read"), Some((200, "z".to_owned())));
    assert_eq!(weather::newest(&mut *work, "valley", 99).await.expect("read"), None);
    assert_eq!(weather::drop_before(&mut *work, 200).await.expect("dropped"), 1);

    let till = ("club", "till");
    assert!(product_maps::put(&mut *work, till, 0, "{}", "ana", 1).await.expect("kept"));
    assert!(!product_maps::put(&mut *work, till, 0, "[]", "ana", 1).await.expect("asked"), "it is there");
    assert!(product_maps::put(&mut *work, till, 1, "[1]", "ana", 1).await.expect("kept"));
    assert!(!product_maps::put(&mut *work, till, 1, "[2]", "ana", 1).await.expect("asked"), "somebody was faster");
    let kept = product_maps::find(&mut *work, "club", "till").await.expect("read").expect("there");
    assert_eq!((kept.revision, kept.body.as_str()), (2, "[1]"));
    assert_eq!(product_maps::find(&mut *work, "club", "none").await.expect("read"), None);
    work.commit().await.expect("kept");
}
