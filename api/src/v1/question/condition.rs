//! What is seen: signs, vigour, and the caller's own words.

use lammas_engine::words::MOST_LETTERS;
use serde::Deserialize;
use utoipa::ToSchema;

use super::choices::{SignSeverity, Vigour};
use super::date::Date;
use crate::problem::faults::Faults;
use crate::problem::pointer::{below, entry};

/// The state the plant is in.
#[derive(Clone, Debug, Default, PartialEq, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct ConditionGiven {
    /// The signs that are seen. With this list, a plain sign that is not in it is taken as not there; without it,
    /// nothing is known about any.
    #[schema(max_items = 100)]
    pub signs: Option<Vec<ConditionSign>>,
    /// Signs that were looked for and are not there, by their ids.
    #[serde(default)]
    #[schema(max_items = 200)]
    pub not_seen: Vec<String>,
    /// Whether undersides, roots and the insides of buds were looked at.
    #[serde(default)]
    pub looked_closely: bool,
    /// What is seen in the caller's own words, English or Spanish. They are matched to signs without guessing; only what
    /// is understood counts, as seen. They never say that a sign is not there, and they are not kept.
    #[schema(max_length = 500, example = "buds stay shut and brown")]
    pub words: Option<String>,
    /// How strongly the plant grows.
    pub vigour: Option<Vigour>,
    /// Problems that the caller already knows of, by their ids.
    #[serde(default)]
    #[schema(max_items = 50)]
    pub problems: Vec<String>,
}

/// A sign that is seen. Things that happened, such as a frost or a storm, are signs as well.
#[derive(Clone, Debug, Default, PartialEq, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct ConditionSign {
    /// Which sign, by its id.
    #[schema(max_length = 100, example = "spent-blooms")]
    pub sign: String,
    /// How bad it is.
    pub severity: Option<SignSeverity>,
    /// Share of the shoots, leaves or fruit that have it, %.
    #[schema(minimum = 0, maximum = 100)]
    pub share_pct: Option<f64>,
    /// When it was first seen, or when it happened.
    pub since: Option<Date>,
}

impl ConditionGiven {
    pub(crate) fn check(&self, at: &str, faults: &mut Faults) {
        let signs = self.signs.as_deref().unwrap_or_default();
        faults.at_most(at, "signs", signs.len(), 100);
        for (place, sign) in signs.iter().enumerate() {
            let at = entry(&below(at, "signs"), place);
            faults.id(&at, "sign", &sign.sign);
            faults.in_range(&at, "share_pct", sign.share_pct, (0.0, 100.0), "%");
        }
        faults.ids(at, "not_seen", &self.not_seen, 200);
        faults.text_at_most(at, "words", self.words.as_deref().unwrap_or_default(), MOST_LETTERS);
        faults.ids(at, "problems", &self.problems, 50);
    }
}
