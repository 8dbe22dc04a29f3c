//! What must hold of both stores.

mod conformance;
mod garden;
mod kills;
mod migrations;
mod publishing;
mod tampering;
mod waits;
