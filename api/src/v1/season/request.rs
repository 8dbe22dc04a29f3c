//! The question for a season.

use serde::Deserialize;
use utoipa::ToSchema;

use crate::v1::question::choices::Language;
use crate::v1::question::climate::ClimateGiven;
use crate::v1::question::date::Date;

/// A climate and a date.
#[derive(Clone, Debug, Default, PartialEq, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct SeasonRequest {
    /// Where.
    pub climate: ClimateGiven,
    /// When; today at the place when left out.
    pub date: Option<Date>,
    /// What of the site changes the season.
    pub site: Option<SeasonSite>,
    /// The language of the answer; else the header `accept-language` decides.
    pub language: Option<Language>,
}

/// What of a site changes the season.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct SeasonSite {
    /// Whether cold air gathers here.
    pub frost_hollow: Option<bool>,
}
