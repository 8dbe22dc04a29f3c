//! All releases, and how one is picked: the newest, a pinned one, the one that held at a moment.

use std::collections::BTreeMap;
use std::sync::Arc;

use chrono::{DateTime, Utc};

use super::release::Release;

/// The releases of every set. A copy costs one count; nothing in it changes.
#[derive(Clone, Debug, Default)]
pub struct Library {
    /// Of each set in the order in which they were published; those of an unknown moment come first.
    sets: Arc<BTreeMap<String, Vec<Arc<Release>>>>,
}

/// Why no release of a set is known to have held at a moment.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NotThen {
    /// There is no such set.
    NoSuchSet,
    /// It was first published then, later than asked.
    BeforeFirst(DateTime<Utc>),
    /// Nobody recorded when it was published.
    NotRecorded,
}

impl Library {
    /// These releases, given in any order. Those of one moment stay in the order given.
    #[must_use]
    pub fn of(releases: impl IntoIterator<Item = Arc<Release>>) -> Self {
        let mut sets: BTreeMap<String, Vec<Arc<Release>>> = BTreeMap::new();
        for release in releases {
            sets.entry(release.set.clone()).or_default().push(release);
        }
        for releases in sets.values_mut() {
            releases.sort_by_key(|release| release.published_at);
        }
        Self { sets: Arc::new(sets) }
    }

    /// The same with one more release.
    #[must_use]
    pub fn with(&self, release: Arc<Release>) -> Self {
        Self::of(self.all().cloned().chain([release]))
    }

    /// Every release, by set and then in the order of publishing.
    pub fn all(&self) -> impl Iterator<Item = &Arc<Release>> {
        self.sets.values().flatten()
    }

    /// The names of the sets, sorted.
    pub fn names(&self) -> impl Iterator<Item = &str> {
        self.sets.keys().map(String::as_str)
    }

    /// The releases of a set in the order of publishing; none of a set that is not there.
    #[must_use]
    pub fn releases(&self, set: &str) -> &[Arc<Release>] {
        self.sets.get(set).map_or(&[], Vec::as_slice)
    }

    /// The release that holds now: the one published last that was not taken back.
    #[must_use]
    pub fn newest(&self, set: &str) -> Option<&Arc<Release>> {
        self.releases(set).iter().rev().find(|release| release.withdrawn.is_none())
    }

    /// The release of this version, also when it was taken back. An undo brings a version out again: the last counts.
    #[must_use]
    pub fn pinned(&self, set: &str, version: &str) -> Option<&Arc<Release>> {
        self.releases(set).iter().rev().find(|release| release.version == version)
    }

    /// The release of this content, also when it was taken back.
    #[must_use]
    pub fn of_hash(&self, sha256: &str) -> Option<&Arc<Release>> {
        self.sets.values().find_map(|releases| releases.iter().rev().find(|release| release.sha256 == sha256))
    }

    /// The release that held at a moment: the one whose recorded moment of publishing is the latest not after it, also when
    /// it was taken back later.
    ///
    /// # Errors
    /// [`NotThen`] when there is none. Whether the moment lies in the future is the caller's to judge: here is no clock.
    pub fn as_of(&self, set: &str, at: DateTime<Utc>) -> Result<&Arc<Release>, NotThen> {
        let releases = self.releases(set);
        let first = releases.first().ok_or(NotThen::NoSuchSet)?;
        let then = releases.iter().rev().find(|release| release.published_at.is_some_and(|published| published <= at));
        match (then, first.published_at) {
            (Some(then), _) => Ok(then),
            (None, None) => Err(NotThen::NotRecorded),
            (None, Some(first)) => Err(NotThen::BeforeFirst(first)),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::super::Withdrawn;
    use super::*;

    fn moment(text: &str) -> DateTime<Utc> {
        text.parse().expect("a moment")
    }

    fn release(set: &str, version: &str, at: Option<&str>) -> Release {
        Release {
            set: set.to_owned(),
            version: version.to_owned(),
            sha256: format!("hash of {set} {version}"),
            meaning: String::new(),
            published_at: at.map(moment),
            withdrawn: None,
            over: Vec::new(),
            files: Arc::from([]),
        }
    }

    fn library(releases: impl IntoIterator<Item = Release>) -> Library {
        Library::of(releases.into_iter().map(Arc::new))
    }

    #[test]
    fn the_newest_is_the_one_published_last_whatever_it_is_called() {
        let shelf = library([
            release("core", "2026.9.2", Some("2026-09-20T08:00:00Z")),
            release("core", "2026.10.1", Some("2026-09-10T08:00:00Z")),
            release("house", "2026.1.1", None),
        ]);
        assert_eq!(shelf.names().collect::<Vec<_>>(), ["core", "house"]);
        assert_eq!(shelf.newest("core").map(|release| release.pin()).as_deref(), Some("core@2026.9.2"));
        assert_eq!(shelf.pinned("core", "2026.10.1").map(|r| r.version.as_str()), Some("2026.10.1"));
        assert!(shelf.pinned("core", "2026.1.1").is_none() && shelf.newest("south").is_none());
        assert_eq!(shelf.of_hash("hash of house 2026.1.1").map(|r| r.set.as_str()), Some("house"));
    }

    #[test]
    fn a_moment_picks_the_release_that_held_then_also_one_taken_back_later() {
        let mut second = release("core", "2026.2.1", Some("2026-02-01T00:00:00Z"));
        second.withdrawn = Some(Withdrawn { at: moment("2026-02-03T00:00:00Z"), because: "too early".to_owned() });
        // The undo: the first version again, under a moment of its own.
        let undo = release("core", "2026.1.1", Some("2026-02-03T00:00:00Z"));
        let shelf = library([undo, second, release("core", "2026.1.1", Some("2026-01-01T00:00:00Z"))]);
        let then = |at: &str| shelf.as_of("core", moment(at)).map(|release| release.version.clone());
        assert_eq!(then("2026-01-01T00:00:00Z").as_deref(), Ok("2026.1.1"), "the moment itself counts");
        assert_eq!(then("2026-02-02T23:59:59Z").as_deref(), Ok("2026.2.1"));
        assert_eq!(then("2026-03-01T00:00:00Z").as_deref(), Ok("2026.1.1"));
        assert_eq!(then("2025-12-31T23:59:59Z"), Err(NotThen::BeforeFirst(moment("2026-01-01T00:00:00Z"))));
        assert_eq!(shelf.newest("core").map(|r| r.version.as_str()), Some("2026.1.1"));
        assert!(shelf.pinned("core", "2026.2.1").is_some_and(|r| r.withdrawn.is_some()), "it still answers");
    }

    #[test]
    fn what_nobody_recorded_is_said_and_not_guessed() {
        let shelf = library([release("house", "2026.1.1", None)]);
        let at = moment("2026-06-01T00:00:00Z");
        assert_eq!(shelf.as_of("house", at).map(|r| r.pin()), Err(NotThen::NotRecorded));
        assert_eq!(shelf.as_of("south", at).map(|r| r.pin()), Err(NotThen::NoSuchSet));
        let later = shelf.with(Arc::new(release("house", "2026.2.1", Some("2026-02-01T00:00:00Z"))));
        assert_eq!(later.as_of("house", at).map(|r| r.pin()).as_deref(), Ok("house@2026.2.1"));
        assert_eq!((shelf.all().count(), later.all().count()), (1, 2), "the first one is as it was");
    }
}
