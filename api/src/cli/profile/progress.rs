//! How far a long record has been read: a bar on the terminal, and nothing where none is.

use std::io::{self, IsTerminal as _};
use std::time::Duration;

use indicatif::{ProgressBar, ProgressStyle};

use crate::cli::exit::BadInput;
use crate::cli::source;
use crate::v1::question::choices::Language;

/// A record shorter than this is read before anybody could see a bar, bytes.
const LONG: u64 = 512 * 1024;

/// The text of a record, with a bar while a long one is read.
///
/// # Errors
/// As [`source::text`].
pub(super) fn text(path: &str, language: Language) -> Result<String, BadInput> {
    let bar =
        if io::stderr().is_terminal() { source::length(path).filter(|bytes| *bytes >= LONG).map(bar) } else { None };
    if let Some(bar) = &bar {
        bar.set_message(if language == Language::Es { "leyendo" } else { "reading" });
    }
    let text = source::text_with(path, |read| {
        if let Some(bar) = &bar {
            bar.set_position(read);
        }
    });
    if let Some(bar) = &bar {
        bar.finish_and_clear();
    }
    text
}

fn bar(bytes: u64) -> ProgressBar {
    let bar = ProgressBar::new(bytes);
    if let Ok(style) = ProgressStyle::with_template("{msg} {bar:32} {bytes} of {total_bytes}, {eta}") {
        bar.set_style(style);
    }
    bar.enable_steady_tick(Duration::from_millis(100));
    bar
}
