//! Compiled expressions: terms that turn out a value, conditions over tests of terms.

use lammas_agronomy::marker::Marker;
use lammas_agronomy::season::{Aggregate, Series};

use crate::fact::catalogue::Fact;
use crate::fact::value::Value;
use crate::lang::ast::Comparison;
use crate::unit::Unit;

/// The works that `done`, `count` and `last` look for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Work {
    /// Any work of a job.
    Job(u16),
    /// Any work with a material.
    Material(u16),
    /// Any work with a material of a class.
    Class(u16),
}

/// A marker of the language.
#[derive(Clone, Debug, PartialEq)]
pub enum MarkerRef {
    /// One that the season computes.
    Season(Marker),
    /// The first day of a heat sum after another marker.
    HeatReached {
        /// °Cd.
        sum_cd: f64,
        /// °C.
        base_c: f64,
        /// The marker from which it is summed.
        from: Box<MarkerAt>,
    },
    /// The first day on which a winter has brought so many chill hours.
    ChillReached(u16),
    /// The day on which a stage of the plant begins.
    Stage(u16),
    /// The day of planting.
    Planted,
    /// The last work of a kind.
    Last(Work),
    /// The day on which a sign was first seen.
    Since(u16),
    /// The end of the waiting time after a spray.
    HarvestWait,
    /// The day asked.
    Today,
}

impl MarkerRef {
    /// Whether its day is one that the caller tells.
    #[must_use]
    pub fn is_from_caller(&self) -> bool {
        match self {
            Self::HeatReached { from, .. } => from.marker.is_from_caller(),
            Self::Planted | Self::Last(_) | Self::Since(_) | Self::HarvestWait => true,
            Self::Season(_) | Self::ChillReached(_) | Self::Stage(_) | Self::Today => false,
        }
    }
}

/// A marker with days added to it.
#[derive(Clone, Debug, PartialEq)]
pub struct MarkerAt {
    /// The marker.
    pub marker: MarkerRef,
    /// Days; negative before it.
    pub days: i32,
    /// As it is printed.
    pub text: String,
}

/// Something that turns out a value.
#[derive(Clone, Debug, PartialEq)]
pub enum Term {
    /// A fact without arguments.
    Fact(Fact),
    /// A trait of the plant, by its number.
    Trait(u16),
    /// Whether a sign is seen.
    Sign(u16),
    /// How bad a sign is.
    Severity(u16),
    /// How much of the plant shows it.
    Share(u16),
    /// Whether the region is this one or lies in it.
    RegionIs(String),
    /// Whether the region has a flag.
    RegionFlag(String),
    /// Whether a work of choice is wished.
    Wants(u16),
    /// Whether a work was done within so many days.
    Done(Work, u16),
    /// How often.
    Count(Work, u16),
    /// Of the days before.
    Past(Aggregate, Series, u16),
    /// Of the day and those after it.
    Ahead(Aggregate, Series, u16),
    /// Whether the minimum falls to so many °C within so many days.
    FrostAhead(f64, u16),
    /// Warmth summed since a marker.
    HeatSum {
        /// °C.
        base_c: f64,
        /// °C, the upper cut-off.
        upper_c: Option<f64>,
        /// Since when.
        from: Box<MarkerAt>,
    },
    /// The occurrence of a marker nearest to the day.
    Marker(Box<MarkerAt>),
    /// Days to its next occurrence.
    DaysTo(Box<MarkerAt>),
    /// Days since its last.
    DaysFrom(Box<MarkerAt>),
    /// A literal.
    Literal(Value),
    /// The sum of two terms of one unit; a date and days.
    Add(Box<Term>, Box<Term>),
    /// Their difference.
    Subtract(Box<Term>, Box<Term>),
    /// A multiple.
    Times(Box<Term>, f64),
    /// A fraction.
    Over(Box<Term>, f64),
    /// The same in another unit.
    Converted(Box<Term>, &'static Unit, &'static Unit),
    /// Two terms compared: a truth of its own.
    Compare(Box<Term>, Comparison, Box<Term>),
}

impl Term {
    /// Calls `visit` for this term and every term inside it.
    pub fn walk<'a>(&'a self, visit: &mut impl FnMut(&'a Self)) {
        visit(self);
        match self {
            Self::Add(a, b) | Self::Subtract(a, b) | Self::Compare(a, _, b) => {
                a.walk(visit);
                b.walk(visit);
            }
            Self::Times(a, _) | Self::Over(a, _) | Self::Converted(a, ..) => a.walk(visit),
            _ => {}
        }
    }

    /// The fact of the catalogue that this term by itself reads; none for literals and arithmetic.
    #[must_use]
    pub const fn fact(&self) -> Option<Fact> {
        Some(match self {
            Self::Fact(fact) => *fact,
            Self::Trait(_) => Fact::PlantTrait,
            Self::Sign(_) => Fact::SignsHas,
            Self::Severity(_) => Fact::Severity,
            Self::Share(_) => Fact::Share,
            Self::RegionIs(_) => Fact::Region,
            Self::RegionFlag(_) => Fact::RegionFlag,
            Self::Wants(_) => Fact::Wants,
            Self::Done(..) => Fact::Done,
            Self::Count(..) => Fact::Count,
            Self::Past(..) => Fact::Past,
            Self::Ahead(..) => Fact::Ahead,
            Self::FrostAhead(..) => Fact::FrostAhead,
            Self::HeatSum { .. } => Fact::HeatSum,
            Self::Marker(_) => Fact::Marker,
            Self::DaysTo(_) => Fact::DaysTo,
            Self::DaysFrom(_) => Fact::DaysFrom,
            Self::Literal(_)
            | Self::Add(..)
            | Self::Subtract(..)
            | Self::Times(..)
            | Self::Over(..)
            | Self::Converted(..)
            | Self::Compare(..) => return None,
        })
    }

    /// Whether it reads a fact of the day.
    #[must_use]
    pub fn is_of_the_day(&self) -> bool {
        let mut found = false;
        self.walk(&mut |term| found |= term.fact().is_some_and(|fact| fact.entry().of_the_day));
        found
    }

    /// Whether a lasting fact is read that is neither of the day nor of the season.
    #[must_use]
    pub fn is_from_caller(&self) -> bool {
        use crate::fact::catalogue::Giver;
        let mut found = false;
        self.walk(&mut |term| {
            found |= term.fact().is_some_and(|fact| matches!(fact.entry().giver, Giver::Caller | Giver::History));
            found |= match term {
                Self::Marker(at) | Self::DaysTo(at) | Self::DaysFrom(at) | Self::HeatSum { from: at, .. } => {
                    at.marker.is_from_caller()
                }
                _ => false,
            };
        });
        found
    }
}

/// A test of a term's value.
#[derive(Clone, Debug, PartialEq)]
pub enum Test {
    /// It is so.
    Holds,
    /// Compared with a number in the term's unit.
    Number(Comparison, f64),
    /// One of these numbers.
    OneOfNumbers(Vec<f64>),
    /// Compared with a choice.
    Choice(Comparison, u16),
    /// One of these choices.
    OneOf(Vec<u16>),
    /// Known not to exist.
    IsAbsent,
}

/// A term (by its number) and a test of it: what conditions are made of. Each distinct one exists once a plant.
#[derive(Clone, Debug, PartialEq)]
pub struct Atom {
    /// The number of the term.
    pub probe: u32,
    /// The test.
    pub test: Test,
}

/// A condition over atoms, by their numbers.
#[derive(Clone, Debug, PartialEq)]
pub enum Condition {
    /// Always.
    Always,
    /// An atom.
    Atom(u32),
    /// All.
    And(Vec<Condition>),
    /// Any.
    Or(Vec<Condition>),
    /// The opposite.
    Not(Box<Condition>),
}

impl Condition {
    /// Calls `visit` with the number of every atom in it.
    pub fn atoms(&self, visit: &mut impl FnMut(u32)) {
        match self {
            Self::Always => {}
            Self::Atom(atom) => visit(*atom),
            Self::And(parts) | Self::Or(parts) => parts.iter().for_each(|p| p.atoms(visit)),
            Self::Not(inner) => inner.atoms(visit),
        }
    }
}
