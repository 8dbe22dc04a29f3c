//! The service over HTTP, call by call.

mod docs;
mod framework;
mod health;
mod home;
mod problems;
mod v1;
