//! The shipped set: it compiles without a fault, its scenarios hold, and its numbers are the same everywhere.

mod aged;
mod answers;
mod ask_next;
mod days;
mod facts;
mod numbers;
mod shipped;
mod tidied;
mod told;
mod why_not;
mod words;
