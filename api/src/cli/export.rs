//! `lammas export`.

use std::fs;
use std::io::Write;
use std::path::{Component, Path, PathBuf};

use anyhow::{Context, Result};
use clap::Args;
use lammas_engine::read::PackFile;

use super::exit::{BadInput, Exit};
use super::store::StoreArgs;
use crate::publishing::{Desk, NotDone, held};
use crate::store::StoreError;
use crate::store::tables::{documents, releases};

/// Write the files of a draft or a release into a folder
#[derive(Args, Debug)]
#[command(after_help = "Examples:
  lammas export core --into my-rules --store garden           what is published now, as its authors wrote it
  lammas export core@2026.11.1 --into old --store garden      a version, with what was held back in it
  lammas export draft-0123456789abcdef0123 --into look --store garden")]
pub struct Export {
    /// A draft, a set, or a set and a version as `core@2026.11.1`
    #[arg(value_name = "WHAT")]
    what: String,
    /// Folder to write to; it must be empty or not be there
    #[arg(long, value_name = "DIR")]
    into: PathBuf,
    #[command(flatten)]
    store: StoreArgs,
}

impl Export {
    pub(super) fn run(self, out: &mut dyn Write) -> Result<Exit> {
        if self.into.exists() && fs::read_dir(&self.into).map_or(true, |mut dir| dir.next().is_some()) {
            return Err(BadInput(format!("`--into`: expected an empty folder, found `{}`", self.into.display())).into());
        }
        let what = self.what.clone();
        let files = self.store.work(|desk| async move { files(&desk, &what).await })?;
        for file in &files {
            write(&self.into, file)?;
        }
        writeln!(out, "{} files in {}", files.len(), self.into.display())?;
        Ok(Exit::Well)
    }
}

async fn files(desk: &Desk, what: &str) -> Result<Vec<PackFile>, NotDone> {
    if what.starts_with("draft-") {
        return Ok(desk.draft_files(what).await?.1);
    }
    let (name, version) = what.split_once('@').map_or((what, None), |(name, version)| (name, Some(version)));
    let mut work = desk.store.read().await?;
    let of_set = |r: &releases::Release| r.rule_set == name && version.is_none_or(|version| r.version == version);
    let found = releases::after(&mut *work, 0).await?.into_iter().rev().find(of_set);
    let release = found.ok_or_else(|| NotDone::Missing(format!("nothing is published as `{what}`")))?;
    let files = documents::get(&mut *work, &release.document).await?.files()?;
    if version.is_none() {
        return Ok(files);
    }
    let holds = held::parse(&release.held).map_err(StoreError::Damaged)?;
    held::apply(&files, &holds).map_err(NotDone::Refused)
}

fn write(into: &Path, file: &PackFile) -> Result<()> {
    let inside = Path::new(&file.path);
    if inside.components().any(|part| !matches!(part, Component::Normal(_))) {
        return Err(BadInput(format!("the file `{}` lies outside the set", file.path)).into());
    }
    let path = into.join(inside);
    let cannot = || format!("cannot write `{}`", path.display());
    if let Some(folder) = path.parent() {
        fs::create_dir_all(folder).with_context(cannot)?;
    }
    fs::write(&path, &file.text).with_context(cannot)
}
