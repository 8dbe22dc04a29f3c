//! Work in portions, side by side on every core, with a bar on a terminal.

use std::sync::atomic::{AtomicUsize, Ordering};
use std::thread;

use indicatif::{ProgressBar, ProgressStyle};

/// A bar over so many things; it is seen on a terminal only, and never in the output.
pub(super) fn bar(of_all: u64, what: &str) -> ProgressBar {
    let bar = ProgressBar::new(of_all).with_message(what.to_owned());
    // What can't be read as a style leaves the usual one.
    if let Ok(style) = ProgressStyle::with_template("{msg} {wide_bar} {human_pos}/{human_len} {per_sec} {eta}") {
        bar.set_style(style);
    }
    bar
}

/// What each portion comes to, in their order, whoever worked at it.
pub(super) fn run<T: Send>(portions: usize, work: impl Fn(usize) -> T + Sync) -> Vec<T> {
    let next = AtomicUsize::new(0);
    let worker = || {
        let mut done = Vec::new();
        loop {
            let portion = next.fetch_add(1, Ordering::Relaxed);
            if portion >= portions {
                return done;
            }
            done.push((portion, work(portion)));
        }
    };
    let workers = thread::available_parallelism().map_or(1, usize::from).min(portions.max(1));
    let mut all: Vec<(usize, T)> = thread::scope(|scope| {
        let started: Vec<_> = (0..workers).map(|_| scope.spawn(worker)).collect();
        started
            .into_iter()
            .flat_map(|one| one.join().unwrap_or_else(|panic| std::panic::resume_unwind(panic)))
            .collect()
    });
    all.sort_by_key(|(portion, _)| *portion);
    all.into_iter().map(|(_, done)| done).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_comes_out_stands_in_the_order_of_the_portions() {
        let slow_first = |at: usize| {
            thread::sleep(std::time::Duration::from_millis(if at == 0 { 30 } else { 1 }));
            at * at
        };
        assert_eq!(run(20, slow_first), (0..20).map(|at| at * at).collect::<Vec<usize>>());
        assert!(run(0, |at| at).is_empty());
    }
}
