//! What rules do to each other: clashes and separations, from the safest and highest down.

use lammas_engine::pack::RuleEntry;
use lammas_engine::pack::rule::{Kind, Manner};

use super::outcome::{Outcome, Verdict};
use super::world::World;

impl World<'_> {
    /// Lower is safer: avoid, protect, water, treat, the rest.
    fn safety(&self, rule: &RuleEntry) -> u8 {
        let job = rule.job.as_ref().map_or("", |job| job.value.as_str());
        match (rule.kind, job) {
            (Kind::Avoid, _) => 0,
            (_, "protect-frost" | "protect-heat") => 1,
            (_, "water") => 2,
            (_, "treat-pest" | "treat-disease") => 3,
            _ => 4,
        }
    }

    /// Opposed jobs on one plant and day.
    fn opposed_jobs(&self, a: &RuleEntry, b: &RuleEntry) -> bool {
        let job = |rule: &RuleEntry| rule.job.as_ref().map_or(String::new(), |job| job.value.clone());
        let with = |rule: &RuleEntry, classes: &[&str]| {
            rule.materials.iter().any(|m| classes.iter().any(|c| self.has_class(&m.value, c)))
        };
        // A sprinkler wets the leaves whatever the rule says.
        let sprinkled = self.said.water.method.as_deref() == Some("sprinkler");
        let one_way = |a: &RuleEntry, b: &RuleEntry| match (job(a).as_str(), job(b).as_str()) {
            ("prune", "protect-frost" | "protect-heat") | ("feed", "transplant") => true,
            ("transplant", "prune") => b.manner == Some(Manner::Hard),
            ("treat-pest" | "treat-disease", "water") => {
                with(a, &["oil", "soap", "sulphur"]) && (sprinkled || b.manner == Some(Manner::Overhead))
            }
            ("feed", "protect-frost") => with(a, &["nitrogen"]),
            _ => false,
        };
        a.kind != Kind::Avoid && b.kind != Kind::Avoid && (one_way(a, b) || one_way(b, a))
    }

    fn clash(&self, a: &RuleEntry, b: &RuleEntry) -> bool {
        let names = |a: &RuleEntry, b: &RuleEntry| a.clashes.iter().any(|id| id.value == b.id.value);
        let ordered =
            |a: &RuleEntry, b: &RuleEntry| a.before.iter().chain(&a.after).any(|order| order.value.rule == b.id.value);
        if a.kind == Kind::Know || b.kind == Kind::Know || ordered(a, b) || ordered(b, a) {
            return false;
        }
        names(a, b) || names(b, a) || self.opposed_jobs(a, b)
    }

    /// Days that `b` must come after `a`, by its own words or by those of the other.
    pub(crate) fn days_after(&self, a: &RuleEntry, b: &RuleEntry) -> u16 {
        let of = |list: &[lammas_engine::pack::At<lammas_engine::pack::shapes::OrderEntry>], id: &str| {
            list.iter().filter(|order| order.value.rule == id).map(|order| order.value.days).max().unwrap_or(0)
        };
        of(&b.after, &a.id.value).max(of(&a.before, &b.id.value))
    }

    /// Days that two works of one day would have to lie apart, `a` being done first.
    fn days_apart(&self, a: &RuleEntry, b: &RuleEntry) -> u16 {
        if a.kind == Kind::Avoid {
            return 0;
        }
        let of = |a: &RuleEntry, b: &RuleEntry| {
            self.separations(a).into_iter().filter(|apart| self.is(b, apart)).map(|apart| apart.days).max().unwrap_or(0)
        };
        of(a, b).max(of(b, a)).max(self.days_after(a, b))
    }

    /// Only what may apply takes part; notes and guards do not.
    fn may_meet(&self, verdict: &Verdict) -> bool {
        let rule = self.rule(&verdict.rule);
        let may_apply = matches!(verdict.outcome, Outcome::Applies | Outcome::Depends { could_apply: true });
        may_apply && rule.kind != Kind::Know && rule.blocks.is_none() && rule.emergency.is_none()
    }

    pub(crate) fn together(&self, verdicts: &mut [Verdict]) {
        let mut order: Vec<usize> = (0..verdicts.len()).filter(|at| self.may_meet(&verdicts[*at])).collect();
        order.sort_by_key(|at| {
            let verdict = &verdicts[*at];
            (self.safety(self.rule(&verdict.rule)), -verdict.score, verdict.rule.clone())
        });
        // A rule that must come some days after another is judged after it.
        let mut at = 0;
        while at < order.len() {
            let later = (at + 1..order.len()).rev().find(|below| {
                let (a, b) = (self.rule(&verdicts[order[*below]].rule), self.rule(&verdicts[order[at]].rule));
                self.days_after(a, b) > 0
            });
            match later {
                Some(below) => {
                    let moved = order.remove(at);
                    order.insert(below, moved);
                }
                None => at += 1,
            }
        }
        let mut settled: Vec<usize> = Vec::new();
        for at in order {
            let rule = self.rule(&verdicts[at].rule);
            let mut held = Vec::new();
            let mut may_be_held = Vec::new();
            for above in &settled {
                let winner = self.rule(&verdicts[*above].rule);
                let clash = self.clash(winner, rule);
                let days = self.days_apart(winner, rule);
                if !clash && days == 0 {
                    continue;
                }
                match verdicts[*above].outcome {
                    Outcome::Applies => {
                        if clash {
                            held.push(format!("clash with {}", winner.id.value));
                        } else {
                            held.push(format!(
                                "apart from {} until {}",
                                winner.id.value,
                                (self.day + i32::from(days)).date()
                            ));
                        }
                    }
                    Outcome::Depends { could_apply: true } => may_be_held.push(*above),
                    _ => {}
                }
            }
            let applies = verdicts[at].outcome == Outcome::Applies;
            if !held.is_empty() {
                verdicts[at].outcome =
                    if applies { Outcome::Held(held) } else { Outcome::Depends { could_apply: false } };
            } else if !may_be_held.is_empty() {
                for above in may_be_held {
                    let on = verdicts[above].on.clone();
                    verdicts[at].on.extend(on);
                }
                verdicts[at].outcome = Outcome::Depends { could_apply: true };
            }
            settled.push(at);
        }
    }
}
