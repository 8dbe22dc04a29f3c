//! A field without which an entry means nothing, or one that means nothing where it stands.

use super::locate::Stretch;
use crate::fault::{Fault, Place};
use crate::pack::expression::place;
use crate::pack::rule::{ApartEntry, BlocksEntry, Kind, RuleEntry};
use crate::pack::shapes::AllOr;
use crate::pack::{At, Filed, Pack};

/// One rule or material under the eye.
struct Eye<'p, 'f> {
    pack: &'p Pack,
    file: &'p str,
    id: &'p At<String>,
    faults: &'f mut Vec<Fault>,
}

impl Eye<'_, '_> {
    /// A fault at a key of the entry, for the `nth` time that it stands there; at the entry when it is not written.
    fn say(&mut self, keys: &[(&str, usize)], message: String, help: &str) {
        let entry = Stretch::entry(self.pack, self.file, self.id);
        let found = keys.iter().try_fold(entry, |at, (key, nth)| at.key(key, *nth));
        let here = if keys.is_empty() { None } else { found.map(Stretch::place) };
        self.put(here.unwrap_or_else(|| place(self.file, self.id)), message, help);
    }

    fn put(&mut self, place: Place, message: String, help: &str) {
        self.faults.push(Fault::error("missing-field", place, message).help(help));
    }
}

/// Looks at rules, materials, traits and the header.
pub(super) fn look(pack: &Pack, faults: &mut Vec<Fault>) {
    if pack.header.languages.is_empty() {
        let here = Stretch::file(pack, "pack.yaml").key("languages", 0).map(Stretch::place).unwrap_or_default();
        faults.push(
            Fault::error("missing-field", here, "the pack is written in no language")
                .help("such as `languages: [en, es]`"),
        );
    }
    for Filed { file, entry } in &pack.plants {
        for part in entry.traits.iter().filter(|part| part.values.is_empty()) {
            let message = format!("the trait `{}` has no values", part.id.value);
            faults.push(
                Fault::error("missing-field", place(file, &part.id), message).help("name what it can be in `values`"),
            );
        }
    }
    for Filed { file, entry } in &pack.problems {
        if matches!(&entry.plants, AllOr::These(ids) if ids.is_empty()) {
            let mut eye = Eye { pack, file, id: &entry.id, faults };
            eye.say(
                &[("plants", 0)],
                format!("no plant gets the problem `{}`", entry.id.value),
                "name its plants, or `all`",
            );
        }
    }
    for Filed { file, entry } in &pack.materials {
        let mut eye = Eye { pack, file, id: &entry.id, faults };
        apart(&entry.keep_apart, &mut eye);
    }
    for Filed { file, entry } in &pack.rules {
        let mut eye = Eye { pack, file, id: &entry.id, faults };
        of_its_kind(entry, &mut eye);
        whom(entry, &mut eye);
        windows(entry, &mut eye);
        apart(&entry.keep_apart, &mut eye);
        works(entry, &mut eye);
    }
}

fn of_its_kind(entry: &RuleEntry, eye: &mut Eye<'_, '_>) {
    let id = &entry.id.value;
    if entry.kind == Kind::Task {
        if entry.job.is_none() {
            eye.say(
                &[],
                format!("the task `{id}` has no job"),
                "say in `job` what kind of work it is, or make it `kind: know`",
            );
        }
        if entry.blocks.is_some() {
            eye.say(
                &[("blocks", 0)],
                format!("the task `{id}` blocks others"),
                "only `kind: avoid` can: write a guard of its own",
            );
        }
        return;
    }
    let kind = if entry.kind == Kind::Know { "note" } else { "thing to leave alone" };
    for (key, written) in [
        ("steps", !entry.steps.is_empty()),
        ("amount", !entry.amount.is_empty()),
        ("repeat", entry.repeat.is_some()),
        ("alternate", entry.alternate.is_some()),
        ("expect", !entry.expect.is_empty()),
    ] {
        if written {
            eye.say(
                &[(key, 0)],
                format!("`{key}` means nothing in `{id}`: it is a {kind}, not work"),
                "take it out, or write a task",
            );
        }
    }
    match &entry.blocks {
        Some(_) if entry.kind == Kind::Know => {
            eye.say(&[("blocks", 0)], format!("the note `{id}` blocks others"), "only `kind: avoid` can");
        }
        Some(blocks) if blocks_no_work(blocks) => {
            eye.say(
                &[("blocks", 0)],
                format!("the guard `{id}` blocks nothing"),
                "name `jobs`, `materials`, `classes` or `rules`; `plants` only narrows them",
            );
        }
        _ => {}
    }
    if entry.kind == Kind::Know && entry.job.is_some() {
        eye.say(&[("job", 0)], format!("the note `{id}` has a job"), "a note asks for no work: take it out");
    }
}

fn blocks_no_work(blocks: &BlocksEntry) -> bool {
    blocks.jobs.is_empty() && blocks.materials.is_empty() && blocks.classes.is_empty() && blocks.rules.is_empty()
}

fn whom(entry: &RuleEntry, eye: &mut Eye<'_, '_>) {
    let whom = &entry.whom;
    let listed = match &whom.plants {
        Some(AllOr::These(ids)) => !ids.is_empty(),
        Some(AllOr::All) => true,
        None => false,
    };
    if whom.plant.is_none() && !listed && whom.problem.is_none() && entry.blocks.is_none() {
        eye.say(
            &[("for", 0)],
            format!("`{}` is for nobody", entry.id.value),
            "name a `plant`, `plants` or a `problem` in `for`",
        );
    }
}

fn windows(entry: &RuleEntry, eye: &mut Eye<'_, '_>) {
    for window in &entry.window.0 {
        if window.opens.is_none() && window.closes.is_none() {
            let message = format!("a window of `{}` neither opens nor closes", entry.id.value);
            let help = "write `opens`, `closes` or both; without a window the rule is open all year";
            match &window.best {
                Some(best) => eye.put(place(eye.file, best), message, help),
                None => eye.say(&[("window", 0)], message, help),
            }
        }
    }
}

fn apart(entries: &[ApartEntry], eye: &mut Eye<'_, '_>) {
    for (nth, entry) in entries.iter().enumerate() {
        if entry.material.is_none() && entry.class.is_none() && entry.job.is_none() {
            let message = format!("`{}` is kept apart from nothing", eye.id.value);
            eye.say(&[("keep_apart", 0), ("days", nth)], message, "name a `material`, a `class` or a `job`");
        }
    }
}

fn works(entry: &RuleEntry, eye: &mut Eye<'_, '_>) {
    let id = &entry.id.value;
    for (nth, amount) in entry.amount.iter().enumerate() {
        if amount.call.is_none() && amount.typical.is_none() {
            eye.say(
                &[("amount", 0), ("what", nth)],
                format!("an amount of `{id}` says no number"),
                "give `call`, `typical` or both",
            );
        }
    }
    if entry.repeat.as_ref().is_some_and(|repeat| repeat.every.is_none() && repeat.at_most.is_none()) {
        eye.say(&[("repeat", 0)], format!("`repeat` of `{id}` says nothing"), "give `every`, `at_most` or both");
    }
}

#[cfg(test)]
pub(super) const CASE: super::cases::Case = super::cases::Case {
    code: "missing-field",
    trips: &[("rules/rose.yaml", "- id: rose.soak\n  job: water\n", "- id: rose.soak\n")],
    also: &[],
    at: "rose.soak",
    says: "rules/rose.yaml:47:7: error[missing-field]: the task `rose.soak` has no job\n  help: say in `job` what kind of work it is, or make it `kind: know`",
    just_not: &[(
        "rules/rose.yaml",
        "- id: rose.soak\n  job: water\n",
        "- id: rose.soak\n  kind: task\n  job: water\n",
    )],
};
