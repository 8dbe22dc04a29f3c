//! From settings to a server that listens.

use std::net::SocketAddr;

use actix_web::dev::{Server, ServerHandle};
use actix_web::middleware::{Compress, from_fn};
use actix_web::web::{Data, ServiceConfig};
use actix_web::{App, HttpServer};
use anyhow::{Context, Result};

use crate::answer::finish::finish;
use crate::cli::exit::BadInput;
use crate::health::Ready;
use crate::routes;
use crate::serving::node;
use crate::sets::rules::Rules;
use crate::settings::Settings;
use crate::weather::watch;

/// A server that is bound to its address. It answers once it [runs](Self::run).
pub struct Service {
    server: Server,
    address: SocketAddr,
    ready: Ready,
}

impl Service {
    /// Where it listens: the port is the real one, also when port 0 was asked for.
    #[must_use]
    pub fn address(&self) -> SocketAddr {
        self.address
    }

    /// The handle that stops it.
    #[must_use]
    pub fn handle(&self) -> ServerHandle {
        self.server.handle()
    }

    /// The switch behind `/health/ready`.
    #[must_use]
    pub fn ready(&self) -> Ready {
        self.ready.clone()
    }

    /// Answers requests until it is stopped.
    ///
    /// # Errors
    /// When the server itself breaks.
    pub async fn run(self) -> Result<()> {
        tracing::info!(address = %self.address, "listening");
        let ended = self.server.await;
        self.ready.set(false);
        ended.context("the server broke")
    }
}

/// Binds a server. Call it inside a running `actix_web::rt::System`.
///
/// # Errors
/// When the rule set has faults, the store gives nothing to serve, the folder of weather can't be read, or the address is taken or may not be used.
pub fn bind(settings: Settings) -> Result<Service> {
    bind_with(settings, |_| {})
}

/// Binds a server with calls of the embedder's own beside those of [`routes`]. They get everything that every answer
/// gets, but are not part of the published document.
///
/// # Errors
/// When the rule set has faults, the store gives nothing to serve, the folder of weather can't be read, or the address is taken or may not be used.
pub fn bind_with(settings: Settings, more: impl Fn(&mut ServiceConfig) + Clone + Send + 'static) -> Result<Service> {
    let ready = Ready::default();
    let rules = Data::new(Rules::load(&settings.rules)?);
    let node = match settings.store.place()? {
        Some(place) => Some(node::start(place, settings.store.copy_days, rules.clone().into_inner())?),
        None => None,
    };
    for layer in &rules.set().layers {
        tracing::info!(set = layer.name, version = layer.version, sha256 = layer.sha256, "serving");
    }
    if let Some(folder) = &settings.weather.folder {
        let unread = || BadInput(format!("cannot read the folder of weather `{}`", folder.display()));
        watch::start(folder.clone(), &rules.clone().into_inner()).with_context(unread)?;
    }
    let (listen, deadlines) = (settings.listen.clone(), settings.deadlines.clone());
    let shared = Data::new(settings);
    let readiness = Data::new(ready.clone());
    let node = Data::new(node);
    let mut server = HttpServer::new(move || {
        App::new()
            .app_data(shared.clone())
            .app_data(readiness.clone())
            .app_data(rules.clone())
            .app_data(node.clone())
            .wrap(Compress::default())
            .wrap(from_fn(finish))
            .configure(routes::register)
            .configure(more.clone())
            .default_service(routes::unknown_path())
    })
    // Without it every compressed answer waits 44 ms for its tail.
    .tcp_nodelay(true)
    .client_request_timeout(deadlines.head())
    .shutdown_timeout(deadlines.stop_s);
    if listen.workers > 0 {
        server = server.workers(listen.workers);
    }
    let server = server.bind(listen.address).with_context(|| format!("cannot listen on `{}`", listen.address))?;
    let address = server.addrs().first().copied().unwrap_or(listen.address);
    ready.set(true);
    Ok(Service { server: server.run(), address, ready })
}
