//! Checking a rule set: everything that can be wrong with it, each with its place and its cure.
//!
//! To add a check: a row in the table below; a file of its own with `look` and, beside it, its `CASE` (the smallest edit
//! of the mini pack that trips it, what is then said, and one that just doesn't); a line in `cases.rs`; a page
//! `pages/CODE.md` with the four headings of the others, whose example the tests run. A code names the defect, is never
//! reused, and stays when the words improve: clients branch on it. What reading and compiling find on their way has its
//! row here too, so that each code has its page.

mod amount_above_maximum;
mod bad_id;
#[cfg(test)]
pub(crate) mod cases;
mod clash_with_itself;
mod dose_on_label_material;
mod emergency_can_wait;
mod emergency_not_answered;
mod expression_over_lines;
mod headlines;
mod hold_on_guard;
#[cfg(test)]
mod layer_cases;
mod locate;
mod may_be_absent;
mod missing_caution;
mod missing_field;
mod missing_source;
mod missing_translation;
mod missing_wording;
mod month_named;
mod never_holds;
mod not_over_absent;
mod number_out_of_range;
mod order_in_a_circle;
mod placeholder;
mod plain_words;
mod range_reversed;
mod read_by_rule;
pub(crate) mod reference;
mod repeated_id;
mod resistance_group;
pub(crate) mod samples;
mod scenario_names;
mod separation_cannot_be_met;
mod turns_both_ways;
mod typical_unit;
mod unknown_placeholder;
mod unused_entry;
mod used_names;
mod window_nearly_always_open;
mod window_never_opens;
mod window_pairing_is_close;
mod window_table;
mod wording;

pub use reference::{Place as ReferencePlace, places as reference_places};
pub(crate) use reference::{day as reference_day, question as reference_question};
pub use window_table::{WindowRow, WindowState, window_table};

use crate::compile::set::{Set, compile};
use crate::fault::{Fault, Weight, in_order};
use crate::layer::{check_layers, check_layers_and_prove};
use crate::pack::Pack;
use crate::prove::{self, Proven, Prover};
use crate::read::PackFile;

/// How a check finds its faults.
#[derive(Clone, Copy)]
pub enum Look {
    /// Reading the files or compiling the pack comes upon them.
    OnTheWay,
    /// It looks at the pack as written. Some codes are raised on the way as well.
    AtPack(fn(&Pack, &mut Vec<Fault>)),
    /// It looks at the compiled set, and so only at one that compiles.
    AtSet(fn(&Set, &mut Vec<Fault>)),
    /// It searches over climates, days and facts, and so only when asked to: [`prove`].
    AtProof(fn(&Prover<'_>, &mut Vec<Fault>)),
}

/// One check.
#[derive(Clone, Copy)]
pub struct Check {
    /// Its code: kebab-case, names the defect.
    pub code: &'static str,
    /// The defect in a few words.
    pub name: &'static str,
    /// Whether a set with it can be loaded.
    pub weight: Weight,
    /// Its page, in Markdown.
    pub page: &'static str,
    /// How it finds its faults.
    pub look: Look,
}

macro_rules! checks {
    ($($code:literal, $name:literal, $weight:ident, $look:expr;)*) => {
        /// Every check.
        pub static CHECKS: &[Check] = &[$(Check {
            code: $code,
            name: $name,
            weight: Weight::$weight,
            page: include_str!(concat!("pages/", $code, ".md")),
            look: $look,
        }),*];
    };
}

use Look::{AtPack, AtProof, AtSet, OnTheWay};

// code, the defect in a few words, weight, how it is found
checks! {
    "not-yaml", "a file can't be read as YAML", Error, OnTheWay;
    "wrong-shape", "a field is not known, missing, or of another shape", Error, OnTheWay;
    "unreadable-expression", "an expression does not follow the grammar", Error, OnTheWay;
    "expression-over-lines", "an expression can't be pointed into", Error, AtPack(expression_over_lines::look);
    "unknown-fact", "an expression names a fact that there is not", Error, OnTheWay;
    "unknown-name", "an id stands in no vocabulary", Error, AtPack(scenario_names::look);
    "unknown-marker", "a window names a marker that there is not", Error, OnTheWay;
    "unknown-quantity", "an amount calls a quantity that there is not, or calls it wrongly", Error, OnTheWay;
    "wrong-unit", "a unit does not measure what is meant", Error, AtPack(typical_unit::look);
    "wrong-type", "a value is not of the kind that is needed", Error, OnTheWay;
    "number-out-of-range", "a number lies outside what is possible", Error, AtPack(number_out_of_range::look);
    "resistance-group", "a resistance group is not written as its committee writes it", Error, AtPack(resistance_group::look);
    "range-reversed", "a range runs from the larger to the smaller", Error, AtPack(range_reversed::look);
    "repeated-id", "an id stands there twice", Error, AtPack(repeated_id::look);
    "bad-id", "an id is not written as ids are", Error, AtPack(bad_id::look);
    "missing-field", "a field is missing that gives the entry its meaning", Error, AtPack(missing_field::look);
    "missing-wording", "a text is empty", Error, AtPack(missing_wording::look);
    "missing-translation", "a text is not there in every language", Error, AtPack(missing_translation::look);
    "missing-source", "nobody says where it comes from", Error, AtPack(missing_source::look);
    "missing-caution", "a hazardous material lacks a caution", Error, AtPack(missing_caution::look);
    "unknown-placeholder", "a text quotes what the rule does not read", Error, AtSet(unknown_placeholder::look);
    "month-named", "a text names a month", Error, AtPack(month_named::look);
    "dose-on-label-material", "a rule says how much of a material whose label says it", Error, AtPack(dose_on_label_material::look);
    "amount-above-maximum", "an amount is more than the material bears", Error, AtPack(amount_above_maximum::look);
    "order-in-a-circle", "rules wait for each other", Error, AtPack(order_in_a_circle::look);
    "clash-with-itself", "a rule stands in its own way", Error, AtPack(clash_with_itself::look);
    "emergency-can-wait", "an emergency waits for something, or tells nobody who to call", Error, AtSet(emergency_can_wait::look);
    "emergency-not-answered", "a sign of danger is answered by nothing", Error, AtSet(emergency_not_answered::look);
    "turns-both-ways", "two rules both say that they take turns", Error, AtPack(turns_both_ways::look);
    "hold-on-guard", "a guard has a hold of its own", Error, AtPack(hold_on_guard::look);
    "separation-cannot-be-met", "works come sooner than they may", Error, AtSet(separation_cannot_be_met::look);
    "never-holds", "a condition contradicts itself", Error, AtSet(never_holds::look);
    "window-never-opens", "a window opens in no climate", Error, AtSet(window_never_opens::look);
    "never-true", "a condition is true in no climate, on no day, with no facts", Warning, AtProof(prove::never_true);
    "never-due", "a window is closed whenever the condition is true", Warning, AtProof(prove::never_due);
    "never-applies", "a rule is held whenever it is due", Warning, AtProof(prove::never_applies);
    "contradiction", "do and don't on one day", Warning, AtProof(prove::contradiction);
    "masked", "a rule never comes because of another", Warning, AtProof(prove::masked);
    "duplicate-in-meaning", "two rules differ in their words only", Warning, AtProof(prove::duplicate);
    "reckoned-above-maximum", "a reckoned amount is more than the material bears", Warning, AtProof(prove::reckoned);
    "exists-below", "a new entry has an id that a set below has", Error, OnTheWay;
    "nothing-below", "a set speaks of what is not below it", Error, OnTheWay;
    "stale-expects", "the entry below is not the one that was seen", Error, OnTheWay;
    "not-a-tightening", "a `tighten` says something else than more care", Error, OnTheWay;
    "placeholders-differ", "other words quote other facts", Error, OnTheWay;
    "loosened", "a set takes away what binds through all sets", Error, OnTheWay;
    "changed-twice", "an entry is spoken of twice", Warning, OnTheWay;
    "long-sentence", "a sentence is too long to be read at a glance", Warning, AtPack(plain_words::long_sentences);
    "empty-phrase", "a phrase says nothing", Warning, AtPack(plain_words::empty_phrases);
    "long-headline", "a title does not fit a receipt", Warning, AtPack(headlines::long_titles);
    "long-summary", "a first sentence does not fit a small face", Warning, AtPack(headlines::long_summaries);
    "not-verb-first", "a title does not begin with the work", Warning, AtPack(headlines::not_verb_first);
    "not-over-absent", "a `not` turns what does not exist into yes", Warning, AtSet(not_over_absent::look);
    "window-nearly-always-open", "a window is open for most of the year", Warning, AtSet(window_nearly_always_open::look);
    "window-pairing-is-close", "the sides of a window may change partners", Warning, AtSet(window_pairing_is_close::look);
    "unused-entry", "an entry is used by nothing", Warning, AtSet(unused_entry::look);
}

/// A set that was checked.
#[derive(Debug)]
pub struct Checked {
    /// The set; none if there is a fault of weight error.
    pub set: Option<Set>,
    /// Every fault, sorted by place.
    pub faults: Vec<Fault>,
}

/// Reads, compiles and checks the files of a pack, in any order.
///
/// A file that can't be read hides what is wrong inside the others: only faults of reading are then returned. A pack that
/// does not compile is still looked at as written.
#[must_use]
pub fn check(files: &[PackFile]) -> Checked {
    check_layers(&[files.to_vec()])
}

/// Compiles and checks a pack that has been read: one by itself, or layers that were laid over each other.
#[must_use]
pub fn check_pack(pack: Pack) -> Checked {
    let mut faults = Vec::new();
    for check in CHECKS {
        if let AtPack(look) = check.look {
            look(&pack, &mut faults);
        }
    }
    let (set, compiling) = compile(pack);
    faults.extend(compiling);
    if let Some(set) = &set {
        for check in CHECKS {
            if let AtSet(look) = check.look {
                look(set, &mut faults);
            }
        }
    }
    let faults = in_order(faults);
    let loadable = !faults.iter().any(|fault| fault.weight == Weight::Error);
    Checked { set: set.filter(|_| loadable), faults }
}

/// Checks the files of a pack and, if nothing stands in the way, proves the set.
#[must_use]
pub fn check_and_prove(files: &[PackFile]) -> (Checked, Option<Proven>) {
    check_layers_and_prove(&[files.to_vec()])
}

/// The page of a code: what it finds, why it matters, an example, how to put it right.
#[must_use]
pub fn page(code: &str) -> Option<&'static str> {
    CHECKS.iter().find(|check| check.code == code).map(|check| check.page)
}
