//! Drafts are brought in, changed and given up.

use lammas_engine::read::{PackFile, read};
use serde_json::json;

use super::desk::{new_name, now_ms};
use super::{Desk, NotDone, trail};
use crate::store::Transaction;
use crate::store::tables::documents::{self, Document, MOST_BYTES};
use crate::store::tables::drafts::{self, Draft};
use crate::store::tables::sets;

/// The name that a set gives itself in `pack.yaml`, and the sets that it lies over. The rest of the draft may still be faulty.
///
/// # Errors
/// There is no readable `pack.yaml`, or the files are too large.
pub fn header_of(files: &[PackFile]) -> Result<(String, Vec<String>), NotDone> {
    let bytes: u64 = files.iter().map(|file| file.text.len() as u64).sum();
    if bytes > MOST_BYTES / 2 {
        return Err(NotDone::Wrong(format!("the files have {bytes} bytes, expected at most {}", MOST_BYTES / 2)));
    }
    let header: Vec<PackFile> = files.iter().filter(|file| file.path == "pack.yaml").cloned().collect();
    if header.is_empty() {
        return Err(NotDone::Wrong("there is no `pack.yaml` among the files".to_owned()));
    }
    let pack = read(&header).map_err(|faults| {
        let first = faults.first().map(|fault| fault.message.clone()).unwrap_or_default();
        NotDone::Wrong(format!("`pack.yaml`: {first}"))
    })?;
    Ok((pack.header.name.value, pack.header.over.into_iter().map(|over| over.value).collect()))
}

impl Desk {
    /// Brings files in as a new draft.
    ///
    /// # Errors
    /// They have no name, or the store fails.
    pub async fn import(&self, files: &[PackFile], note: &str, who: &str) -> Result<Draft, NotDone> {
        let mut work = self.store.begin().await?;
        let draft = self.import_in(&mut *work, files, note, who).await?;
        work.commit().await?;
        Ok(draft)
    }

    /// The same inside other work.
    ///
    /// # Errors
    /// As [`Self::import`].
    pub async fn import_in(
        &self,
        work: &mut dyn Transaction,
        files: &[PackFile],
        note: &str,
        who: &str,
    ) -> Result<Draft, NotDone> {
        let (rule_set, _) = header_of(files)?;
        let (document, now) = (Document::of(files), now_ms());
        let draft = Draft {
            id: new_name("draft")?,
            rule_set: rule_set.clone(),
            document: document.sha256.clone(),
            revision: 1,
            note: note.to_owned(),
            made_by: who.to_owned(),
            made_ms: now,
            changed_by: who.to_owned(),
            changed_ms: now,
            state: "open".to_owned(),
        };
        sets::put_organisation(work, sets::OWN, "The owner of this store", now).await?;
        sets::put(work, &rule_set, sets::OWN, now).await?;
        documents::put(work, &document, now).await?;
        drafts::insert(work, &draft).await?;
        let detail = json!({"draft": draft.id, "document": document.sha256});
        trail::append(work, &self.keyring, (who, "import", &rule_set), &detail, now).await?;
        Ok(draft)
    }

    /// A draft.
    ///
    /// # Errors
    /// [`NotDone::Missing`] when there is none of this name.
    pub async fn draft(&self, id: &str) -> Result<Draft, NotDone> {
        let mut work = self.store.read().await?;
        find(&mut *work, id).await
    }

    /// A draft with its files.
    ///
    /// # Errors
    /// As [`Self::draft`].
    pub async fn draft_files(&self, id: &str) -> Result<(Draft, Vec<PackFile>), NotDone> {
        let mut work = self.store.read().await?;
        let draft = find(&mut *work, id).await?;
        let files = documents::get(&mut *work, &draft.document).await?.files()?;
        Ok((draft, files))
    }

    /// Puts other files into an open draft that is at this revision.
    ///
    /// # Errors
    /// [`NotDone::Changed`] when it is at another, [`NotDone::Wrong`] when it is not open or the files are of another set.
    pub async fn change(
        &self,
        id: &str,
        revision: i64,
        files: &[PackFile],
        note: Option<&str>,
        who: &str,
    ) -> Result<Draft, NotDone> {
        let mut work = self.store.begin().await?;
        let now = now_ms();
        let draft = open_at(&mut *work, id, Some(revision)).await?;
        let (rule_set, _) = header_of(files)?;
        if rule_set != draft.rule_set {
            let told = format!("`pack.yaml`: the draft is of `{}`, found `{rule_set}`", draft.rule_set);
            return Err(NotDone::Wrong(told));
        }
        let document = Document::of(files);
        documents::put(&mut *work, &document, now).await?;
        let next = Draft {
            document: document.sha256.clone(),
            revision: revision + 1,
            note: note.map_or_else(|| draft.note.clone(), str::to_owned),
            changed_by: who.to_owned(),
            changed_ms: now,
            ..draft
        };
        write(&mut *work, &next).await?;
        let detail = json!({"draft": id, "revision": next.revision, "document": document.sha256});
        trail::append(&mut *work, &self.keyring, (who, "change", &next.rule_set), &detail, now).await?;
        work.commit().await?;
        Ok(next)
    }

    /// Gives up an open draft.
    ///
    /// # Errors
    /// As [`Self::change`].
    pub async fn discard(&self, id: &str, revision: Option<i64>, who: &str) -> Result<Draft, NotDone> {
        let mut work = self.store.begin().await?;
        let now = now_ms();
        let draft = open_at(&mut *work, id, revision).await?;
        let next = Draft {
            revision: draft.revision + 1,
            changed_by: who.to_owned(),
            changed_ms: now,
            state: "discarded".to_owned(),
            ..draft
        };
        write(&mut *work, &next).await?;
        trail::append(&mut *work, &self.keyring, (who, "discard", &next.rule_set), &json!({"draft": id}), now).await?;
        work.commit().await?;
        Ok(next)
    }
}

async fn find(work: &mut dyn Transaction, id: &str) -> Result<Draft, NotDone> {
    let draft = drafts::find(work, id).await?;
    draft.ok_or_else(|| NotDone::Missing(format!("no draft has the name `{id}`")))
}

/// An open draft, at this revision if one is named.
pub(super) async fn open_at(work: &mut dyn Transaction, id: &str, revision: Option<i64>) -> Result<Draft, NotDone> {
    let draft = find(work, id).await?;
    if draft.state != "open" {
        return Err(NotDone::Wrong(format!("the draft `{id}` is {}, not open", draft.state)));
    }
    match revision {
        Some(wanted) if wanted != draft.revision => {
            let told =
                format!("`{}` changed the draft: it is at revision {}, not {wanted}", draft.changed_by, draft.revision);
            Err(NotDone::Changed { revision: draft.revision, told })
        }
        _ => Ok(draft),
    }
}

pub(super) async fn write(work: &mut dyn Transaction, next: &Draft) -> Result<(), NotDone> {
    if drafts::change(work, next).await? {
        return Ok(());
    }
    let told = format!("somebody changed the draft `{}` meanwhile", next.id);
    Err(NotDone::Changed { revision: next.revision, told })
}
