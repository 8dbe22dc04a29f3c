//! The service over HTTP, call by call.

mod docs;
mod framework;
mod health;
mod home;
mod mutate;
mod problems;
mod serving;
mod v1;
