//! `lammas doctor`.

use std::io::Write;

use anyhow::Result;
use clap::Args;
use serde_json::json;

use super::exit::Exit;
use super::store::StoreArgs;
use crate::publishing::desk::now_ms;
use crate::publishing::publish::below;
use crate::publishing::{Desk, NotDone, verify};
use crate::serving::{copy, node};
use crate::store::place::StorePlace;
use crate::store::tables::{documents, held_back, releases, schedules, sets};

const DAY_MS: i64 = 86_400_000;
/// A hold should be reviewed within so many days (own choice).
const REVIEW_DAYS: i64 = 7;

/// Look whether everything about a store is well
#[derive(Args, Debug)]
#[command(after_help = "Example:
  lammas doctor --store garden

Looks at the store itself, the keys, the audit trail, every set as a server would before it serves it, the last signed copy, what
is planned and what waits for a review. Ends with 1 when something is wrong.")]
pub struct Doctor {
    /// Print JSON
    #[arg(long)]
    json: bool,
    #[command(flatten)]
    store: StoreArgs,
}

#[derive(Clone, Copy, PartialEq, Eq)]
enum State {
    Well,
    Look,
    Wrong,
}

struct Line {
    state: State,
    what: &'static str,
    told: String,
}

impl Doctor {
    pub(super) fn run(self, out: &mut dyn Write) -> Result<Exit> {
        let place = self.store.place()?;
        let lines = self.store.work(|desk| async move { examine(&desk, &place).await })?;
        let name = |state| match state {
            State::Well => "well",
            State::Look => "look",
            State::Wrong => "WRONG",
        };
        if self.json {
            let each: Vec<_> =
                lines.iter().map(|l| json!({"state": name(l.state), "what": l.what, "told": l.told})).collect();
            writeln!(out, "{:#}", json!(each))?;
        } else {
            for line in &lines {
                writeln!(out, "{:5}  {:14} {}", name(line.state), line.what, line.told)?;
            }
        }
        Ok(if lines.iter().any(|line| line.state == State::Wrong) { Exit::Found } else { Exit::Well })
    }
}

async fn examine(desk: &Desk, place: &StorePlace) -> Result<Vec<Line>, NotDone> {
    let mut lines = Vec::new();
    let mut say = |state, what, told: String| lines.push(Line { state, what, told });
    let mut work = desk.store.read().await?;
    let work = &mut *work;
    if desk.store.back_end() == "sqlite" {
        let rows = work.query("pragma integrity_check", &[]).await?;
        let told = rows.first().and_then(|row| row.maybe_text(0)).unwrap_or_default();
        let state = if told == "ok" { State::Well } else { State::Wrong };
        say(state, "database", format!("sqlite, {}: {told}", place.database().display()));
    } else {
        say(State::Well, "database", desk.store.back_end().to_owned());
    }
    match desk.keyring.own_id() {
        Ok(id) => {
            let trusted = desk.keyring.trusted().any(|other| other == id);
            let (state, more) =
                if trusted { (State::Well, "") } else { (State::Wrong, ", which is not in `trusted.keys`") };
            say(state, "signing key", format!("{id}{more}"));
        }
        Err(why) => say(State::Look, "signing key", why.to_string()),
    }
    let seen = copy::releases(&place.last_copy());
    let last = seen.iter().max_by_key(|release| release.number);
    let report = verify::verify(work, &desk.keyring, last).await?;
    let first = report
        .findings
        .first()
        .map(|f| format!(": {}{}", f.row.map(|r| format!("row {r} ")).unwrap_or_default(), f.told));
    let state = if first.is_none() { State::Well } else { State::Wrong };
    say(
        state,
        "audit trail",
        format!("{} rows, {} releases{}", report.rows, report.releases, first.unwrap_or_default()),
    );

    for name in sets::names(work).await? {
        let Some(release) = releases::last_two(work, &name).await?.into_iter().next() else { continue };
        let tested = match documents::get(work, &release.document).await {
            Ok(document) => {
                let files = document.files()?;
                match below(work, &files).await {
                    Ok(below) => node::tested(&release, &files, &below, &desk.keyring).map(|_| ()),
                    Err(error) => Err(error.to_string()),
                }
            }
            Err(error) => Err(error.to_string()),
        };
        let told = format!("{name} {}, release {}", release.version, release.number);
        match tested {
            Ok(()) => say(State::Well, "rule set", told),
            Err(why) => say(State::Wrong, "rule set", format!("{told}: {why}")),
        }
    }
    if place.last_copy().exists() {
        match copy::read(&place.last_copy(), &desk.keyring, u32::MAX, now_ms()) {
            Ok(copied) => say(State::Well, "last copy", format!("{} sets", copied.len())),
            Err(why) => say(State::Wrong, "last copy", why),
        }
    } else {
        say(State::Look, "last copy", "none yet: a server writes it".to_owned());
    }
    let now = now_ms();
    let waiting = schedules::waiting(work).await?;
    let late = waiting.iter().filter(|s| s.at_ms + 60_000 < now).count();
    let state = if late == 0 { State::Well } else { State::Look };
    say(
        state,
        "planned",
        format!("{} wait, {late} of them are overdue: a running server publishes them", waiting.len()),
    );
    let held = held_back::list(work).await?;
    let open = held.iter().filter(|h| h.verdict.is_none());
    let (all, old) =
        open.fold((0, 0), |(all, old), h| (all + 1, old + i32::from(now - h.made_ms > REVIEW_DAYS * DAY_MS)));
    let state = if old == 0 { State::Well } else { State::Look };
    say(state, "held back", format!("{all} wait for a review, {old} for more than {REVIEW_DAYS} days"));
    Ok(lines)
}
