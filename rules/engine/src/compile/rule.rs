//! A rule as the set holds it: what is the same for every plant, and what hangs on the plant.

use super::amount::Amount;
use super::term::Condition;
use super::window::Window;
use crate::pack::material::Hazard;
use crate::pack::rule::{Evidence, Kind, Manner, Strength};

/// What a separation or a block speaks of.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Subject {
    /// A job.
    Job(u16),
    /// A material.
    Material(u16),
    /// A class of materials.
    Class(u16),
    /// A rule.
    Rule(u32),
}

/// Two things that are kept so many days apart.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Apart {
    /// From what.
    pub from: Subject,
    /// Days.
    pub days: u16,
}

/// How often.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Repeat {
    /// Days between two, the least and the most.
    pub every: Option<(u16, u16)>,
    /// Times, within days.
    pub at_most: Option<(u16, u16)>,
}

/// What a guard blocks.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Blocks {
    /// Jobs.
    pub jobs: Vec<u16>,
    /// Materials.
    pub materials: Vec<u16>,
    /// Classes.
    pub classes: Vec<u16>,
    /// Rules.
    pub rules: Vec<u32>,
    /// Plants; none: every plant.
    pub plants: Vec<u16>,
}

/// After how long something may be expected.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum After {
    /// Days, the least and the most.
    Days(u16, u16),
    /// °Cd over 5 °C, the least and the most.
    Heat(f64, f64),
}

/// A job, as far as clashes, safety and order ask for it.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[expect(missing_docs, reason = "the names are the jobs")]
pub enum JobKind {
    Prune,
    ProtectFrost,
    ProtectHeat,
    Feed,
    Transplant,
    Treat,
    Water,
    #[default]
    Other,
}

impl JobKind {
    /// The kind of a job by its id.
    #[must_use]
    pub fn of(id: &str) -> Self {
        match id {
            "prune" => Self::Prune,
            "protect-frost" => Self::ProtectFrost,
            "protect-heat" => Self::ProtectHeat,
            "feed" => Self::Feed,
            "transplant" => Self::Transplant,
            "treat-pest" | "treat-disease" => Self::Treat,
            "water" => Self::Water,
            _ => Self::Other,
        }
    }

    /// Protecting from frost or heat.
    #[must_use]
    pub const fn protects(self) -> bool {
        matches!(self, Self::ProtectFrost | Self::ProtectHeat)
    }
}

/// What is the same for every plant of a rule. Its texts stay in the pack.
#[derive(Clone, Debug, PartialEq)]
pub struct RuleInfo {
    /// Its id.
    pub id: String,
    /// Task, avoid or know.
    pub kind: Kind,
    /// Its job.
    pub job: Option<u16>,
    /// What its job is to clashes, safety and order.
    pub job_kind: JobKind,
    /// Whether one of its materials is a nitrogen feed.
    pub nitrogen: bool,
    /// Whether one of its materials is oil, soap or sulphur.
    pub burns: bool,
    /// How it is done.
    pub manner: Option<Manner>,
    /// 0..3.
    pub urgency: u8,
    /// 0..3.
    pub impact: u8,
    /// How well it is founded.
    pub evidence: Evidence,
    /// How strongly it is advised.
    pub strength: Strength,
    /// Its materials.
    pub materials: Vec<u16>,
    /// The classes of its materials.
    pub classes: Vec<u16>,
    /// The worst hazard of its materials.
    pub hazard: Hazard,
    /// Its cautions and those of its materials.
    pub cautions: Vec<u16>,
    /// Its sources.
    pub sources: Vec<u16>,
    /// Rules that come before it, from both sides' words.
    pub after: Vec<(u32, u16)>,
    /// Rules that come after it, from both sides' words.
    pub before: Vec<(u32, u16)>,
    /// What it is kept apart from, its materials' separations among them.
    pub apart: Vec<Apart>,
    /// Rules that must not be done on the same day, from both sides' words.
    pub clashes: Vec<u32>,
    /// How often.
    pub repeat: Repeat,
    /// The member that takes turns with it, the days between, and whether this one is named first.
    pub alternate: Option<(u32, u16, bool)>,
    /// What it blocks.
    pub blocks: Option<Blocks>,
    /// Outlooks.
    pub expect: Vec<(u16, After)>,
    /// Facts of the day must be known.
    pub strict: bool,
    /// Whether it is a guard that speaks of the law of a place.
    pub of_law: bool,
    /// Whether it is an emergency, before which all else waits.
    pub emergency: bool,
    /// Whether a set above withholds it.
    pub withheld: bool,
    /// The set that gave it its present meaning, by its number among the layers.
    pub layer: usize,
    /// Sets that reworded or tightened it.
    pub also: Vec<String>,
}

impl RuleInfo {
    /// Whether one of its materials is a pest or disease material.
    #[must_use]
    pub fn is_hazardous(&self) -> bool {
        self.hazard >= Hazard::Label
    }

    /// Whether this is what a separation or a block speaks of.
    #[must_use]
    pub fn is(&self, subject: Subject, own: u32) -> bool {
        match subject {
            Subject::Job(job) => self.job == Some(job),
            Subject::Material(material) => self.materials.contains(&material),
            Subject::Class(class) => self.classes.contains(&class),
            Subject::Rule(rule) => rule == own,
        }
    }
}

/// What can stop a rule.
#[derive(Clone, Debug)]
pub struct Hold {
    /// When.
    pub condition: Condition,
    /// Facts of the day must be known.
    pub strict: bool,
}

/// A rule for one plant.
#[derive(Clone, Debug)]
pub struct PlantRule {
    /// Its number in the set.
    pub rule: u32,
    /// The problem that it treats.
    pub problem: Option<u16>,
    /// Over the plant's traits.
    pub whom: Condition,
    /// The condition.
    pub when: Condition,
    /// Its windows; none: always open.
    pub windows: Vec<Window>,
    /// Its holds.
    pub holds: Vec<Hold>,
    /// The guards that bind it, by their number among the plant's rules.
    pub guards: Vec<u32>,
    /// The rules that may clash with it or must be kept apart from it, in order; by their numbers among the plant's rules.
    pub meets: Vec<u32>,
    /// Those, those that may with these, and so on.
    pub rivals: Vec<u32>,
    /// Its amounts.
    pub amounts: Vec<Amount>,
    /// Atoms of `whom`, `when` and the holds.
    pub reads: Vec<u32>,
    /// Terms of these atoms, each once.
    pub reads_terms: Vec<u32>,
    /// Whether `when` reads a sign or a fact that the caller gives.
    pub reads_given: bool,
}
