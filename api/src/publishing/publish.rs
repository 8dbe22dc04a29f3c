//! Releases are made: of a draft, or of what stood before.

use lammas_engine::read::PackFile;
use serde_json::json;

use super::desk::now_ms;
use super::drafts::{header_of, open_at, write};
use super::gate::{Depth, Judged, judge};
use super::held::{self, Hold};
use super::{Desk, NotDone, statement, trail};
use crate::store::tables::answered;
use crate::store::tables::documents::{self, Document};
use crate::store::tables::drafts::Draft;
use crate::store::tables::releases::{self, Release};
use crate::store::{StoreError, Transaction};

/// A write that was promised to be done once: whoever asks again with this key gets the first answer.
pub struct Promise<'a> {
    /// Who asked.
    pub caller: &'a str,
    /// The Idempotency-Key.
    pub key: &'a str,
    /// The answer: status and body. It is kept in the transaction of the write.
    pub answer: &'a (dyn Fn(&Release) -> (u16, String) + Send + Sync),
}

/// A release to be.
pub(super) struct Next<'a> {
    pub(super) rule_set: &'a str,
    pub(super) document: &'a Document,
    pub(super) holds: &'a [Hold],
    pub(super) judged: &'a Judged,
    pub(super) how: &'a str,
    pub(super) draft: Option<&'a str>,
    pub(super) who: &'a str,
    pub(super) told: serde_json::Value,
}

/// Judges files away from the threads that answer.
pub(super) async fn judged(
    below: Vec<Vec<PackFile>>,
    document: &Document,
    holds: &[Hold],
    depth: Depth,
) -> Result<Judged, NotDone> {
    let (files, holds) = (document.files()?, holds.to_vec());
    let judging = tokio::task::spawn_blocking(move || judge(&below, &files, &holds, depth));
    judging.await.map_err(|error| StoreError::Broken(error.to_string()))?
}

/// What a set serves now: its release with the holds, if it has one.
pub(super) async fn current(
    work: &mut dyn Transaction,
    rule_set: &str,
) -> Result<Option<(Release, Vec<Hold>)>, NotDone> {
    let last = releases::last_two(work, rule_set).await?.into_iter().next();
    last.map(|release| {
        let holds = held::parse(&release.held).map_err(StoreError::Damaged)?;
        Ok((release, holds))
    })
    .transpose()
}

/// The files of the sets that these lie over, lowest first, as they are published now.
///
/// # Errors
/// [`NotDone::Missing`] when one of them has no release.
pub async fn below(work: &mut dyn Transaction, files: &[PackFile]) -> Result<Vec<Vec<PackFile>>, NotDone> {
    let (name, over) = header_of(files)?;
    let mut below = Vec::new();
    for lower in over {
        let Some((release, holds)) = current(work, &lower).await? else {
            return Err(NotDone::Missing(format!("`{name}` lies over `{lower}`, which has no release in this store")));
        };
        let files = documents::get(work, &release.document).await?.files()?;
        below.push(held::apply(&files, &holds).map_err(NotDone::Refused)?);
    }
    Ok(below)
}

/// Makes the release in this work.
pub(super) async fn record(desk: &Desk, work: &mut dyn Transaction, next: Next<'_>) -> Result<Release, NotDone> {
    let last = releases::last_two(work, next.rule_set).await?.into_iter().next();
    let (version, sha256) = (next.judged.release.version.clone(), next.judged.release.sha256.clone());
    if let Some(before) = releases::hash_of_version(work, next.rule_set, &version).await?
        && before != sha256
    {
        return Err(NotDone::Refused(format!(
            "the version {version} of `{}` was published with another content: give `pack.yaml` a new version",
            next.rule_set
        )));
    }
    let now = last.as_ref().map_or_else(now_ms, |last| now_ms().max(last.published_ms + 1));
    documents::put(work, next.document, now).await?;
    let mut detail = json!({"version": version, "sha256": sha256, "document": next.document.sha256});
    if let (Some(detail), Some(told)) = (detail.as_object_mut(), next.told.as_object()) {
        detail.extend(told.clone());
    }
    let row = trail::append(work, &desk.keyring, (next.who, next.how, next.rule_set), &detail, now).await?;
    let mut release = Release {
        number: releases::newest_number(work).await? + 1,
        rule_set: next.rule_set.to_owned(),
        place: last.map_or(1, |last| last.place + 1),
        version,
        set_sha256: sha256,
        document: next.document.sha256.clone(),
        held: serde_json::to_string(next.holds).map_err(|error| StoreError::Broken(error.to_string()))?,
        how: next.how.to_owned(),
        draft: next.draft.map(str::to_owned),
        published_by: next.who.to_owned(),
        published_ms: row.at_ms.max(now),
        audit_sequence: row.sequence,
        audit_hash: row.hash,
        key_id: desk.keyring.own_id()?,
        signature: String::new(),
    };
    release.signature = desk.keyring.sign(&statement::text(&release))?;
    releases::insert(work, &release).await?;
    work.tell_nodes().await?;
    Ok(release)
}

/// Keeps the answer of a promise with the write itself.
pub(super) async fn fulfil(
    work: &mut dyn Transaction,
    promise: Option<&Promise<'_>>,
    release: &Release,
) -> Result<(), NotDone> {
    if let Some(promise) = promise {
        let (status, body) = (promise.answer)(release);
        answered::done(work, promise.caller, promise.key, status, "", &body).await?;
    }
    Ok(())
}

impl Desk {
    /// Publishes an open draft, at this revision if one is named. What is held back stays held back.
    ///
    /// # Errors
    /// [`NotDone::Refused`] by the gate, or as a change of the draft.
    pub async fn publish(
        &self,
        id: &str,
        revision: Option<i64>,
        who: &str,
        promise: Option<&Promise<'_>>,
    ) -> Result<Release, NotDone> {
        self.keyring.own_id()?;
        let mut work = self.store.read().await?;
        let draft = open_at(&mut *work, id, revision).await?;
        let document = documents::get(&mut *work, &draft.document).await?;
        let holds = current(&mut *work, &draft.rule_set).await?.map(|(_, holds)| holds).unwrap_or_default();
        let below = below(&mut *work, &document.files()?).await?;
        drop(work);
        let judged = judged(below, &document, &holds, Depth::Publish).await?;

        let mut work = self.store.begin().await?;
        let draft = open_at(&mut *work, id, Some(draft.revision)).await?;
        still(&mut *work, &draft.rule_set, &holds).await?;
        let next = Next {
            rule_set: &draft.rule_set,
            document: &document,
            holds: &holds,
            judged: &judged,
            how: "publish",
            draft: Some(id),
            who,
            told: json!({"draft": id, "revision": draft.revision}),
        };
        let release = record(self, &mut *work, next).await?;
        write(&mut *work, &published(&draft, who)).await?;
        fulfil(&mut *work, promise, &release).await?;
        work.commit().await?;
        Ok(release)
    }

    /// Publishes what stood before the last release of a set. Again: what stood before that, the last one itself.
    ///
    /// # Errors
    /// [`NotDone::Wrong`] when nothing stood before.
    pub async fn undo(
        &self,
        rule_set: &str,
        place: Option<i64>,
        who: &str,
        promise: Option<&Promise<'_>>,
    ) -> Result<Release, NotDone> {
        self.keyring.own_id()?;
        let mut work = self.store.read().await?;
        let two = releases::last_two(&mut *work, rule_set).await?;
        let [last, before] = two.as_slice() else {
            return Err(NotDone::Wrong(match two.len() {
                0 => format!("`{rule_set}` has no release"),
                _ => format!("nothing stood before the only release of `{rule_set}`"),
            }));
        };
        at_place(last, place)?;
        let document = documents::get(&mut *work, &before.document).await?;
        let holds = held::parse(&before.held).map_err(StoreError::Damaged)?;
        let below = below(&mut *work, &document.files()?).await?;
        drop(work);
        let judged = judged(below, &document, &holds, Depth::Serve).await?;

        let mut work = self.store.begin().await?;
        let now = releases::last_two(&mut *work, rule_set).await?.into_iter().next();
        match now {
            Some(now) => at_place(&now, Some(last.place))?,
            None => return Err(NotDone::Wrong(format!("`{rule_set}` has no release"))),
        }
        let next = Next {
            rule_set,
            document: &document,
            holds: &holds,
            judged: &judged,
            how: "undo",
            draft: None,
            who,
            told: json!({"undoes": last.number, "as": before.number}),
        };
        let release = record(self, &mut *work, next).await?;
        fulfil(&mut *work, promise, &release).await?;
        work.commit().await?;
        Ok(release)
    }

    /// Publishes the set inside the program in a store that has no release of it: what was answered from before stays.
    ///
    /// # Errors
    /// As publishing.
    pub async fn begin_with(&self, files: &[PackFile]) -> Result<Option<Release>, NotDone> {
        let (name, _) = header_of(files)?;
        let mut work = self.store.read().await?;
        if current(&mut *work, &name).await?.is_some() {
            return Ok(None);
        }
        let below = below(&mut *work, files).await?;
        drop(work);
        self.keyring.own_id()?;
        let document = Document::of(files);
        let judged = judged(below, &document, &[], Depth::Serve).await?;
        let who = "the program";
        let mut work = self.store.begin().await?;
        if current(&mut *work, &name).await?.is_some() {
            return Ok(None); // another node was faster
        }
        let draft = self.import_in(&mut *work, files, "the set inside the program", who).await?;
        let next = Next {
            rule_set: &name,
            document: &document,
            holds: &[],
            judged: &judged,
            how: "publish",
            draft: Some(&draft.id),
            who,
            told: json!({"draft": draft.id}),
        };
        let release = record(self, &mut *work, next).await?;
        write(&mut *work, &published(&draft, who)).await?;
        work.commit().await?;
        Ok(Some(release))
    }
}

/// Sees that nobody held something back or lifted it meanwhile.
pub(super) async fn still(work: &mut dyn Transaction, rule_set: &str, holds: &[Hold]) -> Result<(), NotDone> {
    let now = current(work, rule_set).await?.map(|(_, holds)| holds).unwrap_or_default();
    if now == holds {
        return Ok(());
    }
    Err(StoreError::Busy("something was held back or lifted meanwhile, do it again".to_owned()).into())
}

fn at_place(release: &Release, place: Option<i64>) -> Result<(), NotDone> {
    match place {
        Some(wanted) if wanted != release.place => Err(NotDone::Changed {
            revision: release.place,
            told: format!("`{}` has a newer release: it is at {}, not {wanted}", release.rule_set, release.place),
        }),
        _ => Ok(()),
    }
}

pub(super) fn published(draft: &Draft, who: &str) -> Draft {
    Draft {
        revision: draft.revision + 1,
        changed_by: who.to_owned(),
        changed_ms: now_ms(),
        state: "published".to_owned(),
        ..draft.clone()
    }
}
