//! What becomes of a rule, before and after the others are looked at.

use std::collections::BTreeSet;

use lammas_engine::fact::value::Truth;
use lammas_engine::lang::ast::Expr;
use lammas_engine::lang::parse;
use lammas_engine::pack::RuleEntry;
use lammas_engine::pack::rule::Kind;

use super::tree::{Curve, Names};
use super::value::Read;
use super::windows::State;
use super::world::World;

/// What becomes of a rule.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) enum Outcome {
    No,
    Applies,
    /// The blocks, in words.
    Held(Vec<String>),
    /// Whether it could apply.
    Depends {
        could_apply: bool,
    },
}

/// A rule that comes out as more than no.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Verdict {
    pub(crate) rule: String,
    pub(crate) outcome: Outcome,
    pub(crate) window: State,
    pub(crate) check_first: BTreeSet<String>,
    pub(crate) overdue: bool,
    pub(crate) score: i32,
    pub(crate) band: u8,
    /// The facts that it hangs on.
    pub(crate) on: BTreeSet<String>,
}

/// The condition of a rule that was given with the pack: it has been read before, so it reads again.
pub(crate) fn tree(text: &str) -> Expr {
    parse::condition(text).unwrap()
}

impl World<'_> {
    /// `for`, `where` and `when` together.
    pub(crate) fn concerns(&self, rule: &RuleEntry, curve: Curve) -> Truth {
        let mut truths = Vec::new();
        if let Some(traits) = &rule.whom.traits {
            truths.push(self.truth(&tree(traits.text()), Names::Short, curve));
        }
        if let Some(when) = &rule.when {
            truths.push(self.truth(&tree(when.text()), Names::Full, curve));
        }
        if let Some(problem) = &rule.whom.problem {
            truths.push(self.problem(rule, &problem.value));
        }
        if truths.contains(&Truth::False) {
            Truth::False
        } else if truths.contains(&Truth::Unknown) {
            Truth::Unknown
        } else {
            Truth::True
        }
    }

    /// A treatment waits for the problem's threshold, other work does not.
    fn problem(&self, rule: &RuleEntry, problem: &str) -> Truth {
        let threshold = if self.treats(rule) { self.threshold(problem) } else { Truth::True };
        self.has(problem).min(threshold)
    }

    /// Cultural and mechanical steps need no threshold: a treatment is what comes from a bottle with a label.
    fn treats(&self, rule: &RuleEntry) -> bool {
        let treats = rule.job.as_ref().is_some_and(|job| job.value.starts_with("treat-"));
        treats && rule.materials.iter().any(|m| self.is_hazardous(&m.value))
    }

    /// What the truth of a rule that is unknown hangs on.
    fn concerns_missing(&self, rule: &RuleEntry) -> BTreeSet<String> {
        let mut reads: Vec<Read> = Vec::new();
        if let Some(traits) = &rule.whom.traits {
            self.missing(&tree(traits.text()), Names::Short, Curve::Counts, &mut reads);
        }
        if let Some(when) = &rule.when {
            self.missing(&tree(when.text()), Names::Full, Curve::Counts, &mut reads);
        }
        let mut names = BTreeSet::new();
        if let Some(problem) = &rule.whom.problem {
            if self.has(&problem.value) == Truth::Unknown {
                names.insert(format!("problem {}", problem.value));
            }
            if self.treats(rule)
                && let Some(threshold) = self.threshold_tree(&problem.value)
            {
                self.missing(&threshold, Names::Full, Curve::Counts, &mut reads);
            }
        }
        names.extend(reads.into_iter().map(|read| read.name));
        names
    }

    /// What becomes of a rule by itself.
    pub(crate) fn alone(&self, rule: &RuleEntry) -> Option<Verdict> {
        let truth = self.concerns(rule, Curve::Counts);
        let window = self.window(&rule.window.0);
        if truth == Truth::False {
            return None;
        }
        let verdict = |outcome: Outcome, overdue: bool| Verdict {
            rule: rule.id.value.clone(),
            outcome,
            check_first: BTreeSet::new(),
            overdue,
            score: self.score(rule, &window, overdue),
            band: self.band(rule, &window),
            on: BTreeSet::new(),
            window: window.clone(),
        };
        if let State::Closed { before, next } = window {
            let word = self.out_of_season(before, next);
            let text = match word {
                "early" => &rule.outside.early,
                "late" => &rule.outside.late,
                _ => &rule.outside.never,
            };
            let says = !text.is_empty() && truth == Truth::True && self.reads_the_caller(rule);
            return says.then(|| verdict(Outcome::Held(vec![word.to_owned()]), false));
        }
        let blocks = self.blocks(rule);
        let known = truth == Truth::True && window != State::Unknown;
        let outcome = match (known, blocks.held.is_empty(), blocks.on.is_empty()) {
            (true, true, true) => Outcome::Applies,
            (true, false, _) => Outcome::Held(blocks.held.clone()),
            (true, true, false) | (false, true, _) => Outcome::Depends { could_apply: true },
            (false, false, _) => Outcome::Depends { could_apply: false },
        };
        // A guard never comes out as something to ask about.
        if rule.blocks.is_some() && matches!(outcome, Outcome::Depends { .. }) {
            return None;
        }
        let mut verdict = verdict(outcome, blocks.overdue);
        if matches!(verdict.outcome, Outcome::Depends { .. }) {
            verdict.on = self.concerns_missing(rule);
            if verdict.window == State::Unknown {
                verdict.on.insert("window".to_owned());
            }
            if blocks.held.is_empty() {
                verdict.on.extend(blocks.on);
            }
        }
        verdict.check_first = blocks.check_first;
        Some(verdict)
    }

    /// `late` from closing to half-way to the next opening, `early` from there on.
    fn out_of_season(
        &self,
        before: Option<lammas_agronomy::calendar::Day>,
        next: Option<lammas_agronomy::calendar::Day>,
    ) -> &'static str {
        match (before, next) {
            (None, None) => "never",
            (None, Some(_)) => "early",
            (Some(_), None) => "late",
            (Some(closed), Some(opens)) if self.day - closed <= opens - self.day => "late",
            _ => "early",
        }
    }

    /// Whether `when` reads a sign or a fact that callers give.
    fn reads_the_caller(&self, rule: &RuleEntry) -> bool {
        let mut reads = Vec::new();
        if let Some(when) = &rule.when {
            self.reads(&tree(when.text()), Names::Full, &mut reads);
        }
        reads.iter().any(|read| {
            let told =
                ["severity", "share", "since", "signs", "vigour", "region", "region.flag", "wants", "weather.leaf_wet"];
            let done = ["done", "count", "last", "harvest_wait", "planted"];
            told.contains(&read.name.as_str())
                || done.contains(&read.name.as_str())
                || ["plant.", "site.", "soil.", "water."].iter().any(|family| read.name.starts_with(family))
                || ["(last(", "(since(", "(planted", "(harvest_wait", "from since("]
                    .iter()
                    .any(|marker| read.written.contains(marker))
        })
    }

    /// In danger one thing is done, and all that would be done waits.
    fn danger(&self, verdicts: &mut Vec<Verdict>) {
        let is_danger =
            |verdict: &&Verdict| verdict.outcome == Outcome::Applies && self.rule(&verdict.rule).emergency.is_some();
        let mut told: Vec<(i32, String)> =
            verdicts.iter().filter(is_danger).map(|verdict| (-verdict.score, verdict.rule.clone())).collect();
        told.sort();
        let Some((_, first)) = told.into_iter().next() else { return };
        verdicts.retain(|verdict| match &verdict.outcome {
            Outcome::Applies => self.rule(&verdict.rule).kind != Kind::Know,
            Outcome::Held(_) => true,
            Outcome::Depends { .. } | Outcome::No => false,
        });
        for verdict in verdicts {
            // What is to be left alone is left alone in danger too.
            if verdict.outcome == Outcome::Applies
                && verdict.rule != first
                && self.rule(&verdict.rule).kind == Kind::Task
            {
                verdict.outcome = Outcome::Held(vec![format!("emergency {first}")]);
            }
        }
    }

    /// Every rule of the plant that comes out as more than no, in the order of the pack.
    pub(crate) fn decide(&self) -> Vec<Verdict> {
        let mut verdicts: Vec<Verdict> = self.rules().into_iter().filter_map(|rule| self.alone(rule)).collect();
        self.together(&mut verdicts);
        self.danger(&mut verdicts);
        for verdict in &mut verdicts {
            if verdict.outcome == Outcome::Applies && self.rule(&verdict.rule).kind == Kind::Avoid {
                verdict.outcome = Outcome::Held(vec!["avoid".to_owned()]);
            }
        }
        verdicts
    }
}
