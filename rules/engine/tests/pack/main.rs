//! The shipped set: it compiles without a fault, its scenarios hold, and its numbers are the same everywhere.

mod aged;
mod answers;
mod ask_next;
mod comparing;
mod coverage;
mod days;
mod emergencies;
mod facts;
mod impact;
mod layers;
mod mutation;
mod numbers;
mod plants;
mod rehearse;
mod rule_numbers;
mod shipped;
#[path = "../support/mod.rs"]
mod support;
mod tidied;
mod told;
mod why_not;
mod words;
