//! Facts that could be asked: unknown, with a question, and read by a rule that depends.

use lammas_agronomy::calendar::Day;

use crate::compile::term::{MarkerRef, Term};
use crate::decide::decision::Decision;
use crate::decide::moment::Moment;
use crate::decide::outcome::{Hangs, Outcome, Verdict};
use crate::decide::{causes, history, read};
use crate::explain::{term_name, words};
use crate::fact::catalogue::Fact;
use crate::fact::value::Value;
use crate::fact::wording;
use crate::pack::word::Seen;

/// A fact that could be asked.
#[derive(Clone, Debug, PartialEq)]
pub enum Candidate {
    /// A fact without arguments.
    Fact(Fact),
    /// A trait of the plant.
    Trait(u16),
    /// Whether a sign is seen.
    Sign(u16, bool),
    /// How bad a sign is.
    Severity(u16),
    /// How much of the plant shows it.
    Share(u16),
    /// What was done lately.
    History,
    /// How many days the label of a spray asks to wait before harvest: the work's place as it was told, and its day.
    LabelDays(usize, Day),
}

/// The candidates behind the rules that depend, each with the rules that hang on it.
pub(super) fn of<'v>(
    depending: &[&'v Verdict],
    decision: &Decision,
    moment: &Moment<'_>,
) -> Vec<(Candidate, Vec<&'v Verdict>)> {
    let mut out: Vec<(Candidate, Vec<&'v Verdict>)> = Vec::new();
    for verdict in depending.iter().copied() {
        let mut add = |candidate: Option<Candidate>| {
            let Some(candidate) = candidate.filter(|candidate| candidate.cost() > 0) else { return };
            match out.iter_mut().find(|(known, _)| *known == candidate) {
                Some((_, behind)) => {
                    if behind.last().is_none_or(|last| last.at != verdict.at) {
                        behind.push(verdict);
                    }
                }
                None => out.push((candidate, vec![verdict])),
            }
        };
        let Outcome::Depends { on, .. } = &verdict.outcome else { continue };
        for hangs in on {
            match hangs {
                Hangs::Probe(probe) => {
                    let term = moment.book.probes.get(*probe as usize);
                    for leaf in term.map(term_name::leaves).unwrap_or_default() {
                        if read::term(leaf, moment).value == Value::Unknown {
                            add(leaf_candidate(leaf, moment));
                        }
                    }
                }
                Hangs::Problem(_) => {
                    add(causes::look_next(&decision.causes, moment).map(|sign| sign_candidate(sign, moment)));
                }
                Hangs::History => add(Some(Candidate::History)),
                Hangs::Window => {
                    let rule = moment.book.rules.get(verdict.at as usize);
                    for window in rule.map(|r| r.windows.as_slice()).unwrap_or_default() {
                        for at in [&window.opens, &window.closes].into_iter().flatten().flatten() {
                            add(marker_candidate(&at.marker, moment));
                        }
                    }
                }
            }
        }
    }
    out
}

fn sign_candidate(sign: u16, moment: &Moment<'_>) -> Candidate {
    let hidden = moment.set.pack.signs.get(usize::from(sign)).is_some_and(|s| s.entry.seen == Seen::Hidden);
    Candidate::Sign(sign, hidden)
}

fn marker_candidate(marker: &MarkerRef, moment: &Moment<'_>) -> Option<Candidate> {
    match marker {
        MarkerRef::HeatReached { from, .. } => marker_candidate(&from.marker, moment),
        // Where a spray was told, only its label is missing.
        MarkerRef::HarvestWait if history::without_label(moment).is_some() => {
            history::without_label(moment).map(|spray| Candidate::LabelDays(spray.place, spray.day))
        }
        other => match term_name::asked_for(other)? {
            Fact::Done => Some(Candidate::History),
            // When a sign was first seen is not asked by itself.
            Fact::Since => None,
            fact => Some(Candidate::Fact(fact)),
        },
    }
}

fn leaf_candidate(leaf: &Term, moment: &Moment<'_>) -> Option<Candidate> {
    match leaf {
        Term::Trait(number) => Some(Candidate::Trait(*number)),
        Term::Sign(sign) => Some(sign_candidate(*sign, moment)),
        Term::Severity(sign) => Some(Candidate::Severity(*sign)),
        Term::Share(sign) => Some(Candidate::Share(*sign)),
        Term::RegionIs(_) => None,
        Term::Done(..) | Term::Count(..) => Some(Candidate::History),
        Term::Marker(at) | Term::DaysTo(at) | Term::DaysFrom(at) => marker_candidate(&at.marker, moment),
        Term::HeatSum { from, .. } => marker_candidate(&from.marker, moment),
        Term::Fact(Fact::WaterInterval) => Some(Candidate::Fact(Fact::SiteContainerVolume)),
        Term::Fact(Fact::WaterDepletion) => Some(Candidate::History),
        Term::Fact(fact) => Some(Candidate::Fact(*fact)),
        _ => None,
    }
}

impl Candidate {
    /// The fact of the catalogue.
    #[must_use]
    pub const fn fact(&self) -> Fact {
        match self {
            Self::Fact(fact) => *fact,
            Self::Trait(_) => Fact::PlantTrait,
            Self::Sign(..) => Fact::SignsHas,
            Self::Severity(_) => Fact::Severity,
            Self::Share(_) => Fact::Share,
            Self::History => Fact::Done,
            Self::LabelDays(..) => Fact::HarvestWait,
        }
    }

    /// What it costs the caller to find out.
    #[must_use]
    pub fn cost(&self) -> u8 {
        match self {
            Self::Sign(_, hidden) => 1 + u8::from(*hidden),
            other => other.fact().entry().cost,
        }
    }

    /// Its name, as rules write it.
    #[must_use]
    pub fn name(&self, moment: &Moment<'_>) -> String {
        let term = match self {
            Self::Fact(fact) => Term::Fact(*fact),
            Self::Trait(number) => Term::Trait(*number),
            Self::Sign(sign, _) => Term::Sign(*sign),
            Self::Severity(sign) => Term::Severity(*sign),
            Self::Share(sign) => Term::Share(*sign),
            Self::History => return "history".to_owned(),
            Self::LabelDays(..) => return "harvest_wait".to_owned(),
        };
        term_name::of(&term, moment.set, moment.book)
    }

    /// Where its answer goes.
    #[must_use]
    pub fn pointer(&self, moment: &Moment<'_>) -> String {
        match self {
            Self::Trait(number) => format!("/plant/traits/{}", moment.book.names.traits.name(*number)),
            Self::Sign(..) | Self::Severity(_) | Self::Share(_) => "/condition/signs/-".to_owned(),
            Self::History => "/history".to_owned(),
            Self::LabelDays(place, _) => format!("/history/{place}/label_days_to_harvest"),
            Self::Fact(fact) => fact.entry().pointer.to_owned(),
        }
    }

    /// The question and how to look.
    pub(super) fn words(&self, moment: &Moment<'_>, language: &str) -> (String, String) {
        let pack = &moment.set.pack;
        let sign = |number: u16| pack.signs.get(usize::from(number)).map(|s| &s.entry);
        let ask = wording::words(self.fact()).ask.as_ref();
        let (text, look) = ask.map_or(("", ""), |ask| (ask.question.get(language), ask.look.get(language)));
        match self {
            Self::Trait(number) => {
                let written = pack
                    .plants
                    .get(usize::from(moment.book.plant))
                    .and_then(|p| p.entry.traits.get(usize::from(*number)));
                (
                    written.map_or("", |t| t.ask.get(language)).to_owned(),
                    look.replace("{name}", moment.book.names.traits.name(*number)),
                )
            }
            Self::Sign(number, _) | Self::Severity(number) | Self::Share(number) => {
                let name = sign(*number).map_or("", |s| s.name.get(language));
                let how = sign(*number).map_or("", |s| s.look.get(language));
                (text.replace("{name}", name), if how.is_empty() { look.to_owned() } else { how.to_owned() })
            }
            // One question for all works: the list of what was done answers it.
            Self::History => (
                words::pick(
                    language,
                    "What was done to it in the last two months: cut, fed, watered, sprayed?",
                    "¿Qué se le ha hecho en los últimos dos meses: podas, abonos, riegos, pulverizaciones?",
                )
                .to_owned(),
                words::pick(
                    language,
                    "List each work with its day and, for a feed or a spray, what was in it.",
                    "Anote cada labor con su día y, si fue abono o pulverización, qué llevaba.",
                )
                .to_owned(),
            ),
            Self::LabelDays(_, day) => {
                let day = words::date(*day, language);
                let question = match words::is_spanish(language) {
                    false => format!("How many days before harvest does the label of the spray of {day} ask for?"),
                    true => format!("¿Cuántos días antes de cosechar pide la etiqueta del tratamiento del {day}?"),
                };
                let look = words::pick(
                    language,
                    "It stands on the label beside the crop, as days to harvest or PHI. Without it nothing is picked.",
                    "Está en la etiqueta junto al cultivo, como plazo de seguridad. Sin él no se coge nada.",
                );
                (question, look.to_owned())
            }
            Self::Fact(_) => (text.to_owned(), look.to_owned()),
        }
    }
}
