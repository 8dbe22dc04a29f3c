//! `lammas key`.

use std::io::Write;

use anyhow::Result;
use clap::{Args, Subcommand};
use serde_json::json;

use super::exit::Exit;
use super::store::{StoreArgs, moment};
use crate::keys::Scope;
use crate::publishing::NotDone;
use crate::publishing::desk::now_ms;
use crate::store::tables::keys;

const DAY_MS: i64 = 86_400_000;

/// Make, list and revoke the keys of programs
#[derive(Args, Debug)]
#[command(after_help = "Examples:
  lammas key new editor --scopes edit,publish --days 90 --store garden      the key is shown once
  lammas key list --store garden
  lammas key revoke 0123456789ab --store garden")]
pub struct Key {
    #[command(subcommand)]
    what: What,
}

#[derive(Debug, Subcommand)]
enum What {
    /// Make a key; it is shown once
    New {
        /// What it is for
        name: String,
        /// What it may do: edit, publish, review, audit, weather
        #[arg(long, value_delimiter = ',', required = true, value_parser = scope)]
        scopes: Vec<Scope>,
        /// It ends after so many days
        #[arg(long, default_value_t = 365, value_parser = clap::value_parser!(u16).range(1..=3660))]
        days: u16,
        /// Print JSON
        #[arg(long)]
        json: bool,
        #[command(flatten)]
        store: StoreArgs,
    },
    /// List the keys, never their secrets
    List {
        /// Print JSON
        #[arg(long)]
        json: bool,
        #[command(flatten)]
        store: StoreArgs,
    },
    /// Revoke a key, at once and for all nodes
    Revoke {
        /// Its public id
        id: String,
        #[command(flatten)]
        store: StoreArgs,
    },
}

fn scope(name: &str) -> Result<Scope, String> {
    let all = Scope::ALL.map(Scope::name).join(", ");
    Scope::find(name).ok_or_else(|| format!("expected one of {all}, found `{name}`"))
}

impl Key {
    pub(super) fn run(self, out: &mut dyn Write) -> Result<Exit> {
        match self.what {
            What::New { name, scopes, days, json, store } => {
                let (who, ends) = (store.who().to_owned(), now_ms() + i64::from(days) * DAY_MS);
                let key = store.work(|desk| async move { desk.new_key(&name, &scopes, Some(ends), &who).await })?;
                if json {
                    writeln!(out, "{:#}", json!({"id": key.id(), "key": key.shown(), "expires_ms": ends}))?;
                } else {
                    writeln!(out, "{}\nIt is not shown again. It ends {}.", key.shown(), moment(ends))?;
                }
            }
            What::List { json, store } => {
                let all = store.work(|desk| async move {
                    let mut work = desk.store.read().await?;
                    keys::list(&mut *work).await.map_err(NotDone::from)
                })?;
                if json {
                    let each: Vec<_> = all
                        .iter()
                        .map(|k| json!({"id": k.id, "name": k.name, "scopes": k.scopes, "made_by": k.made_by, "made_ms": k.made_ms,
                                        "expires_ms": k.expires_ms, "revoked_ms": k.revoked_ms, "last_used_ms": k.last_used_ms}))
                        .collect();
                    writeln!(out, "{:#}", json!(each))?;
                } else {
                    for key in &all {
                        let state = match (key.revoked_ms, key.expires_ms) {
                            (Some(at), _) => format!("revoked {}", moment(at)),
                            (None, Some(at)) if at <= now_ms() => format!("ended {}", moment(at)),
                            (None, Some(at)) => format!("until {}", moment(at)),
                            (None, None) => "without end".to_owned(),
                        };
                        let used = key
                            .last_used_ms
                            .map_or_else(|| "never used".to_owned(), |at| format!("used {}", moment(at)));
                        writeln!(out, "{}  {}  {}  {state}  {used}", key.id, key.name, key.scopes)?;
                    }
                    if all.is_empty() {
                        writeln!(out, "no keys")?;
                    }
                }
            }
            What::Revoke { id, store } => {
                let (named, who) = (id.clone(), store.who().to_owned());
                store.work(|desk| async move { desk.revoke_key(&named, &who).await })?;
                writeln!(out, "{id} is revoked")?;
            }
        }
        Ok(Exit::Well)
    }
}
