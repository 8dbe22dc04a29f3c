//! Pictures: drawn as SVG, light and dark, each with a text that says the same.
//!
//! - [`palette`] the hues of both schemes, and the style that carries them
//! - [`measure`] how wide a text is, and where it breaks into lines
//! - [`label`] where names beside points stand without covering each other
//! - [`canvas`] the marks of a picture, written as SVG
//! - [`year`] a year of a place
//! - [`coverage`] where a set advises, by place and week

pub mod canvas;
pub mod coverage;
pub mod label;
pub mod measure;
pub mod palette;
pub mod year;
