//! The sieve: which rules of a plant can be true at all, found without looking at each.
//!
//! The top of most conditions is a conjunction, and most of its parts read one term: `plant.age >= 1 year`, `signs has
//! mildew`. For each such term its values are cut into cells at the thresholds that rules read; for each cell a row of
//! bits says which rules that part does not make false, and another which rules it makes true. A request looks its cell
//! up in each column and takes the rows together: what is neither left out nor proven is judged exactly. Cost grows with
//! the bits of the plant's rules, not with the rules.

use super::source::Source;
use super::term::{Atom, Condition, Test};
use crate::fact::value::{Truth, Value};
use crate::lang::ast::Comparison;
use lammas_agronomy::origin::Origin;

/// The most cuts of a column: more would only make the rows many, and what is left is judged exactly anyway.
const MOST_CUTS: usize = 63;
/// So few cuts are counted through; among more it is searched.
const FEW: usize = 16;

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
    source: Source,
    probe: u32,
    cuts: Kept,
    /// Where its rows begin among the words of the sieve: one a cell, unknown, absent, then the values.
    first: u32,
}

/// What a value says of the score of the rules that read it, in the order in which it counts.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Mark {
    /// Nothing.
    None,
    /// Where it comes from.
    From(Origin),
    /// The part for a sign that is seen.
    Severity(u8),
}

/// The sieve of a plant.
#[derive(Clone, Debug, Default)]
pub struct Sieve {
    rules: usize,
    /// Words of a row.
    words: usize,
    columns: Vec<Column>,
    numbers: Vec<f64>,
    /// Which rules a cell does not make false.
    can: Vec<u64>,
    /// Which rules a cell makes true, as far as this term goes.
    must: Vec<u64>,
    /// The columns that each rule reads; none of a rule that hangs on more than single columns.
    reads: Vec<Option<Reads>>,
}

/// The columns that a rule reads.
#[derive(Clone, Debug, Default)]
struct Reads {
    columns: Vec<u32>,
    /// Whether in each cell of them its parts say but one thing.
    exact: bool,
}

/// What the sieve left.
#[derive(Clone, Debug)]
pub struct Sifted<'s> {
    sieve: &'s Sieve,
    /// The rules that are possible, a bit each.
    possible: Vec<u64>,
    /// Of each column where the row of its value begins, and what that value says of scores.
    cells: Vec<(u32, Mark)>,
}

impl Sieve {
    /// The sieve for these conditions, one a rule.
    #[must_use]
    pub fn of(conditions: &[Vec<&Condition>], atoms: &[Atom], sources: &[Source]) -> Self {
        let words = conditions.len().div_ceil(64);
        let mut parts: Vec<Vec<(usize, &Condition)>> = vec![Vec::new(); sources.len()];
        let mut reads = vec![Some(Reads { columns: Vec::new(), exact: true }); conditions.len()];
        for (rule, conjunction) in conditions.iter().enumerate() {
            let mut flat = Vec::new();
            conjunction.iter().for_each(|c| flatten(c, &mut flat));
            for part in flat {
                match only_probe(part, atoms).and_then(|probe| parts.get_mut(probe as usize)) {
                    Some(list) => list.push((rule, part)),
                    None => {
                        if let Some(reads) = reads.get_mut(rule) {
                            *reads = None;
                        }
                    }
                }
            }
        }
        let mut sieve = Self { rules: conditions.len(), words, ..Self::default() };
        // Columns whose values stand in one place follow each other.
        let mut order: Vec<(usize, &Source)> = sources.iter().enumerate().collect();
        order.sort_by_key(|(_, source)| source.kind());
        for (probe, source) in order {
            let Some(parts) = parts.get(probe).filter(|parts| !parts.is_empty()) else { continue };
            let column = place(sieve.columns.len());
            let exact = sieve.add(place(probe), *source, parts, atoms);
            for (rule, _) in parts {
                if let Some(Some(reads)) = reads.get_mut(*rule) {
                    reads.columns.push(column);
                    reads.columns.dedup();
                    reads.exact &= exact;
                }
            }
        }
        sieve.reads = reads;
        sieve
    }

    /// Adds a column; whether each of its cells says but one thing.
    fn add(&mut self, probe: u32, source: Source, parts: &[(usize, &Condition)], atoms: &[Atom]) -> bool {
        let (cuts, exact) = cuts(parts, atoms);
        let first = place(self.can.len());
        let rows = rows_of(&cuts, parts, atoms, self.words);
        self.can.extend(rows.can);
        self.must.extend(rows.must);
        let cuts = match cuts {
            Cuts::Truth => Kept::Truth,
            Cuts::Choice(count) => Kept::Choice(count),
            Cuts::Numbers(list) => {
                let begin = place(self.numbers.len());
                self.numbers.extend(list);
                Kept::Numbers { begin, end: place(self.numbers.len()) }
            }
        };
        self.columns.push(Column { source, probe, cuts, first });
        exact
    }

    /// Which rules are possible; `look` reads a term, and says what that means for scores.
    pub fn sift(&self, mut look: impl FnMut(Source, u32) -> (Value, Mark)) -> Sifted<'_> {
        let words = self.words;
        let mut possible = self.all();
        // The places of all rows first: then the rows are fetched side by side, however far apart they lie.
        let mut cells = Vec::with_capacity(self.columns.len());
        for column in &self.columns {
            let (value, mark) = look(column.source, column.probe);
            cells.push((column.first + self.cell(column.cuts, value) * place(words), mark));
        }
        for (first, _) in &cells {
            let first = *first as usize;
            let row = self.can.get(first..first + words).unwrap_or(&[]);
            possible.iter_mut().zip(row).for_each(|(bits, row)| *bits &= row);
        }
        Sifted { sieve: self, possible, cells }
    }

    /// The rules that what stays does not make false; `value` reads a term that stays, and gives nothing for one that moves.
    pub fn possible_whatever(&self, mut value: impl FnMut(u32) -> Option<Value>) -> Vec<usize> {
        let mut possible = self.all();
        for column in &self.columns {
            let Some(value) = value(column.probe) else { continue };
            let first = (column.first + self.cell(column.cuts, value) * place(self.words)) as usize;
            let row = self.can.get(first..first + self.words).unwrap_or(&[]);
            possible.iter_mut().zip(row).for_each(|(bits, row)| *bits &= row);
        }
        set_bits(&possible).collect()
    }

    /// All rules, a bit each.
    fn all(&self) -> Vec<u64> {
        let mut all = vec![u64::MAX; self.words];
        if let Some(last) = all.last_mut()
            && !self.rules.is_multiple_of(64)
        {
            *last = (1 << (self.rules % 64)) - 1;
        }
        all
    }

    /// The cell of a value: unknown, absent, then the values.
    fn cell(&self, cuts: Kept, value: Value) -> u32 {
        match (cuts, value) {
            (_, Value::Unknown) => 0,
            (_, Value::Absent) => 1,
            (Kept::Truth, Value::Truth(yes)) => 2 + u32::from(yes),
            (Kept::Choice(count), Value::Choice(c)) => 2 + u32::from(c.min(count)),
            (Kept::Numbers { begin, end }, Value::Number(n)) => {
                let cuts = self.numbers.get(begin as usize..end as usize).unwrap_or(&[]);
                2 + if cuts.len() <= FEW {
                    cuts.iter().map(|cut| u32::from(*cut <= n)).sum()
                } else {
                    place(cuts.partition_point(|cut| *cut <= n))
                }
            }
            // A value that is there but is read only as absent or not.
            _ => 2,
        }
    }
}

impl Sifted<'_> {
    /// The rules that their conditions do not make false.
    pub fn possible(&self) -> impl Iterator<Item = usize> + '_ {
        set_bits(&self.possible)
    }

    /// How many rules are possible.
    #[must_use]
    pub fn count(&self) -> usize {
        self.possible.iter().map(|word| word.count_ones() as usize).sum()
    }

    /// What the conditions of a possible rule say: true, or unknown; nothing where the sieve can't tell.
    #[must_use]
    pub fn condition(&self, rule: usize) -> Option<Truth> {
        let reads = self.sieve.reads.get(rule)?.as_ref()?;
        let is_true = |first: u32| {
            self.sieve.must.get(first as usize + rule / 64).is_some_and(|word| word >> (rule % 64) & 1 == 1)
        };
        if self.cells(reads).all(|(first, _)| is_true(*first)) {
            return Some(Truth::True);
        }
        // What makes none of its parts false, and not all of them true, leaves it unknown, if a cell says but one thing.
        reads.exact.then_some(Truth::Unknown)
    }

    /// What the values that a rule read say of its score.
    pub fn marks(&self, rule: usize) -> impl Iterator<Item = Mark> + '_ {
        let reads = self.sieve.reads.get(rule).and_then(Option::as_ref);
        reads.into_iter().flat_map(|reads| self.cells(reads)).map(|(_, mark)| *mark)
    }

    fn cells<'r>(&'r self, reads: &'r Reads) -> impl Iterator<Item = &'r (u32, Mark)> {
        reads.columns.iter().filter_map(|column| self.cells.get(*column as usize))
    }
}

fn place(at: usize) -> u32 {
    u32::try_from(at).unwrap_or(u32::MAX)
}

fn clear_bit(words: &mut [u64], at: usize) {
    if let Some(word) = words.get_mut(at / 64) {
        *word &= !(1 << (at % 64));
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

/// How the values of a term are cut for these parts, and whether at every place where one of them turns.
fn cuts(parts: &[(usize, &Condition)], atoms: &[Atom]) -> (Cuts, bool) {
    let mut numbers = Vec::new();
    let mut choices = 0;
    for (_, part) in parts {
        part.atoms(&mut |atom| {
            if let Some(atom) = atoms.get(atom as usize) {
                match &atom.test {
                    Test::Number(comparison, n) => numbers.extend(turns(*comparison, *n)),
                    Test::OneOfNumbers(list) => numbers.extend(list.iter().flat_map(|n| [*n, n.next_up()])),
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
        (Cuts::Numbers(numbers.into_iter().step_by(every).collect()), every == 1)
    } else if choices > 0 {
        (Cuts::Choice(choices), true)
    } else {
        (Cuts::Truth, true)
    }
}

/// The numbers from which on a comparison says something else.
fn turns(comparison: Comparison, n: f64) -> Vec<f64> {
    match comparison {
        Comparison::Less | Comparison::AtLeast => vec![n],
        Comparison::AtMost | Comparison::More => vec![n.next_up()],
        Comparison::Equal | Comparison::Unequal => vec![n, n.next_up()],
    }
}

/// The rows of a term, one a cell.
struct Rows {
    can: Vec<u64>,
    must: Vec<u64>,
}

fn rows_of(cuts: &Cuts, parts: &[(usize, &Condition)], atoms: &[Atom], words: usize) -> Rows {
    let cells = cuts.cells();
    let mut rows = Rows { can: vec![u64::MAX; cells * words], must: vec![u64::MAX; cells * words] };
    for (rule, part) in parts {
        for cell in 0..cells {
            let samples = cuts.samples(cell, part, atoms);
            let mut truths = samples.iter().map(|value| judge(part, atoms, *value));
            let bit = cell * words * 64 + rule;
            if truths.clone().all(|truth| truth == Truth::False) {
                clear_bit(&mut rows.can, bit);
            }
            if truths.any(|truth| truth != Truth::True) {
                clear_bit(&mut rows.must, bit);
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
                    Some(Test::Number(comparison, n)) => points.extend(turns(*comparison, *n)),
                    Some(Test::OneOfNumbers(list)) => points.extend(list.iter().flat_map(|n| [*n, n.next_up()])),
                    _ => {}
                });
                points.retain(|p| low.is_none_or(|low| *p >= low) && high.is_none_or(|high| *p < high));
                points.extend(low);
                points.sort_by(f64::total_cmp);
                points.dedup();
                let mut samples = points.clone();
                let first = points.first().copied().or(high).unwrap_or(0.0);
                if low.is_none() {
                    samples.push(first - 1.0);
                }
                for (at, point) in points.iter().enumerate() {
                    let next = points.get(at + 1).copied().or(high).unwrap_or(point + 2.0);
                    samples.push((point + next) / 2.0);
                }
                // Between a number and the next there is none.
                samples.retain(|sample| high.is_none_or(|high| *sample < high));
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
