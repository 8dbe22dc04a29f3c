//! Where the weather of registered climates comes from.

use std::path::PathBuf;

use clap::Args;

/// Where the weather of registered climates comes from.
#[derive(Args, Clone, Debug, Default)]
pub struct WeatherSettings {
    /// Folder with observed and forecast days of registered climates, as `lammas weather --into` puts them there; it is
    /// looked at every second
    #[arg(long = "weather", env = "LAMMAS_WEATHER", value_name = "DIR")]
    pub folder: Option<PathBuf>,
}
