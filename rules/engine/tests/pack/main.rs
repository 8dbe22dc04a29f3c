//! The shipped set: it compiles without a fault, its scenarios hold, and its numbers are the same everywhere.

mod answers;
mod coverage;
mod days;
mod facts;
mod impact;
mod numbers;
mod rehearse;
mod shipped;
mod told;
mod why_not;
mod words;
