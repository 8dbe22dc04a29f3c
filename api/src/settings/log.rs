//! What the log looks like.

use clap::{Args, ValueEnum};

const LEVELS: &str = "info";

/// What the log looks like. It goes to the standard error.
#[derive(Args, Clone, Debug)]
pub struct Log {
    /// One line of text or one JSON object an entry
    #[arg(long = "log-format", env = "LAMMAS_LOG_FORMAT", value_enum, default_value_t = Format::Text)]
    pub format: Format,
    /// Least level that is logged, also by module: `info`, `warn,lammas=debug`
    #[arg(long = "log-levels", env = "LAMMAS_LOG_LEVELS", value_name = "LEVELS", default_value = LEVELS)]
    pub levels: String,
}

/// The form of a log entry.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, ValueEnum)]
pub enum Format {
    /// For people.
    #[default]
    Text,
    /// For programs.
    Json,
}

impl Default for Log {
    fn default() -> Self {
        Self { format: Format::Text, levels: LEVELS.to_owned() }
    }
}
