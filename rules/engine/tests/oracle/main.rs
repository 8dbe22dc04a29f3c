//! The oracle: a plain, slow evaluator written apart from the engine agrees with it.
//!
//! `plain` is that evaluator: it knows the engine's reader of text, its units and the season, and writes all else a second
//! time. `making` makes packs, questions and climates to ask about, `asking` asks both about small ones.
//!
//! `agreement` compares the two over random packs; `coverage` sees to it that these reach every outcome and every block;
//! `cases` keeps each difference that was found. `window_table` holds the worked examples of windows, `window_places` compares
//! windows of every kind over 57 real places. `edges` asks on both sides of every number. `laws` is what must hold of any pack: order never matters, less said never gives
//! more, more said only turns unknown into known; `hemispheres`, that south of the equator all comes half a year later.
//!
//! `PROPTEST_CASES=20000 cargo test -p lammas-engine --test oracle --release` looks longer. What it finds becomes a case.

mod agreement;
mod asking;
mod cases;
mod coverage;
mod edges;
mod hemispheres;
mod laws;
mod making;
mod plain;
mod window_places;
mod window_table;
