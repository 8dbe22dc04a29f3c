//! The oracle: a plain, slow evaluator written apart from the engine agrees with it.
//!
//! `plain` is that evaluator; `making` makes packs, questions and climates to ask about. `agreement` compares the two over
//! random packs, `window_table` holds the worked examples of windows, `window_places` the same comparison over 57 real
//! places, `laws` what must hold of any pack, `hemispheres` that south of the equator all comes half a year later.
#![allow(clippy::float_cmp, reason = "values are rounded to their steps before they are compared")]

mod agreement;
mod asking;
mod cases;
mod coverage;
mod hemispheres;
mod laws;
mod making;
mod plain;
mod survey;
mod window_places;
mod window_table;
