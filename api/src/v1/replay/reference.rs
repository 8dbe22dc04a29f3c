//! The spoken reference: `hot-dry-valley/rose/2026-09-14/core@2026.11.1+house@2026.9.1`. An answer has one where a registered
//! climate, a plant and a date were the whole question: it can be read over the telephone, or from a receipt.

use std::fmt;

use chrono::NaiveDate;
use lammas_engine::compile::set::Set;
use lammas_engine::question::Question;

/// A reference.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Reference {
    /// The registered climate.
    pub climate: String,
    /// The plant.
    pub plant: String,
    /// The day.
    pub date: NaiveDate,
    /// The sets with their versions, lowest first.
    pub sets: Vec<String>,
}

impl Reference {
    /// That of a question, if there is nothing more to it.
    #[must_use]
    pub fn of(question: &Question, set: &Set) -> Option<Self> {
        let climate = &question.climate;
        let asked = question.asked.as_object()?;
        let plain = asked.keys().all(|member| ["climate", "date", "plant"].contains(&member.as_str()));
        let changed = climate.weather.is_some() || climate.differing.is_some() || question.heard.is_some();
        if !plain || changed || !climate.profile.observations.is_empty() || climate.profile.forecast.is_some() {
            return None;
        }
        Some(Self {
            climate: climate.id.clone()?,
            plant: set.names.plants.name(question.plant).to_owned(),
            date: question.day.date(),
            sets: set.layers.iter().map(|layer| format!("{}@{}", layer.name, layer.version)).collect(),
        })
    }

    /// What a text refers to; none where it is no reference.
    #[must_use]
    pub fn read(text: &str) -> Option<Self> {
        let mut parts = text.trim().split('/').map(str::trim);
        let (climate, plant, date, sets) = (parts.next()?, parts.next()?, parts.next()?, parts.next()?);
        let sets: Vec<String> = sets.split('+').map(|set| set.trim().to_owned()).collect();
        let whole = parts.next().is_none() && !climate.is_empty() && !plant.is_empty();
        let pinned = sets
            .iter()
            .all(|set| set.split_once('@').is_some_and(|(set, version)| !set.is_empty() && !version.is_empty()));
        (whole && pinned).then_some(())?;
        Some(Self { climate: climate.to_owned(), plant: plant.to_owned(), date: date.parse().ok()?, sets })
    }
}

impl fmt::Display for Reference {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}/{}/{}/{}", self.climate, self.plant, self.date, self.sets.join("+"))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_reference_is_read_as_it_is_written() {
        let text = "valley/rose/2026-09-14/core@2026.11.1+house@2026.9.1";
        let read = Reference::read(text).expect("a reference");
        assert_eq!((read.to_string().as_str(), read.sets.len()), (text, 2));
        assert_eq!(
            Reference::read(" valley / rose / 2026-09-14 / house@2026.9.1 ").map(|r| r.plant).as_deref(),
            Some("rose")
        );
        for none in
            ["", "valley/rose", "valley/rose/today/core@1", "valley/rose/2026-09-14/core", "a/b/2026-09-14/c@1/d"]
        {
            assert_eq!(Reference::read(none), None, "{none}");
        }
    }
}
