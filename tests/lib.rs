//! What the end-to-end tests stand on.
//!
//! - [`server`] a real server on a free port, one a test
//! - [`answer`] what came back, with the checks that every answer must pass
//! - [`editor`] a server with a store, and an editor with a key
//! - [`stores`] an empty store of each kind

pub mod answer;
pub mod editor;
pub mod server;
pub mod stores;
