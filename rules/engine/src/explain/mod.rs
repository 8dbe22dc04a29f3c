//! Explaining: the decision in words, with the facts, amounts, conditions and sources it rests on. Only for what is shown.

pub mod amounts;
pub mod answer;
pub mod cautions;
pub mod certainty;
pub mod diagnosis;
pub mod diagnosis_answer;
pub mod differing;
pub mod estimate;
pub mod expect;
mod heard;
pub mod held;
pub mod ladder;
pub mod number;
pub mod phrases;
pub mod plain;
pub mod rendered;
pub mod rule;
pub mod rule_answer;
pub mod season;
pub mod task;
pub mod term_name;
pub mod value;
pub mod voice;
pub mod weather;
pub mod whole;
pub mod window;
pub mod words;
