//! What differs between two decisions on one question.

use super::compared::{Amount, Asked, Compared, Reason, Stands, Window};
use crate::compile::set::Set;
use crate::rank::Band;

/// How something differs.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum How {
    /// Another outcome: from, to.
    Outcome(Stands, Stands),
    /// Another band: from, to.
    Band(Band, Band),
    /// Another place among the tasks that both have.
    Order,
    /// Other days.
    Window,
    /// Another amount.
    Amount,
    /// Held by something else.
    Reasons,
    /// Something else to check first.
    CheckFirst,
    /// Other questions, or in another order; of the whole answer.
    Questions,
    /// The question can no longer be asked; of the whole answer.
    Refused,
    /// It could not be asked before; of the whole answer.
    Understood,
}

impl How {
    /// Its kind in a word.
    #[must_use]
    pub const fn kind(self) -> &'static str {
        match self {
            Self::Outcome(Stands::Held, Stands::Advised) => "freed",
            Self::Outcome(_, Stands::Advised | Stands::Noted) => "added",
            Self::Outcome(_, Stands::Held) => "held-now",
            Self::Outcome(_, Stands::Depends | Stands::MayBeHeld) => "depends-now",
            Self::Outcome(_, Stands::Absent) => "gone",
            Self::Band(..) => "band",
            Self::Order => "reordered",
            Self::Window => "window",
            Self::Amount => "amount",
            Self::Reasons => "reasons",
            Self::CheckFirst => "check-first",
            Self::Questions => "questions",
            Self::Refused => "refused",
            Self::Understood => "understood",
        }
    }

    /// What it is in a sentence.
    #[must_use]
    pub fn words(self) -> String {
        let was = |stands: Stands| match stands {
            Stands::Absent => "was not there",
            Stands::Advised => "was advised",
            Stands::Noted => "was a note",
            Stands::Held => "was held",
            Stands::Depends => "hung on something not told",
            Stands::MayBeHeld => "could at most be held",
        };
        let is = |stands: Stands| match stands {
            Stands::Absent => "is not there",
            Stands::Advised => "is advised",
            Stands::Noted => "is a note",
            Stands::Held => "is held",
            Stands::Depends => "hangs on something not told",
            Stands::MayBeHeld => "can at most be held",
        };
        match self {
            Self::Outcome(from, to) => format!("{}, {}", was(from), is(to)),
            Self::Band(from, to) => format!("was for {}, is for {}", from.as_str(), to.as_str()),
            Self::Order => "comes at another place among the tasks".to_owned(),
            Self::Window => "its window has other days".to_owned(),
            Self::Amount => "its amounts are others".to_owned(),
            Self::Reasons => "is held by something else".to_owned(),
            Self::CheckFirst => "has something else to check first".to_owned(),
            Self::Questions => "other questions are asked".to_owned(),
            Self::Refused => "could be asked, is refused".to_owned(),
            Self::Understood => "was refused, can be asked".to_owned(),
        }
    }
}

/// One thing that differs.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Change<'a> {
    /// The rule; empty for what concerns the whole answer.
    pub rule: &'a str,
    /// How.
    pub how: How,
}

/// Everything that differs: nothing exactly when the two are equal.
#[must_use]
pub fn between<'a>(before: &Compared<'a>, after: &Compared<'a>) -> Vec<Change<'a>> {
    let mut changes = Vec::new();
    if before == after {
        return changes;
    }
    let mut rules: Vec<&'a str> = Vec::new();
    for side in [before, after] {
        rules.extend(side.tasks.iter().map(|task| task.rule));
        rules.extend(side.others.iter().map(|other| other.rule));
    }
    rules.sort_unstable();
    rules.dedup();
    for rule in rules {
        of_rule(rule, before, after, &mut |how| changes.push(Change { rule, how }));
    }
    changes.extend(out_of_order(before, after).into_iter().map(|rule| Change { rule, how: How::Order }));
    if before.questions != after.questions {
        changes.push(Change { rule: "", how: How::Questions });
    }
    changes
}

fn of_rule(rule: &str, before: &Compared<'_>, after: &Compared<'_>, found: &mut impl FnMut(How)) {
    let (was, is) = (before.stands(rule), after.stands(rule));
    if was != is {
        found(How::Outcome(was, is));
        return;
    }
    if let (Some(a), Some(b)) = (before.task(rule), after.task(rule)) {
        if a.band != b.band {
            found(How::Band(a.band, b.band));
        }
        if a.window != b.window {
            found(How::Window);
        }
        if a.amounts != b.amounts {
            found(How::Amount);
        }
        if a.check_first != b.check_first {
            found(How::CheckFirst);
        }
    }
    if before.other(rule).map(|o| &o.reasons) != after.other(rule).map(|o| &o.reasons) {
        found(How::Reasons);
    }
}

/// Of the tasks that both have, the fewest that must move so that the one order becomes the other.
fn out_of_order<'a>(before: &Compared<'a>, after: &Compared<'a>) -> Vec<&'a str> {
    let was: Vec<&str> = before.tasks.iter().map(|t| t.rule).filter(|rule| after.task(rule).is_some()).collect();
    let is: Vec<&'a str> = after.tasks.iter().map(|t| t.rule).filter(|rule| before.task(rule).is_some()).collect();
    if was == is {
        return Vec::new();
    }
    // The longest rising run of former places stays; for each task the longest that ends with it, and the one before.
    let places: Vec<usize> = is.iter().filter_map(|rule| was.iter().position(|other| other == rule)).collect();
    let mut best: Vec<(usize, Option<usize>)> = Vec::new();
    for (at, place) in places.iter().enumerate() {
        let before = (0..at).filter(|other| places.get(*other).is_some_and(|p| p < place));
        let longest =
            before.filter_map(|other| Some((best.get(other)?.0, other))).max_by_key(|(n, at)| (*n, usize::MAX - at));
        best.push(longest.map_or((1, None), |(n, other)| (n + 1, Some(other))));
    }
    let mut at = best.iter().enumerate().max_by_key(|(at, (n, _))| (*n, usize::MAX - at)).map(|(at, _)| at);
    let mut stays = vec![false; is.len()];
    while let Some(place) = at {
        if let Some(slot) = stays.get_mut(place) {
            *slot = true;
        }
        at = best.get(place).and_then(|(_, before)| *before);
    }
    is.into_iter().zip(stays).filter(|(_, stays)| !stays).map(|(rule, _)| rule).collect()
}

/// What stood there before and what stands there now, in words, where that says more than the kind of the change.
#[must_use]
pub fn detail(
    change: &Change<'_>,
    (before, before_set): (&Compared<'_>, &Set),
    (after, after_set): (&Compared<'_>, &Set),
) -> Option<(String, String)> {
    let both = |of: &dyn Fn(&Compared<'_>, &Set) -> String| Some((of(before, before_set), of(after, after_set)));
    let rule = change.rule;
    match change.how {
        How::Window => both(&|side, _| side.task(rule).map(|task| window(task.window)).unwrap_or_default()),
        How::Amount => both(&|side, _| side.task(rule).map(|task| list(&task.amounts, amount)).unwrap_or_default()),
        How::Reasons | How::Outcome(Stands::Held, _) | How::Outcome(_, Stands::Held) => both(&|side, set| {
            side.other(rule).map(|other| list(&other.reasons, |r| reason(r, rule, set))).unwrap_or_default()
        }),
        How::CheckFirst => both(&|side, set| {
            side.task(rule).map(|task| list(&task.check_first, |r| reason(r, rule, set))).unwrap_or_default()
        }),
        How::Order => both(&|side, _| list(&side.tasks, |task| task.rule.to_owned())),
        How::Questions => {
            let facts = |side: &Compared<'_>| list(&side.questions, |asked| asked.fact.clone());
            // Only where the same is asked it is worth showing what can be answered.
            if facts(before) == facts(after) {
                both(&|side, _| list(&side.questions, answers))
            } else {
                both(&|side, _| facts(side))
            }
        }
        How::Outcome(..) | How::Band(..) | How::Refused | How::Understood => None,
    }
}

fn list<T>(items: &[T], words: impl Fn(&T) -> String) -> String {
    if items.is_empty() { "nothing".to_owned() } else { items.iter().map(words).collect::<Vec<String>>().join("; ") }
}

fn answers(asked: &Asked) -> String {
    let answers: Vec<String> = asked.answers.iter().map(|answer| answer.to_string().replace('"', "")).collect();
    format!("{} ({})", asked.fact, answers.join(", "))
}

fn window(window: Window) -> String {
    match window {
        Window::AllYear => "all year".to_owned(),
        Window::Days(opens, best, closes) => format!("{opens} to {closes}, best {best}"),
        Window::Unknown => "not known".to_owned(),
    }
}

fn amount(Amount(shown): &Amount<'_>) -> String {
    let what: &str = shown.what;
    let usual = shown.typical.map(|range| format!("usually {} to {} {}", range.min, range.max, range.unit));
    match (shown.value, usual) {
        (Some(value), _) => {
            let unit = shown.unit.as_deref().unwrap_or_default();
            format!("{what} {value} {unit}{}", if shown.capped { ", capped" } else { "" })
        }
        (None, Some(usual)) => format!("{what} {usual}"),
        (None, None) => format!("{what} not reckoned"),
    }
}

/// A block in words: a hold by its condition.
fn reason(reason: &Reason<'_>, rule: &str, set: &Set) -> String {
    let condition = reason.hold.and_then(|at| {
        let entry = &set.pack.rules.get(set.names.rules.wide(rule)? as usize)?.entry;
        Some(entry.hold.get(at)?.condition.text())
    });
    match (condition, reason.rule) {
        (Some(condition), _) => format!("its hold `{condition}`"),
        (None, Some(other)) => format!("{other} ({})", reason.kind),
        (None, None) => reason.kind.to_owned(),
    }
}
