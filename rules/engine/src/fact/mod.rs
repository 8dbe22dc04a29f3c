//! What a rule may speak of: the catalogue of facts, their types, their fixed choices.

pub mod catalogue;
pub mod choice_names;
pub mod choices;
pub mod step;
pub mod value;
pub mod wording;
