//! A rule as it is sent: the same members as the engine's own.

use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

use crate::v1::advice::answer::AdviceRuleSet;
use crate::v1::advice::task::{
    AdviceApart, AdviceCaution, AdviceEmergency, AdviceMaterial, AdviceRepeat, AdviceSource,
};
use crate::v1::advice::words::{AdviceEvidence, AdviceKind, AdviceStrength};

macro_rules! wire {
    ($($(#[$about:meta])* $name:ident { $($(#[$member:meta])* $field:ident: $type:ty,)* })*) => {$(
        $(#[$about])*
        #[derive(Clone, Debug, PartialEq, Deserialize, Serialize, ToSchema)]
        #[serde(deny_unknown_fields)]
        pub struct $name {
            $($(#[$member])* pub $field: $type,)*
        }
    )*};
}
pub(crate) use wire;

wire! {
    /// An entry of a vocabulary by its id, with its name.
    RuleNamed {
        /// Its id.
        id: String,
        /// Its name.
        name: String,
    }
    /// An expression, as the rule writes it and in words.
    RuleWorded {
        /// As the rule writes it.
        rule: String,
        /// In words.
        words: String,
    }
    /// Whom a rule is for.
    RuleFor {
        /// Whether it is for every plant.
        every_plant: bool,
        /// The plants; none where it is for every one.
        plants: Vec<RuleNamed>,
        /// The problem that it treats.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schema(nullable = false)]
        problem: Option<RuleNamed>,
        /// Which of these plants, by their traits.
        #[serde(default, rename = "where", skip_serializing_if = "Option::is_none")]
        #[schema(nullable = false)]
        traits: Option<RuleWorded>,
    }
    /// A part of the year.
    RuleWindow {
        /// Its first day.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schema(nullable = false)]
        opens: Option<RuleWorded>,
        /// Its best day.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schema(nullable = false)]
        best: Option<RuleWorded>,
        /// Its last day.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schema(nullable = false)]
        closes: Option<RuleWorded>,
        /// Whether it is open on all days where its markers never come.
        all_year_if_absent: bool,
        /// All of it in one sentence.
        words: String,
    }
    /// What holds a rule back.
    RuleHold {
        /// When.
        #[serde(rename = "if")]
        condition: RuleWorded,
        /// Why.
        because: String,
        /// Whether it holds as long as nobody knows.
        strict: bool,
    }
    /// What is said out of season.
    RuleOutside {
        /// Before the window.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schema(nullable = false)]
        early: Option<String>,
        /// After it.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schema(nullable = false)]
        late: Option<String>,
        /// Where there is none.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schema(nullable = false)]
        never: Option<String>,
    }
    /// A guard that binds a rule: something that is left alone, written once for many works.
    RuleGuard {
        /// The guard's rule.
        id: String,
        /// In few words.
        title: String,
        /// When it binds; left out: always.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schema(nullable = false)]
        when: Option<RuleWorded>,
        /// In which parts of the year; none: in all of it.
        windows: Vec<RuleWindow>,
        /// Why.
        why: String,
    }
    /// What a guard blocks; everything named must match.
    RuleBlocks {
        /// Kinds of work.
        jobs: Vec<RuleNamed>,
        /// Materials.
        materials: Vec<RuleNamed>,
        /// Classes of materials.
        classes: Vec<RuleNamed>,
        /// Rules.
        rules: Vec<RuleNamed>,
        /// Plants; none named: every plant.
        plants: Vec<RuleNamed>,
    }
    /// A usual range.
    RuleTypical {
        /// The least.
        min: f64,
        /// The most.
        max: f64,
        /// Unit.
        unit: String,
    }
    /// How much, as far as that can be said without a place and a plant.
    RuleAmount {
        /// What the number says.
        what: String,
        /// The quantity by which it is reckoned, as `GET /v1/quantities` lists it.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schema(nullable = false)]
        quantity: Option<String>,
        /// What is usual.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schema(nullable = false)]
        typical: Option<RuleTypical>,
        /// The material whose stated maximum caps it.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schema(nullable = false)]
        at_most_of: Option<RuleNamed>,
    }
    /// What may be expected afterwards.
    RuleOutlook {
        /// What.
        what: RuleNamed,
        /// After how long: days, or warmth over 5 °C.
        after: String,
    }
    /// A rule before or after this one.
    RuleOrder {
        /// The other rule.
        rule: RuleNamed,
        /// Days between them; 0: only the order matters.
        days: u16,
    }
    /// A rule in plain words. Where an answer has the value of a fact, its name stands in square brackets.
    RuleAnswer {
        /// Its id.
        id: String,
        /// The set that it stands in.
        rule_set: AdviceRuleSet,
        /// What kind of rule it is.
        kind: AdviceKind,
        /// The kind of work.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schema(nullable = false)]
        job: Option<RuleNamed>,
        /// In few words.
        title: String,
        /// Whom it is for.
        #[serde(rename = "for")]
        whom: RuleFor,
        /// When in the season, in one sentence.
        season: String,
        /// The same, side by side; none: at any time of the year.
        windows: Vec<RuleWindow>,
        /// On what condition; left out: on none.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schema(nullable = false)]
        when: Option<RuleWorded>,
        /// What holds it back.
        holds: Vec<RuleHold>,
        /// Guards that bind it.
        guards: Vec<RuleGuard>,
        /// What it blocks, if it is a guard.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schema(nullable = false)]
        blocks: Option<RuleBlocks>,
        /// What is said out of season.
        outside: RuleOutside,
        /// Why.
        why: String,
        /// How it is done, step by step.
        steps: Vec<String>,
        /// With what.
        materials: Vec<AdviceMaterial>,
        /// How much.
        amounts: Vec<RuleAmount>,
        /// What may be expected afterwards, never a promise.
        expect: Vec<RuleOutlook>,
        /// Rules that come before it.
        after: Vec<RuleOrder>,
        /// Rules that come after it.
        before: Vec<RuleOrder>,
        /// What it is kept apart from.
        keep_apart: Vec<AdviceApart>,
        /// How often.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schema(nullable = false)]
        repeat: Option<AdviceRepeat>,
        /// Its cautions and those of its materials.
        cautions: Vec<AdviceCaution>,
        /// Why a licensed professional does it.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schema(nullable = false)]
        professional: Option<String>,
        /// Who to call, where it is an emergency: all else then waits.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schema(nullable = false)]
        emergency: Option<AdviceEmergency>,
        /// How well it is founded.
        evidence: AdviceEvidence,
        /// The same in words.
        evidence_words: String,
        /// How strongly it is advised.
        strength: AdviceStrength,
        /// The same in words.
        strength_words: String,
        /// How soon it must be done: 0 can wait a season, 1 within weeks, 2 within days, 3 today or tomorrow.
        #[schema(minimum = 0, maximum = 3)]
        urgency: u8,
        /// What is lost otherwise: 0 looks, 1 some loss, 2 a crop or season, 3 a plant, or a person is hurt.
        #[schema(minimum = 0, maximum = 3)]
        impact: u8,
        /// Sources.
        sources: Vec<AdviceSource>,
        /// What comes before anything said here: the label, and the rules of the place.
        notice: String,
    }
}
