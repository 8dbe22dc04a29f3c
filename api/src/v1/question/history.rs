//! What was done.

use serde::Deserialize;
use utoipa::ToSchema;

use super::date::Date;
use crate::problem::faults::Faults;

/// A work that was done.
#[derive(Clone, Debug, PartialEq, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct HistoryWork {
    /// The job, by its id. A work names its job, its rule or its material.
    #[schema(max_length = 100, example = "feed")]
    pub job: Option<String>,
    /// The rule that asked for it.
    #[schema(max_length = 100, example = "rose.feed-after-cut")]
    pub rule: Option<String>,
    /// The material that was used.
    #[schema(max_length = 100, example = "fish-emulsion")]
    pub material: Option<String>,
    /// The day.
    pub date: Date,
    /// Days to wait before harvest, from the label of what was used.
    #[schema(minimum = 0, maximum = 365)]
    pub label_days_to_harvest: Option<u16>,
}

impl HistoryWork {
    pub(crate) fn check(&self, at: &str, faults: &mut Faults) {
        if self.job.is_none() && self.rule.is_none() && self.material.is_none() {
            faults.add(at, "expected `job`, `rule` or `material`, found none of them");
        }
        for (name, id) in [("job", &self.job), ("rule", &self.rule), ("material", &self.material)] {
            if let Some(id) = id {
                faults.id(at, name, id);
            }
        }
        let days = self.label_days_to_harvest.map(f64::from);
        faults.in_range(at, "label_days_to_harvest", days, (0.0, 365.0), "days");
    }
}
