//! What can stop a rule by itself: holds, guards, separations from works done, repeats, turns.

use std::collections::BTreeSet;

use lammas_agronomy::calendar::Day;
use lammas_engine::fact::value::Truth;
use lammas_engine::lang::parse;
use lammas_engine::pack::RuleEntry;
use lammas_engine::pack::material::Hazard;
use lammas_engine::pack::rule::{ApartEntry, Kind};
use lammas_engine::question::said::WorkSaid;
use lammas_engine::unit::Unit;

use super::outcome::tree;
use super::tree::{Curve, Names};
use super::value::{Read, base, whole};
use super::windows::State;
use super::world::World;

/// The blocks of a rule.
#[derive(Debug, Default)]
pub(crate) struct Blocks {
    /// Those that are true, in words, in order.
    pub(crate) held: Vec<String>,
    /// The facts that the unknown ones hang on.
    pub(crate) on: BTreeSet<String>,
    /// Conditions of the day.
    pub(crate) check_first: BTreeSet<String>,
    pub(crate) overdue: bool,
}

/// One hold or guard.
enum Judged {
    Blocks,
    Free,
    CheckFirst,
    Depends(BTreeSet<String>),
}

/// The truth of a block, with and without what only the curve knows, and what is missing for either.
struct Asked {
    with_curve: Truth,
    without: Truth,
    missing: Vec<Read>,
    missing_without: Vec<Read>,
}

fn judged(asked: Asked, strict: bool) -> Judged {
    let names = |reads: Vec<Read>| reads.into_iter().map(|read| read.name).collect::<BTreeSet<String>>();
    match (asked.with_curve, asked.without) {
        (Truth::True, _) => Judged::Blocks,
        (Truth::False, Truth::Unknown) if strict => Judged::Depends(names(asked.missing_without)),
        (Truth::False, Truth::Unknown) => Judged::CheckFirst,
        (Truth::False, _) => Judged::Free,
        (Truth::Unknown, _) if strict => Judged::Depends(names(asked.missing_without)),
        (Truth::Unknown, _) => {
            let lasting: Vec<Read> = asked.missing.into_iter().filter(|read| !read.of_the_day).collect();
            if lasting.is_empty() { Judged::CheckFirst } else { Judged::Depends(names(lasting)) }
        }
    }
}

pub(crate) fn span_of_days(text: &str) -> (i32, i32) {
    let after = parse::after(text).unwrap();
    let unit = Unit::find(&after.unit).unwrap();
    (whole(base(after.from, unit)), whole(base(after.to, unit)))
}

impl World<'_> {
    pub(crate) fn blocks(&self, rule: &RuleEntry) -> Blocks {
        let mut out = Blocks::default();
        if rule.emergency.is_some() {
            return out;
        }
        let mut take = |word: String, judged: Judged| match judged {
            Judged::Blocks => out.held.push(word),
            Judged::Free => {}
            Judged::CheckFirst => {
                out.check_first.insert(word);
            }
            Judged::Depends(on) => out.on.extend(on),
        };
        for (at, hold) in rule.hold.iter().enumerate() {
            let condition = tree(hold.condition.text());
            take(format!("hold {at}"), judged(self.ask(&condition), hold.strict || rule.strict));
        }
        for guard in self.guards_of(rule) {
            let judged = self.guard(guard, guard.strict || rule.strict);
            take(format!("guard {}", guard.id.value), judged);
        }
        self.apart_from_works(rule, &mut out);
        self.repeats(rule, &mut out);
        self.turns(rule, &mut out);
        out
    }

    fn ask(&self, condition: &lammas_engine::lang::ast::Expr) -> Asked {
        let missing = |curve: Curve| {
            let mut reads = Vec::new();
            self.missing(condition, Names::Full, curve, &mut reads);
            reads
        };
        Asked {
            with_curve: self.truth(condition, Names::Full, Curve::Counts),
            without: self.truth(condition, Names::Full, Curve::IsUnknown),
            missing: missing(Curve::Counts),
            missing_without: missing(Curve::IsUnknown),
        }
    }

    /// The guards that bind a rule, in the order of the pack.
    fn guards_of(&self, rule: &RuleEntry) -> Vec<&RuleEntry> {
        let guards = self.rules().into_iter().filter(|guard| guard.id.value != rule.id.value);
        guards
            .filter(|guard| {
                let Some(blocks) = &guard.blocks else { return false };
                let has =
                    |list: &[lammas_engine::pack::At<String>], id: &str| list.iter().any(|entry| entry.value == id);
                let job = rule.job.as_ref().is_some_and(|job| has(&blocks.jobs, &job.value));
                let material = rule.materials.iter().any(|m| has(&blocks.materials, &m.value));
                let class =
                    blocks.classes.iter().any(|c| rule.materials.iter().any(|m| self.has_class(&m.value, &c.value)));
                rule.kind == Kind::Task
                    && (blocks.plants.is_empty() || has(&blocks.plants, &self.said.plant.kind))
                    && (blocks.jobs.is_empty() || job)
                    && (blocks.materials.is_empty() || material)
                    && (blocks.classes.is_empty() || class)
                    && (blocks.rules.is_empty() || has(&blocks.rules, &rule.id.value))
            })
            .collect()
    }

    /// A guard blocks in its window, where it concerns the plant.
    fn guard(&self, guard: &RuleEntry, strict: bool) -> Judged {
        let window = match self.window(&guard.window.0) {
            State::AllYear | State::Open(_) => Truth::True,
            State::Closed { .. } => Truth::False,
            State::Unknown => Truth::Unknown,
        };
        let missing = |curve: Curve| {
            let mut reads = Vec::new();
            if let Some(traits) = &guard.whom.traits {
                self.missing(&tree(traits.text()), Names::Short, curve, &mut reads);
            }
            // True by the curve is true.
            if let Some(when) = guard.when.as_ref().map(|when| tree(when.text()))
                && self.truth(&when, Names::Full, Curve::Counts) != Truth::True
            {
                self.missing(&when, Names::Full, curve, &mut reads);
            }
            let of = |name: String| Read {
                written: name.clone(),
                name,
                of_the_day: false,
                known: false,
                origin: lammas_agronomy::origin::Origin::Given,
            };
            if window == Truth::Unknown {
                reads.push(of("window".to_owned()));
            }
            if let Some(problem) = &guard.whom.problem
                && self.has(&problem.value) == Truth::Unknown
            {
                reads.push(of(format!("problem {}", problem.value)));
            }
            reads
        };
        let asked = Asked {
            with_curve: window.min(self.concerns(guard, Curve::Counts)),
            without: window.min(self.concerns(guard, Curve::IsUnknown)),
            missing: missing(Curve::Counts),
            missing_without: missing(Curve::IsUnknown),
        };
        judged(asked, strict)
    }

    /// All that a rule is kept apart from, its materials' separations among it.
    pub(crate) fn separations<'r>(&'r self, rule: &'r RuleEntry) -> Vec<&'r ApartEntry> {
        let of_materials = rule.materials.iter().flat_map(|m| &self.material(&m.value).keep_apart);
        rule.keep_apart.iter().chain(of_materials).collect()
    }

    /// Whether a rule is what a separation speaks of.
    pub(crate) fn is(&self, rule: &RuleEntry, apart: &ApartEntry) -> bool {
        match (&apart.material, &apart.class, &apart.job) {
            (Some(material), _, _) => rule.materials.iter().any(|m| m.value == material.value),
            (_, Some(class), _) => rule.materials.iter().any(|m| self.has_class(&m.value, &class.value)),
            (_, _, Some(job)) => rule.job.as_ref().is_some_and(|j| j.value == job.value),
            _ => false,
        }
    }

    /// Days by which a rule must be kept from a work that was done, by the words of either.
    fn apart_from(&self, rule: &RuleEntry, work: &WorkSaid) -> i32 {
        let mut days = 0;
        for apart in self.separations(rule) {
            let is_it = match (&apart.material, &apart.class, &apart.job) {
                (Some(what), _, _) | (_, Some(what), _) => {
                    self.materials_of(work).iter().any(|m| self.has_class(m, &what.value))
                }
                (_, _, Some(job)) => self.job_of(work) == Some(&job.value),
                _ => false,
            };
            if is_it {
                days = days.max(i32::from(apart.days));
            }
        }
        let of_rule = work.rule.as_ref().into_iter().flat_map(|id| &self.rule(id).keep_apart);
        let materials = self.materials_of(work);
        let of_materials = materials.iter().filter(|m| self.is_material(m)).flat_map(|m| &self.material(m).keep_apart);
        for apart in of_rule.chain(of_materials) {
            if self.is(rule, apart) {
                days = days.max(i32::from(apart.days));
            }
        }
        days
    }

    pub(crate) fn is_hazardous(&self, material: &str) -> bool {
        matches!(self.material(material).hazard, Hazard::Label | Hazard::Restricted)
    }

    /// Whether a hazardous material has to do with any separation of a rule, its own or one that speaks of it.
    fn is_apart_from_hazard(&self, rule: &RuleEntry) -> bool {
        let sprays = |rule: &RuleEntry| rule.materials.iter().any(|m| self.is_hazardous(&m.value));
        let names_hazard = |apart: &ApartEntry| {
            let all = self.pack.materials.iter().map(|m| &m.entry.id.value);
            let what = apart.material.as_ref().or(apart.class.as_ref());
            what.is_some_and(|what| all.into_iter().any(|m| self.has_class(m, &what.value) && self.is_hazardous(m)))
        };
        let own = self.separations(rule);
        let by_materials =
            || self.pack.materials.iter().filter(|m| m.entry.keep_apart.iter().any(|apart| self.is(rule, apart)));
        let others = || self.pack.rules.iter().map(|r| &r.entry).filter(|other| other.id.value != rule.id.value);
        let by_rules = || others().filter(|other| other.keep_apart.iter().any(|apart| self.is(rule, apart)));
        let waits_for = || others().filter(|other| self.days_after(other, rule) > 0);
        if sprays(rule) {
            return !own.is_empty() || by_materials().count() > 0 || by_rules().count() > 0 || waits_for().count() > 0;
        }
        own.into_iter().any(names_hazard)
            || by_materials().any(|m| self.is_hazardous(&m.entry.id.value))
            || by_rules().any(sprays)
            || waits_for().any(sprays)
    }

    fn apart_from_works(&self, rule: &RuleEntry, out: &mut Blocks) {
        let Some(works) = self.works() else {
            if self.is_apart_from_hazard(rule) {
                out.on.insert("history".to_owned());
            }
            return;
        };
        let latest = |days: &dyn Fn(&WorkSaid) -> i32| {
            works.iter().map(|(day, work)| *day + days(work)).filter(|free| *free > self.day).max()
        };
        if let Some(until) = latest(&|work| self.apart_from(rule, work)) {
            out.held.push(format!("apart until {}", until.date()));
        }
        for other in self.pack.rules.iter().map(|r| &r.entry) {
            let days = i32::from(self.days_after(other, rule));
            // What was done last counts.
            let last = works
                .iter()
                .filter(|(_, work)| work.rule.as_deref() == Some(&other.id.value))
                .map(|(day, _)| *day)
                .max();
            if let Some(until) = last.map(|day| day + days).filter(|until| *until > self.day) {
                out.held.push(format!("apart from {} until {}", other.id.value, until.date()));
            }
        }
    }

    /// Whether a work is this rule's own: the same rule; or the same job with the same material, or with the class that is
    /// named. A rule without material: the same job, where no other rule is named.
    pub(crate) fn is_own_work(&self, rule: &RuleEntry, work: &WorkSaid) -> bool {
        if work.rule.as_ref() == Some(&rule.id.value) {
            return true;
        }
        if rule.job.is_none() || self.job_of(work) != rule.job.as_ref().map(|job| job.value.as_str()) {
            return false;
        }
        if rule.materials.is_empty() {
            return work.rule.is_none();
        }
        self.materials_of(work).iter().any(|done| {
            rule.materials
                .iter()
                .any(|own| own.value == *done || !self.is_material(done) && self.has_class(&own.value, done))
        })
    }

    fn repeats(&self, rule: &RuleEntry, out: &mut Blocks) {
        let (Some(repeat), Some(works)) = (&rule.repeat, self.works()) else { return };
        let own: Vec<Day> =
            works.into_iter().filter(|(_, work)| self.is_own_work(rule, work)).map(|(day, _)| day).collect();
        if let (Some(every), Some(last)) = (&repeat.every, own.iter().max()) {
            let (least, most) = span_of_days(&every.value);
            if self.day - *last < least {
                out.held.push(format!("done until {}", (*last + least).date()));
            }
            out.overdue = self.day - *last > most;
        }
        if let Some(at_most) = &repeat.at_most {
            let within = span_of_days(&at_most.within.value).1;
            let mut counted: Vec<Day> = own.iter().copied().filter(|day| self.day - *day < within).collect();
            counted.sort();
            let times = usize::from(at_most.times);
            if counted.len() >= times {
                // As often as allowed again when the last but so many has left the span.
                let leaves = counted[counted.len() - times];
                out.held.push(format!("at most until {}", (leaves + within).date()));
            }
        }
    }

    /// Of two that take turns the one that was not done last is due; neither done: the one named first.
    fn turns(&self, rule: &RuleEntry, out: &mut Blocks) {
        let own = |entry: &RuleEntry| entry.alternate.as_ref().map(|a| a.rule.value.clone());
        let partner = own(rule).map(|id| self.rule(&id)).or_else(|| {
            self.pack.rules.iter().map(|r| &r.entry).find(|other| own(other).as_deref() == Some(&rule.id.value))
        });
        // Nobody takes turns with what is not for this plant.
        let Some(partner) =
            partner.filter(|partner| self.rules().iter().any(|of_plant| of_plant.id.value == partner.id.value))
        else {
            return;
        };
        let gap = rule.alternate.as_ref().or(partner.alternate.as_ref()).map_or(0, |a| span_of_days(&a.gap.value).1);
        let last = |of: &RuleEntry| {
            let works = self.works().unwrap_or_default();
            works.into_iter().filter(|(_, work)| self.is_own_work(of, work)).map(|(day, _)| day).max()
        };
        let (mine, theirs) = (last(rule), last(partner));
        // Named first is the one that says so; of two that both do, the smaller id.
        let named_first = rule.alternate.is_some() && (partner.alternate.is_none() || rule.id.value < partner.id.value);
        let due = match (mine, theirs) {
            (None, None) => named_first,
            (Some(mine), Some(theirs)) if mine == theirs => named_first,
            (mine, theirs) => mine < theirs,
        };
        if !due {
            out.held.push(format!("turn of {}", partner.id.value));
        } else if let Some(theirs) = theirs
            && self.day - theirs < gap
        {
            out.held.push(format!("apart from {} until {}", partner.id.value, (theirs + gap).date()));
        }
    }
}
