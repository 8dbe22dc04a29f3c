//! Where the value of a term stands when it is asked for: most are as the caller gave them, and need no working out.

use super::term::Term;
use crate::fact::catalogue::{Fact, Giver};

/// Where the value of a term stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Source {
    /// A fact as it was understood, rounded already.
    Given(Fact),
    /// Whether this sign is seen.
    Sign(u16),
    /// How much of the plant shows it, rounded already.
    Share(u16),
    /// Worked out at the moment, once, and kept in this place.
    Worked(u32),
}

impl Source {
    /// Which of the four it is.
    pub(super) const fn kind(self) -> u8 {
        match self {
            Self::Given(_) => 0,
            Self::Sign(_) => 1,
            Self::Share(_) => 2,
            Self::Worked(_) => 3,
        }
    }

    /// The sources of a plant's terms, in their order. The places of what is worked out are numbered from 0.
    #[must_use]
    pub fn of_all(terms: &[Term]) -> Vec<Self> {
        let mut places = 0..;
        terms
            .iter()
            .map(|term| match term {
                Term::Fact(fact) if is_as_given(*fact) => Self::Given(*fact),
                Term::Sign(sign) => Self::Sign(*sign),
                Term::Share(sign) => Self::Share(*sign),
                _ => Self::Worked(places.next().unwrap_or(u32::MAX)),
            })
            .collect()
    }
}

/// Whether a fact is nothing but what the caller gave. The plant's type is the question's own, its age may come from the
/// day of planting, and its stage from the season.
fn is_as_given(fact: Fact) -> bool {
    let own =
        matches!(fact, Fact::PlantType | Fact::PlantAge | Fact::PlantStage | Fact::PlantStageSince | Fact::PlantInLeaf);
    fact.entry().giver == Giver::Caller && !own
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::compile::term::Work;

    #[test]
    fn only_what_is_worked_out_takes_a_place() {
        let terms = [
            Term::Fact(Fact::SoilPh),
            Term::Fact(Fact::PlantAge),
            Term::Sign(3),
            Term::Count(Work::Job(0), 30),
            Term::Share(4),
            Term::Fact(Fact::Tmin),
        ];
        let expected = [
            Source::Given(Fact::SoilPh),
            Source::Worked(0),
            Source::Sign(3),
            Source::Worked(1),
            Source::Share(4),
            Source::Worked(2),
        ];
        assert_eq!(Source::of_all(&terms), expected);
    }
}
