//! A release: a rule set as it was published, under a name, a version and the hash of its content.

use std::sync::Arc;

use chrono::{DateTime, Utc};
use lammas_engine::fault::Fault;
use lammas_engine::pack::Pack;
use lammas_engine::read::{PackFile, read};
use lammas_engine::version::hash;

/// Why and when a release was taken back. It still answers whoever pins it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Withdrawn {
    /// When.
    pub at: DateTime<Utc>,
    /// Why, in the words of whoever did it.
    pub because: String,
}

/// A rule set as it was published. Never changed; only taken back.
#[derive(Clone, Debug)]
pub struct Release {
    /// Name of the set: `core`.
    pub set: String,
    /// Calendar version: `2026.11.1`.
    pub version: String,
    /// SHA-256 over the canonical form of its entries, texts and sources included.
    pub sha256: String,
    /// The same without texts, sources and notes: equal hashes, no change of meaning.
    pub meaning: String,
    /// The recorded moment of publishing, if there is one.
    pub published_at: Option<DateTime<Utc>>,
    /// If it was taken back.
    pub withdrawn: Option<Withdrawn>,
    /// The sets that it is laid over, lowest first, as its `pack.yaml` says; none: it stands by itself.
    pub over: Vec<String>,
    /// Its files.
    pub files: Arc<[PackFile]>,
}

impl Release {
    /// The release that a pack's files make, published when its `pack.yaml` says so. It is read, not checked.
    ///
    /// # Errors
    /// Every file that can't be read.
    pub fn of_files(files: Vec<PackFile>) -> Result<Self, Vec<Fault>> {
        let pack = read(&files)?;
        Ok(Self::of(&pack, files))
    }

    /// The release that a pack makes, with the files it was read from.
    #[must_use]
    pub fn of(pack: &Pack, files: Vec<PackFile>) -> Self {
        let header = &pack.header;
        Self {
            set: header.name.value.clone(),
            version: header.version.value.clone(),
            sha256: hash::of_pack(pack),
            meaning: hash::of_meaning(pack),
            published_at: header.published,
            withdrawn: None,
            over: header.over.iter().map(|set| set.value.clone()).collect(),
            files: files.into(),
        }
    }

    /// The same release, published at a moment.
    #[must_use]
    pub fn published(self, at: DateTime<Utc>) -> Self {
        Self { published_at: Some(at), ..self }
    }

    /// `core@2026.11.1`.
    #[must_use]
    pub fn pin(&self) -> String {
        format!("{}@{}", self.set, self.version)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::sets::embedded;

    fn edited(path: &str, from: &str, to: &str) -> Release {
        let mut files = embedded::files();
        let file = files.iter_mut().find(|file| file.path == path).expect("the file");
        assert!(file.text.contains(from), "`{from}` stands in {path}");
        file.text = file.text.replacen(from, to, 1);
        Release::of_files(files).expect("it can be read")
    }

    #[test]
    fn the_core_set_says_when_it_was_published() {
        let core = Release::of_files(embedded::files()).expect("it can be read");
        assert_eq!(core.pin(), format!("core@{}", core.version));
        assert!(core.published_at.is_some() && core.withdrawn.is_none() && core.over.is_empty());
        let set = embedded::set().expect("it loads");
        assert_eq!(core.sha256, set.sha256);
    }

    #[test]
    fn a_moment_of_publishing_is_no_content_and_other_words_are_no_other_meaning() {
        let core = Release::of_files(embedded::files()).expect("it can be read");
        let same = |other: &Release| (other.sha256 == core.sha256, other.meaning == core.meaning);
        assert_eq!(same(&edited("pack.yaml", "published: 20", "published: 21")), (true, true));
        assert_eq!(same(&edited("pack.yaml", "Core rules", "The core rules")), (false, true));
        assert_eq!(same(&edited("words/jobs.yaml", "name: {en: \"", "name: {en: \"The ")), (false, true));
        assert_eq!(same(&edited("rules/rose-cuts.yaml", "urgency: 2", "urgency: 1")), (false, false));
    }
}
