//! A folder of weather, looked at again and again.
//!
//! A folder is polled: that works on every file system, shared ones too, where notices of changes don't. A bad file is
//! logged once, and what was read from it before stays; of a file that is gone nothing stays.

use std::collections::BTreeMap;
use std::fs::{self, Metadata};
use std::io;
use std::path::{Path, PathBuf};
use std::sync::{Arc, Weak};
use std::time::{Duration, SystemTime};

use lammas_engine::compile::set::Set;

use super::board::Board;
use super::folder;
use super::kept::Weather;
use crate::sets::rules::Rules;

/// How often the folder is looked at.
const EVERY: Duration = Duration::from_secs(1);
/// A file that was changed so shortly before it was read may have changed again without showing it.
const SETTLED: Duration = Duration::from_secs(2);
/// No folder has more files of weather; the rest, by name, is not read.
const MOST_FILES: usize = 1_000;

/// A folder and what was read from it.
#[derive(Debug)]
pub struct Watch {
    folder: PathBuf,
    set: Arc<Set>,
    files: BTreeMap<String, Seen>,
    /// What is wrong with the folder itself, as it was logged.
    trouble: Option<String>,
}

/// A file as it was seen last.
#[derive(Debug)]
struct Seen {
    stamp: Stamp,
    settled: bool,
    weather: Option<Arc<Weather>>,
    fault: Option<String>,
}

/// What changes when a file does.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
struct Stamp {
    bytes: u64,
    changed: Option<SystemTime>,
    number: u64,
}

impl Stamp {
    fn of(file: &Metadata) -> Self {
        #[cfg(unix)]
        let number = std::os::unix::fs::MetadataExt::ino(file);
        #[cfg(not(unix))]
        let number = 0;
        Self { bytes: file.len(), changed: file.modified().ok(), number }
    }

    fn is_settled(&self, now: SystemTime) -> bool {
        self.changed.and_then(|changed| now.duration_since(changed).ok()).is_some_and(|age| age > SETTLED)
    }
}

impl Watch {
    /// A watch of a folder, which has not looked yet.
    #[must_use]
    pub fn new(folder: PathBuf, set: Arc<Set>) -> Self {
        Self { folder, set, files: BTreeMap::new(), trouble: None }
    }

    /// Looks at the folder. A board, if what is kept is another than before.
    ///
    /// # Errors
    /// The folder can't be read; what is kept stays.
    pub fn look(&mut self) -> io::Result<Option<Board>> {
        let mut paths = BTreeMap::new();
        for entry in fs::read_dir(&self.folder)? {
            let path = entry?.path();
            let name = path.file_name().map(|name| name.to_string_lossy().into_owned()).unwrap_or_default();
            if folder::is_weather(&name) {
                paths.insert(name, path);
            }
        }
        self.count(paths.len());
        let mut is_new = false;
        self.files.retain(|name, seen| {
            let stays = paths.contains_key(name);
            if !stays && seen.weather.is_some() {
                tracing::info!(file = name, "weather is gone");
                is_new = true;
            }
            stays
        });
        for (name, path) in paths.into_iter().take(MOST_FILES) {
            is_new |= self.file(name, &path);
        }
        Ok(is_new.then(|| Board::of(self.files.values().filter_map(|seen| seen.weather.clone()))))
    }

    /// Looks at a file; whether what is kept of it is another than before.
    fn file(&mut self, name: String, path: &Path) -> bool {
        let Ok(found) = fs::metadata(path) else { return false };
        let (stamp, now) = (Stamp::of(&found), SystemTime::now());
        let known = self.files.get(&name);
        if known.is_some_and(|seen| seen.settled && seen.stamp == stamp) {
            return false;
        }
        let (read, settled) = (folder::shared(path, &self.set), stamp.is_settled(now));
        let before = known.and_then(|seen| seen.weather.clone());
        let (weather, fault) = match read {
            Ok(weather) => (Some(weather), None),
            Err(error) => {
                let fault = error.to_string();
                if known.is_none_or(|seen| seen.fault.as_ref() != Some(&fault)) {
                    let kept = before.as_ref().map(|weather| weather.sha256.as_str());
                    tracing::warn!(file = name, fault, kept, "weather that can't be used");
                }
                (before.clone(), Some(fault))
            }
        };
        let is_new = weather != before;
        if let Some(weather) = weather.as_ref().filter(|_| is_new) {
            let (climate, sha256) = (weather.climate.as_str(), weather.sha256.as_str());
            tracing::info!(file = name, climate, sha256, issued = %weather.issued, "weather");
        }
        self.files.insert(name, Seen { stamp, settled, weather, fault });
        is_new
    }

    /// Logs once when files are left out.
    fn count(&mut self, files: usize) {
        let trouble = (files > MOST_FILES).then(|| format!("expected at most {MOST_FILES} files, found {files}"));
        self.log(trouble);
    }

    fn log(&mut self, trouble: Option<String>) {
        if let Some(text) = trouble.as_ref().filter(|_| self.trouble != trouble) {
            tracing::warn!(folder = %self.folder.display(), fault = text, "the folder of weather");
        }
        self.trouble = trouble;
    }

    /// Looks once and hands on what is kept, if it is another than before.
    fn hand_on(&mut self, rules: &Rules) {
        match self.look() {
            Ok(Some(board)) => rules.take_weather(board),
            Ok(None) => {}
            Err(error) => self.log(Some(error.to_string())),
        }
    }
}

/// Reads a folder, and then watches it on a thread of its own as long as the rules are used.
///
/// # Errors
/// The folder can't be read, or no thread can be had.
pub fn start(folder: PathBuf, rules: &Arc<Rules>) -> io::Result<()> {
    fs::read_dir(&folder)?;
    let mut watch = Watch::new(folder, rules.set());
    watch.hand_on(rules);
    let rules: Weak<Rules> = Arc::downgrade(rules);
    let again = move || {
        loop {
            std::thread::sleep(EVERY);
            let Some(rules) = rules.upgrade() else { return };
            watch.hand_on(&rules);
        }
    };
    std::thread::Builder::new().name("weather".to_owned()).spawn(again).map(drop)
}

#[cfg(test)]
mod tests;
