//! Something is held back at once, by one publisher alone: it only makes the advice safer. A second pair of eyes follows.

use lammas_engine::nearest::nearest;
use lammas_engine::pack::Pack;
use lammas_engine::pack::rule::Kind;
use lammas_engine::read::read;
use serde_json::json;

use super::desk::now_ms;
use super::gate::Depth;
use super::held::{self, HeldKind, Hold, Words};
use super::publish::{Next, Promise, below, current, fulfil, judged, record, still};
use super::{Desk, NotDone, trail};
use crate::store::tables::documents;
use crate::store::tables::held_back::{self, HeldBack};
use crate::store::tables::releases::Release;
use crate::store::{StoreError, Transaction};

/// What is to be held back, or which caution added.
#[derive(Clone, Debug)]
pub struct Asked {
    /// What kind of entry.
    pub kind: HeldKind,
    /// Its id.
    pub entry: String,
    /// Why, by language.
    pub because: Words,
    /// The caution to add; without one the entry is held back.
    pub caution: Option<Words>,
}

/// The longest reason or caution, in characters.
const LONGEST: usize = 240;

impl Asked {
    fn sound(&self) -> Result<(), NotDone> {
        for (name, words) in [("because", Some(&self.because)), ("caution", self.caution.as_ref())] {
            let Some(words) = words else { continue };
            if words.is_empty() {
                return Err(NotDone::Wrong(format!("`{name}` is needed: readers see it")));
            }
            for text in words.values() {
                let length = text.chars().count();
                if text.trim().is_empty() || length > LONGEST || text.chars().any(|c| c.is_control() || c == '{') {
                    let expected = format!("expected 1 to {LONGEST} characters, no line breaks, no braces");
                    return Err(NotDone::Wrong(format!("`{name}`: {expected}")));
                }
            }
        }
        if self.kind == HeldKind::Source && self.caution.is_some() {
            let told = "a caution is added to a rule or a material, not to every rule of a source";
            return Err(NotDone::Wrong(told.to_owned()));
        }
        Ok(())
    }
}

impl Desk {
    /// Holds something back, or adds a caution: a new release, at once.
    ///
    /// # Errors
    /// [`NotDone::Missing`] when the set has no such entry, [`NotDone::Wrong`] when it can't be held back.
    pub async fn hold_back(
        &self,
        rule_set: &str,
        asked: &Asked,
        who: &str,
        promise: Option<&Promise<'_>>,
    ) -> Result<(Release, i64), NotDone> {
        asked.sound()?;
        self.keyring.own_id()?;
        let mut work = self.store.read().await?;
        let (release, before) = served(&mut *work, rule_set).await?;
        let document = documents::get(&mut *work, &release.document).await?;
        let id = held_back::list(&mut *work).await?.first().map_or(0, |last| last.id) + 1;
        let below = below(&mut *work, &document.files()?).await?;
        drop(work);
        let text = |words: &Words| serde_json::to_string(words).unwrap_or_default();
        let now = now_ms();
        let row = HeldBack {
            id: 0,
            rule_set: rule_set.to_owned(),
            kind: asked.kind.name().to_owned(),
            entry: asked.entry.clone(),
            caution: asked.caution.as_ref().map(text).unwrap_or_default(),
            because: text(&asked.because),
            made_by: who.to_owned(),
            made_ms: now,
            verdict: None,
            reviewed_by: None,
            reviewed_ms: None,
            review_because: None,
        };
        let hold = Hold {
            id,
            kind: asked.kind,
            entry: asked.entry.clone(),
            because: asked.because.clone(),
            caution: asked.caution.clone(),
        };
        exists(&document.files()?, &hold)?;
        let holds: Vec<Hold> = before.iter().cloned().chain([hold]).collect();
        // Quick: the files themselves passed the gate before.
        let judged = judged(below, &document, &holds, Depth::Holds).await?;

        let mut work = self.store.begin().await?;
        still(&mut *work, rule_set, &before).await?;
        if held_back::insert(&mut *work, &row).await? != id {
            return Err(StoreError::Busy("something else was held back meanwhile, do it again".to_owned()).into());
        }
        let told = json!({"hold": id, "kind": row.kind, "entry": row.entry, "because": asked.because, "caution": asked.caution});
        let next = Next {
            rule_set,
            document: &document,
            holds: &holds,
            judged: &judged,
            how: "hold-back",
            draft: None,
            who,
            told,
        };
        let release = record(self, &mut *work, next).await?;
        fulfil(&mut *work, promise, &release).await?;
        work.commit().await?;
        Ok((release, id))
    }

    /// Says what the review of a hold came to. To lift one needs somebody else than who held it back.
    ///
    /// # Errors
    /// [`NotDone::Missing`] when there is none, [`NotDone::Wrong`] when it was reviewed, or the same person lifts it.
    pub async fn review(&self, id: i64, lift: bool, because: &str, who: &str) -> Result<Option<Release>, NotDone> {
        if because.trim().is_empty() {
            return Err(NotDone::Wrong("`because` is needed: why does the review say so?".to_owned()));
        }
        self.keyring.own_id()?;
        let mut work = self.store.read().await?;
        let row = held_back::find(&mut *work, id).await?;
        let row = row.ok_or_else(|| NotDone::Missing(format!("nothing was held back as number {id}")))?;
        if lift && row.made_by == who {
            return Err(NotDone::Wrong("who held it back can't lift it alone: another one must review it".to_owned()));
        }
        let (release, before) = served(&mut *work, &row.rule_set).await?;
        let document = documents::get(&mut *work, &release.document).await?;
        let below = below(&mut *work, &document.files()?).await?;
        drop(work);
        let mut holds = before.clone();
        holds.retain(|hold| hold.id != id);
        let judged =
            if lift && holds != before { Some(judged(below, &document, &holds, Depth::Serve).await?) } else { None };

        let mut work = self.store.begin().await?;
        still(&mut *work, &row.rule_set, &before).await?;
        let verdict = if lift { "lift" } else { "keep" };
        if !held_back::review(&mut *work, id, verdict, because, who, now_ms()).await? {
            return Err(NotDone::Wrong(format!("number {id} was reviewed before")));
        }
        let told = json!({"hold": id, "verdict": verdict, "because": because});
        let release = if let Some(judged) = &judged {
            let (rule_set, document, holds) = (row.rule_set.as_str(), &document, holds.as_slice());
            let next = Next { rule_set, document, holds, judged, how: "lift", draft: None, who, told };
            Some(record(self, &mut *work, next).await?)
        } else {
            trail::append(&mut *work, &self.keyring, (who, "review", &row.rule_set), &told, now_ms()).await?;
            None
        };
        work.commit().await?;
        Ok(release)
    }
}

async fn served(work: &mut dyn Transaction, rule_set: &str) -> Result<(Release, Vec<Hold>), NotDone> {
    let now = current(work, rule_set).await?;
    now.ok_or_else(|| NotDone::Missing(format!("`{rule_set}` has no release to hold something back in")))
}

/// Sees that the set has the entry, and that to hold it back is the safe direction.
fn exists(files: &[lammas_engine::read::PackFile], hold: &Hold) -> Result<(), NotDone> {
    let damaged = |_| StoreError::Damaged("the files of the release can't be read".to_owned());
    let pack = read(files).map_err(damaged)?;
    if held::bears_on_something(&pack, hold) {
        return Ok(());
    }
    let other =
        |filed: &&lammas_engine::pack::Filed<lammas_engine::pack::RuleEntry>| filed.entry.id.value == hold.entry;
    if hold.kind == HeldKind::Rule
        && let Some(found) = pack.rules.iter().find(other)
        && found.entry.kind != Kind::Task
    {
        let told = format!("`{}` is no work: to hold back a warning would not be safer", hold.entry);
        return Err(NotDone::Wrong(told));
    }
    let ids = known(&pack, hold.kind);
    let cure = nearest(&hold.entry, ids.iter().copied()).map(|near| format!(", did you mean `{near}`?"));
    let told = format!("no {} has the id `{}`{}", hold.kind.name(), hold.entry, cure.unwrap_or_default());
    Err(NotDone::Missing(told))
}

fn known(pack: &Pack, kind: HeldKind) -> Vec<&str> {
    match kind {
        HeldKind::Rule => {
            let works = pack.rules.iter().filter(|filed| filed.entry.kind == Kind::Task);
            works.map(|filed| filed.entry.id.value.as_str()).collect()
        }
        HeldKind::Material => pack.materials.iter().map(|filed| filed.entry.id.value.as_str()).collect(),
        HeldKind::Source => pack.sources.iter().map(|filed| filed.entry.id.value.as_str()).collect(),
    }
}
