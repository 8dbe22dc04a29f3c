//! `lammas import`.

use std::io::Write;
use std::path::PathBuf;

use anyhow::Result;
use clap::Args;
use serde_json::json;

use super::exit::Exit;
use super::store::StoreArgs;
use crate::sets::{embedded, folder};

/// Bring the files of a rule set into a store, as a draft
#[derive(Args, Debug)]
#[command(after_help = "Examples:
  lammas import my-rules --store garden --note \"oil only on dormant wood\"
  lammas import --store garden                  the rule set inside the program, after an update of it
  lammas publish DRAFT --store garden           what comes next; the name of the draft is printed")]
pub struct Import {
    /// Folder of the rule set; without it, the one inside the program
    #[arg(value_name = "DIR")]
    folder: Option<PathBuf>,
    /// What the draft is for
    #[arg(long, default_value = "", value_name = "TEXT")]
    note: String,
    /// Print JSON
    #[arg(long)]
    json: bool,
    #[command(flatten)]
    store: StoreArgs,
}

impl Import {
    pub(super) fn run(self, out: &mut dyn Write) -> Result<Exit> {
        let files = self.folder.as_deref().map_or_else(|| Ok(embedded::files()), folder::files)?;
        let (note, who) = (self.note.clone(), self.store.who().to_owned());
        let draft = self.store.work(|desk| async move { desk.import(&files, &note, &who).await })?;
        if self.json {
            writeln!(out, "{:#}", json!({"draft": draft.id, "rule_set": draft.rule_set, "document": draft.document}))?;
        } else {
            writeln!(out, "{}  of {}", draft.id, draft.rule_set)?;
        }
        Ok(Exit::Well)
    }
}
