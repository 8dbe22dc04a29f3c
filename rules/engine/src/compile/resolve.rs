//! Rules as the set holds them: ids and literals resolved, once for all plants.

use super::names::Names;
use super::report::Report;
use super::rule::{After, Apart, Blocks, JobKind, Repeat, RuleInfo, Subject};
use super::set::MaterialInfo;
use super::typing::{self, Mistake};
use super::window::unreadable;
use crate::lang::ast::Span;
use crate::lang::parse;
use crate::pack::material::Hazard;
use crate::pack::rule::{ApartEntry, RepeatEntry};
use crate::pack::shapes::AllOr;
use crate::pack::{Filed, Pack, RuleEntry};
use crate::unit::{Dimension, Unit};

pub(super) fn unique<T: Ord>(list: &mut Vec<T>) {
    list.sort_unstable();
    list.dedup();
}

pub(super) fn separations(file: &str, entries: &[ApartEntry], names: &Names, report: &mut Report<'_>) -> Vec<Apart> {
    let mut out = Vec::new();
    for entry in entries {
        let found = [
            entry
                .material
                .as_ref()
                .and_then(|id| report.id(file, id, &names.materials, "material"))
                .map(Subject::Material),
            entry.class.as_ref().and_then(|id| report.id(file, id, &names.classes, "class")).map(Subject::Class),
            entry.job.as_ref().and_then(|id| report.id(file, id, &names.jobs, "job")).map(Subject::Job),
        ];
        out.extend(found.into_iter().flatten().map(|from| Apart { from, days: entry.days }));
    }
    out
}

pub(super) fn rule_info(
    filed: &Filed<RuleEntry>,
    pack: &Pack,
    names: &Names,
    materials: &[MaterialInfo],
    report: &mut Report<'_>,
) -> RuleInfo {
    let (file, entry) = (&filed.file, &filed.entry);
    report.ids(file, entry.whom.plant.as_slice(), &names.plants, "plant");
    if let Some(AllOr::These(plants)) = &entry.whom.plants {
        report.ids(file, plants, &names.plants, "plant");
    }
    let used = report.ids(file, &entry.materials, &names.materials, "material");
    let mut cautions = report.ids(file, &entry.cautions, &names.cautions, "caution");
    let mut apart = separations(file, &entry.keep_apart, names, report);
    let mut classes = Vec::new();
    let mut hazard = Hazard::None;
    for number in &used {
        if let (Some(info), Some(written)) =
            (materials.get(usize::from(*number)), pack.materials.get(usize::from(*number)))
        {
            classes.extend(&info.classes);
            hazard = hazard.max(info.hazard);
            // Faults of these fields stand at the material; here they only come along.
            let mut quiet = Report::new(pack);
            cautions.extend(quiet.ids(&written.file, &written.entry.cautions, &names.cautions, "caution"));
            apart.extend(separations(&written.file, &written.entry.keep_apart, names, &mut quiet));
        }
    }
    unique(&mut classes);
    let mut seen = Vec::new();
    cautions.retain(|c| {
        !seen.contains(c) && {
            seen.push(*c);
            true
        }
    });
    unique(&mut apart);
    let mut order = |list: &[crate::pack::At<crate::pack::shapes::OrderEntry>]| -> Vec<(u32, u16)> {
        list.iter()
            .filter_map(|item| report.rule(file, item, &item.value.rule, names).map(|rule| (rule, item.value.days)))
            .collect()
    };
    let (after, before) = (order(&entry.after), order(&entry.before));
    let clashes = entry.clashes.iter().filter_map(|id| report.rule(file, id, &id.value, names)).collect();
    let alternate = entry.alternate.as_ref().and_then(|alternate| {
        let other = report.rule(file, &alternate.rule, &alternate.rule.value, names)?;
        let (gap, _) = report.days(file, &alternate.gap)?;
        // Named first is the one that says so; of two that both do, the smaller id: the order of files decides nothing.
        let partner = &pack.rules.get(other as usize)?.entry;
        Some((other, gap, partner.alternate.is_none() || entry.id.value < partner.id.value))
    });
    let spoken = pack.laid.spoken.get(&entry.id.value);
    RuleInfo {
        id: entry.id.value.clone(),
        kind: entry.kind,
        job: entry.job.as_ref().and_then(|job| report.id(file, job, &names.jobs, "job")),
        job_kind: entry.job.as_ref().map(|job| JobKind::of(&job.value)).unwrap_or_default(),
        nitrogen: classes.iter().any(|class| names.classes.name(*class) == "nitrogen"),
        burns: classes.iter().any(|class| matches!(names.classes.name(*class), "oil" | "soap" | "sulphur")),
        manner: entry.manner,
        urgency: report.grade(file, &entry.id, "urgency", entry.rank.urgency),
        impact: report.grade(file, &entry.id, "impact", entry.rank.impact),
        evidence: entry.evidence,
        strength: entry.strength,
        materials: used,
        classes,
        hazard,
        cautions,
        sources: report.ids(file, &entry.sources, &names.sources, "source"),
        after,
        before,
        apart,
        clashes,
        repeat: entry.repeat.as_ref().map(|r| repeat(file, r, report)).unwrap_or_default(),
        alternate,
        blocks: entry.blocks.as_ref().map(|blocks| Blocks {
            jobs: report.ids(file, &blocks.jobs, &names.jobs, "job"),
            materials: report.ids(file, &blocks.materials, &names.materials, "material"),
            classes: report.ids(file, &blocks.classes, &names.classes, "class"),
            rules: blocks.rules.iter().filter_map(|id| report.rule(file, id, &id.value, names)).collect(),
            plants: report.ids(file, &blocks.plants, &names.plants, "plant"),
        }),
        expect: entry
            .expect
            .iter()
            .filter_map(|expect| {
                let what = report.id(file, &expect.what, &names.outlooks, "outlook")?;
                Some((what, report.after(file, &expect.after)?))
            })
            .collect(),
        strict: entry.strict,
        of_law: entry.law.is_some(),
        emergency: entry.emergency.is_some(),
        withheld: pack.laid.withheld.contains_key(&entry.id.value),
        layer: spoken.map_or(0, |spoken| spoken.by),
        also: spoken.map_or_else(Vec::new, |spoken| {
            let name = |number: &usize| pack.laid.layers.get(*number).map(|layer| layer.name.clone());
            spoken.also.iter().filter_map(name).collect()
        }),
    }
}

fn repeat(file: &str, entry: &RepeatEntry, report: &mut Report<'_>) -> Repeat {
    Repeat {
        every: entry.every.as_ref().and_then(|every| report.days(file, every)),
        at_most: entry
            .at_most
            .as_ref()
            .and_then(|most| report.days(file, &most.within).map(|(days, _)| (most.times, days))),
    }
}

impl Report<'_> {
    /// The `after` of an expectation.
    fn after(&mut self, file: &str, text: &crate::pack::At<String>) -> Option<After> {
        let whole = Span::new(0, text.value.len());
        let read = match parse::after(&text.value) {
            Ok(read) => read,
            Err(fault) => {
                self.mistake(file, text, &unreadable(fault));
                return None;
            }
        };
        let unit = Unit::find(&read.unit);
        match unit.map(|u| u.dimension) {
            Some(Dimension::HeatSum) => {
                let to = typing::unit("°Cd");
                let unit = unit?;
                Some(After::Heat(unit.convert(read.from, to), unit.convert(read.to, to)))
            }
            Some(Dimension::Duration) => self.days(file, text).map(|(from, to)| After::Days(from, to)),
            _ => {
                let mistake =
                    Mistake::new("wrong-unit", whole, format!("`{}` is neither days nor a heat sum", text.value));
                self.mistake(file, text, &mistake.help("such as `7..14 days` or `550 °Cd`"));
                None
            }
        }
    }
}
