//! Two versions of a material.

use super::listed::{self, Item};
use super::rule::{apart, cautions, ids, reworded, word};
use super::{Kind, Sentence, Words, normal};
use crate::pack::MaterialEntry;

/// What changed from one version of a material to the other, without its id.
#[must_use]
pub fn differences(before: &MaterialEntry, after: &MaterialEntry, words: Words<'_>) -> Vec<Sentence> {
    let MaterialEntry { id: _, classes, name, analysis, hazard, maximum, keep_apart, cautions: warned, sources } =
        before;
    let mut out = Vec::new();
    ids(Kind::Classes, ("classes", "clases"), classes, &after.classes, words, &mut out);
    let label = words.pick("hazard", "peligro");
    listed::value(Kind::Hazard, &label, &word(hazard), &word(&after.hazard), words, &mut out);
    let most = |list: &[crate::pack::material::MaximumEntry]| {
        let one = |most: &crate::pack::material::MaximumEntry| {
            let per = word(&most.per);
            Item::valued(&per, &per, normal::value(&most.value.value)).shown(&most.value.value)
        };
        list.iter().map(one).collect::<Vec<_>>()
    };
    let label = words.pick("at most, per", "como mucho, por");
    listed::changes(Kind::Maximum, &label, &most(maximum), &most(&after.maximum), words, &mut out);
    let label = words.pick("keep apart from", "separar de");
    let (b, a) = (apart(keep_apart, words.before, words), apart(&after.keep_apart, words.after, words));
    listed::changes(Kind::Separation, &label, &b, &a, words, &mut out);
    let label = words.pick("cautions", "precauciones");
    let (b, a) = (cautions(warned, words.before, words), cautions(&after.cautions, words.after, words));
    listed::changes(Kind::Cautions, &label, &b, &a, words, &mut out);
    let texts = [
        (words.pick("name", "nombre"), name != &after.name),
        (words.pick("analysis", "composición"), analysis != &after.analysis),
    ];
    let changed: Vec<String> = texts.into_iter().filter(|(_, changed)| *changed).map(|(name, _)| name).collect();
    reworded(&changed, words, &mut out);
    ids(Kind::Sources, ("sources", "fuentes"), sources, &after.sources, words, &mut out);
    out
}
