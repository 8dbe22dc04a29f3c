//! Everything of a set that concerns one plant.

use super::moves::Moving;
use super::names::PlantNames;
use super::rule::PlantRule;
use super::short::Short;
use super::sieve::Sieve;
use super::source::Source;
use super::term::{Atom, Condition, Term};
use super::window::Side;

/// A trait of the plant.
#[derive(Clone, Debug)]
pub struct TraitInfo {
    /// The value that is assumed when it is not said.
    pub usual: Option<u16>,
}

/// A stage and when it begins.
#[derive(Clone, Debug)]
pub struct StageInfo {
    /// Its number among the plant's stages.
    pub stage: u16,
    /// When it begins.
    pub begins: Side,
}

/// How a problem shows on this plant.
#[derive(Clone, Debug)]
pub struct ProblemInfo {
    /// Its number.
    pub problem: u16,
    /// Signs with their points when true and when false.
    pub signs: Vec<(u16, i32, i32)>,
    /// Signs that count as *always* or *often*.
    pub leading: Vec<u16>,
    /// What favours it.
    pub favours: Vec<Condition>,
    /// When it is worth acting.
    pub threshold: Option<Condition>,
    /// 0..3.
    pub impact: u8,
}

/// How the plant drinks and how big it grows.
#[derive(Clone, Copy, Debug)]
pub struct Habit {
    /// Share of the reference evapotranspiration.
    pub water_factor: f64,
    /// m.
    pub root_depth_m: f64,
    /// Share of the available water.
    pub depletion: f64,
    /// m, grown.
    pub height_m: f64,
    /// m, grown.
    pub canopy_diameter_m: f64,
    /// Years until it is grown.
    pub grown_after_years: f64,
    /// Whether it is eaten.
    pub food_use: bool,
}

/// Everything of a set that concerns one plant.
#[derive(Clone, Debug)]
pub struct PlantBook {
    /// Its number in the set.
    pub plant: u16,
    /// Its id.
    pub id: String,
    /// Its traits and stages by name.
    pub names: PlantNames,
    /// Its traits.
    pub traits: Vec<TraitInfo>,
    /// Whether it is in leaf, by stage.
    pub in_leaf: Vec<bool>,
    /// When its stages begin.
    pub stages: Vec<StageInfo>,
    /// How it drinks and grows.
    pub habit: Habit,
    /// Where it is grown.
    pub grown: Option<Condition>,
    /// Where it is quiet for long.
    pub quiet: Vec<Condition>,
    /// Its problems.
    pub problems: Vec<ProblemInfo>,
    /// Terms, each once.
    pub probes: Vec<Term>,
    /// Where the value of each of them stands.
    pub sources: Vec<Source>,
    /// How many of them are worked out.
    pub worked: usize,
    /// Which of them read a fact of the day.
    pub of_the_day: Vec<bool>,
    /// Atoms, each once.
    pub atoms: Vec<Atom>,
    /// Its rules, guards among them.
    pub rules: Vec<PlantRule>,
    /// Those of them that are emergencies, by their numbers among the plant's.
    pub emergencies: Vec<u32>,
    /// Its rules in short.
    pub shorts: Vec<Short>,
    /// Which rules can be true at all, by the cells in which the probes lie.
    pub sieve: Sieve,
    /// What moves from day to day.
    pub moving: Moving,
    /// The cautions of the set that have an `unless`.
    pub cautions: Vec<(u16, Condition)>,
}
