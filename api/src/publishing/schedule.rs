//! Publishing at a wall time that is to come: exactly what was approved, exactly once, late rather than never.

use serde_json::json;

use super::desk::{new_name, now_ms};
use super::drafts::{open_at, write};
use super::gate::Depth;
use super::publish::{Next, below, current, judged, published, record, still};
use super::{Desk, NotDone, trail, wall};
use crate::store::tables::releases::Release;
use crate::store::tables::schedules::{self, Schedule};
use crate::store::tables::{documents, drafts};

/// What fires later than this is said to be late, in milliseconds.
const LATE_MS: i64 = 5_000;

impl Desk {
    /// Publishes an open draft at a wall time. What is published then is what the draft is now; it is judged now and then.
    ///
    /// # Errors
    /// [`NotDone::Refused`] by the gate, [`NotDone::Wrong`] for a time that is over, or as a change of the draft.
    pub async fn schedule(
        &self,
        id: &str,
        revision: Option<i64>,
        (at, zone): (&str, &str),
        who: &str,
    ) -> Result<Schedule, NotDone> {
        let instant = wall::instant(at, zone)?;
        if instant.at.timestamp_millis() <= now_ms() {
            return Err(NotDone::Wrong(format!("`at`: {at} in {zone} is over")));
        }
        self.keyring.own_id()?;
        let mut work = self.store.read().await?;
        let draft = open_at(&mut *work, id, revision).await?;
        let document = documents::get(&mut *work, &draft.document).await?;
        let holds = current(&mut *work, &draft.rule_set).await?.map(|(_, holds)| holds).unwrap_or_default();
        let below = below(&mut *work, &document.files()?).await?;
        drop(work);
        judged(below, &document, &holds, Depth::Publish).await?;

        let mut work = self.store.begin().await?;
        let draft = open_at(&mut *work, id, Some(draft.revision)).await?;
        let now = now_ms();
        let schedule = Schedule {
            id: new_name("schedule")?,
            draft: draft.id.clone(),
            rule_set: draft.rule_set.clone(),
            document: draft.document.clone(),
            at_ms: instant.at.timestamp_millis(),
            wall: at.to_owned(),
            zone: zone.to_owned(),
            state: "waiting".to_owned(),
            made_by: who.to_owned(),
            made_ms: now,
            ended_ms: None,
            release: None,
            told: instant.remark.unwrap_or_default(),
        };
        schedules::insert(&mut *work, &schedule).await?;
        let detail =
            json!({"schedule": schedule.id, "draft": id, "document": schedule.document, "at": at, "zone": zone});
        trail::append(&mut *work, &self.keyring, (who, "plan", &schedule.rule_set), &detail, now).await?;
        work.commit().await?;
        Ok(schedule)
    }

    /// Takes back a publishing that waits.
    ///
    /// # Errors
    /// [`NotDone::Missing`] when none of this name waits.
    pub async fn cancel(&self, id: &str, who: &str) -> Result<(), NotDone> {
        let mut work = self.store.begin().await?;
        let now = now_ms();
        if !schedules::end(&mut *work, id, "cancelled", now, None, "").await? {
            return Err(NotDone::Missing(format!("no publishing of the name `{id}` waits")));
        }
        trail::append(&mut *work, &self.keyring, (who, "cancel", id), &json!({}), now).await?;
        work.commit().await?;
        Ok(())
    }

    /// Publishes what is due at this moment. Two nodes that do so at once publish it once.
    ///
    /// # Errors
    /// The store fails; what is not done is tried again.
    pub async fn fire(&self, now: i64) -> Result<Vec<Release>, NotDone> {
        let mut work = self.store.read().await?;
        let due: Vec<_> = schedules::waiting(&mut *work).await?.into_iter().filter(|s| s.at_ms <= now).collect();
        drop(work);
        let mut fired = Vec::new();
        if due.is_empty() || self.keyring.own_id().is_err() {
            return Ok(fired);
        }
        for schedule in due {
            fired.extend(self.fire_one(&schedule, now).await?);
        }
        Ok(fired)
    }

    async fn fire_one(&self, schedule: &Schedule, now: i64) -> Result<Option<Release>, NotDone> {
        let mut work = self.store.read().await?;
        let document = documents::get(&mut *work, &schedule.document).await?;
        let holds = current(&mut *work, &schedule.rule_set).await?.map(|(_, holds)| holds).unwrap_or_default();
        let below = below(&mut *work, &document.files()?).await?;
        drop(work);
        let judged = judged(below, &document, &holds, Depth::Publish).await;

        let mut work = self.store.begin().await?;
        still(&mut *work, &schedule.rule_set, &holds).await?;
        let made = match &judged {
            Ok(judged) => {
                let who = schedule.made_by.as_str();
                let told = json!({"schedule": schedule.id, "draft": schedule.draft, "at": schedule.wall, "zone": schedule.zone});
                let next = Next {
                    rule_set: &schedule.rule_set,
                    document: &document,
                    holds: &holds,
                    judged,
                    how: "schedule",
                    draft: Some(&schedule.draft),
                    who,
                    told,
                };
                record(self, &mut *work, next).await
            }
            Err(NotDone::Refused(why)) => Err(NotDone::Refused(why.clone())),
            Err(_) => return judged.map(|_| None),
        };
        let release = match made {
            Ok(release) => release,
            Err(NotDone::Refused(why)) => {
                // Work of the release may have been begun: it is dropped, and the refusal noted by itself.
                drop(work);
                return self.refuse(schedule, &why, now).await;
            }
            Err(other) => return Err(other),
        };
        let late = now - schedule.at_ms;
        let told = if late > LATE_MS { format!("{} s late", late / 1000) } else { schedule.told.clone() };
        if !schedules::end(&mut *work, &schedule.id, "fired", now, Some(release.number), &told).await? {
            return Ok(None); // another node was faster; this work is dropped
        }
        if let Some(draft) = drafts::find(&mut *work, &schedule.draft).await?
            && draft.state == "open"
            && draft.document == schedule.document
        {
            write(&mut *work, &published(&draft, &schedule.made_by)).await?;
        }
        work.commit().await?;
        tracing::info!(schedule = schedule.id, late_ms = late, release = release.number, "published as planned");
        Ok(Some(release))
    }

    async fn refuse(&self, schedule: &Schedule, why: &str, now: i64) -> Result<Option<Release>, NotDone> {
        let mut work = self.store.begin().await?;
        if schedules::end(&mut *work, &schedule.id, "refused", now, None, why).await? {
            let detail = json!({"schedule": schedule.id, "draft": schedule.draft});
            let words = (schedule.made_by.as_str(), "refuse", schedule.rule_set.as_str());
            trail::append(&mut *work, &self.keyring, words, &detail, now).await?;
            work.commit().await?;
            tracing::error!(schedule = schedule.id, why, "what was planned can't be published");
        }
        Ok(None)
    }
}
