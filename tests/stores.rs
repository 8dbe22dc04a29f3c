//! Stores to test with: a file in a folder of its own, a database of its own on a real PostgreSQL.

use std::io::{BufRead, BufReader};
use std::path::{Path, PathBuf};
use std::process::{Child, Command, Stdio};
use std::sync::atomic::{AtomicU32, Ordering};
use std::sync::{Mutex, OnceLock, PoisonError};
use std::{env, fs, process};

use actix_web::rt::System;
use lammas::store::place::StorePlace;
use lammas::store::postgres::PostgresStore;

/// A folder that is gone when this is dropped.
#[derive(Debug)]
pub struct Folder(PathBuf);

impl Folder {
    /// A new one.
    ///
    /// # Panics
    /// When it can't be made.
    #[must_use]
    pub fn new() -> Self {
        static COUNT: AtomicU32 = AtomicU32::new(0);
        let name = format!("lammas-{}-{}", process::id(), COUNT.fetch_add(1, Ordering::Relaxed));
        let path = env::temp_dir().join(name);
        fs::create_dir_all(&path).expect("a folder");
        Self(path)
    }

    /// Where it is.
    #[must_use]
    pub fn path(&self) -> &Path {
        &self.0
    }
}

impl Default for Folder {
    fn default() -> Self {
        Self::new()
    }
}

impl Drop for Folder {
    fn drop(&mut self) {
        let _ = fs::remove_dir_all(&self.0);
    }
}

/// A server that was started for this process; it ends with its input, that is with the process.
static STARTED: Mutex<Option<Child>> = Mutex::new(None);

/// The address of a PostgreSQL: `DATABASE_URL`, or one that is started for this process.
fn server() -> &'static str {
    static ADDRESS: OnceLock<String> = OnceLock::new();
    ADDRESS.get_or_init(|| {
        if let Ok(address) = env::var("DATABASE_URL") {
            return address;
        }
        let mut child = Command::new(Path::new(env!("CARGO_MANIFEST_DIR")).join("with-postgres"))
            .args(["sh", "-c", "echo \"$DATABASE_URL\"; cat >/dev/null"])
            .stdin(Stdio::piped())
            .stdout(Stdio::piped())
            .spawn()
            .expect("bash runs");
        let mut address = String::new();
        let out = child.stdout.take().expect("its output");
        BufReader::new(out).read_line(&mut address).expect("its address");
        assert!(address.starts_with("postgres://"), "no PostgreSQL to test with, see above");
        *STARTED.lock().unwrap_or_else(PoisonError::into_inner) = Some(child);
        address.trim().to_owned()
    })
}

/// An empty database on a real PostgreSQL.
///
/// # Panics
/// When there is no server.
#[must_use]
pub fn postgres_address() -> String {
    static COUNT: AtomicU32 = AtomicU32::new(0);
    let name = format!("t{}_{}", process::id(), COUNT.fetch_add(1, Ordering::Relaxed));
    let server = server();
    let (front, rest) = server.split_once("/app?").expect("the database `app`");
    // What makes databases is not a statement of the store: psql does it, as an operator would.
    let made = Command::new("psql")
        .args([server, "-qc", &format!("create database {name}")])
        .output()
        .expect("psql is there with the server");
    assert!(made.status.success(), "{}", String::from_utf8_lossy(&made.stderr));
    format!("{front}/{name}?{rest}")
}

/// Both kinds of store, each empty, with the folder that holds its files.
///
/// # Panics
/// When there is no PostgreSQL to test with: that must be seen.
#[must_use]
pub fn both() -> [(StorePlace, Folder); 2] {
    let place = |address: Option<String>, folder: &Folder| match address {
        Some(address) => StorePlace::parse(&address, Some(folder.path())).expect("a place"),
        None => StorePlace::parse(&folder.path().display().to_string(), None).expect("a place"),
    };
    let (one, two) = (Folder::new(), Folder::new());
    [(place(None, &one), one), (place(Some(postgres_address()), &two), two)]
}

/// Runs work that waits.
pub fn wait<T>(work: impl Future<Output = T>) -> T {
    System::new().block_on(work)
}

/// A PostgreSQL store, to look behind the trait.
///
/// # Panics
/// When it can't be reached.
pub async fn postgres_at(address: &str) -> PostgresStore {
    PostgresStore::open(address).await.expect("a server")
}
