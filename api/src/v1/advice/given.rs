//! An answer as it was given, for whoever asks the same again: the same question of the same sets has the same bytes.

use chrono::NaiveDate;
use lammas_engine::compile::set::Set;
use lammas_engine::question::Question;
use lammas_engine::version::{digest, hash};

use super::face::Face;
use crate::v1::question::choices::Language;

/// An answer that was given.
#[derive(Debug)]
pub struct Given {
    /// JSON.
    pub text: String,
    /// Hash of the text.
    pub sha256: String,
    /// Hash of the text without what was taken back since, and without its recall text.
    pub plain_sha256: String,
    /// The last day on which the decision is the same.
    pub valid_until: NaiveDate,
}

impl Given {
    /// An answer in its text.
    pub(super) fn new(text: String, plain_sha256: Option<String>, valid_until: NaiveDate) -> Self {
        let sha256 = hash::of_text(&text);
        Self { plain_sha256: plain_sha256.unwrap_or_else(|| sha256.clone()), sha256, text, valid_until }
    }

    /// What it takes in memory.
    pub(super) fn bytes(&self) -> usize {
        size_of::<Self>() + self.text.len()
    }
}

/// By what an answer is found again: what was asked, of which set, and how it is told. None for a question told in a
/// gardener's own words: those are not kept.
pub(super) fn key(question: &Question, set: &Set, face: Face, language: Language) -> Option<String> {
    if question.heard.is_some() {
        return None;
    }
    let digest = digest::of_question(question, set);
    // Weather that does not count is named in the answer, but is no part of the question.
    let weather = question
        .climate
        .weather
        .as_ref()
        .map(|weather| format!("{} {:?}", weather.sha256, weather.state))
        .unwrap_or_default();
    // What moved is told in the answer, and two climates may come to the same by different ways.
    let differing = question
        .climate
        .differing
        .as_ref()
        .map(|differing| format!("{} {:?}", differing.from_sha256, differing.differences))
        .unwrap_or_default();
    let (climate, assumed) = (question.climate.id.as_deref().unwrap_or_default(), question.day_assumed);
    Some(format!("{digest} {climate} {weather} {assumed} {} {face:?} {differing}", language.word()))
}
