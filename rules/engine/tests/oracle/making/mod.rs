//! Making things to ask about: a small vocabulary, random rules over it, random questions, climates of every kind.

pub(crate) mod climates;
pub(crate) mod conditions;
pub(crate) mod hiding;
pub(crate) mod questions;
pub(crate) mod rules;
pub(crate) mod windows;
pub(crate) mod words;
