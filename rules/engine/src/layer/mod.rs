//! Sets in layers: house rules over the core.
//!
//! A set above names an entry of the sets below by its id and says `replace`, `reword`, `tighten` or `withhold`; any other entry
//! of it is new. Merging is by entry, never deep, and gives one pack: each entry keeps the file and the place of the set that
//! gave it its meaning, so that a fault points into the right set. Where there is more than one set, the name of the set stands
//! before the path of each file.
//!
//! - `sets` sets read, lowest first, `lay` one of them laid over those below it
//! - `reword`, `tighten` what these two may say of an entry
//! - `loosened` what a replaced material may not take away
//! - `checked` layers compiled and checked as a whole

mod checked;
mod lay;
mod loosened;
mod reword;
mod sets;
mod tighten;

pub use checked::{check_layers, check_layers_and_prove, compile_layers};
pub use lay::seen;
pub use sets::{files, read_layers};
