//! What a caller tells about place, plant and condition. Several calls ask for it, so it stands here once.
//!
//! A member that is left out is *unknown*, and so is one that is `null`. Fixed choices are enumerations; names that
//! belong to the rule sets (plants, traits, stages, signs, jobs, materials, problems) are texts and are looked up
//! later. The ranges stand twice, as a check and in the schema; a test holds them together.
//!
//! - [`choices`] the fixed choices
//! - [`date`] dates, days of a year, and moments
//! - [`climate`], [`differences`], [`plant`], [`site`], [`water`], [`condition`], [`history`] the parts of a question
//! - `place` from a climate as it was said to one with its season
//! - [`today`] the date at a place
//! - `said` the same as the engine takes it, `given_back` a climate as a request could hold it
//! - `query` the same faults where the question came as a query

pub mod choices;
pub mod climate;
pub mod condition;
pub mod date;
pub mod differences;
pub(crate) mod given_back;
pub mod history;
pub(crate) mod place;
pub mod plant;
pub(crate) mod query;
pub(crate) mod said;
pub mod site;
pub mod today;
pub mod water;
