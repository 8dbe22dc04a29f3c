//! `lammas openapi`.

use std::io::Write;

use anyhow::Result;
use clap::Args;

use super::exit::Exit;
use crate::openapi::document;

/// Print the OpenAPI 3.1 document of the HTTP calls
#[derive(Args, Debug)]
#[command(after_help = "Example: lammas openapi > openapi.json")]
pub struct Openapi {
    /// Print JSON; the document has no other form, so this changes nothing
    #[arg(long)]
    json: bool,
}

impl Openapi {
    pub(super) fn run(self, out: &mut dyn Write) -> Result<Exit> {
        let Self { json: _ } = self;
        out.write_all(document::text().as_bytes())?;
        Ok(Exit::Well)
    }
}
