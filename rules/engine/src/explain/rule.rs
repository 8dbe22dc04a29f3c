//! A rule in plain words: for whoever wants to know what stands behind a piece of advice. No question is needed.

use super::answer::{CautionShown, EmergencyShown, RuleSet};
use super::plain::Plain;
use super::rule_answer::{
    AmountTold, BlocksShown, ForShown, GuardShown, HoldShown, Named, OrderTold, OutlookTold, OutsideShown, RuleShown,
    SeasonWindow, TypicalTold, Worded,
};
use super::{phrases, task, words};
use crate::compile::rule::RuleInfo;
use crate::compile::set::Set;
use crate::fact::choice_names::choice_name;
use crate::pack::rule::{BlocksEntry, Evidence, RuleEntry, Strength, WindowEntry};
use crate::pack::shapes::AllOr;
use crate::pack::{At, Expression, PlantEntry, WordEntry};
use crate::text::Text;

/// A rule by its id; none: the set has no such rule.
#[must_use]
pub fn shown<'a>(set: &'a Set, id: &str, language: &str) -> Option<RuleShown<'a>> {
    let number = set.rules.iter().position(|info| info.id == id)?;
    let (info, entry) = (set.rules.get(number)?, &set.pack.rules.get(number)?.entry);
    let plain = plain(set, entry, language);
    let some = |text: &Text| (!text.is_empty()).then(|| plain.text(text.get(language)));
    let named_rule = |number: u32| {
        let rule = &set.pack.rules.get(number as usize)?.entry;
        Some(Named { id: rule.id.value.clone(), name: rule.title.get(language).to_owned() })
    };
    let order = |(rule, days): &(u32, u16)| Some(OrderTold { rule: named_rule(*rule)?, days: *days });
    let windows: Vec<SeasonWindow> = entry.window.0.iter().map(|window| season_window(window, plain)).collect();
    Some(RuleShown {
        id: info.id.clone(),
        rule_set: RuleSet::of(set.layer_of(info)?),
        kind: entry.kind,
        job: entry.job.as_ref().map(|id| word(id, set.pack.jobs.iter().map(|j| &j.entry), language)),
        title: entry.title.get(language).to_owned(),
        whom: whom(set, entry, plain),
        season: season(&windows, language),
        windows,
        when: entry.when.as_ref().map(|when| worded(when, plain)),
        holds: entry
            .hold
            .iter()
            .map(|hold| HoldShown {
                condition: worded(&hold.condition, plain),
                because: plain.text(hold.because.get(language)),
                strict: hold.strict || entry.strict,
            })
            .collect(),
        guards: guards(set, number, language),
        blocks: entry.blocks.as_ref().map(|blocks| self::blocks(blocks, set, language)),
        outside: OutsideShown {
            early: some(&entry.outside.early),
            late: some(&entry.outside.late),
            never: some(&entry.outside.never),
        },
        why: plain.text(entry.why.get(language)),
        steps: entry.steps.get(language).iter().map(|step| plain.text(step)).collect(),
        materials: phrases::materials(info, &set.pack, language),
        amounts: amounts(entry, set, plain),
        expect: entry
            .expect
            .iter()
            .map(|expect| OutlookTold {
                what: word(&expect.what, set.pack.outlooks.iter().map(|o| &o.entry), language),
                after: in_language(&expect.after.value, language),
            })
            .collect(),
        after: info.after.iter().filter_map(order).collect(),
        before: info.before.iter().filter_map(order).collect(),
        keep_apart: phrases::apart(info, &set.pack, language),
        repeat: task::repeat(info),
        cautions: cautions(info, set, language),
        professional: some(&entry.professional),
        emergency: entry
            .emergency
            .as_ref()
            .map(|emergency| EmergencyShown { call: emergency.call.get(language).to_owned() }),
        evidence: entry.evidence,
        evidence_words: choice_words("evidence", evidence_id(entry.evidence), language),
        strength: entry.strength,
        strength_words: choice_words("strength", strength_id(entry.strength), language),
        urgency: entry.rank.urgency,
        impact: entry.rank.impact,
        sources: phrases::sources(&info.sources, &set.pack),
        notice: words::notice(language),
    })
}

/// The words of a rule; its traits are those of the one plant that it is for.
fn plain<'a>(set: &'a Set, entry: &RuleEntry, language: &'a str) -> Plain<'a> {
    let listed = match &entry.whom.plants {
        Some(AllOr::These(ids)) => ids.first(),
        _ => None,
    };
    let id = entry.whom.plant.as_ref().or(listed).map(|id| id.value.as_str());
    Plain { set, plant: id.and_then(|id| plant(set, id)), language }
}

fn plant<'a>(set: &'a Set, id: &str) -> Option<&'a PlantEntry> {
    set.pack.plants.iter().map(|filed| &filed.entry).find(|plant| plant.id.value == id)
}

fn worded(written: &Expression, plain: Plain<'_>) -> Worded {
    Worded { rule: written.text().to_owned(), words: plain.condition(written) }
}

fn whom(set: &Set, entry: &RuleEntry, plain: Plain<'_>) -> ForShown {
    let whom = &entry.whom;
    let ids: Vec<&At<String>> = match &whom.plants {
        Some(AllOr::These(ids)) => whom.plant.iter().chain(ids).collect(),
        _ => whom.plant.iter().collect(),
    };
    let problem = whom.problem.as_ref().and_then(|id| {
        let found = set.pack.problems.iter().find(|p| p.entry.id.value == id.value)?;
        Some(Named { id: id.value.clone(), name: found.entry.name.get(plain.language).to_owned() })
    });
    ForShown {
        every_plant: ids.is_empty(),
        plants: ids.into_iter().map(|id| plant_named(set, &id.value, plain.language)).collect(),
        problem,
        traits: whom.traits.as_ref().map(|traits| worded(traits, plain)),
    }
}

fn plant_named(set: &Set, id: &str, language: &str) -> Named {
    let name = plant(set, id).map_or(id, |plant| plant.name.get(language));
    Named { id: id.to_owned(), name: name.to_owned() }
}

fn season_window(window: &WindowEntry, plain: Plain<'_>) -> SeasonWindow {
    let side = |side: &Option<At<String>>| {
        side.as_ref().map(|side| Worded { rule: side.value.clone(), words: plain.side(&side.value) })
    };
    let (opens, best, closes) = (side(&window.opens), side(&window.best), side(&window.closes));
    let pick = |en, es| words::pick(plain.language, en, es);
    let mut parts = Vec::new();
    for (lead, side) in
        [(pick("opens", "se abre"), &opens), (pick("best", "lo mejor"), &best), (pick("closes", "se cierra"), &closes)]
    {
        if let Some(side) = side {
            parts.push(format!("{lead}: {}", side.words));
        }
    }
    let all_year_if_absent = window.if_absent.is_some();
    if all_year_if_absent {
        parts.push(pick("all year where these never come", "todo el año donde eso no llega nunca").to_owned());
    }
    SeasonWindow { opens, best, closes, all_year_if_absent, words: parts.join(" · ") }
}

fn season(windows: &[SeasonWindow], language: &str) -> String {
    if windows.is_empty() {
        return words::pick(language, "at any time of the year", "en cualquier época del año").to_owned();
    }
    windows.iter().map(|window| window.words.as_str()).collect::<Vec<_>>().join(words::pick(
        language,
        "; and again: ",
        "; y otra vez: ",
    ))
}

/// The guards that bind a rule, for whichever plant.
fn guards(set: &Set, number: usize, language: &str) -> Vec<GuardShown> {
    let mut found: Vec<u32> = Vec::new();
    for book in &set.plants {
        for rule in book.rules.iter().filter(|rule| rule.rule as usize == number) {
            for guard in rule.guards.iter().filter_map(|at| book.rules.get(*at as usize)) {
                if !found.contains(&guard.rule) {
                    found.push(guard.rule);
                }
            }
        }
    }
    found.sort_unstable();
    found
        .into_iter()
        .filter_map(|guard| set.pack.rules.get(guard as usize))
        .map(|filed| {
            let plain = plain(set, &filed.entry, language);
            GuardShown {
                id: filed.entry.id.value.clone(),
                title: filed.entry.title.get(language).to_owned(),
                when: filed.entry.when.as_ref().map(|when| worded(when, plain)),
                windows: filed.entry.window.0.iter().map(|window| season_window(window, plain)).collect(),
                why: plain.text(filed.entry.why.get(language)),
            }
        })
        .collect()
}

fn blocks(blocks: &BlocksEntry, set: &Set, language: &str) -> BlocksShown {
    let pack = &set.pack;
    let all = |ids: &[At<String>], name: &dyn Fn(&str) -> Option<String>| {
        ids.iter()
            .map(|id| Named { id: id.value.clone(), name: name(&id.value).unwrap_or_else(|| id.value.clone()) })
            .collect()
    };
    let name = |text: &Text| text.get(language).to_owned();
    BlocksShown {
        jobs: all(&blocks.jobs, &|id| pack.jobs.iter().find(|e| e.entry.id.value == id).map(|e| name(&e.entry.name))),
        materials: all(&blocks.materials, &|id| {
            pack.materials.iter().find(|e| e.entry.id.value == id).map(|e| name(&e.entry.name))
        }),
        classes: all(&blocks.classes, &|id| {
            pack.classes.iter().find(|e| e.entry.id.value == id).map(|e| name(&e.entry.name))
        }),
        rules: all(&blocks.rules, &|id| {
            pack.rules.iter().find(|e| e.entry.id.value == id).map(|e| name(&e.entry.title))
        }),
        plants: all(&blocks.plants, &|id| plant(set, id).map(|plant| name(&plant.name))),
    }
}

fn amounts(entry: &RuleEntry, set: &Set, plain: Plain<'_>) -> Vec<AmountTold> {
    entry
        .amount
        .iter()
        .map(|amount| AmountTold {
            what: amount.what.get(plain.language).to_owned(),
            quantity: amount.call.as_ref().map(|call| call.value.clone()),
            typical: amount.typical.as_ref().map(|typical| TypicalTold {
                min: typical.min,
                max: typical.max,
                unit: super::number::unit_words(&typical.unit.value).to_owned(),
            }),
            at_most_of: amount.max_of.as_ref().and_then(|id| {
                let found = set.pack.materials.iter().find(|m| m.entry.id.value == id.value)?;
                Some(Named { id: id.value.clone(), name: found.entry.name.get(plain.language).to_owned() })
            }),
        })
        .collect()
}

fn cautions(info: &RuleInfo, set: &Set, language: &str) -> Vec<CautionShown> {
    info.cautions
        .iter()
        .filter_map(|number| set.pack.cautions.get(usize::from(*number)))
        .map(|caution| CautionShown {
            id: caution.entry.id.value.clone(),
            kind: caution.entry.kind,
            text: caution.entry.text.get(language).to_owned(),
        })
        .collect()
}

fn word<'a>(id: &At<String>, mut among: impl Iterator<Item = &'a WordEntry>, language: &str) -> Named {
    let name = among.find(|entry| entry.id.value == id.value).map_or(id.value.as_str(), |e| e.name.get(language));
    Named { id: id.value.clone(), name: name.to_owned() }
}

/// `7..14 days` and `550 °Cd` as people write them.
fn in_language(after: &str, language: &str) -> String {
    let dashed = after.replace("..", "–");
    if !words::is_spanish(language) {
        return dashed;
    }
    dashed.replace("weeks", "semanas").replace("week", "semana").replace("days", "días").replace("day", "día")
}

fn choice_words(list: &str, id: &str, language: &str) -> &'static str {
    choice_name(list, id).map_or("", |words| words.get(language))
}

const fn evidence_id(evidence: Evidence) -> &'static str {
    match evidence {
        Evidence::Consensus => "consensus",
        Evidence::Trial => "trial",
        Evidence::CommonPractice => "common-practice",
        Evidence::Doubtful => "doubtful",
    }
}

const fn strength_id(strength: Strength) -> &'static str {
    match strength {
        Strength::Do => "do",
        Strength::Consider => "consider",
        Strength::Avoid => "avoid",
    }
}
