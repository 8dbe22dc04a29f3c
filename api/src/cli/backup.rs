//! `lammas backup` and `lammas restore`.

use std::fs::{self, File};
use std::io::Write;
use std::path::PathBuf;

use anyhow::{Context, Result};
use clap::Args;

use super::exit::{BadInput, Exit, Found};
use super::store::StoreArgs;
use crate::publishing::desk::now_ms;
use crate::publishing::{NotDone, verify};
use crate::store::{StoreError, backup};

/// Write the whole store into one file, while it is served
#[derive(Args, Debug)]
#[command(after_help = "Example:
  lammas backup garden-2027-03-01.gz --store garden

The signing key and the trusted keys are not in it: keep `signing.key` and `trusted.keys` apart from the backup.")]
pub struct Backup {
    /// The file; it must not be there yet
    #[arg(value_name = "FILE")]
    file: PathBuf,
    #[command(flatten)]
    store: StoreArgs,
}

impl Backup {
    pub(super) fn run(self, out: &mut dyn Write) -> Result<Exit> {
        let path = self.file.clone();
        if path.exists() {
            return Err(BadInput(format!("`{}` is there already", path.display())).into());
        }
        let beside = path.with_extension("part");
        let cannot = || format!("cannot write `{}`", beside.display());
        let file = File::create(&beside).with_context(cannot)?;
        let kept = file.try_clone().with_context(cannot)?;
        let rows = self.store.work(|desk| async move {
            let mut work = desk.store.read().await?;
            backup::write(&mut *work, file, now_ms()).await.map_err(NotDone::from)
        });
        if rows.is_err() {
            let _ = fs::remove_file(&beside);
        }
        let rows = rows?;
        kept.sync_all().with_context(cannot)?;
        fs::rename(&beside, &path).with_context(cannot)?;
        let bytes = fs::metadata(&path).map_or(0, |meta| meta.len());
        writeln!(out, "{rows} rows, {bytes} bytes in {}", path.display())?;
        Ok(Exit::Well)
    }
}

/// Put a backup into an empty store, and examine it
#[derive(Args, Debug)]
#[command(after_help = "Example:
  mkdir -m 700 new-garden && cp signing.key trusted.keys new-garden/
  lammas restore garden-2027-03-01.gz --store new-garden

Nothing is kept unless all of it can be. The audit trail and every signature are examined; ends with 1 when something is not as
it was written.")]
pub struct Restore {
    /// The file
    #[arg(value_name = "FILE")]
    file: PathBuf,
    #[command(flatten)]
    store: StoreArgs,
}

impl Restore {
    pub(super) fn run(self, out: &mut dyn Write) -> Result<Exit> {
        let file = File::open(&self.file)
            .map_err(|error| BadInput(format!("cannot read `{}`: {error}", self.file.display())))?;
        let (rows, report) = self
            .store
            .work(|desk| async move {
                let mut work = desk.store.begin().await?;
                let rows = backup::restore(&mut *work, file).await?;
                let report = verify::verify(&mut *work, &desk.keyring, None).await?;
                work.commit().await?;
                Ok((rows, report))
            })
            .map_err(|error| match error.downcast::<StoreError>() {
                Ok(StoreError::Damaged(told)) => Found(told).into(),
                Ok(other) => other.into(),
                Err(other) => other,
            })?;
        writeln!(out, "{rows} rows; {} audit rows, {} releases examined", report.rows, report.releases)?;
        for finding in &report.findings {
            let row = finding.row.map(|row| format!("row {row} ")).unwrap_or_default();
            writeln!(out, "{row}{}", finding.told)?;
        }
        Ok(if report.findings.is_empty() { Exit::Well } else { Exit::Found })
    }
}
