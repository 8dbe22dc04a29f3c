//! The season, computed from a climate profile.
//!
//! **Physics.** [`sun`] gives day length and the radiation above the air for any latitude, polar day and
//! night included; [`humidity`], [`pressure`], [`wind`] and [`radiation`] what the air and the sky make of
//! it; [`et0`] the reference evapotranspiration, with what had to be assumed; [`degree_days`] the warmth of
//! a day above a threshold; [`water`] what a plant takes, and how much and how often to give; [`crop`] and
//! [`feeding`] the tables and sums beside it. [`sun_times`] gives sunrise and sunset by the clock;
//! [`amend`] what changes a soil's pH or drives out its sodium; [`heat_stress`] what heat asks of the one
//! who works; [`chill`] how much cold a winter gave; [`pest`], [`disease`] and [`spray`] when to look, what
//! weather favours, and when a spray may go out. [`bounds`] says why a value was refused.
//!
//! **The door.** [`quantity`] lists everything that can be reckoned by name, with inputs in any of the
//! [`units`], result, method and source; [`published`] runs files of published values through it; [`nearest`] finds the
//! name that was meant.
//!
//! **The season.** [`calendar`] counts days and the 365 days of the climate year. A [`profile`] holds what
//! is known of a place; a daily [`record`] makes one, or [`climatology`] estimates one from coordinates. [`curve`] draws the smooth year through its monthly
//! normals, [`frost`] reckons when frost comes and how cold the coldest night is, [`marker`] finds the days
//! on which rules hang their windows. [`season`] puts them together and answers by day: what was, what
//! lies ahead, how much warmth is left, each with its [`origin`]; [`climate`] says what the place is like; [`hardiness`],
//! [`heat_zone`] and [`koppen`] say it in the classes that handbooks use.
#![deny(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing)]

pub mod amend;
pub mod bounds;
pub mod calendar;
pub mod chill;
pub mod climate;
pub mod climatology;
pub mod crop;
pub mod curve;
pub mod degree_days;
pub mod disease;
pub mod et0;
pub mod feeding;
pub mod frost;
pub mod hardiness;
pub mod heat_stress;
pub mod heat_zone;
pub mod humidity;
pub mod koppen;
pub mod marker;
pub mod nearest;
pub mod origin;
pub mod pest;
pub mod pressure;
pub mod profile;
pub mod published;
pub mod quantity;
pub mod radiation;
pub mod record;
pub mod season;
pub mod spray;
pub mod sun;
pub mod sun_times;
pub mod units;
pub mod water;
pub mod wind;
