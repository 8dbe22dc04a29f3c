//! A year of a place: usual temperatures, water, daylight, with the markers that rules hang on named below each, the days
//! that were observed and those that are forecast.
//!
//! The year begins on the shortest day, so that the warm half of north and south stands in one piece; near the equator,
//! where there is none, in the coldest week, and where even that can't be told on 1 January. It is the year in which the
//! day asked lies: what was observed before it began is not shown.
//!
//! - [`span`] the days that are drawn
//! - [`told`] what the picture says, in words; `sentences` each of its sentences
//! - [`words`] names and numbers
//! - `scale` heights, `sheet` how far down the page is filled, `axis` days along the bottom, `names` markers below it
//! - `temperature`, `water`, `daylight` the three panels, `weather` days that were observed or are forecast

mod axis;
mod daylight;
mod names;
mod scale;
mod sentences;
mod sheet;
pub mod span;
mod temperature;
pub mod told;
mod water;
mod weather;
pub mod words;

use lammas_agronomy::calendar::Day;
use lammas_engine::explain::season::SeasonWhole;
use lammas_engine::question::Climate;

use sheet::Sheet;
use span::Span;
use told::Told;
use weather::Weather;

/// What is drawn.
#[derive(Clone, Copy, Debug)]
pub struct Year<'a> {
    /// The climate, for its daily curves and its weather.
    pub climate: &'a Climate,
    /// Its season on the day, as it is answered.
    pub season: &'a SeasonWhole<'a>,
    /// The day.
    pub day: Day,
    /// Whether that is today at the place, and not a day that was asked for.
    pub is_today: bool,
    /// What the place is called.
    pub place: &'a str,
    /// The language.
    pub language: &'a str,
}

/// The year as SVG.
#[must_use]
pub fn draw(year: Year<'_>) -> String {
    let span = Span::of(year.season, year.day);
    let weather = Weather::of(&year, span);
    let told = Told::of(&year, span, &weather);
    let mut sheet = Sheet::new();
    sheet.heading(&told.title);
    sheet.say("", &told.today);
    for sentence in &told.weather {
        sheet.say("", sentence);
    }
    temperature::draw(&year, span, &weather, &told, &mut sheet);
    water::draw(&year, span, &weather, &told, &mut sheet);
    daylight::draw(&year, span, &told, &mut sheet);
    sheet.gap(6.0);
    for sentence in &told.ends {
        sheet.say("soft", sentence);
    }
    let (canvas, height) = sheet.finished();
    canvas.finished(height, year.language, &told.title, &told.description(year.language))
}

#[cfg(test)]
mod tests;
