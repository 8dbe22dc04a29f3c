//! Files of a pack into entries, with the place of everything that a fault may have to point at.

mod folder;
mod in_words;
mod written;

pub use folder::{MOST_BYTES, PackFile, read};
