//! A server with a store, and an editor with a key.

use actix_web::rt::System;
use lammas::keys::Scope;
use lammas::publishing::Desk;
use lammas::publishing::desk::now_ms;
use lammas::store::place::StorePlace;
use lammas::store::tables::answered;
use lammas_engine::version::hash;
use serde_json::{Value, json};

use crate::answer::Answer;
use crate::server::{Server, small};
use crate::stores::Folder;

/// A server on a store of its own.
pub struct Editor {
    /// The server.
    pub server: Server,
    /// A key for everything.
    pub key: String,
    /// A key for nothing but weather.
    pub weak: String,
    /// Where its store is.
    pub place: StorePlace,
    _folder: Folder,
}

impl Editor {
    /// Starts one on a new store in a folder, which begins with the set `mini`.
    ///
    /// # Panics
    /// When it does not start.
    #[must_use]
    pub fn start() -> Self {
        let folder = Folder::new();
        let mut settings = small();
        settings.store.address = Some(folder.path().display().to_string());
        // The small set of the engine's tests: a release of it is tested in no time.
        let mini = concat!(env!("CARGO_MANIFEST_DIR"), "/../rules/engine/tests/data/mini");
        settings.rules.packs = vec![mini.into()];
        let server = Server::with(settings, |_| {});
        let place = StorePlace::parse(&folder.path().display().to_string(), None).expect("a place");
        let at = place.clone();
        let (key, weak) = System::new().block_on(async move {
            let desk = Desk::open(&at).await.expect("opens");
            let key = desk.new_key("editor", &Scope::ALL, None, "ana").await.expect("a key").shown();
            let weak = desk.new_key("station", &[Scope::Weather], None, "ana").await.expect("a key").shown();
            desk.store.close().await;
            (key, weak)
        });
        Self { server, key, weak, place, _folder: folder }
    }

    /// Sends a request with the key.
    #[must_use]
    pub fn send(&self, method: &str, path: &str, headers: &[(&str, &str)], body: &str) -> Answer {
        self.send_as(&self.key, method, path, headers, body)
    }

    /// Sends a request with another key.
    #[must_use]
    pub fn send_as(&self, key: &str, method: &str, path: &str, headers: &[(&str, &str)], body: &str) -> Answer {
        let bearer = format!("Bearer {key}");
        let mut all = vec![("authorization", bearer.as_str()), ("content-type", "application/json")];
        all.extend_from_slice(headers);
        self.server.send(method, path, &all, body.as_bytes())
    }

    /// A set that loads and can't be published: it has a rule without a source.
    #[must_use]
    pub fn files(&self) -> String {
        let pack = "name: house\nversion: \"2026.11.1\"\nlanguages: [en]\ntitle: {en: \"House rules\"}\n";
        let rule = "- id: rose.cut\n  for: {plant: rose}\n";
        json!({"files": [{"path": "pack.yaml", "text": pack}, {"path": "rules/rose.yaml", "text": rule}]}).to_string()
    }

    /// Brings it in; the name of the draft.
    ///
    /// # Panics
    /// When it is refused.
    #[must_use]
    pub fn draft(&self) -> String {
        let answer = self.send("POST", "/v1/editor/drafts", &[("idempotency-key", "import")], &self.files());
        assert_eq!(answer.status, 201, "{answer:?}");
        let state: Value = serde_json::from_str(&answer.body).expect("JSON");
        state["id"].as_str().expect("a name").to_owned()
    }

    /// Takes an Idempotency-Key for a POST, as one that is being worked on.
    ///
    /// # Panics
    /// When the store fails.
    pub fn take(&self, path: &str, key: &str, body: &str) {
        let caller = self.key.split('_').nth(1).expect("an id").to_owned();
        let request = hash::of_text(&format!("POST {path}\n\n{body}"));
        let place = self.place.clone();
        System::new().block_on(async {
            let desk = Desk::open(&place).await.expect("opens");
            let mut work = desk.store.begin().await.expect("writes");
            answered::take(&mut *work, &caller, key, &request, now_ms()).await.expect("taken");
            work.commit().await.expect("kept");
            desk.store.close().await;
        });
    }

    /// Does something while somebody else writes and does not end.
    ///
    /// # Panics
    /// When the store fails.
    pub fn while_another_writes<T>(&self, work: impl FnOnce() -> T) -> T {
        let place = self.place.clone();
        System::new().block_on(async {
            let desk = Desk::open(&place).await.expect("opens");
            let held = desk.store.begin().await.expect("writes");
            let done = work();
            drop(held);
            done
        })
    }
}
