//! How large a request may be.

use clap::Args;

const BODY_BYTES: usize = 1024 * 1024;
const RECORD_BYTES: usize = 8 * 1024 * 1024;
const NESTING: usize = 64;

/// How large a request may be. All are checked before anything is parsed.
#[derive(Args, Clone, Debug)]
pub struct Limits {
    /// Largest body that is read, in bytes
    #[arg(long, env = "LAMMAS_BODY_BYTES", value_name = "BYTES", default_value_t = BODY_BYTES)]
    pub body_bytes: usize,
    /// Largest daily record that is read, in bytes
    #[arg(long, env = "LAMMAS_RECORD_BYTES", value_name = "BYTES", default_value_t = RECORD_BYTES)]
    pub record_bytes: usize,
    /// How deep lists and objects may stand inside each other (the parser itself stops at 127)
    #[arg(long, env = "LAMMAS_NESTING", value_name = "LEVELS", default_value_t = NESTING)]
    pub nesting: usize,
}

impl Default for Limits {
    fn default() -> Self {
        Self { body_bytes: BODY_BYTES, record_bytes: RECORD_BYTES, nesting: NESTING }
    }
}
