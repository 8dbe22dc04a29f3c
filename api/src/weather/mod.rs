//! Recent and forecast weather kept for registered climates, so that whoever names one of them only by its id gets advice
//! that knows of the heat wave.
//!
//! - [`sent`] the weather of a climate as it is written in a file, read and checked
//! - [`kept`] the same once it has been checked: its hash, its days, the climate with them
//! - [`age`] whether it counts for a question
//! - [`board`] all that is kept, as one whole: a question sees one board
//! - [`folder`] a file into a folder, all or nothing
//! - [`watch`] a folder that is looked at again and again

pub mod age;
pub mod board;
pub mod folder;
pub mod kept;
pub mod sent;
pub mod watch;
