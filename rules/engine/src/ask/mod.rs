//! Ask next: among the facts that nobody gave, those whose answer would settle the most.

mod answers;
mod candidates;
mod unsure;

use crate::decide::decision::{Decision, one};
use crate::decide::moment::Moment;
use crate::decide::outcome::{Could, Outcome, Verdict};
use crate::explain::answer::{Choice, LeadsTo, Question as Shown};
use crate::explain::voice::Voice;
use crate::question::Question;

pub use candidates::Candidate;

/// The most questions that are asked.
const MOST: usize = 5;
/// The most rules that a question names.
const MOST_SETTLED: usize = 3;

/// The questions, best first.
#[must_use]
pub fn next<'a>(decision: &Decision, voice: Voice<'_, 'a>) -> Vec<Shown<'a>> {
    let (moment, language) = (voice.moment, voice.language);
    let depending: Vec<&Verdict> =
        decision.verdicts.iter().filter(|v| matches!(v.outcome, Outcome::Depends { .. })).collect();
    let mut weighed: Vec<Weighed<'a>> = Vec::new();
    for (place, (candidate, behind)) in candidates::of(&depending, decision, moment).into_iter().enumerate() {
        let answers = answers::of(&candidate, moment, language);
        let mut worth = 0.0;
        let mut leads = Vec::new();
        for answer in &answers {
            let (gain, leads_to) = tried(answer, &behind, moment);
            worth += gain * answer.share;
            leads.push(leads_to);
        }
        if worth > 0.0 {
            weighed.push(Weighed { worth: worth / f64::from(candidate.cost()), place, candidate, answers, leads });
        }
    }
    weighed.sort_by(|a, b| {
        let by_catalogue = a.candidate.fact().cmp(&b.candidate.fact());
        b.worth.total_cmp(&a.worth).then(by_catalogue).then(a.place.cmp(&b.place))
    });
    // What the caller began to say comes first.
    let mut questions = unsure::of(&depending, voice);
    let asked: Vec<String> = questions.iter().map(|question| question.fact.clone()).collect();
    let is_new = |name: &str| !asked.iter().any(|fact| fact.split(" or ").any(|part| part == name));
    let others = weighed.into_iter().filter(|w| is_new(&w.candidate.name(moment)));
    questions.extend(others.map(|w| shown(&w.candidate, w.answers, w.leads, voice)));
    questions.truncate(MOST);
    questions
}

/// A question with what its answers would settle.
struct Weighed<'a> {
    /// What it settles, for what it costs.
    worth: f64,
    place: usize,
    candidate: Candidate,
    answers: Vec<answers::Answer>,
    leads: Vec<Vec<LeadsTo<'a>>>,
}

/// What an answer is worth, and what becomes of the rules that depend.
fn tried<'a>(answer: &answers::Answer, depending: &[&Verdict], moment: &Moment<'a>) -> (f64, Vec<LeadsTo<'a>>) {
    let Some(question) = &answer.then else { return (0.0, Vec::new()) };
    let question: &Question = question;
    let then = Moment::new(moment.set, moment.book, question, moment.day);
    let mut worth = 0.0;
    let mut leads = Vec::new();
    for verdict in depending {
        let Some(info) = moment.set.rules.get(verdict.rule as usize) else { continue };
        let name = match one(verdict.at, &then) {
            None | Some(Outcome::No) => "no",
            Some(Outcome::Applies) => "applies",
            Some(Outcome::Held(_)) => "held",
            Some(Outcome::Depends { .. }) => "depends",
        };
        if name != "depends" {
            let weight = f64::from(8 * info.urgency + 10 * info.impact);
            let share = match verdict.outcome {
                Outcome::Depends { could: Could::BeHeld, .. } => 0.25,
                _ => 1.0,
            };
            worth += weight * share;
        }
        leads.push(LeadsTo { rule: &info.id, outcome: name });
    }
    (worth, leads)
}

fn shown<'a>(
    candidate: &Candidate,
    answers: Vec<answers::Answer>,
    leads: Vec<Vec<LeadsTo<'a>>>,
    voice: Voice<'_, 'a>,
) -> Shown<'a> {
    let (moment, language) = (voice.moment, voice.language);
    let mut settles: Vec<&str> = Vec::new();
    for lead in leads.iter().flatten().filter(|lead| lead.outcome != "depends") {
        if settles.len() < MOST_SETTLED && !settles.contains(&lead.rule) {
            settles.push(lead.rule);
        }
    }
    let mut choices: Vec<Choice<'_>> = answers
        .into_iter()
        .zip(leads)
        .map(|(answer, leads)| Choice {
            text: answer.text,
            pointer: Some(answer.pointer),
            value: Some(answer.value),
            leads_to: leads.into_iter().filter(|lead| settles.contains(&lead.rule)).collect(),
        })
        .collect();
    choices.push(Choice {
        text: crate::fact::choice_names::CANT_TELL.get(language).to_owned(),
        pointer: None,
        value: None,
        leads_to: Vec::new(),
    });
    let (text, look) = candidate.words(moment, language);
    Shown { fact: candidate.name(moment), text, look, pointer: candidate.pointer(moment), answers: choices, settles }
}
