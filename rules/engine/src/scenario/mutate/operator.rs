//! The kinds of change.

use serde::Serialize;

/// What was done to an entry: one thing.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "kebab-case")]
#[expect(missing_docs, reason = "the names are the changes")]
pub enum Operator {
    ThresholdLowered,
    ThresholdRaised,
    ComparisonTurned,
    PartDropped,
    AlternativeDropped,
    SignDropped,
    AndOrExchanged,
    NegationDropped,
    ConditionDropped,
    ProblemDropped,
    HoldDropped,
    StrictDropped,
    GuardNarrowed,
    GuardDropped,
    LawDropped,
    SideEarlier,
    SideLater,
    ElseDropped,
    WindowDropped,
    OutOfSeasonDropped,
    SeparationShortened,
    SeparationDropped,
    RepeatShortened,
    RepeatDropped,
    OftenerAllowed,
    OrderDropped,
    ClashDropped,
    TurnsDropped,
    CautionDropped,
    MaterialDropped,
    ClassDropped,
    MaximumRaised,
    HazardLowered,
    AmountDoubled,
    InputExchanged,
    CapDropped,
    UrgencyChanged,
    ImpactChanged,
    KindChanged,
    StrengthChanged,
    ProfessionalDropped,
}
