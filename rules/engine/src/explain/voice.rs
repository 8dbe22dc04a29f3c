//! A voice: the moment that is spoken of, and the phrases of the language that is spoken.

use super::phrases::{Phrases, PlantPhrases, PlantRulePhrases, RulePhrases};
use crate::decide::moment::Moment;

/// A moment, spoken of in a language.
#[derive(Clone, Copy, Debug)]
pub struct Voice<'m, 'a> {
    /// The moment.
    pub moment: &'m Moment<'a>,
    /// The language.
    pub language: &'a str,
    /// The phrases of all rules.
    pub phrases: &'a Phrases,
    /// The phrases of the plant.
    pub plant: &'a PlantPhrases,
}

impl<'m, 'a> Voice<'m, 'a> {
    /// The voice for a moment in a language, or in English where the set does not speak it; none: the set speaks not at all.
    #[must_use]
    pub fn new(moment: &'m Moment<'a>, language: &str) -> Option<Self> {
        let phrases = moment.set.phrases(language)?;
        let plant = phrases.plants.get(usize::from(moment.book.plant))?;
        Some(Self { moment, language: &phrases.language, phrases, plant })
    }

    /// The phrases of a rule of the set.
    #[must_use]
    pub fn rule(&self, rule: u32) -> Option<&'a RulePhrases> {
        self.phrases.rules.get(rule as usize)
    }

    /// What is said of a rule of the plant.
    #[must_use]
    pub fn own(&self, at: u32) -> Option<&'a PlantRulePhrases> {
        self.plant.rules.get(at as usize)
    }
}
