//! The command line.
//!
//! **To add a command**: a file here with its arguments and `run`, a line in `Command` and one in `run`, an
//! example in its `--help`.
//!
//! Exit codes: 0 all is well · 1 the command looked and found something wrong · 2 it was called wrongly or given bad
//! input · 3 it broke.
//!
//! - [`exit`] the exit codes
//! - [`source`] files, or the standard input as `-`
//! - `given` inputs as they are typed
//! - `request` a request from a file, read as the service reads a body
//! - `packs` which rule set a command works on
//! - `mutate` which changes of a rule no scenario would notice
//! - `side_by_side` work on every core, `counted` counts for people
//! - `language` a language as it is typed, `differing` how a climate differs from another, `wrapped` text for a terminal
//! - [`serve`], [`advise`], [`season`], [`profile`], [`weather`], [`replay`], [`rule`], [`check`], [`fault`], [`scenarios`], [`compare`], [`impact`], [`coverage`], [`evidence`], [`rehearse`], [`why_not`], [`tidy`], [`quantity`], [`openapi`] the commands
//! - `store` the store that a command works in; [`import`], [`export`], [`publish`], [`undo`], [`hold_back`], [`key`], [`audit`], [`backup`], [`doctor`] the work there

pub mod advise;
pub mod audit;
pub mod backup;
pub mod check;
pub mod compare;
mod counted;
pub mod coverage;
mod differing;
pub mod doctor;
pub mod evidence;
pub mod exit;
pub mod export;
pub mod fault;
mod given;
pub mod hold_back;
pub mod impact;
pub mod import;
pub mod key;
mod language;
mod mutate;
pub mod openapi;
mod packs;
pub mod profile;
pub mod publish;
pub mod quantity;
pub mod rehearse;
pub mod replay;
mod request;
pub mod rule;
pub mod scenarios;
pub mod season;
pub mod serve;
mod side_by_side;
pub mod source;
mod store;
pub mod tidy;
pub mod undo;
pub mod weather;
pub mod why_not;
mod wrapped;

use std::io::{self, ErrorKind, Write};
use std::process::ExitCode;

use anyhow::Result;
use clap::{Parser, Subcommand};

use exit::Exit;

const CODES: &str = "Exit codes: 0 all is well, 1 something was found wrong, 2 wrong call or bad input, 3 it broke";

/// Season-aware plant care: what to do now, in what order and why, and what to leave alone
#[derive(Debug, Parser)]
#[command(name = "lammas", version, after_help = CODES, arg_required_else_help = true)]
pub struct Lammas {
    #[command(subcommand)]
    command: Command,
}

#[derive(Debug, Subcommand)]
enum Command {
    Serve(serve::Serve),
    Advise(advise::Advise),
    WhyNot(why_not::WhyNot),
    Season(season::Season),
    Profile(profile::Profile),
    Weather(weather::WeatherFile),
    Replay(replay::Replay),
    Rule(rule::Rule),
    Check(check::Check),
    Tidy(tidy::Tidy),
    Fault(fault::Fault),
    Scenarios(scenarios::Scenarios),
    Compare(compare::Compare),
    Impact(impact::Impact),
    Coverage(coverage::Coverage),
    Evidence(evidence::Evidence),
    Rehearse(rehearse::Rehearse),
    Import(import::Import),
    Export(export::Export),
    Publish(publish::Publish),
    Undo(undo::Undo),
    HoldBack(hold_back::HoldBack),
    Key(key::Key),
    Audit(audit::Audit),
    Backup(backup::Backup),
    Restore(backup::Restore),
    Doctor(doctor::Doctor),
    Quantity(quantity::Quantity),
    Openapi(openapi::Openapi),
}

/// Runs the command that the process was started with.
#[must_use]
pub fn main() -> ExitCode {
    let asked = Lammas::parse();
    let mut out = io::stdout().lock();
    let ended = run(asked.command, &mut out).and_then(|exit| Ok(out.flush().map(|()| exit)?));
    match ended {
        Ok(exit) => exit.code(),
        Err(error) => {
            // Whoever reads our output may have read enough of it: `lammas quantity | head`.
            if error.downcast_ref::<io::Error>().is_some_and(|e| e.kind() == ErrorKind::BrokenPipe) {
                return Exit::Well.code();
            }
            let _ = writeln!(io::stderr(), "error: {error:#}");
            Exit::of(&error).code()
        }
    }
}

fn run(command: Command, out: &mut dyn Write) -> Result<Exit> {
    match command {
        Command::Serve(serve) => serve.run(),
        Command::Advise(advise) => advise.run(out),
        Command::WhyNot(why_not) => why_not.run(out),
        Command::Season(season) => season.run(out),
        Command::Profile(profile) => profile.run(out),
        Command::Weather(weather) => weather.run(out),
        Command::Replay(replay) => replay.run(out),
        Command::Rule(rule) => rule.run(out),
        Command::Check(check) => check.run(out),
        Command::Tidy(tidy) => tidy.run(out),
        Command::Fault(fault) => fault.run(out),
        Command::Scenarios(scenarios) => scenarios.run(out),
        Command::Compare(compare) => compare.run(out),
        Command::Impact(impact) => impact.run(out),
        Command::Coverage(coverage) => coverage.run(out),
        Command::Evidence(evidence) => evidence.run(out),
        Command::Rehearse(rehearse) => rehearse.run(out),
        Command::Import(import) => import.run(out),
        Command::Export(export) => export.run(out),
        Command::Publish(publish) => publish.run(out),
        Command::Undo(undo) => undo.run(out),
        Command::HoldBack(hold_back) => hold_back.run(out),
        Command::Key(key) => key.run(out),
        Command::Audit(audit) => audit.run(out),
        Command::Backup(backup) => backup.run(out),
        Command::Restore(restore) => restore.run(out),
        Command::Doctor(doctor) => doctor.run(out),
        Command::Quantity(quantity) => quantity.run(out),
        Command::Openapi(openapi) => openapi.run(out),
    }
}

#[cfg(test)]
mod tests {
    use clap::CommandFactory;

    use super::*;

    #[test]
    fn the_command_line_is_sound_and_every_command_has_an_example() {
        let command = Lammas::command();
        command.clone().debug_assert();
        for sub in command.get_subcommands() {
            let help = sub.get_after_help().map(ToString::to_string).unwrap_or_default();
            assert!(help.contains(&format!("lammas {}", sub.get_name())), "{} has no example", sub.get_name());
            assert!(sub.get_about().is_some(), "{} does not say what it does", sub.get_name());
        }
    }
}
