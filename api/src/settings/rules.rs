//! Which rule set is served, and how much is remembered of seasons.

use std::path::PathBuf;

use clap::Args;

const SEASONS_MB: usize = 64;

/// Which rule set is served.
#[derive(Args, Clone, Debug)]
pub struct RuleSettings {
    /// Folder of a rule set to serve instead of the one inside the program
    #[arg(long, env = "LAMMAS_PACKS", value_name = "DIR")]
    pub packs: Option<PathBuf>,
    /// Most memory for seasons that were worked out lately, in MB
    #[arg(long, env = "LAMMAS_SEASONS_MB", value_name = "MB", default_value_t = SEASONS_MB)]
    pub seasons_mb: usize,
}

impl RuleSettings {
    /// The bound of the seasons in bytes.
    pub(crate) fn season_bytes(&self) -> usize {
        self.seasons_mb.saturating_mul(1 << 20)
    }
}

impl Default for RuleSettings {
    fn default() -> Self {
        Self { packs: None, seasons_mb: SEASONS_MB }
    }
}
