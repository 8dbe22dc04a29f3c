//! The audit trail is examined: edits, deletions, other orders, dates set back, a tail cut off, a trail written anew.

use std::collections::BTreeMap;

use super::signing::Keyring;
use super::{statement, trail};
use crate::store::tables::audit::{self, AuditRow, BEFORE_THE_FIRST};
use crate::store::tables::releases::{self, Release};
use crate::store::{StoreError, Transaction};

/// Something that is not as it was written.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Finding {
    /// The row of the trail, where it is one.
    pub row: Option<i64>,
    /// What is wrong, for people.
    pub told: String,
}

/// What was looked at, and what was found.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Report {
    /// Rows of the trail.
    pub rows: u64,
    /// Releases.
    pub releases: u64,
    /// What is wrong.
    pub findings: Vec<Finding>,
}

impl Report {
    fn row(&mut self, row: i64, told: impl Into<String>) {
        self.findings.push(Finding { row: Some(row), told: told.into() });
    }

    fn whole(&mut self, told: impl Into<String>) {
        self.findings.push(Finding { row: None, told: told.into() });
    }
}

/// Rows are read so many at a time.
const AT_ONCE: i64 = 1000;

/// Examines the trail and every release. `copy` is the release that this machine saw last: what is outside the store can't be
/// rewritten together with it.
///
/// # Errors
/// Any of [`StoreError`].
pub async fn verify(
    work: &mut dyn Transaction,
    keyring: &Keyring,
    copy: Option<&Release>,
) -> Result<Report, StoreError> {
    let mut report = Report::default();
    let mut hashes = BTreeMap::new();
    let mut last: Option<AuditRow> = None;
    loop {
        let rows = audit::after(work, last.as_ref().map_or(0, |row| row.sequence), AT_ONCE).await?;
        if rows.is_empty() {
            break;
        }
        for row in rows {
            examine(&row, last.as_ref(), &mut report);
            hashes.insert(row.sequence, row.hash.clone());
            report.rows += 1;
            last = Some(row);
        }
    }
    end(work, keyring, last.as_ref(), &mut report).await?;
    let kept = releases::after(work, 0).await?;
    report.releases = kept.len() as u64;
    for (at, release) in kept.iter().enumerate() {
        if usize::try_from(release.number).ok() != Some(at + 1) {
            report.whole(format!("release {} stands where release {} is expected", release.number, at + 1));
        }
        anchored(release, keyring, &hashes, &mut report);
    }
    if let Some(copy) = copy {
        match kept.iter().find(|release| release.number == copy.number) {
            None => report.whole(format!("release {}, which this machine has served, is gone", copy.number)),
            Some(release) if release != copy => {
                report.whole(format!("release {} is not the one that this machine has served", copy.number));
            }
            Some(_) => {}
        }
        if hashes.get(&copy.audit_sequence) != Some(&copy.audit_hash) {
            report.row(copy.audit_sequence, "is not the row that the last signed copy of this machine names");
        }
    }
    Ok(report)
}

fn examine(row: &AuditRow, last: Option<&AuditRow>, report: &mut Report) {
    let expected = last.map_or(1, |last| last.sequence + 1);
    if row.sequence != expected {
        report.row(expected, format!("is missing: row {} follows", row.sequence));
    }
    if row.own_hash() != row.hash {
        report.row(row.sequence, "was edited: its hash is not that of its words");
    }
    if row.previous != last.map_or(BEFORE_THE_FIRST, |last| last.hash.as_str()) {
        report.row(row.sequence, "does not follow the row before it: one of the two was put there or taken away");
    }
    if last.is_some_and(|last| row.at_ms < last.at_ms) {
        report.row(row.sequence, "is dated before the row before it");
    }
}

async fn end(
    work: &mut dyn Transaction,
    keyring: &Keyring,
    last: Option<&AuditRow>,
    report: &mut Report,
) -> Result<(), StoreError> {
    match (audit::head(work).await?, last) {
        (None, None) => {}
        (None, Some(last)) => report.row(last.sequence, "is the last one, but no signed end says so"),
        (Some(head), last) => {
            if let Err(why) =
                keyring.verify(&head.key_id, &trail::head_text(head.sequence, &head.hash), &head.signature)
            {
                report.whole(format!("the signed end of the trail is not ours: {why}"));
            }
            let ends = last.map_or(0, |row| row.sequence);
            if ends < head.sequence {
                report.row(ends + 1, format!("is missing: the signed end is row {}", head.sequence));
            } else if ends > head.sequence || last.is_some_and(|row| row.hash != head.hash) {
                report.row(head.sequence, "is not the end that was signed");
            }
        }
    }
    Ok(())
}

fn anchored(release: &Release, keyring: &Keyring, hashes: &BTreeMap<i64, String>, report: &mut Report) {
    if let Err(why) = statement::verify(release, keyring) {
        report.whole(format!("release {} of `{}`: {why}", release.number, release.rule_set));
    }
    if hashes.get(&release.audit_sequence) != Some(&release.audit_hash) {
        let told = format!("is not the row that the signed release {} names", release.number);
        report.row(release.audit_sequence, told);
    }
}
