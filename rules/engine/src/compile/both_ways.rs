//! Order, clashes, turns and separations hold from both sides, whichever of them says so.

use super::names::Names;
use super::report::Report;
use super::resolve::{separations, unique};
use super::rule::{Apart, RuleInfo, Subject};
use super::set::MaterialInfo;
use crate::pack::Pack;
use crate::pack::material::Hazard;

/// A separation holds from both sides: a rule is kept as far from a material, or from a rule, as that is from the rule.
/// What the rule says itself is not said again.
pub(super) fn apart_both_ways(rules: &mut [RuleInfo], pack: &Pack, names: &Names, materials: &[MaterialInfo]) {
    let mut quiet = Report::new(pack);
    // Only what stands at the rule itself: its materials speak for themselves.
    let of_materials: Vec<Vec<Apart>> =
        pack.materials.iter().map(|m| separations(&m.file, &m.entry.keep_apart, names, &mut quiet)).collect();
    let of_rules: Vec<Vec<Apart>> =
        pack.rules.iter().map(|r| separations(&r.file, &r.entry.keep_apart, names, &mut quiet)).collect();
    let is_label = |subject: Subject| match subject {
        Subject::Material(number) => materials.get(usize::from(number)).is_some_and(|m| m.hazard >= Hazard::Label),
        Subject::Class(class) => materials.iter().any(|m| m.classes.contains(&class) && m.hazard >= Hazard::Label),
        Subject::Job(_) | Subject::Rule(_) => false,
    };
    let mut found: Vec<(usize, Apart)> = Vec::new();
    for (at, rule) in rules.iter().enumerate() {
        let own = u32::try_from(at).unwrap_or(u32::MAX);
        let days = |list: &[Apart]| {
            list.iter().filter(|apart| rule.is(apart.from, own)).map(|apart| apart.days).max().filter(|days| *days > 0)
        };
        for ((number, info), list) in (0_u16..).zip(materials).zip(&of_materials) {
            let says = |apart: &Apart| match apart.from {
                Subject::Material(material) => material == number,
                Subject::Class(class) => info.classes.contains(&class),
                Subject::Job(_) | Subject::Rule(_) => false,
            };
            if let Some(days) = days(list)
                && !rule.apart.iter().any(|apart| says(apart) && apart.days >= days)
            {
                found.push((at, Apart { from: Subject::Material(number), days }));
            }
        }
        for ((number, info), list) in (0_u32..).zip(rules.iter()).zip(&of_rules) {
            if let Some(days) = days(list)
                && number != own
                && !rule.apart.iter().any(|apart| {
                    info.is(apart.from, number) && apart.days >= days && (is_label(apart.from) || !info.is_hazardous())
                })
            {
                found.push((at, Apart { from: Subject::Rule(number), days }));
            }
        }
    }
    for (at, apart) in found {
        if let Some(rule) = rules.get_mut(at) {
            rule.apart.push(apart);
            unique(&mut rule.apart);
        }
    }
}

/// Order, clashes and turns hold from both sides, whichever of them says so.
pub(super) fn both_ways(rules: &mut [RuleInfo]) {
    let mut befores: Vec<(u32, u32, u16)> = Vec::new();
    let mut clashes: Vec<(u32, u32)> = Vec::new();
    for (own, rule) in rules.iter().enumerate() {
        let own = u32::try_from(own).unwrap_or(u32::MAX);
        befores.extend(rule.after.iter().map(|(first, days)| (*first, own, *days)));
        befores.extend(rule.before.iter().map(|(second, days)| (own, *second, *days)));
        clashes.extend(rule.clashes.iter().flat_map(|other| [(own, *other), (*other, own)]));
    }
    for (first, second, days) in befores {
        if let Some(rule) = rules.get_mut(first as usize) {
            rule.before.push((second, days));
        }
        if let Some(rule) = rules.get_mut(second as usize) {
            rule.after.push((first, days));
        }
    }
    let turns: Vec<(u32, u32, u16)> = rules
        .iter()
        .enumerate()
        .filter_map(|(own, rule)| {
            rule.alternate.map(|(other, gap, _)| (u32::try_from(own).unwrap_or(u32::MAX), other, gap))
        })
        .collect();
    for (own, other, gap) in turns {
        if let Some(rule) = rules.get_mut(other as usize)
            && rule.alternate.is_none()
        {
            rule.alternate = Some((own, gap, false));
        }
    }
    for (one, other) in clashes {
        if let Some(rule) = rules.get_mut(one as usize) {
            rule.clashes.push(other);
        }
    }
    for rule in rules {
        unique(&mut rule.before);
        unique(&mut rule.after);
        unique(&mut rule.clashes);
    }
}
