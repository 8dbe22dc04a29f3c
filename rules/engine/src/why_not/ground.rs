//! What is asked about: a rule of the plant, the question, and what becomes of the rule when some of it is changed.

use std::sync::Arc;

use lammas_agronomy::calendar::Day;
use serde_json::Value as Json;

use super::edit::{self, Edit};
use crate::compile::book::PlantBook;
use crate::compile::set::Set;
use crate::decide::decision::{decide, one};
use crate::decide::moment::Moment;
use crate::decide::outcome::{Block, Outcome};
use crate::question::said::Said;
use crate::question::understand::understand;
use crate::question::{Climate, Question};

/// A rule of the plant and a question that does not bring it.
#[derive(Debug)]
pub struct Ground<'a> {
    /// The set.
    pub set: &'a Set,
    /// The plant's part of it.
    pub book: &'a PlantBook,
    /// The rule, by its number among the plant's.
    pub at: u32,
    /// The question as JSON, with its day and without its climate.
    pub document: Json,
    /// As it was said.
    pub said: Said,
    /// As it was understood.
    pub question: Question,
    climate: Arc<Climate>,
}

impl<'a> Ground<'a> {
    /// The ground of a question that was understood; none: the plant has no such rule.
    #[must_use]
    pub fn new(set: &'a Set, said: &Said, question: &Question, rule: u32) -> Option<Self> {
        let book = set.plants.get(usize::from(question.plant))?;
        let at = book.rules.iter().position(|own| own.rule == rule)?;
        let said = Said { date: Some(question.day.date()), ..said.clone() };
        Some(Self {
            set,
            book,
            at: u32::try_from(at).ok()?,
            document: edit::document(&said),
            said,
            question: question.clone(),
            climate: Arc::clone(&question.climate),
        })
    }

    /// The same question on another day; none: it can't be asked of that day.
    #[must_use]
    pub fn on(&self, day: Day) -> Option<Self> {
        let said = Said { date: Some(day.date()), ..self.said.clone() };
        let question = understand(&said, self.set, Arc::clone(&self.climate), None).ok()?;
        Some(Self {
            document: edit::document(&said),
            said,
            question,
            climate: Arc::clone(&self.climate),
            set: self.set,
            book: self.book,
            at: self.at,
        })
    }

    /// The question after these edits; none: it can't be asked.
    #[must_use]
    pub fn after(&self, edits: &[Edit]) -> Option<Question> {
        let document = edit::patched(&self.document, &edit::patch(&self.document, edits));
        understand(&edit::said(document)?, self.set, Arc::clone(&self.climate), None).ok()
    }

    /// The moment of a question on its day.
    #[must_use]
    pub fn moment<'q>(&'q self, question: &'q Question) -> Moment<'q> {
        Moment::new(self.set, self.book, question, question.day)
    }

    /// Whether the rule is there: as a task or a note, or, where it is something to leave alone, as that.
    #[must_use]
    pub fn is_there(&self, moment: &Moment<'_>) -> bool {
        one(self.at, moment).as_ref().is_some_and(reached)
    }

    /// The same by the whole decision, in which every rule of the plant is judged: what an answer shows.
    #[must_use]
    pub fn is_there_in_all(&self, question: &Question) -> bool {
        let moment = self.moment(question);
        let decision = decide(&moment);
        decision.verdicts.iter().any(|verdict| verdict.at == self.at && reached(&verdict.outcome))
    }

    /// What becomes of the rule as it is asked.
    #[must_use]
    pub fn outcome(&self) -> Outcome {
        one(self.at, &self.moment(&self.question)).unwrap_or(Outcome::No)
    }
}

/// Whether an outcome is what was hoped for.
#[must_use]
pub fn reached(outcome: &Outcome) -> bool {
    match outcome {
        Outcome::Applies => true,
        Outcome::Held(blocks) => blocks.as_slice() == [Block::Avoid],
        Outcome::No | Outcome::Depends { .. } => false,
    }
}
