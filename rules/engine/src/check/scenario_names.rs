//! A scenario that names what there is not. `absent: [rose.pruune]` would hold for ever, whatever the rules say.

use crate::fact::catalogue::CATALOGUE;
use crate::fault::{Fault, Place};
use crate::pack::expression::place;
use crate::pack::scenario::ScenarioEntry;
use crate::pack::{At, Filed, Pack};

const HELD_KINDS: [&str; 11] =
    ["hold", "guard", "clash", "apart", "done", "early", "late", "never", "withheld", "avoid", "emergency"];
const BANDS: [&str; 4] = ["now", "this-week", "this-month", "later"];
const STATUSES: [&str; 3] = ["advised", "nothing-due", "needs-facts"];

/// Looks at what each scenario expects.
pub(super) fn look(pack: &Pack, faults: &mut Vec<Fault>) {
    let rules: Vec<&str> = pack.rules.iter().map(|rule| rule.entry.id.value.as_str()).collect();
    for Filed { file, entry } in &pack.scenarios {
        let expect = &entry.expect;
        let named = expect
            .advised
            .iter()
            .map(|task| &task.rule)
            .chain(expect.held.iter().map(|held| &held.rule))
            .chain(expect.depends.iter().map(|depends| &depends.rule))
            .chain(&expect.noted)
            .chain(&expect.order)
            .chain(&expect.absent);
        for rule in named {
            unknown(file, rule, "rule", &rules, faults);
        }
        words(file, entry, faults);
        of_tasks(file, entry, pack, &rules, faults);
        facts(file, entry, pack, faults);
    }
}

fn unknown(file: &str, at: &At<String>, what: &str, known: &[&str], faults: &mut Vec<Fault>) {
    if !known.contains(&at.value.as_str()) {
        let fault = Fault::error("unknown-name", place(file, at), format!("there is no {what} `{}`", at.value));
        faults.push(fault.nearest(&at.value, known.iter().copied()));
    }
}

fn words(file: &str, entry: &ScenarioEntry, faults: &mut Vec<Fault>) {
    let mut see = |at: Place, what: &str, word: &str, known: &[&str]| {
        if !known.contains(&word) {
            let fault = Fault::error("unknown-name", at, format!("there is no {what} `{word}`"))
                .nearest(word, known.iter().copied());
            faults.push(if fault.help.is_some() {
                fault
            } else {
                fault.help(format!("there are: {}", known.join(", ")))
            });
        }
    };
    let expect = &entry.expect;
    if let Some(status) = &expect.status {
        see(place(file, &entry.name), "status", status, &STATUSES);
    }
    for task in &expect.advised {
        task.band.iter().for_each(|band| see(place(file, &task.rule), "band", band, &BANDS));
    }
    for held in &expect.held {
        held.kind.iter().for_each(|kind| see(place(file, &held.rule), "kind of hold", kind, &HELD_KINDS));
    }
}

/// `cautions`, `materials` and `after` name entries of the set.
fn of_tasks(file: &str, entry: &ScenarioEntry, pack: &Pack, rules: &[&str], faults: &mut Vec<Fault>) {
    let cautions: Vec<&str> = pack.cautions.iter().map(|caution| caution.entry.id.value.as_str()).collect();
    let materials: Vec<&str> = pack.materials.iter().map(|material| material.entry.id.value.as_str()).collect();
    for task in &entry.expect.advised {
        for (what, named, known) in [
            ("caution", &task.cautions, cautions.as_slice()),
            ("material", &task.materials, &materials),
            ("rule", &task.after, rules),
        ] {
            for word in named.iter().filter(|word| !known.contains(&word.as_str())) {
                let message = format!("there is no {what} `{word}`");
                let fault = Fault::error("unknown-name", place(file, &task.rule), message);
                faults.push(fault.nearest(word, known.iter().copied()));
            }
        }
    }
}

/// `because`, `on` and `asked` name facts or signs.
fn facts(file: &str, entry: &ScenarioEntry, pack: &Pack, faults: &mut Vec<Fault>) {
    let expect = &entry.expect;
    let known: Vec<&str> = CATALOGUE
        .iter()
        .flat_map(|fact| fact.name.split(", "))
        .chain(crate::compile::marker::FIXED_NAMES)
        .chain(pack.signs.iter().map(|sign| sign.entry.id.value.as_str()))
        .chain(pack.plants.iter().flat_map(|plant| plant.entry.traits.iter().map(|part| part.id.value.as_str())))
        .collect();
    let mut see = |at: Place, word: &str| {
        // `severity(aphids)`: the fact is the part before the arguments.
        let name = word.split('(').next().unwrap_or_default().trim();
        if !known.contains(&name) {
            faults.push(
                Fault::error("unknown-name", at, format!("there is no fact or sign `{word}`"))
                    .nearest(name, known.iter().copied()),
            );
        }
    };
    for task in &expect.advised {
        task.because.iter().for_each(|word| see(place(file, &task.rule), word));
    }
    for depends in &expect.depends {
        depends.on.iter().for_each(|word| see(place(file, &depends.rule), word));
    }
    let asked = expect.asked.iter().chain(&expect.asked_first);
    asked.for_each(|word| see(place(file, &entry.name), word));
}
