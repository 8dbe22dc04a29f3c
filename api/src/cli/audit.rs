//! `lammas audit`.

use std::io::Write;

use anyhow::Result;
use clap::{Args, Subcommand};
use serde_json::{Value, json};

use super::exit::Exit;
use super::store::{StoreArgs, moment};
use crate::publishing::{NotDone, verify};
use crate::serving::copy;
use crate::store::tables::audit;

/// Examine the audit trail, or list it
#[derive(Args, Debug)]
#[command(after_help = "Examples:
  lammas audit verify --store garden     was a row edited, removed, moved, dated back, the end cut off?
  lammas audit list --store garden

`verify` ends with 1 when something is not as it was written, and names the row. Beside the store it looks at the last signed
copy that a server of this machine keeps: what lies outside the store can't be rewritten together with it.")]
pub struct Audit {
    #[command(subcommand)]
    what: What,
}

#[derive(Debug, Subcommand)]
enum What {
    /// Examine every row, the signed end and every release
    Verify {
        /// Print JSON
        #[arg(long)]
        json: bool,
        #[command(flatten)]
        store: StoreArgs,
    },
    /// List who did what
    List {
        /// Only what came after this row
        #[arg(long, default_value_t = 0, value_name = "ROW")]
        after: i64,
        /// Print JSON
        #[arg(long)]
        json: bool,
        #[command(flatten)]
        store: StoreArgs,
    },
}

impl Audit {
    pub(super) fn run(self, out: &mut dyn Write) -> Result<Exit> {
        match self.what {
            What::Verify { json, store } => {
                let seen = copy::releases(&store.place()?.last_copy());
                let report = store.work(|desk| async move {
                    let mut work = desk.store.read().await?;
                    let last = seen.iter().max_by_key(|release| release.number);
                    verify::verify(&mut *work, &desk.keyring, last).await.map_err(NotDone::from)
                })?;
                if json {
                    let findings: Vec<_> =
                        report.findings.iter().map(|f| json!({"row": f.row, "told": f.told})).collect();
                    let whole = json!({"rows": report.rows, "releases": report.releases, "findings": findings});
                    writeln!(out, "{whole:#}")?;
                } else {
                    for finding in &report.findings {
                        match finding.row {
                            Some(row) => writeln!(out, "row {row} {}", finding.told)?,
                            None => writeln!(out, "{}", finding.told)?,
                        }
                    }
                    let found = if report.findings.is_empty() { "all as written" } else { "NOT as written" };
                    writeln!(out, "{} rows, {} releases: {found}", report.rows, report.releases)?;
                }
                Ok(if report.findings.is_empty() { Exit::Well } else { Exit::Found })
            }
            What::List { after, json, store } => {
                let rows = store.work(|desk| async move {
                    let mut work = desk.store.read().await?;
                    audit::after(&mut *work, after, 10_000).await.map_err(NotDone::from)
                })?;
                for row in &rows {
                    if json {
                        let detail: Value = serde_json::from_str(&row.detail).unwrap_or_default();
                        let whole = json!({"row": row.sequence, "at_ms": row.at_ms, "who": row.who, "act": row.act, "what": row.what, "detail": detail});
                        writeln!(out, "{whole}")?;
                    } else {
                        writeln!(
                            out,
                            "{:5}  {}  {}  {} {}  {}",
                            row.sequence,
                            moment(row.at_ms),
                            row.who,
                            row.act,
                            row.what,
                            row.detail
                        )?;
                    }
                }
                Ok(Exit::Well)
            }
        }
    }
}
