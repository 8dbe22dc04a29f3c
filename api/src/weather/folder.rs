//! Weather into a folder, all or nothing: who reads the folder never sees half a file.

use std::fs::{self, File};
use std::io::{self, Read as _, Write as _};
use std::path::{Path, PathBuf};
use std::sync::Arc;

use chrono::{DateTime, Duration, Utc};
use lammas_engine::compile::set::Set;

use super::kept::Weather;
use super::sent::{self, MOST_BYTES};
use crate::problem::Problem;

/// Clocks differ: an issue so far ahead of ours is taken as now.
const AHEAD: Duration = Duration::hours(1);

/// What came of putting weather into a folder.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Put {
    /// It lies there now, in this file; so many older ones of the climate were taken away.
    New(PathBuf, usize),
    /// The very same lies there already.
    Same(PathBuf),
    /// Not put: this file has a newer issue.
    Older(PathBuf, DateTime<Utc>),
    /// Not put: it was issued in the future.
    FromTheFuture,
}

/// Why a file could not be read.
#[derive(Debug)]
pub enum Unread {
    /// The file itself.
    File(io::Error),
    /// What stands in it.
    Content(Problem),
}

/// The weather in a file.
///
/// # Errors
/// It is no file, can't be read, or has bad fields.
pub fn read(path: &Path, set: &Set) -> Result<Weather, Unread> {
    // Whatever else lies there, a pipe for instance, would be waited for.
    if !fs::metadata(path).map_err(Unread::File)?.is_file() {
        return Err(Unread::File(io::Error::other("it is not a file")));
    }
    let file = File::open(path).map_err(Unread::File)?;
    let mut text = Vec::new();
    file.take(MOST_BYTES as u64 + 1).read_to_end(&mut text).map_err(Unread::File)?;
    sent::read(&text, set).map_err(Unread::Content)
}

/// The name of its file: climate and content.
#[must_use]
pub fn name(weather: &Weather) -> String {
    format!("{}.{}.json", weather.climate, weather.sha256)
}

/// Whether a file of this name is one of weather: `*.json`, and not hidden.
#[must_use]
pub fn is_weather(name: &str) -> bool {
    name.ends_with(".json") && !name.starts_with('.')
}

/// Whether a file of this name was put there by [`put`] for this climate.
fn is_own(name: &str, climate: &str) -> bool {
    let hash = name.strip_prefix(climate).and_then(|rest| rest.strip_prefix('.')?.strip_suffix(".json"));
    hash.is_some_and(|hash| hash.len() == 64 && hash.bytes().all(|byte| byte.is_ascii_hexdigit()))
}

/// Puts weather into a folder: into a hidden file that is written through to the disk and then renamed. The folder then
/// holds one file of [`put`] for the climate: those of an older issue are taken away. Where a newer issue lies there
/// nothing is done, nor with an issue that lies more than an hour ahead of `now`.
///
/// # Errors
/// The folder can't be read or written.
pub fn put(weather: &Weather, folder: &Path, set: &Set, now: DateTime<Utc>) -> io::Result<Put> {
    if weather.issued > now + AHEAD {
        return Ok(Put::FromTheFuture);
    }
    let name = name(weather);
    let mut old = Vec::new();
    for entry in fs::read_dir(folder)? {
        let entry = entry?;
        let file = entry.file_name().to_string_lossy().into_owned();
        // A bad file tells no issue: it is in nobody's way.
        let there = if is_weather(&file) { read(&entry.path(), set).ok() } else { None };
        let Some(there) = there.filter(|there| there.climate == weather.climate) else { continue };
        if there.issued > weather.issued && there.issued <= now + AHEAD {
            return Ok(Put::Older(entry.path(), there.issued));
        }
        if there.sha256 == weather.sha256 && file == name {
            return Ok(Put::Same(entry.path()));
        }
        if is_own(&file, &weather.climate) {
            old.push(entry.path());
        }
    }
    let path = folder.join(&name);
    let hidden = folder.join(format!(".{name}.{}", std::process::id()));
    let written = write(&hidden, weather.text.as_bytes()).and_then(|()| fs::rename(&hidden, &path));
    if let Err(error) = written {
        // What is left of it is of no use; the error that matters is the first.
        let _ = fs::remove_file(&hidden);
        return Err(error);
    }
    // The name itself is written through too, before the older ones go.
    File::open(folder)?.sync_all()?;
    let mut gone = 0;
    for path in old {
        match fs::remove_file(path) {
            Ok(()) => gone += 1,
            Err(error) if error.kind() == io::ErrorKind::NotFound => {}
            Err(error) => return Err(error),
        }
    }
    Ok(Put::New(path, gone))
}

fn write(path: &Path, bytes: &[u8]) -> io::Result<()> {
    let mut file = File::options().write(true).create_new(true).open(path)?;
    file.write_all(bytes)?;
    file.sync_all()
}

/// The same as it is shared.
pub(super) fn shared(path: &Path, set: &Set) -> Result<Arc<Weather>, Unread> {
    read(path, set).map(Arc::new)
}

impl std::fmt::Display for Unread {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self {
            Self::File(error) => write!(f, "{error}"),
            Self::Content(problem) if problem.errors().is_empty() => write!(f, "{problem}"),
            Self::Content(problem) => {
                let each = problem.errors().iter().map(|error| {
                    let at = if error.pointer.is_empty() { "the whole" } else { &error.pointer };
                    format!("{at}: {}", error.detail)
                });
                f.write_str(&each.collect::<Vec<_>>().join("; "))
            }
        }
    }
}

#[cfg(test)]
pub(super) mod tests;
