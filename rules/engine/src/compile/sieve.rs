//! The sieve: which rules of a plant can be true at all, found without looking at each.
//!
//! The top of most conditions is a conjunction, and most of its parts read one term: `plant.age >= 1 year`, `signs has
//! mildew`. For each such term its values are cut into cells at the thresholds that rules read; for each cell a row of
//! bits says which rules that part does not make false. A request looks its cell up in each column and takes the rows
//! together: what is left is judged exactly. Cost grows with the bits of the plant's rules, not with the rules.

use super::term::{Atom, Condition, Test};
use crate::fact::value::{Truth, Value};

/// The most cuts of a column: more would only make the rows many, and what is left is judged exactly anyway.
const MOST_CUTS: usize = 63;

/// How a column's values are cut.
#[derive(Clone, Debug, PartialEq)]
enum Cuts {
    Numbers(Vec<f64>),
    Truth,
    Choice(u16),
}

/// How a column is cut, in the sieve: its numbers stand among those of all columns.
#[derive(Clone, Copy, Debug)]
enum Kept {
    Numbers { begin: u32, end: u32 },
    Truth,
    Choice(u16),
}

#[derive(Clone, Copy, Debug)]
struct Column {
    probe: u32,
    cuts: Kept,
    /// Where its rows begin among the words of the sieve: one a cell, unknown, absent, then the values.
    first: usize,
}

/// The sieve of a plant.
#[derive(Clone, Debug, Default)]
pub struct Sieve {
    rules: usize,
    columns: Vec<Column>,
    numbers: Vec<f64>,
    rows: Vec<u64>,
}

impl Sieve {
    /// The sieve for these conditions, one a rule.
    #[must_use]
    pub fn of(conditions: &[Vec<&Condition>], atoms: &[Atom], probes: usize) -> Self {
        let mut parts: Vec<Vec<(usize, &Condition)>> = vec![Vec::new(); probes];
        for (rule, conjunction) in conditions.iter().enumerate() {
            let mut flat = Vec::new();
            conjunction.iter().for_each(|c| flatten(c, &mut flat));
            for part in flat {
                if let Some(probe) = only_probe(part, atoms)
                    && let Some(list) = parts.get_mut(probe as usize)
                {
                    list.push((rule, part));
                }
            }
        }
        let words = conditions.len().div_ceil(64);
        let mut numbers = Vec::new();
        let mut rows = Vec::new();
        let columns = parts
            .iter()
            .enumerate()
            .filter(|(_, parts)| !parts.is_empty())
            .map(|(probe, parts)| {
                let cuts = cuts(parts, atoms);
                let first = rows.len();
                rows.extend(rows_of(&cuts, parts, atoms, words));
                let place = |at: usize| u32::try_from(at).unwrap_or(u32::MAX);
                let cuts = match cuts {
                    Cuts::Truth => Kept::Truth,
                    Cuts::Choice(count) => Kept::Choice(count),
                    Cuts::Numbers(list) => {
                        let begin = place(numbers.len());
                        numbers.extend(list);
                        Kept::Numbers { begin, end: place(numbers.len()) }
                    }
                };
                Column { probe: place(probe), cuts, first }
            })
            .collect();
        Self { rules: conditions.len(), columns, numbers, rows }
    }

    /// The rules that can be true, as bits; `value` reads a term.
    pub fn possible(&self, mut value: impl FnMut(u32) -> Value, out: &mut Vec<u64>) {
        let words = self.rules.div_ceil(64);
        out.clear();
        out.resize(words, u64::MAX);
        if let Some(last) = out.last_mut()
            && !self.rules.is_multiple_of(64)
        {
            *last = (1 << (self.rules % 64)) - 1;
        }
        for column in &self.columns {
            let row = column.first + self.cell(column.cuts, value(column.probe)) * words;
            let row = self.rows.get(row..row + words).unwrap_or(&[]);
            for (bits, row) in out.iter_mut().zip(row) {
                *bits &= row;
            }
        }
    }
}

impl Sieve {
    /// The cell of a value: unknown, absent, then the values.
    fn cell(&self, cuts: Kept, value: Value) -> usize {
        match (cuts, value) {
            (_, Value::Unknown) => 0,
            (_, Value::Absent) => 1,
            (Kept::Truth, Value::Truth(yes)) => 2 + usize::from(yes),
            (Kept::Choice(count), Value::Choice(c)) => 2 + usize::from(c.min(count)),
            (Kept::Numbers { begin, end }, Value::Number(n)) => {
                let cuts = self.numbers.get(begin as usize..end as usize).unwrap_or(&[]);
                2 + cuts.partition_point(|cut| *cut <= n)
            }
            // A value that is there but is read only as absent or not.
            _ => 2,
        }
    }
}

/// The numbers of the bits that are set.
pub fn set_bits(words: &[u64]) -> impl Iterator<Item = usize> + '_ {
    words.iter().enumerate().flat_map(|(at, word)| {
        let mut rest = *word;
        std::iter::from_fn(move || {
            if rest == 0 {
                return None;
            }
            let bit = rest.trailing_zeros() as usize;
            rest &= rest - 1;
            Some(at * 64 + bit)
        })
    })
}

fn flatten<'a>(condition: &'a Condition, out: &mut Vec<&'a Condition>) {
    match condition {
        Condition::And(parts) => parts.iter().for_each(|part| flatten(part, out)),
        Condition::Always => {}
        other => out.push(other),
    }
}

/// The term that a condition reads, if it reads only one.
fn only_probe(condition: &Condition, atoms: &[Atom]) -> Option<u32> {
    let mut probes = Vec::new();
    condition.atoms(&mut |atom| probes.extend(atoms.get(atom as usize).map(|a| a.probe)));
    probes.dedup();
    match probes.as_slice() {
        [one] => Some(*one),
        _ => None,
    }
}

/// How the values of a term are cut for these parts.
fn cuts(parts: &[(usize, &Condition)], atoms: &[Atom]) -> Cuts {
    let mut numbers = Vec::new();
    let mut choices = 0;
    for (_, part) in parts {
        part.atoms(&mut |atom| {
            if let Some(atom) = atoms.get(atom as usize) {
                match &atom.test {
                    Test::Number(_, n) => numbers.push(*n),
                    Test::OneOfNumbers(list) => numbers.extend(list),
                    Test::Choice(_, c) => choices = choices.max(c + 1),
                    Test::OneOf(list) => choices = choices.max(list.iter().max().map_or(0, |c| c + 1)),
                    Test::Holds | Test::IsAbsent => {}
                }
            }
        });
    }
    if !numbers.is_empty() {
        numbers.sort_by(f64::total_cmp);
        numbers.dedup();
        let every = numbers.len().div_ceil(MOST_CUTS);
        Cuts::Numbers(numbers.into_iter().step_by(every).collect())
    } else if choices > 0 {
        Cuts::Choice(choices)
    } else {
        Cuts::Truth
    }
}

/// The rows of a term, one a cell, each of so many words.
fn rows_of(cuts: &Cuts, parts: &[(usize, &Condition)], atoms: &[Atom], words: usize) -> Vec<u64> {
    let cells = cuts.cells();
    let mut rows = vec![u64::MAX; cells * words];
    for (rule, part) in parts {
        for cell in 0..cells {
            let possible =
                cuts.samples(cell, part, atoms).iter().any(|value| judge(part, atoms, *value) != Truth::False);
            if !possible && let Some(word) = rows.get_mut(cell * words + rule / 64) {
                *word &= !(1 << (rule % 64));
            }
        }
    }
    rows
}

impl Cuts {
    fn cells(&self) -> usize {
        2 + match self {
            Self::Truth => 2,
            // One more for a choice that no rule names.
            Self::Choice(count) => usize::from(*count) + 1,
            Self::Numbers(cuts) => cuts.len() + 1,
        }
    }

    /// Values of a cell between which the condition can't tell: one for each stretch in which it is the same.
    fn samples(&self, cell: usize, part: &Condition, atoms: &[Atom]) -> Vec<Value> {
        match (cell, self) {
            (0, _) => vec![Value::Unknown],
            (1, _) => vec![Value::Absent],
            (cell, Self::Truth) => {
                // A date or number of which only the absence is read falls into the first of the two.
                if cell == 2 { vec![Value::Truth(false), Value::Number(0.0)] } else { vec![Value::Truth(true)] }
            }
            (cell, Self::Choice(_)) => vec![Value::Choice(u16::try_from(cell - 2).unwrap_or(u16::MAX))],
            (cell, Self::Numbers(cuts)) => {
                let low = (cell > 2).then(|| cuts.get(cell - 3)).flatten().copied();
                let high = cuts.get(cell - 2).copied();
                let mut points: Vec<f64> = Vec::new();
                part.atoms(&mut |atom| match atoms.get(atom as usize).map(|a| &a.test) {
                    Some(Test::Number(_, n)) => points.push(*n),
                    Some(Test::OneOfNumbers(list)) => points.extend(list),
                    _ => {}
                });
                points.retain(|p| low.is_none_or(|low| *p >= low) && high.is_none_or(|high| *p < high));
                points.extend(low);
                points.sort_by(f64::total_cmp);
                let mut samples = points.clone();
                let first = points.first().copied().or(high).unwrap_or(0.0);
                if low.is_none() {
                    samples.push(first - 1.0);
                }
                for (at, point) in points.iter().enumerate() {
                    let next = points.get(at + 1).copied().or(high).unwrap_or(point + 2.0);
                    samples.push((point + next) / 2.0);
                }
                samples.into_iter().map(Value::Number).collect()
            }
        }
    }
}

/// A condition over one term's value.
fn judge(condition: &Condition, atoms: &[Atom], value: Value) -> Truth {
    match condition {
        Condition::Always => Truth::True,
        Condition::Atom(atom) => atoms.get(*atom as usize).map_or(Truth::Unknown, |atom| atom.test.of(value)),
        Condition::And(parts) => parts.iter().fold(Truth::True, |t, part| t.and(judge(part, atoms, value))),
        Condition::Or(parts) => parts.iter().fold(Truth::False, |t, part| t.or(judge(part, atoms, value))),
        Condition::Not(inner) => judge(inner, atoms, value).not(),
    }
}
