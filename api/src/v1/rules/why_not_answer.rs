//! Why a rule is not there, as it is sent.

use serde::{Deserialize, Serialize};
use serde_json::Value;
use utoipa::ToSchema;

use super::answer::{RuleNamed, wire};
use crate::v1::advice::task::AdviceFact;
use crate::v1::advice::words::RuleOutcome;
use crate::v1::question::choices::choices;
use crate::v1::question::date::Date;

choices! {
    /// What stands in the way of a rule.
    WhyNotKind {
        Plant "plant" "It is for other plants.",
        Trait "trait" "It is for plants of another kind.",
        Condition "condition" "Its condition is not met, or not known to be.",
        Problem "problem" "The problem that it treats does not show.",
        Window "window" "It is not its time of the year.",
        Unknown "unknown" "It hangs on what was not told.",
        Hold "hold" "A hold of the rule itself.",
        Guard "guard" "Something that is to be left alone now.",
        Clash "clash" "Another work that it would undo goes first.",
        Apart "apart" "It must be kept apart from another work.",
        Done "done" "It is done already.",
        Early "early" "It is too early in the season.",
        Late "late" "It is too late in the season.",
        Never "never" "Its season does not come here.",
        Withheld "withheld" "A rule set above withholds it.",
        Avoid "avoid" "It is to be left alone.",
        Emergency "emergency" "Someone or something is in danger: that comes first.",
    }
    /// A kind of step of a patch (RFC 6902).
    WhyNotOperation {
        Add "add" "The value is put there, in place of what may stand there.",
        Replace "replace" "The value takes the place of what stands there.",
        Remove "remove" "What stands there is taken away.",
    }
}

wire! {
    /// Something that stands in the way of a rule.
    WhyNotReason {
        /// What kind of thing it is.
        kind: WhyNotKind,
        /// In words.
        text: String,
        /// The guard, or the rule that goes before.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schema(nullable = false)]
        rule: Option<String>,
        /// The facts that it hangs on, as they are now.
        facts: Vec<AdviceFact>,
    }
    /// One fact told otherwise.
    WhyNotChange {
        /// The fact, as rules write it; `date` where the day must be another, `history` for works done.
        fact: String,
        /// The change in words.
        text: String,
        /// Where it stands in the request (RFC 6901).
        pointer: String,
        /// What stands there now; `null`: nothing.
        from: Value,
        /// What to put there; `null`: nothing.
        to: Value,
    }
    /// One step of a patch (RFC 6902).
    WhyNotStep {
        /// What is done.
        op: WhyNotOperation,
        /// Where (RFC 6901).
        path: String,
        /// The value; left out where one is removed.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        value: Option<Value>,
    }
    /// Changes that together bring the rule. They were tried: the question with them was asked anew.
    WhyNotWay {
        /// One for each fact that is told otherwise.
        changes: Vec<WhyNotChange>,
        /// The same as a patch of the request, to be applied step by step (RFC 6902).
        patch: Vec<WhyNotStep>,
    }
    /// How far it was looked.
    WhyNotLooked {
        /// The most facts that were changed together.
        most_changes: u32,
        /// The days ahead.
        days: u32,
        /// Whether every set of changes within that was looked at.
        complete: bool,
    }
    /// Why a rule is not there, and what it would take.
    WhyNotAnswer {
        /// The rule.
        rule: RuleNamed,
        /// The plant that was asked about.
        plant: RuleNamed,
        /// The day that was asked about.
        date: Date,
        /// What becomes of the rule as it is asked.
        outcome: RuleOutcome,
        /// Why, part by part; none where it is there.
        because: Vec<WhyNotReason>,
        /// The smallest changes that bring it, best first, at most 6. The climate and the place are never changed.
        ways: Vec<WhyNotWay>,
        /// The first later day, up to 400, on which it comes by itself.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[schema(nullable = false)]
        comes_on: Option<Date>,
        /// All of it in a sentence.
        words: String,
        /// How far it was looked.
        looked: WhyNotLooked,
    }
}
