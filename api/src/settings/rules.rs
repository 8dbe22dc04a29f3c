//! Which rule sets are served, and how much is remembered of seasons and answers.

use std::path::PathBuf;

use clap::Args;

const SEASONS_MB: usize = 64;
const ANSWERS_MB: usize = 16;
const STACKS: usize = 8;

/// Which rule sets are served.
#[derive(Args, Clone, Debug)]
pub struct RuleSettings {
    /// Folders of the rule sets to serve instead of the one inside the program, lowest first; give it once for each, or put
    /// commas between them. A set that lies over the one inside the program is laid over it
    #[arg(long, env = "LAMMAS_PACKS", value_name = "DIR", value_delimiter = ',')]
    pub packs: Vec<PathBuf>,
    /// Most other combinations of sets and versions that are kept ready for those who ask for them
    #[arg(long, env = "LAMMAS_STACKS", value_name = "NUMBER", default_value_t = STACKS)]
    pub stacks: usize,
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
        Self { packs: Vec::new(), stacks: STACKS, seasons_mb: SEASONS_MB, answers_mb: ANSWERS_MB }
    }
}
