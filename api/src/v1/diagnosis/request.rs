//! The question for a diagnosis.

use serde::Deserialize;
use utoipa::ToSchema;

use crate::problem::faults::Faults;
use crate::v1::advice::request::AdviceRequest;
use crate::v1::question::choices::Language;
use crate::v1::question::climate::ClimateGiven;
use crate::v1::question::condition::ConditionGiven;
use crate::v1::question::date::Date;
use crate::v1::question::history::HistoryWork;
use crate::v1::question::plant::PlantGiven;
use crate::v1::question::site::SiteGiven;
use crate::v1::question::water::{WaterGiven, WeatherGiven};

/// A plant and what is seen on it. With a climate, what the weather favours counts, and what is due now is said.
#[derive(Clone, Debug, Default, PartialEq, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct DiagnosisRequest {
    /// What. Only an emergency, told in `condition`, is answered without it.
    #[serde(default)]
    pub plant: PlantGiven,
    /// What is seen. Hidden signs that are not listed stay unknown, unless it was looked closely or they stand in
    /// `not_seen`.
    pub condition: ConditionGiven,
    /// Where; left out: nothing is said of the weather.
    pub climate: Option<ClimateGiven>,
    /// When; today at the place when left out.
    pub date: Option<Date>,
    /// On what ground.
    pub site: Option<SiteGiven>,
    /// With what water.
    pub water: Option<WaterGiven>,
    /// Weather that only someone at the place can tell.
    pub weather: Option<WeatherGiven>,
    /// Works done. An empty list says that nothing was done; without the list nothing is known.
    #[schema(max_items = 1000)]
    pub history: Option<Vec<HistoryWork>>,
    /// The rule sets in layers, lowest first, each perhaps pinned as `name@version`; the operator's when left out.
    #[serde(default)]
    #[schema(max_items = 10, example = json!(["core"]))]
    pub rule_sets: Vec<String>,
    /// The language of the answer; else the header `accept-language` decides.
    pub language: Option<Language>,
}

impl DiagnosisRequest {
    /// What is wrong with its form, and whether it has a climate. The rest is a question for advice.
    pub(super) fn into_advice(self) -> (AdviceRequest, bool, Faults) {
        let Self { plant, condition, climate, date, site, water, weather, history, rule_sets, language } = self;
        let says_nothing = condition.signs.as_ref().is_none_or(Vec::is_empty) && condition.words.is_none();
        let has_climate = climate.is_some();
        let request = AdviceRequest {
            climate: climate.unwrap_or_default(),
            date,
            plant,
            site,
            water,
            weather,
            condition: Some(condition),
            history,
            rule_sets,
            language,
            ..AdviceRequest::default()
        };
        let mut faults = if has_climate { request.faults() } else { request.faults_without_climate() };
        if says_nothing {
            faults.add("/condition/signs", "expected one sign or more that is seen");
        }
        (request, has_climate, faults)
    }
}
