//! Heat and the person who works in it.
//!
//! - [`index`] the heat index of the US National Weather Service, in the shade
//! - [`globe`] wet-bulb globe temperature, measured or guessed from temperature and humidity
//! - [`worker`] bands of risk for work outdoors, and what to do in each

pub mod globe;
pub mod index;
pub mod worker;
