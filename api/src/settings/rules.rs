//! Which rule set is served, and how much is remembered of seasons and answers.

use std::path::PathBuf;

use clap::Args;

const SEASONS_MB: usize = 64;
const ANSWERS_MB: usize = 16;

/// Which rule set is served.
#[derive(Args, Clone, Debug)]
pub struct RuleSettings {
    /// Folder of a rule set to serve instead of the one inside the program
    #[arg(long, env = "LAMMAS_PACKS", value_name = "DIR")]
    pub packs: Option<PathBuf>,
    /// Most memory for seasons that were worked out lately, in MB
    #[arg(long, env = "LAMMAS_SEASONS_MB", value_name = "MB", default_value_t = SEASONS_MB)]
    pub seasons_mb: usize,
    /// Most memory for answers that were given lately, in MB; 0 works each out anew
    #[arg(long, env = "LAMMAS_ANSWERS_MB", value_name = "MB", default_value_t = ANSWERS_MB)]
    pub answers_mb: usize,
}

impl RuleSettings {
    /// The bound of the seasons in bytes.
    pub(crate) fn season_bytes(&self) -> usize {
        self.seasons_mb.saturating_mul(1 << 20)
    }

    /// The bound of the answers in bytes.
    pub(crate) fn answer_bytes(&self) -> usize {
        self.answers_mb.saturating_mul(1 << 20)
    }
}

impl Default for RuleSettings {
    fn default() -> Self {
        Self { packs: None, seasons_mb: SEASONS_MB, answers_mb: ANSWERS_MB }
    }
}
