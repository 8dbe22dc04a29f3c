//! Rules that never come because of others: whenever they are due another is there too, and either goes before them or
//! says the very same work.

use super::Prover;
use super::confirm::{self, is_held, is_there};
use super::everywhere::certificate;
use super::formula::Formula;
use super::meaning;
use super::search::{Aim, Found, Search};
use super::settled::{apart_days, is_ordered, jobs_opposed, says_clash};
use crate::compile::rule::RuleInfo;
use crate::decide::opposed::safety;
use crate::fault::Fault;
use crate::pack::expression::place;
use crate::pack::rule::Kind;

const CODE: &str = "masked";

/// How one rule hides another.
#[derive(Clone, Copy, PartialEq, Eq)]
enum How {
    /// It goes before it, on every day.
    Beats,
    /// It says the same work.
    SaysTheSame,
}

/// Looks at every pair of which one could hide the other.
pub(crate) fn look(prover: &Prover<'_>, faults: &mut Vec<Fault>) {
    let infos = &prover.set.rules;
    let works: Vec<String> = prover.set.pack.rules.iter().map(|filed| meaning::of_work(&filed.entry)).collect();
    for (number, info) in (0_u32..).zip(infos).filter(|(_, info)| info.kind == Kind::Task) {
        for (other, by) in (0_u32..).zip(infos).filter(|(other, by)| *other != number && by.blocks.is_none()) {
            let how = if surely_beats((other, by), (number, info)) {
                How::Beats
            } else if by.kind == Kind::Task && works.get(number as usize) == works.get(other as usize) {
                How::SaysTheSame
            } else {
                continue;
            };
            if is_always_there(prover, other, number)
                && let Some(fault) = hidden(prover, number, other, how)
            {
                faults.push(fault);
                break;
            }
        }
    }
}

/// Whether one rule goes before the other whenever both are due, whatever their scores.
fn surely_beats(by: (u32, &RuleInfo), ours: (u32, &RuleInfo)) -> bool {
    if by.1.kind == Kind::Know || safety(by.1) >= safety(ours.1) {
        return false;
    }
    let clash = (says_clash(by, ours) || jobs_opposed(by.1, ours.1)) && !is_ordered(by, ours);
    clash || (by.1.kind != Kind::Avoid && apart_days(by, ours).is_some())
}

/// Whether nothing but its own condition and season takes a rule away: no works done, no turns, no third rule.
fn is_always_there(prover: &Prover<'_>, rule: u32, but: u32) -> bool {
    let Some(info) = prover.set.rules.get(rule as usize) else { return false };
    let by_history = info.repeat.every.is_some()
        || info.repeat.at_most.is_some()
        || info.alternate.is_some()
        || info.after.iter().any(|(_, days)| *days > 0)
        || info.apart.iter().any(|apart| apart.days > 0);
    let beaten = (0_u32..).zip(&prover.set.rules).any(|(third, by)| {
        third != rule
            && third != but
            && by.kind != Kind::Know
            && by.blocks.is_none()
            && safety(by) <= safety(info)
            && (says_clash((third, by), (rule, info))
                || jobs_opposed(by, info)
                || apart_days((third, by), (rule, info)).is_some())
    });
    !by_history && !beaten
}

fn hidden(prover: &Prover<'_>, rule: u32, by: u32, how: How) -> Option<Fault> {
    let (ours, theirs) = (prover.set.rules.get(rule as usize)?, prover.set.rules.get(by as usize)?);
    let (own, other) = (ours.id.as_str(), theirs.id.as_str());
    // In no plant it is due without the other.
    let mut cells = 0_u64;
    let mut stands = Vec::new();
    for (ground, at) in prover.stands(rule) {
        let rules = ground.rules();
        let beside = (0_u32..).zip(&ground.book.rules).find(|(_, r)| r.rule == by).map(|(at, _)| at)?;
        let without = Formula::All(vec![rules.applies(at, true), rules.applies(beside, false)]);
        let found = Search::of(ground, Aim::Certificate, &without).is_possible();
        prover.note(found, CODE, &[own, other]);
        let Found::No { cells: judged } = found else { return None };
        cells = cells.saturating_add(judged);
        stands.push((ground, at, beside));
    }
    let mut witness = None;
    for (ground, at, beside) in stands {
        let search = Search::of(ground, Aim::Witness, &ground.rules().applies(at, true));
        let (found, shown) = confirm::witness(&search, ground, &[at, beside], &mut |answer| match how {
            How::Beats => is_held(answer, own, &["clash", "apart"], Some(other))
                .then(|| format!("`{own}` is due and held by `{other}`")),
            How::SaysTheSame => (is_there(answer, own) && is_there(answer, other))
                .then(|| format!("`{own}` and `{other}` are both advised, with the same work")),
        });
        prover.note(found, CODE, &[own, other]);
        witness = shown;
        if witness.is_some() {
            break;
        }
    }
    let filed = |rule: u32| prover.set.pack.rules.get(rule as usize);
    let (here, there) = (filed(rule)?, filed(by)?);
    let (message, help) = match how {
        How::Beats => (
            format!("`{own}` never applies: whenever it is due `{other}` is due too and goes before it"),
            "narrow the other, put the two in order, or take this one out",
        ),
        How::SaysTheSame => (
            format!("`{own}` says nothing new: whenever it is due `{other}` is due too, with the same work"),
            "take it out, or let it say what is different",
        ),
    };
    let mut fault = Fault::warning(CODE, place(&here.file, &here.entry.id), message).help(help);
    fault.related.push((place(&there.file, &there.entry.id), "the other stands here".to_owned()));
    fault.witness = Some(witness?);
    fault.certificate = Some(certificate(format!("`{own}` is never due without `{other}`"), cells));
    Some(fault)
}

#[cfg(test)]
pub(crate) const CASE: crate::check::cases::Case = crate::check::cases::Case {
    code: CODE,
    trips: &[(
        "rules/rose.yaml",
        "when: \"not climate.frost_free or water.interval < 8 days\"",
        "when: \"water.interval >= 1 day\"\n  clashes: [rose.oil-aphids]",
    )],
    also: &[],
    at: "rose.oil-aphids\n",
    says: "rules/rose.yaml:59:7: warning[masked]: `rose.oil-aphids` never applies: whenever it is due `rose.soak` is due too and goes before it\n  help: narrow the other, put the two in order, or take this one out\n  rules/rose.yaml:47:7: the other stands here",
    just_not: &[(
        "rules/rose.yaml",
        "when: \"not climate.frost_free or water.interval < 8 days\"",
        "when: \"water.interval > 1 day\"\n  clashes: [rose.oil-aphids]",
    )],
};
