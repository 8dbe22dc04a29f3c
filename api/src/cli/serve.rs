//! `lammas serve`.

use anyhow::Result;
use clap::Args;

use super::exit::Exit;
use crate::settings::Settings;
use crate::{logging, startup};

/// Answer HTTP requests until stopped
#[derive(Args, Debug)]
#[command(after_help = "Example: lammas serve --listen 127.0.0.1:8080 --log-format json\n\
    With the weather of the last days and of those to come:\n  \
    lammas serve --weather /var/lib/weather     a folder that `lammas weather FILE --into DIR` fills\n\
    Every flag can also be set by the environment variable named with it.")]
pub struct Serve {
    #[command(flatten)]
    settings: Settings,
}

impl Serve {
    pub(super) fn run(self) -> Result<Exit> {
        logging::start(&self.settings.log)?;
        actix_web::rt::System::new().block_on(async { startup::bind(self.settings)?.run().await })?;
        Ok(Exit::Well)
    }
}
