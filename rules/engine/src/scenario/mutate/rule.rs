//! Every mutant of a rule.

use super::Mutant;
use super::Operator::{self, *};
use super::expression;
use super::literal::{half, half_range};
use crate::fault::Place;
use crate::lang::{parse, print};
use crate::pack::expression::place;
use crate::pack::rule::{Kind, RuleEntry, Strength, WindowEntry};
use crate::pack::shapes::OrderEntry;
use crate::pack::{At, Expression, Filed};
use crate::text::Text;

/// So far a side of a window is moved: three weeks.
const MOVED_DAYS: f64 = 21.0;

/// Every rule that is this one with one change.
#[must_use]
pub fn mutants(filed: &Filed<RuleEntry>) -> Vec<Mutant<RuleEntry>> {
    let mut made = Made { filed, out: Vec::new() };
    whom(&mut made);
    conditions(&mut made);
    windows(&mut made);
    blocks(&mut made);
    spaced(&mut made);
    listed(&mut made);
    amounts(&mut made);
    weight(&mut made);
    made.out
}

struct Made<'a> {
    filed: &'a Filed<RuleEntry>,
    out: Vec<Mutant<RuleEntry>>,
}

impl Made<'_> {
    fn entry(&self) -> &RuleEntry {
        &self.filed.entry
    }

    fn place<T>(&self, at: &At<T>) -> Place {
        place(&self.filed.file, at)
    }

    fn own(&self) -> Place {
        self.place(&self.entry().id)
    }

    /// The rule with `change` made, if it can be made.
    fn push(&mut self, operator: Operator, place: Place, change: impl FnOnce(&mut RuleEntry) -> Option<()>) {
        let mut entry = self.filed.entry.clone();
        if change(&mut entry).is_some() {
            self.out.push(Mutant { operator, place, entry });
        }
    }

    /// The rule with `set` given each condition that is `expression` with one change.
    fn push_variants(&mut self, expression: &Expression, set: impl Fn(&mut RuleEntry, Expression) -> Option<()>) {
        let Ok(read) = parse::condition(expression.text()) else { return };
        for (operator, variant) in expression::variants(&read) {
            let mut written = expression.clone();
            written.0.value = print::expr(&variant);
            let place = self.place(&expression.0);
            self.push(operator, place, |entry| set(entry, written));
        }
    }
}

fn whom(made: &mut Made<'_>) {
    let whom = made.entry().whom.clone();
    if let Some(traits) = &whom.traits {
        made.push_variants(traits, |entry, written| {
            entry.whom.traits = Some(written);
            Some(())
        });
        let place = made.place(&traits.0);
        made.push(ConditionDropped, place, |entry| entry.whom.traits.take().map(|_| ()));
    }
    if let Some(problem) = &whom.problem
        && (whom.plant.is_some() || whom.plants.is_some())
    {
        let place = made.place(problem);
        made.push(ProblemDropped, place, |entry| entry.whom.problem.take().map(|_| ()));
    }
}

fn conditions(made: &mut Made<'_>) {
    if let Some(when) = made.entry().when.clone() {
        made.push_variants(&when, |entry, written| {
            entry.when = Some(written);
            Some(())
        });
        let is_list =
            parse::condition(when.text()).is_ok_and(|expr| matches!(expr.kind, crate::lang::ast::ExprKind::And(_)));
        if !is_list {
            let place = made.place(&when.0);
            made.push(ConditionDropped, place, |entry| entry.when.take().map(|_| ()));
        }
    }
    for (at, hold) in made.entry().hold.clone().iter().enumerate() {
        made.push_variants(&hold.condition, |entry, written| {
            entry.hold.get_mut(at)?.condition = written;
            Some(())
        });
        let place = made.place(&hold.condition.0);
        made.push(HoldDropped, place.clone(), |entry| {
            entry.hold.remove(at);
            Some(())
        });
        if hold.strict {
            made.push(StrictDropped, place, |entry| {
                entry.hold.get_mut(at)?.strict = false;
                Some(())
            });
        }
    }
    if made.entry().strict {
        let place = made.own();
        made.push(StrictDropped, place, |entry| {
            entry.strict = false;
            Some(())
        });
    }
}

type TextOf = fn(&mut RuleEntry) -> &mut Text;
type OrderOf = fn(&mut RuleEntry) -> &mut Vec<At<OrderEntry>>;
type ListOf = fn(&mut RuleEntry) -> &mut Vec<At<String>>;
type SideOf = fn(&mut WindowEntry) -> &mut Option<At<String>>;

fn windows(made: &mut Made<'_>) {
    let list = made.entry().window.0.clone();
    let sides: [SideOf; 3] = [|window| &mut window.opens, |window| &mut window.best, |window| &mut window.closes];
    for (at, window) in list.iter().enumerate() {
        for side_of in sides {
            let mut window = window.clone();
            let Some(side) = side_of(&mut window).clone() else { continue };
            let place = made.place(&side);
            let mut put = |operator, written: Option<String>| {
                made.push(operator, place.clone(), |entry| {
                    side_of(entry.window.0.get_mut(at)?).as_mut()?.value = written?;
                    Some(())
                });
            };
            put(SideEarlier, moved(&side.value, -MOVED_DAYS));
            put(SideLater, moved(&side.value, MOVED_DAYS));
            put(ElseDropped, without_else(&side.value));
        }
        if list.len() > 1 {
            let place = made.own();
            made.push(WindowDropped, place, |entry| {
                entry.window.0.remove(at);
                Some(())
            });
        }
    }
    let outside: [(bool, TextOf); 3] = [
        (made.entry().outside.early.is_empty(), |entry| &mut entry.outside.early),
        (made.entry().outside.late.is_empty(), |entry| &mut entry.outside.late),
        (made.entry().outside.never.is_empty(), |entry| &mut entry.outside.never),
    ];
    for (_, text) in outside.into_iter().filter(|(is_empty, _)| !is_empty) {
        let place = made.own();
        made.push(OutOfSeasonDropped, place, |entry| {
            *text(entry) = Text::default();
            Some(())
        });
    }
}

/// A side with every choice moved.
fn moved(side: &str, days: f64) -> Option<String> {
    let mut side = parse::side(side).ok()?;
    for choice in &mut side.choices {
        let (value, span) = match &choice.offset {
            Some((offset, span)) => (crate::compare::normal::literal(offset).value, *span),
            None => (0.0, choice.span),
        };
        choice.offset = Some((crate::lang::ast::Literal { value: value + days, unit: "days".to_owned() }, span));
    }
    Some(side.choices.iter().map(print::marker).collect::<Vec<_>>().join(" else "))
}

fn without_else(side: &str) -> Option<String> {
    let side = parse::side(side).ok()?;
    let (first, rest) = side.choices.split_first()?;
    (!rest.is_empty()).then(|| print::marker(first))
}

type IdsOf = fn(&mut crate::pack::rule::BlocksEntry) -> &mut Vec<At<String>>;

fn blocks(made: &mut Made<'_>) {
    let Some(blocks) = made.entry().blocks.clone() else { return };
    let lists: [IdsOf; 5] = [
        |blocks| &mut blocks.jobs,
        |blocks| &mut blocks.materials,
        |blocks| &mut blocks.classes,
        |blocks| &mut blocks.rules,
        |blocks| &mut blocks.plants,
    ];
    for ids_of in lists {
        let ids = ids_of(&mut blocks.clone()).clone();
        for (at, id) in ids.iter().enumerate().filter(|_| ids.len() > 1) {
            let place = made.place(id);
            made.push(GuardNarrowed, place, |entry| {
                ids_of(entry.blocks.as_mut()?).remove(at);
                Some(())
            });
        }
    }
    let place = made.own();
    made.push(GuardDropped, place.clone(), |entry| entry.blocks.take().map(|_| ()));
    if made.entry().law.is_some() {
        made.push(LawDropped, place, |entry| entry.law.take().map(|_| ()));
    }
}

/// Separations, repeats, order, turns.
fn spaced(made: &mut Made<'_>) {
    let own = made.own();
    for (at, apart) in made.entry().keep_apart.clone().iter().enumerate() {
        let id = [&apart.material, &apart.class, &apart.job].into_iter().flatten().next();
        let place = id.map_or_else(|| own.clone(), |id| made.place(id));
        made.push(SeparationShortened, place.clone(), |entry| {
            entry.keep_apart.get_mut(at)?.days = half(apart.days);
            Some(())
        });
        made.push(SeparationDropped, place, |entry| {
            entry.keep_apart.remove(at);
            Some(())
        });
    }
    if let Some(repeat) = made.entry().repeat.clone() {
        if let Some(every) = &repeat.every {
            let place = made.place(every);
            made.push(RepeatShortened, place.clone(), |entry| {
                entry.repeat.as_mut()?.every.as_mut()?.value = half_range(&every.value)?;
                Some(())
            });
            made.push(RepeatDropped, place, |entry| entry.repeat.as_mut()?.every.take().map(|_| ()));
        }
        if let Some(most) = &repeat.at_most {
            let place = made.place(&most.within);
            made.push(OftenerAllowed, place.clone(), |entry| {
                entry.repeat.as_mut()?.at_most.as_mut()?.times += 1;
                Some(())
            });
            made.push(OftenerAllowed, place, |entry| {
                entry.repeat.as_mut()?.at_most.as_mut()?.within.value = half_range(&most.within.value)?;
                Some(())
            });
        }
    }
    let orders: [OrderOf; 2] = [|entry| &mut entry.before, |entry| &mut entry.after];
    for order_of in orders {
        let list = order_of(&mut made.entry().clone()).clone();
        for (at, item) in list.iter().enumerate() {
            let place = made.place(item);
            made.push(OrderDropped, place.clone(), |entry| {
                order_of(entry).remove(at);
                Some(())
            });
            if item.value.days > 0 {
                made.push(SeparationShortened, place, |entry| {
                    order_of(entry).get_mut(at)?.value.days = half(item.value.days);
                    Some(())
                });
            }
        }
    }
    for (at, id) in made.entry().clashes.clone().iter().enumerate() {
        let place = made.place(id);
        made.push(ClashDropped, place, |entry| {
            entry.clashes.remove(at);
            Some(())
        });
    }
    if let Some(alternate) = made.entry().alternate.clone() {
        let place = made.place(&alternate.rule);
        made.push(TurnsDropped, place.clone(), |entry| entry.alternate.take().map(|_| ()));
        made.push(SeparationShortened, place, |entry| {
            entry.alternate.as_mut()?.gap.value = half_range(&alternate.gap.value)?;
            Some(())
        });
    }
}

fn listed(made: &mut Made<'_>) {
    let lists: [(Operator, ListOf); 2] =
        [(CautionDropped, |entry| &mut entry.cautions), (MaterialDropped, |entry| &mut entry.materials)];
    for (operator, ids_of) in lists {
        let ids = ids_of(&mut made.entry().clone()).clone();
        for (at, id) in ids.iter().enumerate() {
            let place = made.place(id);
            made.push(operator, place, |entry| {
                ids_of(entry).remove(at);
                Some(())
            });
        }
    }
}

fn amounts(made: &mut Made<'_>) {
    let own = made.own();
    for (at, amount) in made.entry().amount.clone().iter().enumerate() {
        let place = match (&amount.call, &amount.typical) {
            (Some(call), _) => made.place(call),
            (None, Some(typical)) => made.place(&typical.unit),
            (None, None) => own.clone(),
        };
        if amount.typical.is_some() {
            made.push(AmountDoubled, place.clone(), |entry| {
                let typical = entry.amount.get_mut(at)?.typical.as_mut()?;
                (typical.min, typical.max) = (typical.min * 2.0, typical.max * 2.0);
                Some(())
            });
        }
        for (name, input) in &amount.inputs {
            let Ok(crate::lang::ast::Expr { kind: crate::lang::ast::ExprKind::Number(number), .. }) =
                parse::sum(&input.value)
            else {
                continue;
            };
            let doubled = crate::lang::ast::Literal { value: number.value * 2.0, unit: number.unit.clone() };
            let place = made.place(input);
            made.push(AmountDoubled, place, |entry| {
                entry.amount.get_mut(at)?.inputs.get_mut(name)?.value = print::literal(&doubled);
                Some(())
            });
        }
        // Those of two inputs that measure something else do not compile, and do not count.
        let names: Vec<&String> = amount.inputs.keys().collect();
        for (one, other) in names.iter().zip(names.iter().skip(1)) {
            made.push(InputExchanged, place.clone(), |entry| {
                let inputs = &mut entry.amount.get_mut(at)?.inputs;
                let (a, b) = (inputs.get(*one)?.clone(), inputs.get(*other)?.clone());
                inputs.insert((*one).clone(), b);
                inputs.insert((*other).clone(), a);
                Some(())
            });
        }
        if amount.max_of.is_some() {
            made.push(CapDropped, place, |entry| entry.amount.get_mut(at)?.max_of.take().map(|_| ()));
        }
    }
}

fn weight(made: &mut Made<'_>) {
    let own = made.own();
    let other = |grade: u8| if grade < 3 { grade + 1 } else { grade.saturating_sub(1) };
    let (kind, strength) = (made.entry().kind, made.entry().strength);
    if kind == Kind::Task {
        made.push(UrgencyChanged, own.clone(), |entry| {
            entry.rank.urgency = other(entry.rank.urgency);
            Some(())
        });
        made.push(ImpactChanged, own.clone(), |entry| {
            entry.rank.impact = other(entry.rank.impact);
            Some(())
        });
        made.push(StrengthChanged, own.clone(), |entry| {
            entry.strength = if strength == Strength::Consider { Strength::Do } else { Strength::Consider };
            Some(())
        });
    }
    made.push(KindChanged, own.clone(), |entry| {
        entry.kind = if kind == Kind::Avoid { Kind::Know } else { Kind::Avoid };
        Some(())
    });
    if !made.entry().professional.is_empty() {
        made.push(ProfessionalDropped, own, |entry| {
            entry.professional = Text::default();
            Some(())
        });
    }
}
