//! Releases of rule sets: what was published, when, and with which content.
//!
//! A library is a value: it is never changed, and a copy of it costs one count. A server holds one and swaps it whole when
//! something is published; a question takes one and asks nothing else. Today it is filled from the set inside the program and
//! from folders, each of which counts as one release.
//!
//! **When a set of a folder was published** is what its `pack.yaml` says (`published: 2026-11-01T00:00:00Z`), else unknown:
//! neither the version nor the date of a file tells it. Of a release whose moment is unknown the newest and a pinned version
//! can be had, but nobody can say what held on a day in the past.
//!
//! - [`release`] one release
//! - [`shelf`] all of them, and how one is picked

pub mod release;
pub mod shelf;

pub use release::{Release, Withdrawn};
pub use shelf::{Library, NotThen};
