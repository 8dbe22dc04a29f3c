//! A degree-day model of a pest, and how it is found by name.

use super::{fruit, landscape, vegetables};
use crate::degree_days::{Cutoff, Thresholds};

/// A stage and the sum at which it comes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Stage {
    /// Its name, in words such as `first generation flies`.
    pub name: &'static str,
    /// Degree days in F d from the biofix, from the first to the last of them; alike where one is printed.
    pub dd_f: (f64, f64),
}

/// A model from one source. Numbers stand in F as they are printed.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Model {
    /// The pest's names, the source's first.
    pub pests: &'static [&'static str],
    /// Lower threshold in F.
    pub lower_f: f64,
    /// Upper threshold in F and what happens above it.
    pub upper_f: Option<(f64, Cutoff)>,
    /// What the sum is counted from.
    pub biofix: &'static str,
    /// The stages in their order; none when only the thresholds are published.
    pub stages: &'static [Stage],
    /// Where the numbers come from.
    pub source: &'static str,
}

/// Counted from the first day of the year in the north, of July in the south.
pub(super) const NEW_YEAR: &str = "1 January; 1 July in the southern hemisphere";

pub(super) const fn stage(name: &'static str, from_f: f64, to_f: f64) -> Stage {
    Stage { name, dd_f: (from_f, to_f) }
}

impl Model {
    /// A model above 50 F, counted from new year.
    pub(super) const fn base_50(
        pests: &'static [&'static str],
        stages: &'static [Stage],
        source: &'static str,
    ) -> Self {
        Self { pests, lower_f: 50.0, upper_f: None, biofix: NEW_YEAR, stages, source }
    }

    /// The thresholds in C.
    #[must_use]
    pub fn thresholds(&self) -> Thresholds {
        let celsius = |f: f64| (f - 32.0) * 5.0 / 9.0;
        Thresholds {
            lower_c: celsius(self.lower_f),
            upper_c: self.upper_f.map(|(upper_f, cutoff)| (celsius(upper_f), cutoff)),
        }
    }
}

/// Every model.
pub fn all() -> impl Iterator<Item = &'static Model> {
    [vegetables::MODELS, fruit::MODELS, landscape::MODELS].into_iter().flatten()
}

/// Why no stage was found.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Unmatched {
    /// No model of such a pest; the nearest name if one is near.
    Pest(Option<&'static str>),
    /// The pest has no such stage, or several that it could be; these it has.
    Stage(Vec<&'static str>),
}

/// The models of a pest, one a source, by any of its names in any case.
///
/// # Errors
/// [`Unmatched::Pest`].
pub fn models_of(pest: &str) -> Result<Vec<&'static Model>, Unmatched> {
    let asked = words(pest);
    let found: Vec<_> = all().filter(|model| model.pests.iter().any(|name| words(name) == asked)).collect();
    if found.is_empty() {
        let names = all().flat_map(|model| model.pests.iter().copied());
        return Err(Unmatched::Pest(crate::nearest::nearest(pest, names)));
    }
    Ok(found)
}

/// The stage of a pest by its words: the same words in any order, else the one stage that begins with
/// them, else the one that has them all, else the one all of whose words are asked for.
///
/// # Errors
/// [`Unmatched`].
pub fn find(pest: &str, stage: &str) -> Result<(&'static Model, &'static Stage), Unmatched> {
    let models = models_of(pest)?;
    let asked = words(stage);
    let stages: Vec<_> =
        models.iter().flat_map(|model| model.stages.iter().map(|stage| (*model, stage, words(stage.name)))).collect();
    for fits in [SAME, BEGINS, HAS_ALL, IS_WITHIN] {
        let mut fitting = stages.iter().filter(|(_, _, named)| fits(named, &asked));
        match (fitting.next(), fitting.next()) {
            (Some((model, stage, _)), None) => return Ok((model, stage)),
            (Some(_), Some(_)) => break,
            (None, _) => {}
        }
    }
    Err(Unmatched::Stage(stages.iter().map(|(_, stage, _)| stage.name).collect()))
}

/// Whether the words of a name fit those asked for.
type Fits = fn(&[String], &[String]) -> bool;

const SAME: Fits = |named, asked| sorted(named) == sorted(asked);
const BEGINS: Fits = |named, asked| !asked.is_empty() && named.starts_with(asked);
const HAS_ALL: Fits = |named, asked| !asked.is_empty() && asked.iter().all(|word| named.contains(word));
const IS_WITHIN: Fits = |named, asked| named.iter().all(|word| asked.contains(word));

fn sorted(words: &[String]) -> Vec<&String> {
    let mut words: Vec<_> = words.iter().collect();
    words.sort();
    words
}

/// The words of a name in one form: small letters, ordinals written out, no plural.
fn words(text: &str) -> Vec<String> {
    text.to_lowercase()
        .split(|c: char| !c.is_alphanumeric())
        .filter(|word| !word.is_empty())
        .map(|word| match word {
            "1st" => "first".to_owned(),
            "2nd" => "second".to_owned(),
            "3rd" => "third".to_owned(),
            "4th" => "fourth".to_owned(),
            "larvae" => "larva".to_owned(),
            "pupae" => "pupa".to_owned(),
            "flies" => "fly".to_owned(),
            _ => word.strip_suffix('s').unwrap_or(word).to_owned(),
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_stage_is_found_by_its_own_name_and_sums_are_in_order() {
        for model in all() {
            assert!((30.0..=60.0).contains(&model.lower_f), "{:?}", model.pests);
            for stage in model.stages {
                assert!(0.0 < stage.dd_f.0 && stage.dd_f.0 <= stage.dd_f.1, "{:?} {}", model.pests, stage.name);
                for pest in model.pests {
                    let found = find(pest, stage.name);
                    assert_eq!(found.map(|(_, found)| found), Ok(stage), "{pest} {}", stage.name);
                }
            }
        }
    }

    #[test]
    fn a_stage_is_known_by_its_words() {
        let sum = |pest, stage| find(pest, stage).map(|(_, stage)| stage.dd_f);
        assert_eq!(sum("Cabbage Maggot", "1st generation fly"), Ok((300.0, 300.0)));
        assert_eq!(sum("cabbage maggots", "flies, second generation"), Ok((1476.0, 1476.0)));
        assert_eq!(sum("Colorado potato beetle", "second instar"), Ok((240.0, 240.0)));
        assert_eq!(sum("arborvitae leafminer", "larvae, first generation"), Ok((245.0, 360.0)));
        assert_eq!(sum("cabbage magot", "flies"), Err(Unmatched::Pest(Some("cabbage maggot"))));
        assert_eq!(
            sum("cabbage maggot", "flies"),
            Err(Unmatched::Stage(vec!["first generation flies", "second generation flies", "third generation flies"]))
        );
    }
}
