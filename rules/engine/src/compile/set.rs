//! The compiled set, and how a pack becomes one.

use super::amount;
use super::book::{Habit, PlantBook, ProblemInfo, StageInfo, TraitInfo};
use super::names::{Index, Names, PlantNames};
use super::report::Report;
use super::rule::{After, Apart, Blocks, Hold, JobKind, PlantRule, Repeat, RuleInfo, Subject};
use super::short::Shorts;
use super::sieve::Sieve;
use super::source::Source;
use super::term::Condition;
use super::typing::{self, Mistake, Pool, Scope};
use super::window::{self, unreadable};
use crate::fault::Fault;
use crate::lang::ast::Span;
use crate::lang::parse;
use crate::pack::material::{Hazard, Per};
use crate::pack::rule::{ApartEntry, RepeatEntry};
use crate::pack::shapes::AllOr;
use crate::pack::{Expression, Filed, MaterialEntry, Pack, PlantEntry, ProblemEntry, RuleEntry};
use crate::unit::{Dimension, Unit};

/// A material, resolved.
#[derive(Clone, Debug)]
pub struct MaterialInfo {
    /// Its classes.
    pub classes: Vec<u16>,
    /// How dangerous it is.
    pub hazard: Hazard,
    /// The most of it: on what, how much, in which unit.
    pub maximum: Vec<(Per, f64, &'static Unit)>,
}

/// A set that can be asked.
#[derive(Clone, Debug)]
pub struct Set {
    /// As written: texts, sources, vocabularies.
    pub pack: Pack,
    /// Names into numbers.
    pub names: Names,
    /// What is the same for every plant.
    pub rules: Vec<RuleInfo>,
    /// Materials.
    pub materials: Vec<MaterialInfo>,
    /// What concerns each plant.
    pub plants: Vec<PlantBook>,
    /// SHA-256 over the canonical form.
    pub sha256: String,
}

/// Compiles a pack. Every fault that stands in the way is returned; the set is there if there is none of weight error.
#[must_use]
pub fn compile(pack: Pack) -> (Option<Set>, Vec<Fault>) {
    let names = Names::of(&pack);
    let mut report = Report::new(&pack);
    let materials: Vec<MaterialInfo> = pack.materials.iter().map(|m| material(m, &names, &mut report)).collect();
    let mut rules: Vec<RuleInfo> =
        pack.rules.iter().map(|r| rule_info(r, &pack, &names, &materials, &mut report)).collect();
    both_ways(&mut rules);
    apart_both_ways(&mut rules, &pack, &names, &materials);
    let plants: Vec<PlantBook> = pack
        .plants
        .iter()
        .enumerate()
        .map(|(number, plant)| {
            let number = u16::try_from(number).unwrap_or(u16::MAX);
            book(number, plant, &pack, &names, &rules, &mut report)
        })
        .collect();
    let faults = report.faults();
    if faults.iter().any(|f| f.weight == crate::fault::Weight::Error) {
        return (None, faults);
    }
    let sha256 = crate::version::hash::of_pack(&pack);
    (Some(Set { pack, names, rules, materials, plants, sha256 }), faults)
}

fn material(filed: &Filed<MaterialEntry>, names: &Names, report: &mut Report<'_>) -> MaterialInfo {
    let (file, entry) = (&filed.file, &filed.entry);
    let maximum = entry
        .maximum
        .iter()
        .filter_map(|maximum| {
            let text = &maximum.value;
            let expected = match maximum.per {
                Per::Area => Dimension::MassPerArea,
                Per::Plant | Per::Litre => Dimension::Mass,
            };
            let (value, unit) = report.literal(file, text)?;
            if unit.dimension != expected && !(unit.dimension == Dimension::Volume && maximum.per != Per::Area) {
                report.at(file, text, "wrong-unit", format!("`{}` is not {}", text.value, expected.words()));
                return None;
            }
            Some((maximum.per, value, unit))
        })
        .collect();
    report.ids(file, &entry.cautions, &names.cautions, "caution");
    report.ids(file, &entry.sources, &names.sources, "source");
    separations(file, &entry.keep_apart, names, report);
    MaterialInfo { classes: report.ids(file, &entry.classes, &names.classes, "class"), hazard: entry.hazard, maximum }
}

fn separations(file: &str, entries: &[ApartEntry], names: &Names, report: &mut Report<'_>) -> Vec<Apart> {
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

fn rule_info(
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

fn unique<T: Ord>(list: &mut Vec<T>) {
    list.sort_unstable();
    list.dedup();
}

/// A separation holds from both sides: a rule is kept as far from a material, or from a rule, as that is from the rule.
/// What the rule says itself is not said again.
fn apart_both_ways(rules: &mut [RuleInfo], pack: &Pack, names: &Names, materials: &[MaterialInfo]) {
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
fn both_ways(rules: &mut [RuleInfo]) {
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

struct Reader<'a, 'r, 'p> {
    scope: Scope<'a>,
    pool: &'r mut Pool,
    report: &'r mut Report<'p>,
}

impl Reader<'_, '_, '_> {
    fn condition(&mut self, file: &str, expression: Option<&Expression>, short_traits: bool) -> Condition {
        let Some(expression) = expression else { return Condition::Always };
        let scope = Scope { short_traits, ..self.scope };
        let read = parse::condition(expression.text())
            .map_err(unreadable)
            .and_then(|expr| typing::condition(&expr, scope, self.pool));
        read.unwrap_or_else(|mistake| {
            self.report.mistake(file, &expression.0, &mistake);
            Condition::Always
        })
    }
}

fn book(
    number: u16,
    filed: &Filed<PlantEntry>,
    pack: &Pack,
    names: &Names,
    infos: &[RuleInfo],
    report: &mut Report<'_>,
) -> PlantBook {
    let (file, entry) = (&filed.file, &filed.entry);
    let empty = PlantNames::default();
    let own = names.plant_names.get(usize::from(number)).unwrap_or(&empty);
    let scope = Scope { names, plant: own, plant_id: &entry.id.value, short_traits: false };
    let mut pool = Pool::default();
    let mut reader = Reader { scope, pool: &mut pool, report };
    reader.report.ids(file, &entry.stages, &names.stages, "stage");
    reader.report.ids(file, &entry.in_leaf, &own.stages, "stage of this plant");
    let stages = entry
        .stage_model
        .iter()
        .filter_map(|model| {
            let stage = reader.report.id(file, &model.stage, &own.stages, "stage of this plant")?;
            match window::side(&model.begins.value, scope) {
                Ok(begins) => Some(StageInfo { stage, begins }),
                Err(mistake) => {
                    reader.report.mistake(file, &model.begins, &mistake);
                    None
                }
            }
        })
        .collect();
    let grown = entry.grown.as_ref().map(|grown| reader.condition(file, Some(grown), false));
    let mut rules: Vec<PlantRule> = pack
        .rules
        .iter()
        .enumerate()
        .filter(|(_, rule)| is_for(rule, entry, pack))
        .map(|(at, rule)| plant_rule(u32::try_from(at).unwrap_or(u32::MAX), rule, names, &mut reader))
        .collect();
    bind_guards(number, &mut rules, infos);
    super::rivals::find(&mut rules, infos);
    let problems = pack
        .problems
        .iter()
        .enumerate()
        .filter(|(_, problem)| match &problem.entry.plants {
            AllOr::All => true,
            AllOr::These(ids) => ids.iter().any(|id| id.value == entry.id.value),
        })
        .map(|(at, problem)| problem_info(u16::try_from(at).unwrap_or(u16::MAX), problem, names, &mut reader))
        .collect();
    let cautions = pack
        .cautions
        .iter()
        .enumerate()
        .filter_map(|(at, caution)| {
            let unless = caution.entry.unless.as_ref()?;
            Some((u16::try_from(at).unwrap_or(u16::MAX), reader.condition(&caution.file, Some(unless), false)))
        })
        .collect();
    let habit = habit(file, entry, reader.report);
    let traits = entry
        .traits
        .iter()
        .enumerate()
        .map(|(at, t)| {
            let values = own.values.get(at).cloned().unwrap_or_else(Index::default);
            TraitInfo {
                usual: t.usual.as_ref().and_then(|usual| reader.report.id(file, usual, &values, "value of this trait")),
            }
        })
        .collect();
    let in_leaf_ids: Vec<&str> = entry.in_leaf.iter().map(|s| s.value.as_str()).collect();
    let conditions: Vec<Vec<&Condition>> = rules.iter().map(|r| vec![&r.whom, &r.when]).collect();
    let sieve = Sieve::of(&conditions, &pool.atoms, pool.probes.len());
    let sources = Source::of_all(&pool.probes);
    let shorts = Shorts::of(&rules, infos, &pool.atoms, &sources);
    PlantBook {
        plant: number,
        id: entry.id.value.clone(),
        names: own.clone(),
        traits,
        in_leaf: entry.stages.iter().map(|s| in_leaf_ids.contains(&s.value.as_str())).collect(),
        stages,
        habit,
        grown,
        problems,
        of_the_day: pool.probes.iter().map(super::term::Term::is_of_the_day).collect(),
        probes: pool.probes,
        worked: sources.iter().filter(|source| matches!(source, Source::Worked(_))).count(),
        sources,
        atoms: pool.atoms,
        rules,
        shorts,
        sieve,
        cautions,
    }
}

fn is_for(rule: &Filed<RuleEntry>, plant: &PlantEntry, pack: &Pack) -> bool {
    let whom = &rule.entry.whom;
    let id = plant.id.value.as_str();
    // A rule for a problem concerns no plant that does not get it.
    let problem =
        whom.problem.as_ref().and_then(|problem| pack.problems.iter().find(|p| p.entry.id.value == problem.value));
    if let Some(AllOr::These(plants)) = problem.map(|problem| &problem.entry.plants)
        && !plants.iter().any(|p| p.value == id)
    {
        return false;
    }
    let named = whom.plant.as_ref().is_some_and(|p| p.value == id);
    let listed = match &whom.plants {
        Some(AllOr::All) => true,
        Some(AllOr::These(ids)) => ids.iter().any(|p| p.value == id),
        None => false,
    };
    let blocked =
        rule.entry.blocks.as_ref().is_some_and(|b| b.plants.is_empty() || b.plants.iter().any(|p| p.value == id));
    let anyone = whom.plant.is_none() && whom.plants.is_none() && (whom.problem.is_some() || blocked);
    named || listed || anyone
}

fn plant_rule(number: u32, filed: &Filed<RuleEntry>, names: &Names, reader: &mut Reader<'_, '_, '_>) -> PlantRule {
    let (file, entry) = (&filed.file, &filed.entry);
    let whom = reader.condition(file, entry.whom.traits.as_ref(), true);
    let when = reader.condition(file, entry.when.as_ref(), false);
    let holds: Vec<Hold> = entry
        .hold
        .iter()
        .map(|hold| Hold { condition: reader.condition(file, Some(&hold.condition), false), strict: hold.strict })
        .collect();
    let scope = reader.scope;
    let mut windows = Vec::new();
    for window in &entry.window.0 {
        match window::window(window, scope) {
            Ok(window) => windows.push(window),
            Err((text, mistake)) => reader.report.mistake(file, text, &mistake),
        }
    }
    let mut amounts = Vec::new();
    for written in &entry.amount {
        let max_of = written.max_of.as_ref().and_then(|id| reader.report.id(file, id, &names.materials, "material"));
        match amount::amount(written, scope, max_of) {
            Ok(amount) => amounts.push(amount),
            Err((text, mistake)) => reader.report.mistake(file, text, &mistake),
        }
    }
    let mut reads = Vec::new();
    let mut collect = |atom: u32| {
        if !reads.contains(&atom) {
            reads.push(atom);
        }
    };
    whom.atoms(&mut collect);
    when.atoms(&mut collect);
    holds.iter().for_each(|hold| hold.condition.atoms(&mut collect));
    let mut reads_terms = Vec::new();
    for atom in reads.iter().filter_map(|atom| reader.pool.atoms.get(*atom as usize)) {
        if !reads_terms.contains(&atom.probe) {
            reads_terms.push(atom.probe);
        }
    }
    let mut reads_given = false;
    when.atoms(&mut |atom| {
        let term = reader.pool.atoms.get(atom as usize).and_then(|a| reader.pool.probes.get(a.probe as usize));
        reads_given |= term.is_some_and(super::term::Term::is_from_caller);
    });
    PlantRule {
        rule: number,
        problem: entry.whom.problem.as_ref().and_then(|id| reader.report.id(file, id, &names.problems, "problem")),
        whom,
        when,
        windows,
        holds,
        guards: Vec::new(),
        rivals: Vec::new(),
        amounts,
        reads,
        reads_terms,
        reads_given,
    }
}

/// Gives each rule the guards that bind it.
fn bind_guards(plant: u16, rules: &mut [PlantRule], infos: &[RuleInfo]) {
    let guards: Vec<(u32, u32)> = rules
        .iter()
        .enumerate()
        .filter(|(_, r)| infos.get(r.rule as usize).is_some_and(|i| i.blocks.is_some()))
        .map(|(at, r)| (u32::try_from(at).unwrap_or(u32::MAX), r.rule))
        .collect();
    for rule in rules.iter_mut() {
        let Some(info) = infos.get(rule.rule as usize) else { continue };
        rule.guards = guards
            .iter()
            .filter(|(_, guard)| {
                *guard != rule.rule
                    && infos
                        .get(*guard as usize)
                        .and_then(|g| g.blocks.as_ref())
                        .is_some_and(|b| b.binds(info, rule.rule, plant))
            })
            .map(|(at, _)| *at)
            .collect();
    }
}

impl Set {
    /// Whether a pest or disease material is, or is among, what a separation speaks of.
    #[must_use]
    pub fn is_hazardous(&self, subject: Subject) -> bool {
        let is_label = |material: &MaterialInfo| material.hazard >= Hazard::Label;
        match subject {
            Subject::Job(_) => false,
            Subject::Material(material) => self.materials.get(usize::from(material)).is_some_and(is_label),
            Subject::Class(class) => {
                self.materials.iter().any(|material| material.classes.contains(&class) && is_label(material))
            }
            Subject::Rule(rule) => self.rules.get(rule as usize).is_some_and(RuleInfo::is_hazardous),
        }
    }
}

impl Blocks {
    /// Whether a rule of a plant is blocked: everything that is named must match.
    #[must_use]
    pub fn binds(&self, info: &RuleInfo, own: u32, plant: u16) -> bool {
        let names_work =
            !(self.jobs.is_empty() && self.materials.is_empty() && self.classes.is_empty() && self.rules.is_empty());
        names_work
            && info.kind == crate::pack::rule::Kind::Task
            && (self.plants.is_empty() || self.plants.contains(&plant))
            && (self.jobs.is_empty() || info.job.is_some_and(|job| self.jobs.contains(&job)))
            && (self.materials.is_empty() || info.materials.iter().any(|m| self.materials.contains(m)))
            && (self.classes.is_empty() || info.classes.iter().any(|c| self.classes.contains(c)))
            && (self.rules.is_empty() || self.rules.contains(&own))
    }
}

fn problem_info(
    number: u16,
    filed: &Filed<ProblemEntry>,
    names: &Names,
    reader: &mut Reader<'_, '_, '_>,
) -> ProblemInfo {
    let (file, entry) = (&filed.file, &filed.entry);
    let mut signs = Vec::new();
    let mut leading = Vec::new();
    for (list, yes, no, leads) in [
        (&entry.signs.always, 4, -4, true),
        (&entry.signs.often, 2, -1, true),
        (&entry.signs.sometimes, 1, 0, false),
        (&entry.signs.never, -6, 0, false),
    ] {
        for sign in reader.report.ids(file, list, &names.signs, "sign") {
            signs.push((sign, yes, no));
            if leads {
                leading.push(sign);
            }
        }
    }
    reader.report.ids(file, &entry.sources, &names.sources, "source");
    if let AllOr::These(ids) = &entry.plants {
        reader.report.ids(file, ids, &names.plants, "plant");
    }
    ProblemInfo {
        problem: number,
        signs,
        leading,
        favours: entry.favours.iter().map(|e| reader.condition(file, Some(e), false)).collect(),
        threshold: entry.threshold.as_ref().map(|e| reader.condition(file, Some(e), false)),
        impact: entry.impact,
    }
}

fn habit(file: &str, entry: &PlantEntry, report: &mut Report<'_>) -> Habit {
    let mut metres = |text: &crate::pack::At<String>| -> f64 {
        match report.literal(file, text) {
            Some((value, unit)) if unit.dimension == Dimension::Length => unit.convert(value, typing::unit("m")),
            Some(_) => {
                report.at(file, text, "wrong-unit", format!("`{}` is not {}", text.value, Dimension::Length.words()));
                0.0
            }
            None => 0.0,
        }
    };
    let (height_m, canopy_diameter_m, root_depth_m) =
        (metres(&entry.size.height), metres(&entry.size.canopy_diameter), metres(&entry.water.root_depth));
    let grown_after_years = match entry.size.grown_after.as_ref().map(|text| (text, report.literal(file, text))) {
        None => 0.0,
        Some((_, Some((value, unit)))) if unit.symbol == "year" => value,
        Some((text, _)) => {
            report.at(file, text, "wrong-unit", format!("`{}` is not a number of years", text.value));
            0.0
        }
    };
    Habit {
        water_factor: entry.water.factor,
        root_depth_m,
        depletion: entry.water.depletion,
        height_m,
        canopy_diameter_m,
        grown_after_years,
        food_use: entry.food_use,
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
