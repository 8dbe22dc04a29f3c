//! The kinds of sentences in which a change is said.

use serde::Serialize;

/// What kind of change a sentence tells of.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Kind {
    /// An entry that was not there.
    Added,
    /// An entry that is gone.
    Removed,
    /// The same meaning under another id.
    Renamed,
    /// Task, avoid or know.
    RuleKind,
    /// The job, or how it is done.
    Job,
    /// The plants, the problem or the traits that it is for.
    Whom,
    /// A window more.
    WindowAdded,
    /// A window less.
    WindowRemoved,
    /// The first day of a window.
    OpensMoved,
    /// The best day.
    BestMoved,
    /// The last day.
    ClosesMoved,
    /// What an absent marker means.
    WindowAbsence,
    /// It applies in fewer cases.
    ConditionNarrowed,
    /// It applies in more cases.
    ConditionWidened,
    /// It applies in other cases.
    ConditionChanged,
    /// A hold more.
    HoldAdded,
    /// A hold less.
    HoldDropped,
    /// A hold in more, fewer or other cases.
    HoldChanged,
    /// What a guard blocks.
    GuardScope,
    /// How much.
    Amount,
    /// How often.
    Repeat,
    /// What it takes turns with.
    Turns,
    /// What it is kept apart from.
    Separation,
    /// What comes before and after it.
    Order,
    /// What must not be done on the same day.
    Clash,
    /// Urgency and impact.
    Rank,
    /// How well it is founded.
    Evidence,
    /// How strongly it is advised.
    Strength,
    /// Whether facts of the day must be known.
    Strict,
    /// The law behind it.
    Law,
    /// With what.
    Materials,
    /// What is warned of.
    Cautions,
    /// What may be expected.
    Outlook,
    /// Whether it is work for a professional.
    Professional,
    /// Whether all else waits for it.
    Emergency,
    /// What is said out of season, where nothing was or is said.
    OutOfSeason,
    /// How dangerous a material is.
    Hazard,
    /// The most of a material.
    Maximum,
    /// The classes of a material.
    Classes,
    /// A field of another kind of entry.
    Setting,
    /// Texts only.
    Reworded,
    /// Sources only.
    Sources,
}

impl Kind {
    /// Whether advice is the same but for its wording and its sources.
    #[must_use]
    pub const fn leaves_advice(self) -> bool {
        matches!(self, Self::Reworded | Self::Sources | Self::Renamed)
    }
}
