//! `lammas undo`.

use std::io::Write;

use anyhow::Result;
use clap::Args;

use super::exit::Exit;
use super::publish::told;
use super::store::StoreArgs;

/// Publish again what stood before the last release of a set
#[derive(Args, Debug)]
#[command(after_help = "Examples:
  lammas undo core --store garden       back to what stood before
  lammas undo core --store garden       once more: the undo is undone
  lammas audit list --store garden      both are on record")]
pub struct Undo {
    /// The set
    #[arg(value_name = "SET", default_value = "core")]
    rule_set: String,
    /// Print JSON
    #[arg(long)]
    json: bool,
    #[command(flatten)]
    store: StoreArgs,
}

impl Undo {
    pub(super) fn run(self, out: &mut dyn Write) -> Result<Exit> {
        let (set, who) = (self.rule_set.clone(), self.store.who().to_owned());
        let release = self.store.work(|desk| async move { desk.undo(&set, None, &who, None).await })?;
        told(&release, self.json, out)
    }
}
