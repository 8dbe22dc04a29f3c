//! The question for advice.

use lammas_engine::question::said::Said;
use serde::Deserialize;
use utoipa::ToSchema;

use crate::problem::Problem;
use crate::problem::faults::Faults;
use crate::problem::kinds::INVALID_REQUEST;
use crate::problem::pointer::entry;
use crate::v1::question::choices::{Detail, Language, UnitSystem};
use crate::v1::question::climate::ClimateGiven;
use crate::v1::question::condition::ConditionGiven;
use crate::v1::question::date::{AsOf, Date};
use crate::v1::question::history::HistoryWork;
use crate::v1::question::plant::PlantGiven;
use crate::v1::question::said::each;
use crate::v1::question::site::SiteGiven;
use crate::v1::question::water::{WaterGiven, WeatherGiven};

/// A climate, a date, a plant and the state it is in.
#[derive(Clone, Debug, Default, PartialEq, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct AdviceRequest {
    /// Where.
    pub climate: ClimateGiven,
    /// When; today at the place when left out.
    pub date: Option<Date>,
    /// What. Only an emergency, told in `condition`, is answered without it.
    #[serde(default)]
    pub plant: PlantGiven,
    /// On what ground.
    pub site: Option<SiteGiven>,
    /// With what water.
    pub water: Option<WaterGiven>,
    /// Weather that only someone at the place can tell.
    pub weather: Option<WeatherGiven>,
    /// Works of choice, which nobody is told of unasked, by their ids: `transplant`, `divide`, `propagate`, `plant`,
    /// `store`.
    #[serde(default)]
    #[schema(max_items = 20, example = json!(["transplant"]))]
    pub wishes: Vec<String>,
    /// The state the plant is in.
    pub condition: Option<ConditionGiven>,
    /// Works done. An empty list says that nothing was done; without the list nothing is known.
    #[schema(max_items = 1000)]
    pub history: Option<Vec<HistoryWork>>,
    /// The rule sets in layers, lowest first, each perhaps pinned as `name@version`; the operator's when left out.
    #[serde(default)]
    #[schema(max_items = 10, example = json!(["core"]))]
    pub rule_sets: Vec<String>,
    /// The language of the answer; else the header `accept-language` decides.
    pub language: Option<Language>,
    /// In which units amounts are said; both when left out.
    pub units: Option<UnitSystem>,
    /// How much is said about each task; standard when left out.
    pub detail: Option<Detail>,
    /// Whether the answer carries a text from which it can be reproduced.
    #[serde(default)]
    pub recall: bool,
    /// At most so many tasks. What is for safety stays.
    #[schema(minimum = 1, maximum = 200)]
    pub limit: Option<u16>,
    /// Answer with the rule sets as they were then; not together with a pinned version.
    pub as_of: Option<AsOf>,
}

impl AdviceRequest {
    /// Judges what can be judged without a rule set or a season: forms, ranges, lengths.
    ///
    /// # Errors
    /// The problem `invalid-request`, with every wrong place.
    pub fn check(&self) -> Result<(), Problem> {
        self.faults().or_problem(INVALID_REQUEST)
    }

    /// The same, to be gone on with.
    pub(crate) fn faults(&self) -> Faults {
        let mut faults = Faults::default();
        self.climate.check("/climate", &mut faults);
        self.check_rest(&mut faults);
        faults
    }

    /// The same of a question that names no climate.
    pub(crate) fn faults_without_climate(&self) -> Faults {
        let mut faults = Faults::default();
        self.check_rest(&mut faults);
        faults
    }

    fn check_rest(&self, faults: &mut Faults) {
        self.plant.check("/plant", faults);
        if let Some(site) = &self.site {
            site.check("/site", faults);
        }
        if let Some(water) = &self.water {
            water.check("/water", faults);
        }
        if let Some(weather) = &self.weather {
            weather.check("/weather", faults);
        }
        faults.ids("", "wishes", &self.wishes, 20);
        if let Some(condition) = &self.condition {
            condition.check("/condition", faults);
        }
        let history = self.history.as_deref().unwrap_or_default();
        faults.at_most("", "history", history.len(), 1000);
        for (place, work) in history.iter().enumerate() {
            work.check(&entry("/history", place), faults);
        }
        faults.ids("", "rule_sets", &self.rule_sets, 10);
        faults.in_range("", "limit", self.limit.map(f64::from), (1.0, 200.0), "");
        if self.as_of.is_some() && self.rule_sets.iter().any(|set| set.contains('@')) {
            faults.add("/as_of", "expected a date or pinned versions in `rule_sets`, found both");
        }
    }
}

impl From<AdviceRequest> for Said {
    fn from(request: AdviceRequest) -> Self {
        let AdviceRequest {
            climate,
            date,
            plant,
            site,
            water,
            weather,
            wishes,
            condition,
            history,
            rule_sets,
            language,
            units,
            detail,
            recall,
            limit,
            as_of,
        } = request;
        Self {
            climate: climate.into(),
            date: date.map(Into::into),
            plant: plant.into(),
            site: site.map(Into::into).unwrap_or_default(),
            water: water.map(Into::into).unwrap_or_default(),
            weather: weather.map(Into::into).unwrap_or_default(),
            wishes,
            condition: condition.map(Into::into),
            history: history.map(each),
            rule_sets,
            as_of: as_of.map(|as_of| as_of.to_string()),
            language: language.map(|choice| choice.word().to_owned()),
            units: units.map(|choice| choice.word().to_owned()),
            detail: detail.map(|choice| choice.word().to_owned()),
            limit,
            recall,
        }
    }
}

#[cfg(test)]
mod tests;
