//! The log: one line a request, and what breaks. Coordinates, words and bodies of requests never stand in it.

use anyhow::{Context, Result};
use tracing_subscriber::EnvFilter;

use crate::settings::log::{Format, Log};

/// Starts the log of this process, once.
///
/// # Errors
/// When the levels can't be read, or a log was started before.
pub fn start(log: &Log) -> Result<()> {
    let levels =
        EnvFilter::try_new(&log.levels).with_context(|| format!("cannot read the log levels `{}`", log.levels))?;
    let builder = tracing_subscriber::fmt()
        .with_env_filter(levels)
        .with_writer(std::io::stderr)
        // Colours are for a terminal, not for a file.
        .with_ansi(std::io::IsTerminal::is_terminal(&std::io::stderr()));
    let started = match log.format {
        Format::Text => builder.try_init(),
        Format::Json => builder.json().flatten_event(true).try_init(),
    };
    started.map_err(|error| anyhow::anyhow!("cannot start the log: {error}"))?;
    // A panic's message may quote a request, so only its place is logged.
    std::panic::set_hook(Box::new(|panic| {
        let place = panic.location().map(ToString::to_string).unwrap_or_default();
        tracing::error!(place, "panic");
    }));
    Ok(())
}
