//! An id that stands there twice: names become numbers, and only one entry can have the number.

use std::collections::BTreeMap;

use crate::fault::{Fault, Place};
use crate::pack::expression::place;
use crate::pack::{At, Filed, Pack};

/// Looks at every vocabulary, the rules, and the traits, values and stages of each plant.
pub(super) fn look(pack: &Pack, faults: &mut Vec<Fault>) {
    macro_rules! ids {
        ($list:ident, $what:literal) => {
            repeated($what, pack.$list.iter().map(|Filed { file, entry }| (&**file, &entry.id)), faults)
        };
    }
    ids!(jobs, "job");
    ids!(classes, "class");
    ids!(stages, "stage");
    ids!(outlooks, "outlook");
    ids!(signs, "sign");
    ids!(cautions, "caution");
    ids!(sources, "source");
    ids!(materials, "material");
    ids!(problems, "problem");
    ids!(plants, "plant");
    ids!(rules, "rule");
    ids!(climates, "climate");
    for Filed { file, entry } in &pack.plants {
        repeated("trait", entry.traits.iter().map(|part| (&**file, &part.id)), faults);
        repeated("stage", entry.stages.iter().map(|stage| (&**file, stage)), faults);
        repeated("stage", entry.stage_model.iter().map(|model| (&**file, &model.stage)), faults);
        for part in &entry.traits {
            repeated("value of this trait", part.values.iter().map(|value| (&**file, &value.id)), faults);
        }
    }
}

fn repeated<'p>(what: &str, ids: impl Iterator<Item = (&'p str, &'p At<String>)>, faults: &mut Vec<Fault>) {
    let mut first: BTreeMap<&str, Place> = BTreeMap::new();
    for (file, id) in ids {
        let here = place(file, id);
        match first.get(id.value.as_str()) {
            None => {
                first.insert(&id.value, here);
            }
            Some(there) => {
                let mut fault = Fault::error("repeated-id", here, format!("the {what} `{}` is there twice", id.value))
                    .help("give one of them another id, or put the two together");
                fault.related.push((there.clone(), "it stands here first".to_owned()));
                faults.push(fault);
            }
        }
    }
}

#[cfg(test)]
pub(super) const CASE: super::cases::Case = super::cases::Case {
    code: "repeated-id",
    trips: &[("words/outlooks.yaml", "", "- {id: bloom, name: {en: \"Flowers\", es: \"Flores\"}}\n")],
    also: &[],
    at: "bloom, name: {en: \"Flowers\"",
    says: "words/outlooks.yaml:3:8: error[repeated-id]: the outlook `bloom` is there twice\n  help: give one of them another id, or put the two together\n  words/outlooks.yaml:2:8: it stands here first",
    just_not: &[
        ("words/outlooks.yaml", "", "- {id: dormant, name: {en: \"Rest\", es: \"Reposo\"}}\n"),
        ("rules/rose.yaml", "expect: [", "expect: [{what: dormant, after: 200 days}, "),
    ],
};
