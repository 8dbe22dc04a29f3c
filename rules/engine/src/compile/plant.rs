//! What concerns one plant: its rules, problems, stages and size, with every distinct term and test once.

use super::amount;
use super::book::{Habit, PlantBook, ProblemInfo, StageInfo, TraitInfo};
use super::guards::bind_guards;
use super::moves::Moving;
use super::names::{Index, Names, PlantNames};
use super::report::Report;
use super::rule::{Hold, PlantRule, RuleInfo};
use super::set::MaterialInfo;
use super::short::Short;
use super::sieve::Sieve;
use super::source::Source;
use super::term::Condition;
use super::typing::{self, Pool, Scope};
use super::window::{self, unreadable};
use crate::lang::parse;
use crate::pack::shapes::AllOr;
use crate::pack::{Expression, Filed, Pack, PlantEntry, ProblemEntry, RuleEntry};
use crate::unit::Dimension;

struct Reader<'a, 'r, 'p> {
    scope: Scope<'a>,
    materials: &'a [MaterialInfo],
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

pub(super) fn book(
    number: u16,
    filed: &Filed<PlantEntry>,
    pack: &Pack,
    names: &Names,
    (infos, materials): (&[RuleInfo], &[MaterialInfo]),
    report: &mut Report<'_>,
) -> PlantBook {
    let (file, entry) = (&filed.file, &filed.entry);
    let empty = PlantNames::default();
    let own = names.plant_names.get(usize::from(number)).unwrap_or(&empty);
    let scope = Scope { names, plant: own, plant_id: &entry.id.value, short_traits: false };
    let mut pool = Pool::default();
    let mut reader = Reader { scope, materials, pool: &mut pool, report };
    reader.report.ids(file, &entry.stages, &names.stages, "stage");
    reader.report.ids(file, &entry.in_leaf, &own.stages, "stage of this plant");
    let stages: Vec<StageInfo> = entry
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
    let quiet = entry.quiet.iter().map(|quiet| reader.condition(file, Some(&quiet.place), false)).collect();
    let mut rules: Vec<PlantRule> = pack
        .rules
        .iter()
        .enumerate()
        .filter(|(_, rule)| is_for(rule, entry, pack))
        .map(|(at, rule)| plant_rule(u32::try_from(at).unwrap_or(u32::MAX), rule, names, &mut reader))
        .collect();
    bind_guards(number, &mut rules, infos);
    super::rivals::find(&mut rules, infos);
    let problems: Vec<ProblemInfo> = pack
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
    let sources = Source::of_all(&pool.probes);
    let sieve = Sieve::of(&conditions, &pool.atoms, &sources);
    let moving = Moving::of(&pool.probes, &pool.atoms, &rules, infos, &stages, &problems);
    let is_emergency = |rule: &PlantRule| infos.get(rule.rule as usize).is_some_and(|info| info.emergency);
    let emergencies = rules.iter().zip(0..).filter(|(rule, _)| is_emergency(rule)).map(|(_, at)| at).collect();
    let shorts = rules.iter().map(|rule| Short::of(rule, infos)).collect();
    PlantBook {
        plant: number,
        id: entry.id.value.clone(),
        names: own.clone(),
        traits,
        in_leaf: entry.stages.iter().map(|s| in_leaf_ids.contains(&s.value.as_str())).collect(),
        stages,
        habit,
        grown,
        quiet,
        problems,
        of_the_day: pool.probes.iter().map(super::term::Term::is_of_the_day).collect(),
        probes: pool.probes,
        worked: sources.iter().filter(|source| matches!(source, Source::Worked(_))).count(),
        sources,
        atoms: pool.atoms,
        rules,
        emergencies,
        shorts,
        sieve,
        moving,
        cautions,
    }
}

pub(super) fn is_for(rule: &Filed<RuleEntry>, plant: &PlantEntry, pack: &Pack) -> bool {
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
        .map(|hold| Hold {
            condition: reader.condition(hold.file(file), Some(&hold.condition), false),
            strict: hold.strict,
        })
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
        match amount::amount(written, scope, max_of, reader.materials) {
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
        meets: Vec::new(),
        rivals: Vec::new(),
        amounts,
        reads,
        reads_terms,
        reads_given,
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
