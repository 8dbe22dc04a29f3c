//! Which names of the vocabularies something in the pack uses.

use std::collections::BTreeSet;

use crate::lang::ast::{Argument, Expr, ExprKind, MarkerExpr};
use crate::lang::parse;
use crate::pack::rule::{ApartEntry, RuleEntry};
use crate::pack::{At, Pack};

/// Names that are used, by what uses them.
#[derive(Debug, Default)]
pub(super) struct Used<'p> {
    /// Every word of every expression: signs, jobs, materials, classes, stages.
    pub(super) said: BTreeSet<String>,
    /// Signs that problems list.
    pub(super) signs: BTreeSet<&'p str>,
    /// Cautions of rules and materials.
    pub(super) cautions: BTreeSet<&'p str>,
    /// Sources of rules, materials and problems.
    pub(super) sources: BTreeSet<&'p str>,
    /// Materials of rules, guards, separations and maxima.
    pub(super) materials: BTreeSet<&'p str>,
    /// Classes of materials, guards and separations.
    pub(super) classes: BTreeSet<&'p str>,
    /// Outlooks of rules.
    pub(super) outlooks: BTreeSet<&'p str>,
    /// Stages of plants.
    pub(super) stages: BTreeSet<&'p str>,
}

fn add<'p>(into: &mut BTreeSet<&'p str>, ids: impl IntoIterator<Item = &'p At<String>>) {
    into.extend(ids.into_iter().map(|id| id.value.as_str()));
}

impl<'p> Used<'p> {
    /// What a pack uses.
    #[must_use]
    pub(super) fn of(pack: &'p Pack) -> Self {
        let mut used = Self::default();
        pack.rules.iter().for_each(|rule| used.rule(&rule.entry));
        for material in pack.materials.iter().map(|material| &material.entry) {
            add(&mut used.cautions, &material.cautions);
            add(&mut used.sources, &material.sources);
            add(&mut used.classes, &material.classes);
            used.apart(&material.keep_apart);
        }
        for problem in pack.problems.iter().map(|problem| &problem.entry) {
            let signs = &problem.signs;
            add(&mut used.signs, signs.always.iter().chain(&signs.often).chain(&signs.sometimes).chain(&signs.never));
            add(&mut used.sources, &problem.sources);
            problem.favours.iter().chain(&problem.threshold).for_each(|condition| used.condition(condition.text()));
        }
        for plant in pack.plants.iter().map(|plant| &plant.entry) {
            add(&mut used.stages, &plant.stages);
            plant.stage_model.iter().for_each(|model| used.side(&model.begins.value));
            plant.grown.iter().for_each(|grown| used.condition(grown.text()));
        }
        for caution in &pack.cautions {
            caution.entry.unless.iter().for_each(|unless| used.condition(unless.text()));
        }
        used
    }

    fn rule(&mut self, rule: &'p RuleEntry) {
        add(&mut self.cautions, &rule.cautions);
        add(&mut self.sources, &rule.sources);
        add(&mut self.materials, &rule.materials);
        add(&mut self.materials, rule.amount.iter().filter_map(|amount| amount.max_of.as_ref()));
        add(&mut self.outlooks, rule.expect.iter().map(|expect| &expect.what));
        if let Some(blocks) = &rule.blocks {
            add(&mut self.materials, &blocks.materials);
            add(&mut self.classes, &blocks.classes);
        }
        self.apart(&rule.keep_apart);
        let conditions = rule.whom.traits.iter().chain(&rule.when).chain(rule.hold.iter().map(|hold| &hold.condition));
        conditions.for_each(|condition| self.condition(condition.text()));
        for window in &rule.window.0 {
            [&window.opens, &window.best, &window.closes].into_iter().flatten().for_each(|side| self.side(&side.value));
        }
        for input in rule.amount.iter().flat_map(|amount| amount.inputs.values()) {
            if let Ok(expr) = parse::sum(&input.value) {
                self.expr(&expr);
            }
        }
    }

    fn apart(&mut self, entries: &'p [ApartEntry]) {
        add(&mut self.materials, entries.iter().filter_map(|apart| apart.material.as_ref()));
        add(&mut self.classes, entries.iter().filter_map(|apart| apart.class.as_ref()));
    }

    fn condition(&mut self, text: &str) {
        if let Ok(expr) = parse::condition(text) {
            self.expr(&expr);
        }
    }

    fn side(&mut self, text: &str) {
        if let Ok(side) = parse::side(text) {
            side.choices.iter().for_each(|choice| self.marker(choice));
        }
    }

    fn marker(&mut self, marker: &MarkerExpr) {
        self.expr(&marker.marker);
    }

    fn expr(&mut self, expr: &Expr) {
        match &expr.kind {
            ExprKind::Or(parts) | ExprKind::And(parts) => parts.iter().for_each(|part| self.expr(part)),
            ExprKind::Not(inner)
            | ExprKind::IsAbsent(inner)
            | ExprKind::Negative(inner)
            | ExprKind::Times(inner, _)
            | ExprKind::Over(inner, _) => self.expr(inner),
            ExprKind::Compare(left, _, right) | ExprKind::Add(left, right) | ExprKind::Subtract(left, right) => {
                self.expr(left);
                self.expr(right);
            }
            ExprKind::In(left, items) => {
                self.expr(left);
                items.iter().for_each(|item| self.expr(item));
            }
            ExprKind::SignsHas(word, _) | ExprKind::Path(word) => {
                self.said.insert(word.clone());
            }
            ExprKind::Call(_, arguments) => {
                for argument in arguments {
                    match argument {
                        Argument::Value(value) => self.expr(value),
                        Argument::From(from) => self.marker(from),
                        Argument::Within(..) => {}
                    }
                }
            }
            ExprKind::Number(_) => {}
        }
    }
}
