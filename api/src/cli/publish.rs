//! `lammas publish`.

use std::io::Write;

use anyhow::Result;
use clap::Args;
use serde_json::json;

use super::exit::Exit;
use super::store::{StoreArgs, moment};
use crate::publishing::NotDone;
use crate::store::tables::releases::Release;
use crate::store::tables::schedules;

/// Publish a draft: now, or at a wall time in a named zone
#[derive(Args, Debug)]
#[command(after_help = "Examples:
  lammas publish draft-0123456789abcdef0123 --store garden
  lammas publish draft-0123456789abcdef0123 --at \"2027-03-01 06:00\" --zone Europe/Madrid --store garden
  lammas publish --planned --store garden               what waits for its time, and what became of the others
  lammas publish --cancel schedule-0123… --store garden

A draft is checked and its scenarios are run first. A server on the same store serves it within a second. Ends with 1 when the
draft does not pass.")]
pub struct Publish {
    /// The draft, as `lammas import` named it
    #[arg(value_name = "DRAFT", required_unless_present_any = ["planned", "cancel"])]
    draft: Option<String>,
    /// Wall time to publish at; a running server does it
    #[arg(long, value_name = "YYYY-MM-DD HH:MM", requires = "zone")]
    at: Option<String>,
    /// Zone of that wall, of the IANA database
    #[arg(long, value_name = "ZONE", requires = "at")]
    zone: Option<String>,
    /// List what is planned
    #[arg(long, conflicts_with_all = ["draft", "cancel"])]
    planned: bool,
    /// Take back what is planned
    #[arg(long, value_name = "SCHEDULE", conflicts_with = "draft")]
    cancel: Option<String>,
    /// Print JSON
    #[arg(long)]
    json: bool,
    #[command(flatten)]
    store: StoreArgs,
}

impl Publish {
    pub(super) fn run(self, out: &mut dyn Write) -> Result<Exit> {
        let who = self.store.who().to_owned();
        if self.planned {
            return self.planned(out);
        }
        if let Some(id) = self.cancel.clone() {
            let named = id.clone();
            self.store.work(|desk| async move { desk.cancel(&named, &who).await })?;
            writeln!(out, "{id} is taken back")?;
            return Ok(Exit::Well);
        }
        let draft = self.draft.clone().unwrap_or_default();
        if let (Some(at), Some(zone)) = (self.at.clone(), self.zone.clone()) {
            let planned =
                self.store.work(|desk| async move { desk.schedule(&draft, None, (&at, &zone), &who).await })?;
            if self.json {
                writeln!(out, "{:#}", json!({"schedule": planned.id, "at_ms": planned.at_ms, "told": planned.told}))?;
            } else {
                let remark = if planned.told.is_empty() { String::new() } else { format!("\n{}", planned.told) };
                writeln!(
                    out,
                    "{}  {} {} is {}{remark}",
                    planned.id,
                    planned.wall,
                    planned.zone,
                    moment(planned.at_ms)
                )?;
            }
            return Ok(Exit::Well);
        }
        let release = self.store.work(|desk| async move { desk.publish(&draft, None, &who, None).await })?;
        told(&release, self.json, out)
    }

    fn planned(&self, out: &mut dyn Write) -> Result<Exit> {
        let all = self.store.work(|desk| async move {
            let mut work = desk.store.read().await?;
            schedules::list(&mut *work).await.map_err(NotDone::from)
        })?;
        if self.json {
            let each: Vec<_> = all
                .iter()
                .map(|s| {
                    json!({"schedule": s.id, "rule_set": s.rule_set, "draft": s.draft, "at": s.wall, "zone": s.zone,
                                "state": s.state, "release": s.release, "told": s.told})
                })
                .collect();
            writeln!(out, "{:#}", json!(each))?;
            return Ok(Exit::Well);
        }
        for s in &all {
            writeln!(out, "{}  {:9}  {} {}  {}  {}  {}", s.id, s.state, s.wall, s.zone, s.rule_set, s.draft, s.told)?;
        }
        if all.is_empty() {
            writeln!(out, "nothing is planned")?;
        }
        Ok(Exit::Well)
    }
}

/// A release for people, or as JSON.
pub(super) fn told(release: &Release, json: bool, out: &mut dyn Write) -> Result<Exit> {
    if json {
        let shown = json!({
            "release": release.number, "rule_set": release.rule_set, "place": release.place, "version": release.version,
            "sha256": release.set_sha256, "how": release.how, "published_ms": release.published_ms,
        });
        writeln!(out, "{shown:#}")?;
    } else {
        let at = moment(release.published_ms);
        writeln!(out, "{} {}  release {}, {at}", release.rule_set, release.version, release.number)?;
        writeln!(out, "sha256 {}", release.set_sha256)?;
    }
    Ok(Exit::Well)
}
