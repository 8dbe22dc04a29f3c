//! The fixed words of an answer.

use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

use crate::v1::question::choices::choices;

choices! {
    /// What became of the question.
    AdviceStatus {
        Advised "advised" "Something is to be done.",
        NothingDue "nothing-due" "Nothing is due.",
        NeedsFacts "needs-facts" "Something may be due: it hangs on facts that were not given.",
    }
    /// How soon.
    AdviceBand {
        Now "now" "Today or tomorrow.",
        ThisWeek "this-week" "Within the week.",
        ThisMonth "this-month" "Within the month.",
        Later "later" "Later.",
    }
    /// Where a value comes from.
    FactOrigin {
        Given "given" "The caller gave it.",
        Measured "measured" "It was measured.",
        Forecast "forecast" "It is forecast.",
        Computed "computed" "It was worked out.",
        Estimated "estimated" "It was estimated from the place.",
        Assumed "assumed" "Nobody gave it, and the usual was taken.",
    }
    /// What a piece of advice is.
    AdviceKind {
        Task "task" "Work to do.",
        Avoid "avoid" "Something to leave alone.",
        Know "know" "Nothing to do, but worth saying.",
    }
    /// Why something is held.
    HeldKind {
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
    /// How well a piece of advice is founded.
    AdviceEvidence {
        Consensus "consensus" "The handbooks agree.",
        Trial "trial" "A trial showed it.",
        CommonPractice "common-practice" "The trade does it.",
        Doubtful "doubtful" "Told, not shown.",
    }
    /// How strongly it is advised.
    AdviceStrength {
        Do "do" "Do it.",
        Consider "consider" "A matter of choice.",
        Avoid "avoid" "Leave it alone.",
    }
    /// How certain it is.
    AdviceCertainty {
        High "high" "All it read was given, measured or forecast, well inside its window.",
        Medium "medium" "In between.",
        Low "low" "Something was assumed, or a side of its window is near.",
    }
    /// How dangerous a material is.
    MaterialHazard {
        None "none" "Compost, mulch, water.",
        Low "low" "Plant foods and soil amendments.",
        Label "label" "A pest or disease material: the amount is the label's.",
        Restricted "restricted" "Not for home use, or for licensed hands only.",
    }
    /// Whom or what a caution protects.
    CautionKind {
        Person "person" "The person at work.",
        Bees "bees" "Bees and other pollinators.",
        Pets "pets" "Pets.",
        Waterway "waterway" "Ponds, streams and drains.",
        Plant "plant" "The plant.",
        Law "law" "A rule of law.",
        Stain "stain" "Walls, paving, clothes.",
        Food "food" "Those who eat of it.",
        HeatStress "heat-stress" "The person at work in heat.",
    }
    /// How likely a cause is.
    CauseLikelihood {
        Likely "likely" "Likely.",
        Possible "possible" "Possible.",
        Unlikely "unlikely" "Unlikely.",
    }
    /// How an amount was found.
    AmountBasis {
        Computed "computed" "Reckoned for this plant and place.",
        Typical "typical" "What is usual.",
    }
    /// What a separation is counted from.
    ApartOf {
        Job "job" "A kind of work.",
        Material "material" "A material.",
        Class "class" "A class of materials.",
        Rule "rule" "The work of one rule.",
    }
    /// What becomes of a rule.
    RuleOutcome {
        Applies "applies" "It applies.",
        Held "held" "It is held.",
        No "no" "It does not concern the plant now.",
        Depends "depends" "It hangs on facts that are not known.",
    }
    /// Whether the date was given.
    DateOrigin {
        Given "given" "The request gave it.",
        Assumed "assumed" "Today at the place.",
    }
    /// A side of a window.
    WindowSide {
        Opens "opens" "The first day.",
        Best "best" "The best day.",
        Closes "closes" "The last day.",
    }
    /// What is said of a task that applies.
    TaskStatus {
        Applies "applies" "It applies.",
    }
}
