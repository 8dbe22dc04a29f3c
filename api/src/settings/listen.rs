//! Where to listen.

use std::net::{Ipv4Addr, SocketAddr};

use clap::Args;

const LOOPBACK: SocketAddr = SocketAddr::new(std::net::IpAddr::V4(Ipv4Addr::LOCALHOST), 8080);

/// Where to listen, with how many workers.
#[derive(Args, Clone, Debug)]
pub struct Listen {
    /// Address and port; port 0 takes a free one
    #[arg(long = "listen", env = "LAMMAS_LISTEN", value_name = "ADDRESS", default_value_t = LOOPBACK)]
    pub address: SocketAddr,
    /// Threads that answer requests; 0 is one for each processor
    #[arg(long, env = "LAMMAS_WORKERS", value_name = "COUNT", default_value_t = 0)]
    pub workers: usize,
}

impl Default for Listen {
    fn default() -> Self {
        Self { address: LOOPBACK, workers: 0 }
    }
}
