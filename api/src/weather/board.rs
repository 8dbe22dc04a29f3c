//! All weather that is kept, as one whole. It is never changed: another one takes its place.

use std::cmp::Reverse;
use std::collections::BTreeMap;
use std::sync::Arc;

use lammas_engine::question::registered_weather::WeatherState;

use super::age::{self, Asked};
use super::kept::Weather;

/// The weather of each climate, the newest issue first.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Board(BTreeMap<String, Vec<Arc<Weather>>>);

impl Board {
    /// A board of all of these. The same issue is decided by the hash, so that it never depends on the order of files.
    #[must_use]
    pub fn of(all: impl IntoIterator<Item = Arc<Weather>>) -> Self {
        let mut by_climate: BTreeMap<String, Vec<Arc<Weather>>> = BTreeMap::new();
        for weather in all {
            by_climate.entry(weather.climate.clone()).or_default().push(weather);
        }
        for list in by_climate.values_mut() {
            list.sort_by_key(|weather| Reverse((weather.issued, weather.sha256.clone())));
        }
        Self(by_climate)
    }

    /// The weather of this content.
    #[must_use]
    pub fn of_hash(&self, sha256: &str) -> Option<&Arc<Weather>> {
        self.0.values().flatten().find(|weather| weather.sha256 == sha256)
    }

    /// The weather of a climate for a question, and what becomes of it: the newest that was not issued after the day asked
    /// about; where all were, the newest. None where the climate has none.
    #[must_use]
    pub fn find(&self, climate: &str, asked: Asked) -> Option<(&Arc<Weather>, WeatherState)> {
        let list = self.0.get(climate)?;
        let weather = list.iter().find(|weather| weather.issued_on <= asked.day).or_else(|| list.first())?;
        Some((weather, age::state(weather, asked)))
    }
}

#[cfg(test)]
mod tests {
    use chrono::{DateTime, Utc};

    use super::*;
    use crate::sets::embedded;
    use crate::v1::question::today::Clock;
    use crate::weather::sent::read;

    fn weather(issued: &str, tmax_c: f64) -> Arc<Weather> {
        let date = &issued[..10];
        let text = format!(
            r#"{{"climate": "mild-maritime", "issued": "{issued}",
                "forecast": [{{"date": "{date}", "tmin_c": 10, "tmax_c": {tmax_c}}}]}}"#
        );
        Arc::new(read(text.as_bytes(), &embedded::set().expect("it loads")).expect("weather"))
    }

    #[test]
    fn the_newest_issue_wins_unless_it_was_issued_after_the_day_asked_about() {
        let (old, new) = (weather("2026-07-01T06:00:00Z", 25.0), weather("2026-07-02T06:00:00Z", 30.0));
        let (far, same) = (weather("2099-01-01T06:00:00Z", 15.0), weather("2026-07-02T06:00:00Z", 31.0));
        let all = [&old, &new, &far, &same].map(Arc::clone);
        let board = Board::of(all.clone());
        assert_eq!(board, Board::of(all.into_iter().rev()), "the order of files means nothing");
        let find = |day: &str| {
            let clock = Clock::default();
            let now: DateTime<Utc> = "2026-07-02T12:00:00Z".parse().expect("a moment");
            board.find("mild-maritime", Asked::of(Some(day.parse().expect("a date")), &clock, now))
        };
        let newer = if new.sha256 > same.sha256 { &new } else { &same };
        assert_eq!(find("2026-07-02"), Some((newer, WeatherState::Used)));
        assert_eq!(find("2026-07-01"), Some((&old, WeatherState::Used)));
        assert_eq!(find("2026-07-04"), Some((newer, WeatherState::TooOld)));
        assert_eq!(find("2026-06-30"), Some((&far, WeatherState::IssuedLater)));
        let nowhere = Asked::of(None, &Clock::default(), "2026-07-02T12:00:00Z".parse().expect("a moment"));
        assert_eq!(board.find("hot-dry-valley", nowhere), None);
    }
}
