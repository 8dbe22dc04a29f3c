//! What the editors' calls are sent and answer.

use lammas_engine::read::PackFile;
use serde::{Deserialize, Serialize};
use utoipa::{IntoParams, ToSchema};

use crate::store::tables::drafts::Draft;
use crate::store::tables::releases::Release;

/// A file of a rule set.
#[derive(Debug, Deserialize, Serialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct DraftFile {
    /// Path inside the set.
    #[schema(example = "rules/rose.yaml")]
    pub path: String,
    /// Its text.
    pub text: String,
}

/// The files of a draft.
#[derive(Debug, Deserialize, Serialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct DraftFiles {
    /// What the draft is for.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    pub note: Option<String>,
    /// All files of the set, `pack.yaml` among them.
    pub files: Vec<DraftFile>,
}

impl DraftFiles {
    /// As the engine reads them.
    #[must_use]
    pub fn pack_files(self) -> Vec<PackFile> {
        self.files.into_iter().map(|file| PackFile { path: file.path, text: file.text }).collect()
    }
}

/// A draft.
#[derive(Debug, Serialize, ToSchema)]
pub struct DraftState {
    /// Its name.
    #[schema(example = "draft-0123456789abcdef0123")]
    pub id: String,
    /// The set it is of.
    #[schema(example = "core")]
    pub rule_set: String,
    /// Its revision, as in the `etag`.
    #[schema(example = 1)]
    pub revision: i64,
    /// `open`, `published` or `discarded`.
    #[schema(example = "open")]
    pub state: String,
    /// What it is for.
    pub note: String,
    /// The hash of its files.
    pub document: String,
    /// Who changed it last.
    pub changed_by: String,
    /// Its files, where one draft was asked for.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    pub files: Option<Vec<DraftFile>>,
}

impl From<Draft> for DraftState {
    fn from(draft: Draft) -> Self {
        Self {
            id: draft.id,
            rule_set: draft.rule_set,
            revision: draft.revision,
            state: draft.state,
            note: draft.note,
            document: draft.document,
            changed_by: draft.changed_by,
            files: None,
        }
    }
}

/// What the check of a draft came to.
#[derive(Debug, Serialize, ToSchema)]
pub struct DraftChecked {
    /// Whether it may be published as it is.
    pub publishable: bool,
    /// Faults and findings, each with its place, and scenarios that come out otherwise; for people.
    #[schema(example = json!([]))]
    pub against: Vec<String>,
}

/// When to publish.
#[derive(Debug, Deserialize, Serialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct PublishWhen {
    /// A wall time; left out: now.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false, example = "2027-03-01 06:00")]
    pub at: Option<String>,
    /// The zone of that wall, of the IANA database.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false, example = "Europe/Madrid")]
    pub zone: Option<String>,
}

/// Nothing to say beyond the call itself.
#[derive(Debug, Deserialize, Serialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct NothingMore {}

/// What is to be held back at once.
#[derive(Debug, Deserialize, Serialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct HoldBackRequest {
    /// `rule`, `material` or `source`.
    #[schema(value_type = String, example = "material")]
    pub kind: crate::publishing::held::HeldKind,
    /// Its id.
    #[schema(example = "horticultural-oil")]
    pub id: String,
    /// Why, by language, as readers see it.
    #[schema(value_type = Object, example = json!({"en": "Burnt buds were seen.", "es": "Se vieron yemas quemadas."}))]
    pub because: crate::publishing::held::Words,
    /// A caution to add instead of holding back, by language.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(value_type = Object, nullable = false)]
    pub caution: Option<crate::publishing::held::Words>,
}

/// A release, or a publishing that waits for its time.
#[derive(Debug, Serialize, ToSchema)]
pub struct ReleaseState {
    /// Its number in the store; left out while it waits.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false, example = 12)]
    pub release: Option<i64>,
    /// The set.
    #[schema(example = "core")]
    pub rule_set: String,
    /// The version; left out while it waits.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false, example = "2026.11.1")]
    pub version: Option<String>,
    /// SHA-256 of the set; left out while it waits.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    pub sha256: Option<String>,
    /// `publish`, `schedule`, `undo`, `hold-back`, `lift`.
    #[schema(example = "publish")]
    pub how: String,
    /// Who did it.
    pub by: String,
    /// The moment of publishing, or the one that it waits for, in milliseconds since 1970.
    #[schema(example = 1_795_000_000_000_i64)]
    pub at_ms: i64,
    /// What there is to say of an hour that a clock shows twice or never.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(nullable = false)]
    pub remark: Option<String>,
}

impl From<&Release> for ReleaseState {
    fn from(release: &Release) -> Self {
        Self {
            release: Some(release.number),
            rule_set: release.rule_set.clone(),
            version: Some(release.version.clone()),
            sha256: Some(release.set_sha256.clone()),
            how: release.how.clone(),
            by: release.published_by.clone(),
            at_ms: release.published_ms,
            remark: None,
        }
    }
}

/// The last releases.
#[derive(Debug, Serialize, ToSchema)]
pub struct ReleaseList {
    /// The newest first, at most 100.
    pub items: Vec<ReleaseState>,
}

/// Which draft.
#[derive(Debug, Deserialize, IntoParams)]
#[into_params(parameter_in = Path)]
pub struct DraftName {
    /// Its name, as it was answered when it came in.
    #[param(example = "draft-0123456789abcdef0123")]
    pub id: String,
}

/// Which set.
#[derive(Debug, Deserialize, IntoParams)]
#[into_params(parameter_in = Path)]
pub struct SetName {
    /// Its name.
    #[param(example = "core")]
    pub name: String,
}
