//! How one process is set up: typed, read once at the start, from flags or the environment.
//!
//! - [`listen`] where to listen, with how many workers
//! - [`limits`] how large a request may be
//! - [`deadlines`] how long a request may take
//! - [`rules`] which rule set is served
//! - [`store`] where releases come from
//! - [`weather`] where weather comes from
//! - [`log`] what the log looks like

pub mod deadlines;
pub mod limits;
pub mod listen;
pub mod log;
pub mod rules;
pub mod store;
pub mod weather;

use actix_web::HttpRequest;
use actix_web::dev::ServiceRequest;
use actix_web::web::Data;
use clap::Args;

/// All settings of the server. The defaults start a server that only this machine can reach.
#[derive(Args, Clone, Debug, Default)]
pub struct Settings {
    /// Where to listen.
    #[command(flatten)]
    pub listen: listen::Listen,
    /// How large a request may be.
    #[command(flatten)]
    pub limits: limits::Limits,
    /// How long a request may take.
    #[command(flatten)]
    pub deadlines: deadlines::Deadlines,
    /// Which rule set is served.
    #[command(flatten)]
    pub rules: rules::RuleSettings,
    /// Where releases come from.
    #[command(flatten)]
    pub store: store::StoreSettings,
    /// Where weather comes from.
    #[command(flatten)]
    pub weather: weather::WeatherSettings,
    /// What the log looks like.
    #[command(flatten)]
    pub log: log::Log,
}

impl Settings {
    /// The settings of the server that took this request.
    pub(crate) fn of(request: &HttpRequest) -> Data<Self> {
        request.app_data::<Data<Self>>().cloned().unwrap_or_else(|| Data::new(Self::default()))
    }

    /// The same, before a request is routed.
    pub(crate) fn before_routing(request: &ServiceRequest) -> Data<Self> {
        request.app_data::<Data<Self>>().cloned().unwrap_or_else(|| Data::new(Self::default()))
    }
}

#[cfg(test)]
mod tests {
    use clap::{CommandFactory, FromArgMatches, Parser};

    use super::*;

    #[derive(Parser)]
    struct Bare {
        #[command(flatten)]
        settings: Settings,
    }

    #[test]
    fn the_defaults_of_the_command_line_and_of_the_library_are_the_same() {
        let matches = Bare::command().get_matches_from(["lammas"]);
        let bare = Bare::from_arg_matches(&matches).expect("defaults parse");
        assert_eq!(format!("{:?}", bare.settings), format!("{:?}", Settings::default()));
    }

    #[test]
    fn nobody_else_can_reach_a_server_with_default_settings() {
        assert!(Settings::default().listen.address.ip().is_loopback());
    }
}
