//! A real server on a free port of this machine.

use std::io::{Read, Write};
use std::net::{SocketAddr, TcpStream};
use std::sync::mpsc;
use std::thread::JoinHandle;
use std::time::Duration;

use actix_web::dev::ServerHandle;
use actix_web::rt::System;
use actix_web::web::ServiceConfig;
use lammas::health::Ready;
use lammas::settings::Settings;
use lammas::startup;
use serde_json::Value;
use ureq::http::Request;

use crate::answer::Answer;

/// A running server; it stops when it is dropped.
pub struct Server {
    address: SocketAddr,
    /// The switch behind `/health/ready`.
    pub ready: Ready,
    handle: ServerHandle,
    thread: Option<JoinHandle<()>>,
    agent: ureq::Agent,
}

/// Settings for a test: a free port, one worker, small limits that are quick to reach.
#[must_use]
pub fn small() -> Settings {
    let mut settings = Settings::default();
    settings.listen.address.set_port(0);
    settings.listen.workers = 1;
    settings.limits.body_bytes = 64 * 1024;
    settings.deadlines.stop_s = 1;
    settings
}

impl Server {
    /// A server as it is published.
    #[must_use]
    pub fn start() -> Self {
        Self::with(small(), |_| {})
    }

    /// A server with other settings, and with calls of the test's own beside the published ones.
    ///
    /// # Panics
    /// When it does not start.
    #[must_use]
    pub fn with(settings: Settings, more: impl Fn(&mut ServiceConfig) + Clone + Send + 'static) -> Self {
        let (tell, told) = mpsc::channel();
        let thread = std::thread::spawn(move || {
            System::new().block_on(async move {
                let service = startup::bind_with(settings, more).expect("a free port");
                tell.send((service.address(), service.ready(), service.handle())).expect("the test waits");
                service.run().await.expect("ends in peace");
            });
        });
        let (address, ready, handle) = told.recv().expect("the server starts");
        let config = ureq::Agent::config_builder()
            .http_status_as_error(false)
            .max_redirects(0)
            .allow_non_standard_methods(true)
            .timeout_global(Some(Duration::from_secs(20)))
            .build();
        Self { address, ready, handle, thread: Some(thread), agent: config.into() }
    }

    /// Where it listens.
    #[must_use]
    pub fn address(&self) -> SocketAddr {
        self.address
    }

    /// Sends a request; `headers` may hold any.
    ///
    /// # Panics
    /// When nothing comes back.
    #[must_use]
    pub fn send(&self, method: &str, path: &str, headers: &[(&str, &str)], body: &[u8]) -> Answer {
        let mut request = Request::builder().method(method).uri(format!("http://{}{path}", self.address));
        for (name, value) in headers {
            request = request.header(*name, *value);
        }
        let answer = if body.is_empty() {
            self.agent.run(request.body(()).expect("a request"))
        } else {
            self.agent.run(request.body(body).expect("a request"))
        };
        Answer::read(answer.unwrap_or_else(|error| panic!("{method} {path}: {error}")))
    }

    /// Gets a path.
    #[must_use]
    pub fn get(&self, path: &str) -> Answer {
        self.send("GET", path, &[], b"")
    }

    /// Posts JSON.
    #[must_use]
    pub fn post(&self, path: &str, body: &Value) -> Answer {
        self.post_text(path, &body.to_string())
    }

    /// Posts a text that says it is JSON.
    #[must_use]
    pub fn post_text(&self, path: &str, body: &str) -> Answer {
        self.send("POST", path, &[("content-type", "application/json")], body.as_bytes())
    }

    /// Writes bytes to a connection, as they are, and reads until the server closes it.
    ///
    /// # Panics
    /// When the connection breaks.
    #[must_use]
    pub fn raw(&self, bytes: &str) -> String {
        let mut connection = TcpStream::connect(self.address).expect("it listens");
        connection.set_read_timeout(Some(Duration::from_secs(20))).expect("a time limit");
        connection.write_all(bytes.as_bytes()).expect("written");
        let mut answer = String::new();
        connection.read_to_string(&mut answer).expect("text, then the end");
        answer
    }
}

impl Drop for Server {
    fn drop(&mut self) {
        // The handle only sends a word to the server; the thread ends when it has obeyed.
        drop(self.handle.stop(false));
        if let Some(thread) = self.thread.take()
            && thread.join().is_err()
            && !std::thread::panicking()
        {
            panic!("the server's thread broke");
        }
    }
}
