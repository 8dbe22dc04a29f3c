//! The shipped set: it compiles without a fault, its scenarios hold, and its numbers are the same everywhere.

mod answers;
mod comparing;
mod coverage;
mod days;
mod facts;
mod impact;
mod mutation;
mod numbers;
mod rehearse;
mod shipped;
mod told;
mod why_not;
mod words;
