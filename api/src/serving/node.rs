//! The thread that follows the store: it looks, tests, serves, publishes what is due, and keeps the copy.

use std::collections::BTreeMap;
use std::path::PathBuf;
use std::sync::{Arc, mpsc};
use std::thread;
use std::time::{Duration, Instant};

use anyhow::{Result, anyhow};
use tokio::runtime::Handle;

use super::copy::{self, Copied};
use super::state::{NodeState, RefusedRelease, ServedReleases, ServedSet};
use crate::publishing::desk::now_ms;
use crate::publishing::gate::{Depth, Judged, judge};
use crate::publishing::signing::Keyring;
use crate::publishing::{Desk, NotDone, held, statement};
use crate::sets::embedded;
use crate::sets::rules::Rules;
use crate::store::StoreError;
use crate::store::place::StorePlace;
use crate::store::tables::documents;
use crate::store::tables::releases::{self, Release};

/// How often a node looks.
const EVERY: Duration = Duration::from_millis(500);
/// How often the copy says anew that the store was seen.
const COPY_EVERY: Duration = Duration::from_secs(3600);

/// A running node, for the calls that work in the store.
#[derive(Clone, Debug)]
pub struct Node {
    /// The desk; none while the store is away since the start.
    pub desk: Arc<tokio::sync::RwLock<Option<Desk>>>,
    /// Where its work is done.
    pub handle: Handle,
    /// What the node says about itself.
    pub state: NodeState,
}

struct Following {
    place: StorePlace,
    copy_days: u32,
    rules: Arc<Rules>,
    state: NodeState,
    keyring: Arc<Keyring>,
    served: BTreeMap<String, Copied>,
    seen: i64,
    copied_at: Option<Instant>,
    begin_with: Option<PathBuf>,
}

/// Starts a node. It serves something when this returns.
///
/// # Errors
/// Neither the store nor the last signed copy gives anything to serve.
pub fn start(place: StorePlace, copy_days: u32, begin_with: Option<PathBuf>, rules: Arc<Rules>) -> Result<Node> {
    let (tell, told) = mpsc::channel();
    let state = NodeState::default();
    let shown = state.clone();
    thread::Builder::new().name("node".to_owned()).spawn(move || {
        let runtime = match tokio::runtime::Builder::new_current_thread().enable_all().build() {
            Ok(runtime) => runtime,
            Err(error) => {
                let _ = tell.send(Err(anyhow!("{error}")));
                return;
            }
        };
        runtime.block_on(async move {
            let slot = Arc::new(tokio::sync::RwLock::new(None));
            let begun = Following::begin(place, copy_days, begin_with, rules, state.clone(), &slot).await;
            match begun {
                Ok(following) => {
                    let node = Node { desk: Arc::clone(&slot), handle: Handle::current(), state };
                    if tell.send(Ok(node)).is_ok() {
                        following.follow(&slot).await;
                    }
                }
                Err(error) => {
                    let _ = tell.send(Err(error));
                }
            }
        });
    })?;
    drop(shown);
    told.recv()?
}

type Slot = Arc<tokio::sync::RwLock<Option<Desk>>>;

impl Following {
    async fn begin(
        place: StorePlace,
        copy_days: u32,
        begin_with: Option<PathBuf>,
        rules: Arc<Rules>,
        state: NodeState,
        slot: &Slot,
    ) -> Result<Self> {
        let opened = Desk::open(&place).await;
        let keyring = match &opened {
            Ok(desk) => Arc::clone(&desk.keyring),
            Err(NotDone::Store(_)) => Arc::new(Keyring::open(&place)?),
            Err(other) => return Err(anyhow!("{other}")),
        };
        let mut following = Self {
            place,
            copy_days,
            rules,
            state,
            keyring,
            served: BTreeMap::new(),
            seen: 0,
            copied_at: None,
            begin_with,
        };
        match opened {
            Ok(desk) => {
                following.first(&desk).await?;
                *slot.write().await = Some(desk);
            }
            Err(error) => following.from_copy(&error)?,
        }
        Ok(following)
    }

    /// Takes what the store has, and gives it the program's own set where it has none.
    async fn first(&mut self, desk: &Desk) -> Result<()> {
        let files = match &self.begin_with {
            Some(folder) => crate::sets::folder::files(folder)?,
            None => embedded::files(),
        };
        match desk.begin_with(&files).await {
            Ok(Some(release)) => {
                tracing::info!(set = release.rule_set, version = release.version, "first release of this store")
            }
            Ok(None) => {}
            Err(NotDone::Unsigned(why)) => tracing::warn!(why, "this node can't make the first release"),
            Err(other) => return Err(anyhow!("{other}")),
        }
        self.state.tell(ServedReleases { from: "store", store_reached: true, ..ServedReleases::default() });
        self.look(desk).await?;
        if self.served.is_empty() {
            let why = self.state.told().and_then(|told| told.refused.first().map(|r| r.because.clone()));
            return Err(anyhow!("the store has no release that can be served: {}", why.unwrap_or_default()));
        }
        Ok(())
    }

    fn from_copy(&mut self, away: &NotDone) -> Result<()> {
        let path = self.place.last_copy();
        let copied = copy::read(&path, &self.keyring, self.copy_days, now_ms())
            .map_err(|why| anyhow!("{away}, and the last signed copy `{}` does not count: {why}", path.display()))?;
        tracing::warn!(%away, "the store is away: serving the last signed copy");
        self.state.tell(ServedReleases { from: "copy", ..ServedReleases::default() });
        for copied in copied {
            let judged = tested(&copied.release, &copied.document.files()?, &self.keyring);
            match judged {
                Ok(judged) => self.serve(copied, &judged),
                Err(why) => return Err(anyhow!("{away}, and the last signed copy does not count: {why}")),
            }
        }
        Ok(())
    }

    /// Looks for ever.
    async fn follow(mut self, slot: &Slot) {
        let told = Arc::new(tokio::sync::Notify::new());
        let mut listening = false;
        loop {
            let _ = tokio::time::timeout(EVERY, told.notified()).await;
            if slot.read().await.is_none() {
                if let Ok(desk) = Desk::open(&self.place).await {
                    tracing::info!("the store is there again");
                    *slot.write().await = Some(desk);
                }
                continue;
            }
            let desk = slot.read().await.clone();
            let Some(desk) = desk else { continue };
            if !listening {
                listening = true;
                let (store, told) = (Arc::clone(&desk.store), Arc::clone(&told));
                tokio::spawn(async move {
                    loop {
                        store.told().await;
                        told.notify_one();
                    }
                });
            }
            if let Err(error) = desk.fire(now_ms()).await {
                tracing::debug!(%error, "what is due could not be looked at");
            }
            let looked = self.look(&desk).await;
            let reached = looked.is_ok();
            let before = self.state.told().is_none_or(|told| told.store_reached);
            if let Err(error) = &looked
                && before
            {
                tracing::warn!(%error, "the store is away: advice goes on from memory");
            }
            if reached && !before {
                tracing::info!("the store is there again");
            }
            self.state.change(|told| {
                told.store_reached = reached;
                if reached {
                    told.from = "store";
                }
            });
            if reached && self.copied_at.is_some_and(|at| at.elapsed() > COPY_EVERY) {
                self.keep_copy();
            }
        }
    }

    /// Takes every release that is new, set by set the newest.
    async fn look(&mut self, desk: &Desk) -> Result<(), StoreError> {
        let mut work = desk.store.read().await?;
        if releases::newest_number(&mut *work).await? <= self.seen {
            return Ok(());
        }
        let new = releases::after(&mut *work, self.seen).await?;
        let last = new.last().map_or(self.seen, |release| release.number);
        let mut newest: BTreeMap<String, Release> = BTreeMap::new();
        for release in new {
            newest.insert(release.rule_set.clone(), release);
        }
        let mut changed = false;
        for release in newest.into_values() {
            let document = documents::get(&mut *work, &release.document).await;
            let keyring = Arc::clone(&self.keyring);
            let result = match document {
                Err(error @ (StoreError::Away(_) | StoreError::Busy(_))) => return Err(error),
                Err(error) => Err(error.to_string()),
                Ok(document) => {
                    let files = document.files()?;
                    let (asked, at) = (release.clone(), Instant::now());
                    let testing = tokio::task::spawn_blocking(move || tested(&asked, &files, &keyring));
                    let judged = testing.await.map_err(|error| StoreError::Broken(error.to_string()))?;
                    judged.map(|judged| (document, judged, at.elapsed()))
                }
            };
            match result {
                Ok((document, judged, took)) => {
                    let took_ms = u64::try_from(took.as_millis()).unwrap_or(u64::MAX);
                    tracing::info!(
                        set = release.rule_set,
                        version = release.version,
                        release = release.number,
                        took_ms,
                        "serving"
                    );
                    self.serve(Copied { release, document }, &judged);
                    changed = true;
                }
                Err(because) => {
                    tracing::error!(
                        set = release.rule_set,
                        release = release.number,
                        because,
                        "release refused: the old one stays"
                    );
                    let refused = RefusedRelease { release: release.number, name: release.rule_set, because };
                    self.state.change(|told| told.refused.push(refused));
                }
            }
        }
        self.seen = last;
        self.state.change(|told| told.newest = last);
        if changed {
            self.keep_copy();
        }
        Ok(())
    }

    fn serve(&mut self, copied: Copied, judged: &Judged) {
        let release = &copied.release;
        self.rules.take(judged);
        let set = ServedSet {
            name: release.rule_set.clone(),
            version: release.version.clone(),
            sha256: release.set_sha256.clone(),
            release: release.number,
        };
        self.state.change(|told| {
            told.sets.retain(|other| other.name != set.name);
            told.sets.push(set);
            told.sets.sort_by(|a, b| a.name.cmp(&b.name));
            // What was refused before has been followed by something better.
            told.refused.retain(|refused| refused.name != release.rule_set);
            told.newest = told.newest.max(release.number);
        });
        self.served.insert(release.rule_set.clone(), copied);
    }

    fn keep_copy(&mut self) {
        let copied: Vec<Copied> = self.served.values().cloned().collect();
        match copy::write(&self.place.last_copy(), &copied, now_ms()) {
            Ok(()) => self.copied_at = Some(Instant::now()),
            Err(error) => tracing::error!(%error, "the last signed copy can't be written"),
        }
    }
}

/// Tests a release as a node does: signature, hash of the files and of the set, check, scenarios.
///
/// # Errors
/// Why it is not served, in words.
pub fn tested(release: &Release, files: &[lammas_engine::read::PackFile], keyring: &Keyring) -> Result<Judged, String> {
    statement::verify(release, keyring)?;
    if documents::Document::of(files).sha256 != release.document {
        return Err("its files are not those that were signed".to_owned());
    }
    let holds = held::parse(&release.held)?;
    let judged = judge(files, &holds, Depth::Serve).map_err(|error| error.to_string())?;
    if judged.set.sha256 != release.set_sha256 {
        return Err("this program reads its content otherwise than the one that published it".to_owned());
    }
    if judged.name() != release.rule_set || judged.version() != release.version {
        return Err("its files name another set or version".to_owned());
    }
    Ok(judged)
}
