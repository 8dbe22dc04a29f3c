//! A diagnosis as it is sent: the same members as the engine's own.

use serde::{Deserialize, Serialize};
use serde_json::Value;
use utoipa::ToSchema;

use crate::v1::advice::answer::{AdviceClimate, AdviceRuleSet};
use crate::v1::advice::held::AdviceHeld;
use crate::v1::advice::task::{AdviceCaution, AdviceMaterial, AdviceSource, AdviceTask};
use crate::v1::advice::words::{AdviceKind, CauseLikelihood, RuleOutcome};
use crate::v1::question::choices::choices;
use crate::v1::rules::answer::{RuleNamed, wire};
use crate::v1::vocabulary::problems::{PlantProblemKind, ResistanceCodes};
use crate::v1::vocabulary::signs::{SignPlace, SignSeen};

choices! {
    /// How sure a diagnosis is.
    DiagnosisStatus {
        Likely "likely" "One cause stands out.",
        Possible "possible" "There are causes, and none stands out.",
        Unlikely "unlikely" "There are causes, and little speaks for any of them.",
        None "none" "No problem that is known here explains the signs.",
        Emergency "emergency" "Someone or something is in danger: the one task says who to call.",
    }
    /// How regularly a sign comes with a problem.
    DiagnosisGrade {
        Always "always" "With every case.",
        Often "often" "With most.",
        Sometimes "sometimes" "With some.",
        Never "never" "With none: it speaks against it.",
        Favours "favours" "Not a sign: weather, soil or water that favours it.",
    }
    /// A rung of the ladder of what answers a problem, gentlest first.
    DiagnosisRung {
        Cultural "cultural" "Water, food, cuts, hygiene.",
        Mechanical "mechanical" "By hand, by water jet, by trap.",
        Biological "biological" "By the pest's enemies.",
        Material "material" "By a material whose label says how.",
        Professional "professional" "By a licensed professional.",
    }
}

wire! {
    /// What speaks for or against a cause.
    DiagnosisEvidence {
        /// The sign, by its id; left out where it is something that favours the problem.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schema(nullable = false)]
        sign: Option<String>,
        /// In words.
        words: String,
        /// How regularly it comes with the problem.
        grade: DiagnosisGrade,
        /// Whether it is so; `null` when nobody knows.
        is_so: Option<bool>,
        /// Its points: signs 4, 2, 1 or -6 when seen and -4, -1, 0, 0 when known not to be there; what favours 2 and -2.
        points: i32,
    }
    /// From when on it is worth acting.
    DiagnosisThreshold {
        /// As the rule set writes it.
        rule: String,
        /// In words.
        words: String,
        /// Whether it is reached; `null` when nobody knows.
        reached: Option<bool>,
    }
    /// A rule that answers a cause.
    DiagnosisTreatment {
        /// The rule: `GET /v1/rules/{id}` says all of it.
        rule: String,
        /// In few words.
        title: String,
        /// Work, something to leave alone, or something worth knowing.
        kind: AdviceKind,
        /// Its rung of the ladder.
        rung: DiagnosisRung,
        /// What becomes of it on the day; left out where no climate was given to judge it by.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schema(nullable = false)]
        outcome: Option<RuleOutcome>,
        /// Why it is held.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schema(nullable = false)]
        because: Option<String>,
        /// The facts that it hangs on, as rules write them.
        on: Vec<String>,
        /// With what.
        materials: Vec<AdviceMaterial>,
        /// Cautions.
        cautions: Vec<AdviceCaution>,
        /// Why a licensed professional does it.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schema(nullable = false)]
        professional: Option<String>,
    }
    /// A cause of the signs.
    DiagnosisCause {
        /// The problem, by its id.
        id: String,
        /// Its name.
        name: String,
        /// What it is.
        kind: PlantProblemKind,
        /// The same in two sentences.
        about: String,
        /// How likely it is.
        likelihood: CauseLikelihood,
        /// The sum of the points.
        points: i32,
        /// How bad it gets: 0 looks only, 3 plant lost.
        #[schema(minimum = 0, maximum = 3)]
        impact: u8,
        /// The groups of the materials that are used against it, if there are any.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schema(nullable = false)]
        resistance: Option<ResistanceCodes>,
        /// What speaks for or against it.
        why: Vec<DiagnosisEvidence>,
        /// From when on it is worth acting; left out where any case is.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schema(nullable = false)]
        threshold: Option<DiagnosisThreshold>,
        /// What answers it, gentlest first.
        treatments: Vec<DiagnosisTreatment>,
        /// Sources.
        sources: Vec<AdviceSource>,
    }
    /// A cause in short.
    DiagnosisCauseInBrief {
        /// The problem, by its id.
        id: String,
        /// Its name.
        name: String,
        /// How likely it is then.
        likelihood: CauseLikelihood,
        /// Its points then.
        points: i32,
    }
    /// What can be answered to a look.
    DiagnosisLookAnswer {
        /// In words.
        text: String,
        /// Where the value goes, as a JSON pointer; `-` at its end: added to the list. None for those who can't tell.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schema(nullable = false)]
        pointer: Option<String>,
        /// The exact value to put there.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schema(nullable = false)]
        value: Option<Value>,
        /// The first causes then; at most 3.
        leads_to: Vec<DiagnosisCauseInBrief>,
    }
    /// The sign to look at next: the one that separates the first causes best.
    DiagnosisLook {
        /// The sign, by its id.
        sign: String,
        /// Its name.
        name: String,
        /// Where it is seen.
        #[serde(rename = "where")]
        place: SignPlace,
        /// Whether it is seen at a glance.
        seen: SignSeen,
        /// How to look.
        look: String,
        /// What can be answered, and what each answer leads to.
        answers: Vec<DiagnosisLookAnswer>,
    }
    /// What the signs may show.
    DiagnosisAnswer {
        /// How sure it is.
        status: DiagnosisStatus,
        /// The plant; left out in an emergency at one that is not known.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schema(nullable = false)]
        plant: Option<RuleNamed>,
        /// The signs that are seen.
        signs: Vec<RuleNamed>,
        /// Causes, the likeliest first.
        causes: Vec<DiagnosisCause>,
        /// What to look at next; left out where no sign would tell the causes apart.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schema(nullable = false)]
        look_next: Option<DiagnosisLook>,
        /// What to do now about the causes, gentlest first.
        tasks: Vec<AdviceTask>,
        /// What of it must wait.
        held: Vec<AdviceHeld>,
        /// What could not be counted, in words.
        remarks: Vec<String>,
        /// The climate that it stands on, if one was given.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schema(nullable = false)]
        climate: Option<AdviceClimate>,
        /// The question as it was understood.
        asked: Value,
        /// The rule sets that spoke, lowest first.
        rule_sets: Vec<AdviceRuleSet>,
        /// What comes before anything said here: the label, and the rules of the place.
        notice: String,
    }
}
