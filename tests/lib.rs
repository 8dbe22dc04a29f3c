//! What the end-to-end tests stand on.
//!
//! - [`server`] a real server on a free port, one a test
//! - [`answer`] what came back, with the checks that every answer must pass

pub mod answer;
pub mod server;
