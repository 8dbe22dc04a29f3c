//! The rule language of Lammas.
//!
//! A rule set is a folder of YAML files. [`read`] makes entries of them ([`mod@pack`]), each with the place of whatever a
//! fault may have to point at; [`check`] says everything that is wrong with it; [`compile`] makes a [`compile::set::Set`]:
//! names are numbers, conditions are tests of shared terms, rules stand by plant behind a sieve.
//!
//! A question arrives as it was said ([`question::said`]) and is understood against the set ([`question::understand`]):
//! every field that can't be used is named at once; what is told in [`words`] is matched to signs without guessing. [`decide`] judges every rule of the plant in three values on the day,
//! with its window, its holds and guards, and what clashes or must be kept apart. [`rank`] puts the tasks in order,
//! [`mod@explain`] says them in words with the facts, amounts and sources they rest on, [`ask`] finds the question whose
//! answer would settle the most, and [`validity`] how long all this holds. [`why_not`] says why a rule is not there and
//! what it would take. [`version`] names sets and answers by hash.
//!
//! What a rule may speak of stands in [`fact::catalogue`]; how it is written, in [`lang`] and in `LANGUAGE.md`.
//! [`prove`] shows by a question, or certifies, what of a set contradicts itself or never comes.
//! [`evidence`] counts what its rules rest on, how that was read and who has looked over it. [`sources`] says which of them are due to be looked at again, [`tidy`] puts a rule file into its usual form.
//! [`layer`] lays a set over those below it.
//! [`scenario`] runs the questions that stand beside the rules with what must and must not be answered, and says which change
//! of a rule none of them would notice; [`mod@compare`] says in sentences what changed between two sets.
//!
//! A set is looked at as a whole over what is [`typical`]: [`impact`] says which answers another set would change,
//! [`mod@coverage`] where it advises and where it is silent, [`rehearse`] what a year of some plants asks for.
//!
//! Nothing here reads a clock, a file or the network, and nothing panics. Deciding never fails: not knowing is an outcome.
#![deny(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing)]
#![cfg_attr(test, allow(clippy::float_cmp))]

pub mod ask;
pub mod check;
pub mod compare;
pub mod compile;
pub mod coverage;
pub mod decide;
pub mod evidence;
pub mod explain;
pub mod fact;
pub mod fault;
pub mod impact;
pub mod lang;
pub mod layer;
pub mod pack;
pub mod prove;
pub mod question;
pub mod rank;
pub mod read;
pub mod rehearse;
pub mod scenario;
pub mod sources;
pub mod text;
pub mod tidy;
pub mod typical;
pub mod unit;
pub mod validity;
pub mod version;
pub mod why_not;
pub mod words;

pub use lammas_agronomy::nearest;
