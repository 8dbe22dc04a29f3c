//! The thread that follows the store: it looks, tests, serves, publishes what is due, and keeps the copy.

use std::collections::BTreeMap;
use std::sync::{Arc, mpsc};
use std::thread;
use std::time::{Duration, Instant};

use anyhow::{Result, anyhow};
use chrono::DateTime;
use lammas_engine::read::PackFile;
use tokio::runtime::Handle;

use super::copy::{self, Copied};
use super::state::{NodeState, RefusedRelease, ServedReleases, ServedSet};
use crate::library::{Library, Release as Kept, Withdrawn};
use crate::publishing::desk::now_ms;
use crate::publishing::drafts::header_of;
use crate::publishing::gate::{Depth, Judged, judge};
use crate::publishing::signing::Keyring;
use crate::publishing::{Desk, NotDone, held, statement};
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
    /// What the program itself has.
    own: Library,
    /// What the store has, in its order.
    shelf: Vec<(Release, Arc<Kept>)>,
}

/// Starts a node. It serves something when this returns.
///
/// # Errors
/// Neither the store nor the last signed copy gives anything to serve.
pub fn start(place: StorePlace, copy_days: u32, rules: Arc<Rules>) -> Result<Node> {
    let (tell, told) = mpsc::channel();
    let state = NodeState::default();
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
            let begun = Following::begin(place, copy_days, rules, state.clone(), &slot).await;
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
    told.recv()?
}

type Slot = Arc<tokio::sync::RwLock<Option<Desk>>>;

impl Following {
    async fn begin(
        place: StorePlace,
        copy_days: u32,
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
        let own = rules.served().library.clone();
        let mut following = Self {
            place,
            copy_days,
            rules,
            state,
            keyring,
            served: BTreeMap::new(),
            seen: 0,
            copied_at: None,
            own,
            shelf: Vec::new(),
        };
        match opened {
            Ok(desk) => {
                following.first(&desk).await?;
                *slot.write().await = Some(desk);
            }
            Err(error) => following.serve_copy(&error)?,
        }
        Ok(following)
    }

    /// Takes what the store has, and gives it the program's own set where it has none.
    async fn first(&mut self, desk: &Desk) -> Result<()> {
        for set in self.rules.served().standard.clone() {
            let Some(own) = self.own.newest(&set).cloned() else { continue };
            match desk.begin_with(&own.files).await {
                Ok(Some(release)) => {
                    tracing::info!(set, version = release.version, "first release of this set in the store");
                }
                Ok(None) => {}
                Err(NotDone::Unsigned(why)) => tracing::warn!(why, "this node can't make the first release"),
                Err(other) => return Err(anyhow!("{other}")),
            }
        }
        self.state.tell(ServedReleases { from: "store", store_reached: true, ..ServedReleases::default() });
        self.look(desk).await?;
        if self.served.is_empty() {
            let why = self.state.told().and_then(|told| told.refused.first().map(|r| r.because.clone()));
            return Err(anyhow!("the store has no release that can be served: {}", why.unwrap_or_default()));
        }
        Ok(())
    }

    fn serve_copy(&mut self, away: &NotDone) -> Result<()> {
        let path = self.place.last_copy();
        let copied = copy::read(&path, &self.keyring, self.copy_days, now_ms())
            .map_err(|why| anyhow!("{away}, and the last signed copy `{}` does not count: {why}", path.display()))?;
        tracing::warn!(%away, "the store is away: serving the last signed copy");
        self.state.tell(ServedReleases { from: "copy", ..ServedReleases::default() });
        let useless = |why: String| anyhow!("{away}, and the last signed copy does not count: {why}");
        for copied in copied {
            let files = copied.document.files()?;
            let below = self.below(&files).map_err(useless)?;
            let judged = tested(&copied.release, &files, &below, &self.keyring).map_err(useless)?;
            self.serve(copied, judged).map_err(useless)?;
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
        let newest: BTreeMap<String, i64> = new.iter().map(|one| (one.rule_set.clone(), one.number)).collect();
        let mut changed = false;
        for release in new {
            let is_newest = newest.get(&release.rule_set) == Some(&release.number);
            let document = documents::get(&mut *work, &release.document).await;
            let keyring = Arc::clone(&self.keyring);
            let result = match document {
                Err(error @ (StoreError::Away(_) | StoreError::Busy(_))) => return Err(error),
                Err(error) => Err(error.to_string()),
                Ok(document) => {
                    let files = document.files()?;
                    if !is_newest {
                        // It answers who asks for it by name or moment; nobody else.
                        match seen(&release, &files, &keyring) {
                            Ok(kept) => self.shelve(release, kept),
                            Err(because) => {
                                tracing::warn!(release = release.number, because, "an old release is left out");
                            }
                        }
                        continue;
                    }
                    match self.below(&files) {
                        Err(because) => Err(because),
                        Ok(below) => {
                            let (asked, at) = (release.clone(), Instant::now());
                            let testing = tokio::task::spawn_blocking(move || tested(&asked, &files, &below, &keyring));
                            let judged = testing.await.map_err(|error| StoreError::Broken(error.to_string()))?;
                            judged.map(|judged| (document, judged, at.elapsed()))
                        }
                    }
                }
            };
            let result = match result {
                Ok((document, judged, took)) => {
                    let copied = Copied { release: release.clone(), document };
                    self.serve(copied, judged).map(|()| took)
                }
                Err(because) => Err(because),
            };
            match result {
                Ok(took) => {
                    let took_ms = u64::try_from(took.as_millis()).unwrap_or(u64::MAX);
                    tracing::info!(
                        set = release.rule_set,
                        version = release.version,
                        release = release.number,
                        took_ms,
                        "serving"
                    );
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

    /// The files of the sets that these lie over, as they are served here.
    fn below(&self, files: &[PackFile]) -> Result<Vec<Vec<PackFile>>, String> {
        let (_, over) = header_of(files).map_err(|error| error.to_string())?;
        let library = self.library();
        let lower = |name: &String| library.newest(name).map(|release| release.files.to_vec());
        over.iter()
            .map(|name| lower(name).ok_or_else(|| format!("it lies over `{name}`, which is not served here")))
            .collect()
    }

    /// What the store has; of a set that it has not, what the program has.
    fn library(&self) -> Library {
        let in_store = |set: &str| self.shelf.iter().any(|(release, _)| release.rule_set == set);
        let own = self.own.all().filter(|release| !in_store(&release.set)).cloned();
        Library::of(own.chain(self.shelf.iter().map(|(_, kept)| Arc::clone(kept))).collect::<Vec<_>>())
    }

    /// Puts a release on the shelf. One that it undoes is marked as withdrawn: who names it is told so.
    fn shelve(&mut self, release: Release, mut kept: Kept) {
        kept.published_at = DateTime::from_timestamp_millis(release.published_ms);
        if release.how == "undo"
            && let Some((undone, shelved)) =
                self.shelf.iter_mut().rev().find(|(other, _)| other.rule_set == release.rule_set)
            && undone.how != "undo"
            && let Some(at) = kept.published_at
        {
            let because = "undone by its publisher".to_owned();
            *shelved = Arc::new(Kept { withdrawn: Some(Withdrawn { at, because }), ..shelved.as_ref().clone() });
        }
        self.shelf.push((release, Arc::new(kept)));
    }

    fn serve(&mut self, copied: Copied, judged: Judged) -> Result<(), String> {
        let before = self.shelf.clone();
        self.shelve(copied.release.clone(), judged.release);
        if let Err(error) = self.rules.take_library(self.library(), self.rules.served().standard.clone()) {
            self.shelf = before;
            return Err(error.to_string());
        }
        let release = &copied.release;
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
        Ok(())
    }

    fn keep_copy(&mut self) {
        let copied: Vec<Copied> = self.served.values().cloned().collect();
        match copy::write(&self.place.last_copy(), &copied, now_ms()) {
            Ok(()) => self.copied_at = Some(Instant::now()),
            Err(error) => tracing::error!(%error, "the last signed copy can't be written"),
        }
    }
}

/// Sees that a release is as it was signed, and reads it.
fn seen(release: &Release, files: &[PackFile], keyring: &Keyring) -> Result<Kept, String> {
    statement::verify(release, keyring)?;
    if documents::Document::of(files).sha256 != release.document {
        return Err("its files are not those that were signed".to_owned());
    }
    let effective = held::apply(files, &held::parse(&release.held)?)?;
    let kept = Kept::of_files(effective).map_err(|_| "its files can't be read".to_owned())?;
    if kept.sha256 != release.set_sha256 {
        return Err("this program reads its content otherwise than the one that published it".to_owned());
    }
    if kept.set != release.rule_set || kept.version != release.version {
        return Err("its files name another set or version".to_owned());
    }
    Ok(kept)
}

/// Tests a release as a node does: signature, hash of the files and of the set, check, scenarios; over the sets below it.
///
/// # Errors
/// Why it is not served, in words.
pub fn tested(
    release: &Release,
    files: &[PackFile],
    below: &[Vec<PackFile>],
    keyring: &Keyring,
) -> Result<Judged, String> {
    seen(release, files, keyring)?;
    let holds = held::parse(&release.held)?;
    judge(below, files, &holds, Depth::Serve).map_err(|error| error.to_string())
}
