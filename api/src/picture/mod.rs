//! Pictures as SVG: no script, light or dark as the reader's screen is, told apart not by colour alone.

pub mod coverage;
