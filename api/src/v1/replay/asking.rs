//! What an answer is to be given again from, put down while it is given.

use chrono::{DateTime, Utc};
use lammas_engine::question::Question;
use lammas_engine::question::said::Said;
use lammas_engine::version::digest::{self, DECISION_VERSION};

use super::decided::Decided;
use super::recalled::{Recalled, RecalledSet, RecalledWeather, bare};
use crate::problem::Problem;
use crate::sets::pick::Picked;
use crate::sets::rules::Rules;
use crate::v1::advice::request::AdviceRequest;

/// A request whose answer carries its recall text.
#[derive(Clone, Debug)]
pub(crate) struct Asking {
    /// The request, its language decided.
    pub(crate) request: AdviceRequest,
    /// The moment of asking, as far as the answer hangs on it.
    pub(crate) at: Option<DateTime<Utc>>,
}

impl Asking {
    /// The recall text of an answer; none where it would be too long. `text` is the answer without it.
    ///
    /// # Errors
    /// When it can't be written: the service broke.
    pub(crate) fn recall(
        self,
        question: &Question,
        text: &str,
        plain_sha256: &str,
        picked: &Picked,
        rules: &Rules,
    ) -> Result<Option<String>, Problem> {
        let Self { request, at } = self;
        // The sets are named by their hashes.
        let said = Said { rule_sets: Vec::new(), as_of: None, ..Said::from(request) };
        let kept = question.climate.weather.as_ref();
        let weather = kept.and_then(|kept| rules.weather().of_hash(&kept.sha256).cloned());
        let set = |layer: &lammas_engine::pack::layer::Layer| RecalledSet {
            name: layer.name.clone(),
            version: layer.version.clone(),
            sha256: layer.sha256.clone(),
        };
        let recalled = Recalled {
            form: Recalled::FORM,
            request: bare(serde_json::to_value(said).map_err(Problem::broken)?),
            at,
            weather: weather.map(|weather| RecalledWeather { text: weather.text.clone() }),
            rule_sets: picked.set.layers.iter().map(set).collect(),
            digest: digest::of_question(question, &picked.set),
            text_sha256: plain_sha256.to_owned(),
            decision_version: DECISION_VERSION,
            decided: Decided::of(&serde_json::from_str(text).map_err(Problem::broken)?),
        };
        recalled.text().map_err(Problem::broken)
    }
}
