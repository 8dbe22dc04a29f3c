//! Causes of the signs, and whether the plant has a problem.

use lammas_engine::fact::value::Truth;
use lammas_engine::lang::ast::Expr;
use lammas_engine::lang::parse;
use lammas_engine::pack::{At, ProblemEntry};

use super::tree::{Curve, Names};
use super::value::Value;
use super::world::World;

impl World<'_> {
    fn seen(&self, sign: &At<String>) -> Truth {
        match self.sign(&sign.value).0 {
            Value::Yes(true) => Truth::True,
            Value::Yes(false) => Truth::False,
            _ => Truth::Unknown,
        }
    }

    fn points(&self, problem: &ProblemEntry) -> i32 {
        let mut points = 0;
        let signs = &problem.signs;
        for (list, if_true, if_false) in
            [(&signs.always, 4, -4), (&signs.often, 2, -1), (&signs.sometimes, 1, 0), (&signs.never, -6, 0)]
        {
            for sign in list {
                points += match self.seen(sign) {
                    Truth::True => if_true,
                    Truth::False => if_false,
                    Truth::Unknown => 0,
                };
            }
        }
        for favour in &problem.favours {
            points += match self.truth(&parse::condition(favour.text()).unwrap(), Names::Full, Curve::Counts) {
                Truth::True => 2,
                Truth::False => -2,
                Truth::Unknown => 0,
            };
        }
        points
    }

    /// The problems shown, in order, with their points.
    pub(crate) fn causes(&self) -> Vec<(&str, i32)> {
        let mut shown: Vec<(&str, i32, u8)> = Vec::new();
        for problem in self.pack.problems.iter().map(|p| &p.entry) {
            let leads =
                problem.signs.always.iter().chain(&problem.signs.often).any(|sign| self.seen(sign) == Truth::True);
            let points = self.points(problem);
            if self.gets(&problem.id.value) && leads && points > 0 {
                shown.push((&problem.id.value, points, problem.impact));
            }
        }
        shown.sort_by(|a, b| b.1.cmp(&a.1).then(b.2.cmp(&a.2)).then(a.0.cmp(b.0)));
        shown.into_iter().map(|(id, points, _)| (id, points)).collect()
    }

    /// `for: {problem: ID}`: true when the caller names it or it comes out likely, unknown when possible, else false.
    pub(crate) fn has(&self, problem: &str) -> Truth {
        let named = self.said.condition.as_ref().is_some_and(|c| c.problems.iter().any(|p| p == problem));
        if named {
            return Truth::True;
        }
        let causes = self.causes();
        let Some(place) = causes.iter().position(|(id, _)| *id == problem) else { return Truth::False };
        let points = causes[place].1;
        let next = causes.get(place + 1).map_or(0, |(_, points)| *points);
        if points >= 5 && points >= next + 3 && causes[..place].iter().all(|(_, above)| points >= above + 3) {
            Truth::True
        } else if points >= 3 {
            Truth::Unknown
        } else {
            Truth::False
        }
    }

    /// The problem's threshold to act, if it has one.
    pub(crate) fn threshold_tree(&self, problem: &str) -> Option<Expr> {
        let entry = self.pack.problems.iter().map(|p| &p.entry).find(|p| p.id.value == problem).unwrap();
        entry.threshold.as_ref().map(|threshold| parse::condition(threshold.text()).unwrap())
    }

    /// Whether it is reached; true if there is none.
    pub(crate) fn threshold(&self, problem: &str) -> Truth {
        self.threshold_tree(problem).map_or(Truth::True, |threshold| self.truth(&threshold, Names::Full, Curve::Counts))
    }
}
