//! Rules and documents from fixed seeds. The draws hang on the seed alone; a width then narrows the conditions.

use crate::facts::{CHOICES, FLAGS, NUMBERS, Number, PLANTS, SIGNS};

/// Linear congruential, the constants of Knuth's MMIX (The Art of Computer Programming, volume 2, 3.3.4; from memory).
pub(crate) struct Draws(u64);

impl Draws {
    pub(crate) const fn of(seed: u64) -> Self {
        Self(seed)
    }

    /// Evenly in 0..below.
    pub(crate) fn below(&mut self, below: usize) -> usize {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (((self.0 >> 32) * below as u64) >> 32) as usize
    }

    /// Evenly in 0..1.
    fn unit(&mut self) -> f64 {
        self.below(1 << 24) as f64 / f64::from(1 << 24)
    }
}

/// A condition as plain data.
#[derive(Clone, Copy, Debug)]
pub(crate) enum Condition {
    /// The number lies in the range, both ends in it.
    Range { fact: usize, low: f64, high: f64 },
    /// The choice is one whose bit is set.
    OneOf { fact: usize, mask: u16 },
    /// The flag is this.
    Flag { fact: usize, yes: bool },
    /// The sign is in the list.
    Sign(u8),
}

#[derive(Clone, Debug)]
pub(crate) struct Rule {
    pub(crate) number: u32,
    pub(crate) plants: Vec<u16>,
    pub(crate) conditions: Vec<Condition>,
}

/// A fact document: what one request says.
#[derive(Clone, Debug)]
pub(crate) struct Document {
    pub(crate) plant: u16,
    pub(crate) numbers: [f64; NUMBERS.len()],
    pub(crate) choices: [u8; CHOICES.len()],
    pub(crate) flags: [bool; FLAGS.len()],
    pub(crate) signs: Vec<u8>,
}

fn value(of: Number, steps: usize) -> f64 {
    steps as f64 / f64::from(of.steps_in_one)
}

/// Of a hundred conditions 64 are ranges, 18 memberships, 12 flags, 6 signs.
fn condition(draws: &mut Draws, width: f64) -> Condition {
    match draws.below(100) {
        0..64 => {
            let fact = draws.below(NUMBERS.len());
            let of = NUMBERS[fact];
            let (least, most) = (f64::from(of.least), f64::from(of.most));
            let middle = least + (most - least) * draws.unit();
            let half = width * (most - least) / 2.0;
            let (low, high) = ((middle - half).max(least).round(), (middle + half).min(most).round());
            Condition::Range { fact, low: value(of, low as usize), high: value(of, high as usize) }
        }
        64..82 => {
            let fact = draws.below(CHOICES.len());
            let count = CHOICES[fact].1.len();
            let first = draws.below(count);
            let named = ((width * count as f64).round() as usize).clamp(1, count - 1);
            let mask = (0..named).fold(0, |mask, at| mask | 1 << ((first + at) % count));
            Condition::OneOf { fact, mask }
        }
        82..94 => Condition::Flag { fact: draws.below(FLAGS.len()), yes: draws.below(2) == 1 },
        _ => Condition::Sign(draws.below(SIGNS) as u8),
    }
}

/// So many rules. With `steady` the first so many are for plant 0 alone and the others never for it.
pub(crate) fn rules(count: usize, width: f64, steady: Option<usize>) -> Vec<Rule> {
    let mut draws = Draws::of(20_260_915);
    (0..count)
        .map(|number| {
            let named = 1 + draws.below(3);
            let mut plants: Vec<u16> = match steady {
                Some(first) if number < first => vec![0],
                Some(_) => (0..named).map(|_| 1 + draws.below(PLANTS - 1) as u16).collect(),
                None => (0..named).map(|_| draws.below(PLANTS) as u16).collect(),
            };
            plants.sort_unstable();
            plants.dedup();
            let conditions = (0..2 + draws.below(4)).map(|_| condition(&mut draws, width)).collect();
            Rule { number: number as u32, plants, conditions }
        })
        .collect()
}

/// 256 documents, of any plant or of this one.
pub(crate) fn documents(plant: Option<u16>) -> Vec<Document> {
    let mut draws = Draws::of(1_701);
    (0..256)
        .map(|_| {
            let any = draws.below(PLANTS) as u16;
            Document {
                plant: plant.unwrap_or(any),
                numbers: NUMBERS
                    .map(|of| value(of, usize::from(of.least) + draws.below(usize::from(of.most - of.least) + 1))),
                choices: CHOICES.map(|(_, values)| draws.below(values.len()) as u8),
                flags: FLAGS.map(|_| draws.below(2) == 1),
                signs: (0..draws.below(5)).map(|_| draws.below(SIGNS) as u8).collect(),
            }
        })
        .collect()
}
