//! Lammas over HTTP and on the command line.
//!
//! A call comes in at [`startup`], which puts the server together from its [`settings`]. Around every call stands
//! [`answer`]: it gives the request an id and a deadline, and turns whatever fails into a [`problem`], of which
//! `problem/kinds.rs` lists every kind. [`routes`] lists every call; each is an own file in [`v1`], with the types it
//! reads and writes. [`openapi`] makes the published document from that list. Beside the calls stand [`health`] for
//! operators and [`pages`] for people. [`cli`] is the same service for a shell, and [`logging`] what it leaves behind:
//! one line a request, never what the caller said. [`picture`] draws what an answer says. [`sets`] holds the rule set that
//! is answered from, [`library`] every release of every set, [`serving`] takes them from the store, and [`seasons`] the seasons that
//! were worked out lately; [`weather`] the recent and forecast days of registered climates; [`store`] what outlives the process, and
//! [`publishing`] the way from a draft to what is served; [`climate_grid`] what a climate is estimated from where only its place is known.
//!
//! What a season is, and what a plant needs in it, is not reckoned here: that is `lammas-agronomy`; what is to be done
//! then is decided by `lammas-engine`.

pub mod answer;
pub mod cli;
pub mod climate_grid;
pub mod health;
pub mod keys;
pub mod lately;
pub mod library;
pub mod logging;
pub mod openapi;
pub mod pages;
pub mod picture;
pub mod problem;
pub mod publishing;
pub mod routes;
pub mod seasons;
pub mod serving;
pub mod sets;
pub mod settings;
pub mod startup;
pub mod store;
pub mod v1;
pub mod weather;
