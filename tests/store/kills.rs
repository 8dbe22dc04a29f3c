//! Killed at each step of a write: afterwards the old state stands or the new one, never half.
//!
//! A run of this test program is the victim: it opens the store, does one work, and sends itself `kill -9` before a step. The long run
//! (at least 200 kills a store) is `LAMMAS_LONG=1 cargo test -p lammas-tests --test store kills -- --nocapture`.

use std::path::Path;
use std::process::Command;
use std::sync::Arc;
use std::{env, process, thread, time};

use lammas::publishing::Desk;
use lammas::publishing::desk::now_ms;
use lammas::publishing::held::{HeldKind, Words};
use lammas::publishing::hold_back::Asked;
use lammas::publishing::publish::Promise;
use lammas::publishing::signing::Keyring;
use lammas::publishing::verify::verify;
use lammas::store::Store;
use lammas::store::place::StorePlace;
use lammas::store::postgres::PostgresStore;
use lammas::store::sqlite::SqliteStore;
use lammas::store::tables::answered::{self, Known};
use lammas::store::tables::releases::Release;
use lammas::store::tables::{drafts, held_back, releases, sha256};
use lammas_tests::stores::{both, wait};

use crate::garden::{mini, renamed};

const WORKS: [&str; 3] = ["publish", "undo", "hold-back"];

/// The work of the victim, which ends before its step does. Without the variables it is no victim, and nothing is to be done.
#[test]
fn a_victim_for_the_other_tests() {
    let Ok(asked) = env::var("LAMMAS_VICTIM") else { return };
    let (work, step) = asked.split_once('@').expect("work@step");
    let step: u32 = step.parse().expect("a step");
    let folder = env::var("LAMMAS_VICTIM_FOLDER").expect("a folder");
    let server = env::var("LAMMAS_VICTIM_SERVER").ok();
    let place = match &server {
        Some(server) => StorePlace::parse(server, Some(Path::new(&folder))),
        None => StorePlace::parse(&folder, None),
    };
    let place = place.expect("a place");
    let stop = Arc::new(move |now: u32| {
        if now == step {
            let killed = Command::new("kill").args(["-9", &process::id().to_string()]).status();
            assert!(killed.is_ok_and(|status| status.success()), "the victim can't be killed");
            thread::sleep(time::Duration::from_secs(60));
        }
    });
    wait(async {
        let store: Arc<dyn Store> = match &server {
            Some(server) => Arc::new(PostgresStore::open(server).await.expect("opens").with_steps(stop)),
            None => Arc::new(SqliteStore::open(&place.database()).await.expect("opens").with_steps(stop)),
        };
        let desk = Desk { store, keyring: Arc::new(Keyring::open(&place).expect("keys")) };
        let answer = |release: &Release| (201, format!("release {}", release.number));
        let key = env::var("LAMMAS_VICTIM_KEY").expect("a key");
        let promise = Promise { caller: "ana", key: &key, answer: &answer };
        match work {
            "publish" => {
                let draft = env::var("LAMMAS_VICTIM_DRAFT").expect("a draft");
                desk.publish(&draft, None, "ana", Some(&promise)).await.map(|_| ())
            }
            "undo" => desk.undo("mini", None, "ana", Some(&promise)).await.map(|_| ()),
            _ => desk.hold_back("mini", &oil(), "ana", Some(&promise)).await.map(|_| ()),
        }
        .expect("done, when no step stops it");
    });
}

fn oil() -> Asked {
    let because: Words = [("en".to_owned(), "Burnt buds were seen.".to_owned())].into();
    Asked { kind: HeldKind::Material, entry: "garden-oil".to_owned(), because, caution: None }
}

struct Scene {
    place: StorePlace,
    draft: String,
}

impl Scene {
    async fn new(place: &StorePlace) -> Self {
        let desk = Desk::open(place).await.expect("opens");
        for version in ["2026.11.1", "2026.11.2"] {
            let draft = desk.import(&renamed(version), "", "ana").await.expect("a draft");
            desk.publish(&draft.id, None, "ana", None).await.expect("a release");
        }
        desk.store.close().await;
        Self { place: place.clone(), draft: String::new() }
    }

    /// Whether the victim ended by itself.
    fn victim(&self, work: &str, step: u32, key: &str) -> bool {
        let mut command = Command::new(env::current_exe().expect("this program"));
        command
            .args(["--exact", "kills::a_victim_for_the_other_tests", "--nocapture"])
            .env("LAMMAS_VICTIM", format!("{work}@{step}"))
            .env("LAMMAS_VICTIM_FOLDER", self.place.folder())
            .env("LAMMAS_VICTIM_DRAFT", &self.draft)
            .env("LAMMAS_VICTIM_KEY", key);
        if let Some(server) = self.place.server() {
            command.env("LAMMAS_VICTIM_SERVER", server);
        }
        let output = command.output().expect("it runs");
        let text = String::from_utf8_lossy(&output.stderr).into_owned();
        assert!(output.status.success() || output.status.code().is_none(), "the victim broke otherwise: {text}");
        output.status.success()
    }

    /// One work, killed before one step; `None` when it has no such step, else whether the new state stands.
    async fn killed(&mut self, work: &str, step: u32, version: &str) -> Option<bool> {
        let desk = Desk::open(&self.place).await.expect("opens");
        self.draft = desk.import(&renamed(version), "", "ana").await.expect("a draft").id;
        let mut writing = desk.store.begin().await.expect("writes");
        let request = sha256(version.as_bytes());
        let begun = answered::take(&mut *writing, "ana", version, &request, now_ms()).await.expect("taken");
        assert_eq!(begun, Known::New);
        writing.commit().await.expect("kept");
        let before = state(&desk).await;
        desk.store.close().await;
        let ended = self.victim(work, step, version);
        let desk = Desk::open(&self.place).await.expect("opens after a kill");
        let after = state(&desk).await;
        let new = after.0 == before.0 + 1;
        assert!(new || after == before, "{work}@{step}: half of it: {before:?} became {after:?}");
        let mut reading = desk.store.begin().await.expect("writes");
        let report = verify(&mut *reading, &desk.keyring, None).await.expect("examined");
        assert_eq!(report.findings, [], "{work}@{step}");
        let draft = drafts::find(&mut *reading, &self.draft).await.expect("read").expect("there");
        assert_eq!(draft.state == "published", new && work == "publish", "{work}@{step}");
        // Whoever asks again with the same key gets the answer of the release that stands, or may do it now.
        let known =
            answered::take(&mut *reading, "ana", version, &request, now_ms() + 3 * 60_000).await.expect("asked");
        match known {
            Known::Done(status, _, body) => {
                assert_eq!((new, status, body), (true, 201, format!("release {}", after.0)));
            }
            other => assert_eq!((new, other), (false, Known::New), "{work}@{step}"),
        }
        drop(reading);
        desk.store.close().await;
        if ended { None } else { Some(new) }
    }
}

/// Releases, audit rows, holds.
async fn state(desk: &Desk) -> (i64, i64, usize) {
    let mut work = desk.store.read().await.expect("reads");
    let rows = lammas::store::tables::audit::last(&mut *work).await.expect("read").map_or(0, |row| row.sequence);
    let holds = held_back::list(&mut *work).await.expect("read").len();
    (releases::newest_number(&mut *work).await.expect("read"), rows, holds)
}

#[test]
#[expect(clippy::print_stdout, reason = "the figures of the long run")]
fn a_write_that_is_killed_at_any_step_is_done_wholly_or_not_at_all() {
    assert_eq!(mini().len(), renamed("2026.11.1").len());
    let at_least = if env::var_os("LAMMAS_LONG").is_some() { 200 } else { 1 };
    for (place, _folder) in both() {
        wait(async {
            let mut scene = Scene::new(&place).await;
            let (mut kills, mut old, mut new, mut round) = (0, 0, 0, 0);
            while kills < at_least {
                for work in WORKS {
                    for step in 1.. {
                        round += 1;
                        match scene.killed(work, step, &format!("2027.1.{round}")).await {
                            Some(true) => new += 1,
                            Some(false) => old += 1,
                            None => break,
                        }
                        kills += 1;
                    }
                }
            }
            println!("{}: {kills} kills, {old} times the old state stood, {new} times the new one", place_name(&place));
            assert!(old >= 30 && new >= 3, "each work has steps before and after its commit: {old} and {new}");
        });
    }
}

fn place_name(place: &StorePlace) -> &'static str {
    if place.server().is_some() { "postgres" } else { "sqlite" }
}
