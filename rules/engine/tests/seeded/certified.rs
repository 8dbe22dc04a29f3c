//! Certificates against thousands of questions drawn at random: none may have what a certificate says never comes.

use chrono::{Days, NaiveDate};
use lammas_engine::check::{check_and_prove, reference_places};
use lammas_engine::compile::set::Set;
use lammas_engine::decide::decision::decide;
use lammas_engine::decide::moment::Moment;
use lammas_engine::decide::outcome::Outcome;
use lammas_engine::question::Question;
use lammas_engine::question::said::Said;
use lammas_engine::question::understand::understand;
use serde_json::json;

use super::defects::KINDS;
use super::garden::{Draws, Garden};

/// Questions that are drawn for one certificate.
const QUESTIONS: usize = 1500;

/// A question about the rose of the small set, drawn at random: any place, day and facts.
fn draw(set: &Set, draws: &mut Draws) -> Question {
    let places = reference_places();
    let place = &places[draws.below(places.len())];
    let date = NaiveDate::from_ymd_opt(2025, 1, 1).expect("a date") + Days::new(draws.below(365) as u64);
    let mut signs = Vec::new();
    for sign in ["spent-blooms", "aphids", "white-powder", "scorched-petals"] {
        if draws.below(2) == 0 {
            signs.push(json!({"sign": sign, "share_pct": draws.below(101)}));
        }
    }
    let moisture = ["dry", "moist", "wet"][draws.below(3)];
    let mut said = json!({
        "date": date,
        "plant": {"type": "rose", "age_years": draws.below(60) as f64 / 10.0,
            "traits": {"flowering": ["once", "repeat"][draws.below(2)]}},
        "site": {"soil": {"moisture": moisture, "ec_ds_m": draws.below(50) as f64, "ph": 5.0 + draws.below(40) as f64 / 10.0},
            "wind": ["sheltered", "open", "windy"][draws.below(3)]},
        "condition": {"signs": signs, "looked_closely": true, "vigour": ["weak", "normal", "strong"][draws.below(3)]},
        "water": {"method": ["can", "drip", "basin", "sprinkler"][draws.below(4)]},
    });
    if draws.below(3) > 0 {
        said["history"] = json!([]);
    }
    let said: Said = serde_json::from_value(said).expect("a question");
    understand(&said, set, std::sync::Arc::clone(&place.climate), None).expect("understood")
}

#[test]
fn no_question_has_what_a_certificate_says_never_comes() {
    let mini = super::mini();
    let mut draws = Draws(77);
    let mut judged = 0;
    for kind in KINDS.iter().filter(|kind| ["never-true", "never-due", "never-applies", "masked"].contains(&kind.code))
    {
        for _ in 0..4 {
            let mut garden: Garden = mini.clone();
            if (kind.plant)(&mut garden, &mut draws).is_none() {
                continue;
            }
            let (checked, _) = check_and_prove(&garden.files());
            let Some(set) = &checked.set else { continue };
            // What says the same as another still applies beside it; a hold that is never true holds nothing back.
            let says_never = |message: &str| !message.contains("says nothing new") && !message.starts_with("this hold");
            let certified = checked.faults.iter().filter(|fault| says_never(&fault.message));
            let claims: Vec<(&str, u32)> = certified
                .filter_map(|fault| {
                    let id = fault.certificate.as_ref()?.claim.split('`').nth(1)?;
                    Some((fault.message.as_str(), set.names.rules.wide(id)?))
                })
                .collect();
            for _ in 0..QUESTIONS {
                let question = draw(set, &mut draws);
                let moment = Moment::new(set, &set.plants[0], &question, question.day);
                let decision = decide(&moment);
                for (claim, rule) in &claims {
                    let applies = decision.verdicts.iter().any(|v| v.rule == *rule && v.outcome == Outcome::Applies);
                    assert!(!applies, "{claim}: {}", question.asked);
                    judged += 1;
                }
            }
        }
    }
    assert!(judged > 20 * QUESTIONS, "{judged}");
}
