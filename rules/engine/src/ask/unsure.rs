//! What is asked of words that could be one of a few signs.

use serde_json::json;

use super::{MOST_SETTLED, answers, tried};
use crate::decide::outcome::Verdict;
use crate::explain::answer::{Choice, Question as Shown};
use crate::explain::voice::Voice;
use crate::explain::words::pick;

/// The most of them: other questions have their place, too.
const MOST_UNSURE: usize = 2;
/// The most of the caller's words that a question repeats, in letters.
const MOST_REPEATED: usize = 80;

/// A question for each run of words that could be one of a few signs, the first two.
pub(super) fn of<'a>(depending: &[&Verdict], voice: Voice<'_, 'a>) -> Vec<Shown<'a>> {
    let unsure = voice.moment.question.heard.iter().flat_map(|heard| &heard.unsure);
    unsure.take(MOST_UNSURE).map(|(text, signs)| one(text, signs, depending, voice)).collect()
}

fn one<'a>(text: &str, signs: &[u16], depending: &[&Verdict], voice: Voice<'_, 'a>) -> Shown<'a> {
    let (moment, language) = (voice.moment, voice.language);
    let mut settles: Vec<&str> = Vec::new();
    let (mut choices, mut looks) = (Vec::new(), Vec::new());
    for sign in signs {
        let Some(entry) = moment.set.pack.signs.get(usize::from(*sign)).map(|filed| &filed.entry) else { continue };
        let seen = answers::sign_seen(*sign, moment, language);
        let (_, leads) = tried(&seen, depending, moment);
        let settled = leads.iter().filter(|lead| lead.outcome != "depends").map(|lead| lead.rule);
        for rule in settled {
            if settles.len() < MOST_SETTLED && !settles.contains(&rule) {
                settles.push(rule);
            }
        }
        looks.push(format!("{}: {}", entry.name.get(language), entry.look.get(language)));
        choices.push(Choice {
            text: entry.name.get(language).to_owned(),
            pointer: Some(seen.pointer),
            value: Some(json!({"sign": entry.id.value})),
            leads_to: leads,
        });
    }
    for choice in &mut choices {
        choice.leads_to.retain(|lead| settles.contains(&lead.rule));
    }
    choices.push(Choice {
        text: crate::fact::choice_names::CANT_TELL.get(language).to_owned(),
        pointer: None,
        value: None,
        leads_to: Vec::new(),
    });
    let said: String = text.chars().take(MOST_REPEATED).collect();
    let fact = signs.iter().map(|sign| format!("signs has {}", moment.set.names.signs.name(*sign)));
    Shown {
        fact: fact.collect::<Vec<_>>().join(" or "),
        text: pick(language, "You say “{}”. Which of these is it?", "Dice «{}». ¿Cuál de estos es?")
            .replace("{}", &said),
        look: looks.join(" "),
        pointer: "/condition/signs".to_owned(),
        answers: choices,
        settles,
    }
}
