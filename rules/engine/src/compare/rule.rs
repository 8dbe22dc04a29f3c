//! Two versions of a rule.

use serde_json::Value;

use super::listed::{self, Item};
use super::window::Moved;
use super::{Kind, Sentence, Words, condition, hold, normal, window};
use crate::compile::set::Set;
use crate::explain::number::plain as number;
use crate::explain::plain::Plain;
use crate::pack::At;
use crate::pack::rule::{
    AlternateEntry, AmountEntry, ApartEntry, BlocksEntry, ForEntry, LawEntry, OutsideEntry, RepeatEntry, RuleEntry,
};
use crate::pack::shapes::{AllOr, OrderEntry};
use crate::text::Text;

/// What changed from one version of a rule to the other, without its id; nothing: no change of meaning.
#[must_use]
pub fn differences(before: &RuleEntry, after: &RuleEntry, words: Words<'_>) -> Vec<Sentence> {
    with_moved(before, after, words).0
}

/// The same, with the sides of windows whose days only the climates can tell.
pub(super) fn with_moved(before: &RuleEntry, after: &RuleEntry, words: Words<'_>) -> (Vec<Sentence>, Vec<Moved>) {
    // Every field by name: a new one does not compile until something is said of it here.
    let RuleEntry {
        id: _,
        // Who has looked it over changes nothing of what it says.
        reviewed: _,
        // How its words are checked says nothing of the plant.
        plain: _,
        kind,
        job,
        manner,
        title,
        whom,
        window,
        when,
        hold,
        outside,
        rank,
        evidence,
        strength,
        why,
        steps,
        notes,
        materials,
        amount,
        expect,
        before: earlier_than,
        after: later_than,
        keep_apart,
        clashes,
        repeat,
        alternate,
        blocks,
        law,
        cautions,
        professional,
        emergency,
        strict,
        sources,
    } = before;
    let plain = words.plain(before, after);
    let mut out = Vec::new();
    let say = |kind, en: &str, es: &str, b: &str, a: &str, out: &mut Vec<Sentence>| {
        listed::value(kind, &words.pick(en, es), b, a, words, out);
    };
    say(Kind::RuleKind, "kind", "clase", &word(kind), &word(&after.kind), &mut out);
    let job_of = |job: &Option<At<String>>, set: &Set| {
        job.as_ref().map_or_else(String::new, |job| named(&job.value, set, words.language))
    };
    say(Kind::Job, "job", "labor", &job_of(job, words.before), &job_of(&after.job, words.after), &mut out);
    say(Kind::Job, "manner", "manera", &opt(manner.as_ref()), &opt(after.manner.as_ref()), &mut out);
    self::whom(whom, &after.whom, plain, words, &mut out);
    let moved = window::of_rule(&window.0, &after.window.0, plain, words, &mut out);
    condition::of_rule(when.as_ref(), after.when.as_ref(), plain, words, &mut out);
    hold::of_rule(hold, &after.hold, plain, words, &mut out);
    self::blocks(blocks.as_ref(), after.blocks.as_ref(), words, &mut out);
    amounts(amount, &after.amount, words, &mut out);
    let label = words.pick("how often", "con qué frecuencia");
    let repeats = |entry: &Option<RepeatEntry>| entry.as_ref().map(|r| repeat_items(r, words)).unwrap_or_default();
    listed::changes(Kind::Repeat, &label, &repeats(repeat), &repeats(&after.repeat), words, &mut out);
    let label = words.pick("takes turns", "se alterna");
    let turns = |entry: &Option<AlternateEntry>, set: &Set, now: bool| {
        let one = |turn: &AlternateEntry| rule_item(&turn.rule.value, Some(&turn.gap.value), set, now, words);
        entry.iter().map(one).collect::<Vec<_>>()
    };
    let (b, a) = (turns(alternate, words.before, true), turns(&after.alternate, words.after, false));
    listed::changes(Kind::Turns, &label, &b, &a, words, &mut out);
    let label = words.pick("keep apart from", "separar de");
    let (b, a) = (apart(keep_apart, words.before, words), apart(&after.keep_apart, words.after, words));
    listed::changes(Kind::Separation, &label, &b, &a, words, &mut out);
    for (label, b, a) in [
        (words.pick("comes before", "va antes de"), earlier_than, &after.before),
        (words.pick("comes after", "va después de"), later_than, &after.after),
    ] {
        let (b, a) = (order(b, words.before, true, words), order(a, words.after, false, words));
        listed::changes(Kind::Order, &label, &b, &a, words, &mut out);
    }
    let clash = |list: &[At<String>], set: &Set, now: bool| {
        list.iter().map(|id| rule_item(&id.value, None, set, now, words)).collect::<Vec<_>>()
    };
    let label = words.pick("not on one day with", "no el mismo día que");
    let (b, a) = (clash(clashes, words.before, true), clash(&after.clashes, words.after, false));
    listed::changes(Kind::Clash, &label, &b, &a, words, &mut out);
    for (en, es, b, a) in [
        ("urgency", "urgencia", rank.urgency, after.rank.urgency),
        ("impact", "importancia", rank.impact, after.rank.impact),
    ] {
        say(Kind::Rank, en, es, &b.to_string(), &a.to_string(), &mut out);
    }
    say(Kind::Evidence, "founded on", "se apoya en", &word(evidence), &word(&after.evidence), &mut out);
    say(Kind::Strength, "advised as", "se aconseja como", &word(strength), &word(&after.strength), &mut out);
    self::strict(*strict, after.strict, words, &mut out);
    let law_of =
        |law: &Option<LawEntry>| law.as_ref().map_or_else(String::new, |law| format!("{} / {}", law.since, law.seen));
    say(Kind::Law, "law, since / seen", "ley, desde / vista", &law_of(law), &law_of(&after.law), &mut out);
    ids(Kind::Materials, ("materials", "materiales"), materials, &after.materials, words, &mut out);
    let label = words.pick("cautions", "precauciones");
    let (b, a) = (self::cautions(cautions, words.before, words), self::cautions(&after.cautions, words.after, words));
    listed::changes(Kind::Cautions, &label, &b, &a, words, &mut out);
    let outlook = |list: &[crate::pack::rule::ExpectEntry], set: &Set| {
        let one = |expect: &crate::pack::rule::ExpectEntry| {
            let name = named(&expect.what.value, set, words.language);
            Item::valued(&expect.what.value, name, normal::value(&expect.after.value)).shown(&expect.after.value)
        };
        list.iter().map(one).collect::<Vec<_>>()
    };
    let label = words.pick("may be expected", "cabe esperar");
    let (b, a) = (outlook(expect, words.before), outlook(&after.expect, words.after));
    listed::changes(Kind::Outlook, &label, &b, &a, words, &mut out);
    if professional.is_empty() != after.professional.is_empty() {
        let text = match after.professional.is_empty() {
            true => words.pick("is no longer left to a professional", "ya no se deja a un profesional"),
            false => words.pick("is now left to a professional", "ahora se deja a un profesional"),
        };
        out.push(Sentence { kind: Kind::Professional, text });
    }
    if emergency.is_some() != after.emergency.is_some() {
        let text = match after.emergency {
            None => words.pick("is no longer an emergency", "ya no es una emergencia"),
            Some(_) => {
                words.pick("is now an emergency: all else waits", "ahora es una emergencia: todo lo demás espera")
            }
        };
        out.push(Sentence { kind: Kind::Emergency, text });
    }
    out_of_season(outside, &after.outside, words, &mut out);
    let texts = [
        (words.pick("title", "título"), title != &after.title),
        (words.pick("reason", "razón"), why != &after.why),
        (words.pick("steps", "pasos"), steps != &after.steps),
        (words.pick("remark for editors", "nota para editores"), notes != &after.notes),
        (words.pick("words of the holds", "palabras de las esperas"), hold_words(before, after)),
        (words.pick("words of the amounts", "palabras de las cantidades"), amount_words(amount, &after.amount)),
        (words.pick("words out of season", "palabras fuera de época"), outside_words(outside, &after.outside)),
        (
            words.pick("why a professional", "por qué un profesional"),
            both(professional, &after.professional) && professional != &after.professional,
        ),
        (
            words.pick("who to call", "a quién llamar"),
            emergency.is_some() && after.emergency.is_some() && emergency != &after.emergency,
        ),
    ];
    let changed: Vec<String> = texts.into_iter().filter(|(_, changed)| *changed).map(|(name, _)| name).collect();
    reworded(&changed, words, &mut out);
    ids(Kind::Sources, ("sources", "fuentes"), sources, &after.sources, words, &mut out);
    (out, moved)
}

/// One sentence for all texts that say the same in other words, so far as a machine can tell.
pub(super) fn reworded(fields: &[String], words: Words<'_>, out: &mut Vec<Sentence>) {
    if !fields.is_empty() {
        let list = fields.join(", ");
        let text = words.pick(format!("reworded: {list}"), format!("con otras palabras: {list}"));
        out.push(Sentence { kind: Kind::Reworded, text });
    }
}

fn both(one: &Text, other: &Text) -> bool {
    !one.is_empty() && !other.is_empty()
}

/// A word of a fixed list as rules write it.
pub(super) fn word(value: &impl serde::Serialize) -> String {
    match serde_json::to_value(value) {
        Ok(Value::String(word)) => word,
        _ => String::new(),
    }
}

fn opt(value: Option<&impl serde::Serialize>) -> String {
    value.map(word).unwrap_or_default()
}

/// The name of an id of one of the vocabularies; the id itself where it is none of them.
pub(super) fn named(id: &str, set: &Set, language: &str) -> String {
    let pack = &set.pack;
    let listed = [&pack.jobs, &pack.classes, &pack.stages, &pack.outlooks]
        .into_iter()
        .flat_map(|list| list.iter().map(|filed| (&filed.entry.id.value, &filed.entry.name)))
        .chain(pack.materials.iter().map(|filed| (&filed.entry.id.value, &filed.entry.name)))
        .chain(pack.plants.iter().map(|filed| (&filed.entry.id.value, &filed.entry.name)))
        .chain(pack.problems.iter().map(|filed| (&filed.entry.id.value, &filed.entry.name)))
        .find(|(known, _)| *known == id)
        .map(|(_, name)| name.get(language).to_owned());
    let source = || pack.sources.iter().find(|s| s.entry.id.value == id).map(|s| s.entry.title.clone());
    match listed.or_else(source) {
        Some(name) => format!("{name} [{id}]"),
        None => id.to_owned(),
    }
}

/// Lists of ids.
pub(super) fn ids(
    kind: Kind,
    (en, es): (&str, &str),
    before: &[At<String>],
    after: &[At<String>],
    words: Words<'_>,
    out: &mut Vec<Sentence>,
) {
    let of = |list: &[At<String>], set: &Set| {
        let one = |id: &At<String>| Item::named(&id.value, named(&id.value, set, words.language));
        list.iter().map(one).collect::<Vec<_>>()
    };
    let (b, a) = (of(before, words.before), of(after, words.after));
    listed::changes(kind, &words.pick(en, es), &b, &a, words, out);
}

/// Cautions by what they say.
pub(super) fn cautions(list: &[At<String>], set: &Set, words: Words<'_>) -> Vec<Item> {
    let text = |id: &str| {
        let known = set.pack.cautions.iter().find(|caution| caution.entry.id.value == id);
        known.map_or_else(|| id.to_owned(), |c| format!("“{}” [{id}]", words.text(&c.entry.text)))
    };
    list.iter().map(|id| Item::named(&id.value, text(&id.value))).collect()
}

/// Separations.
pub(super) fn apart(list: &[ApartEntry], set: &Set, words: Words<'_>) -> Vec<Item> {
    list.iter()
        .flat_map(|apart| {
            let ApartEntry { material, class, job, days } = apart;
            let days = *days;
            [material, class, job].into_iter().flatten().map(move |id| {
                Item::valued(&id.value, named(&id.value, set, words.language), days.to_string())
                    .shown(words.days(f64::from(days)))
            })
        })
        .collect()
}

fn rule_item(id: &str, gap: Option<&str>, set: &Set, before: bool, words: Words<'_>) -> Item {
    let title = set.pack.rules.iter().find(|rule| rule.entry.id.value == id);
    let key = if before { words.now(id) } else { id };
    let name = title.map_or_else(|| id.to_owned(), |rule| format!("“{}” [{id}]", words.text(&rule.entry.title)));
    Item {
        key: key.to_owned(),
        name,
        value: gap.map(normal::value).unwrap_or_default(),
        shown: gap.unwrap_or_default().to_owned(),
    }
}

fn order(list: &[At<OrderEntry>], set: &Set, before: bool, words: Words<'_>) -> Vec<Item> {
    list.iter()
        .map(|item| {
            let OrderEntry { rule, days } = &item.value;
            let shown = if *days == 0 {
                words.pick("no days between", "sin días entre medias")
            } else {
                words.days(f64::from(*days))
            };
            Item { value: days.to_string(), shown, ..rule_item(rule, None, set, before, words) }
        })
        .collect()
}

fn whom(before: &ForEntry, after: &ForEntry, plain: (Plain<'_>, Plain<'_>), words: Words<'_>, out: &mut Vec<Sentence>) {
    let plants = |entry: &ForEntry, set: &Set| {
        let ForEntry { plant, plants, problem: _, traits: _ } = entry;
        let listed: Vec<&At<String>> = match plants {
            Some(AllOr::These(ids)) => ids.iter().collect(),
            _ => Vec::new(),
        };
        let mut items: Vec<Item> = plant
            .iter()
            .chain(listed)
            .map(|id| Item::named(&id.value, named(&id.value, set, words.language)))
            .collect();
        if matches!(plants, Some(AllOr::All)) {
            items.push(Item::named("all", words.pick("every plant", "todas las plantas")));
        }
        items
    };
    let label = words.pick("for", "para");
    listed::changes(Kind::Whom, &label, &plants(before, words.before), &plants(after, words.after), words, out);
    let problem = |entry: &ForEntry, set: &Set| {
        entry.problem.as_ref().map_or_else(String::new, |id| named(&id.value, set, words.language))
    };
    let label = words.pick("against", "contra");
    listed::value(Kind::Whom, &label, &problem(before, words.before), &problem(after, words.after), words, out);
    let mut traits = Vec::new();
    condition::of_rule(before.traits.as_ref(), after.traits.as_ref(), plain, words, &mut traits);
    out.extend(traits.into_iter().map(|sentence| Sentence { kind: Kind::Whom, ..sentence }));
}

fn blocks(before: Option<&BlocksEntry>, after: Option<&BlocksEntry>, words: Words<'_>, out: &mut Vec<Sentence>) {
    let none = BlocksEntry::default();
    match (before, after) {
        (Some(_), None) => {
            let text = words.pick("blocks nothing any more", "ya no frena nada");
            out.push(Sentence { kind: Kind::GuardScope, text });
            return;
        }
        (None, Some(_)) => {
            let text = words.pick("is now a guard", "ahora es un freno");
            out.push(Sentence { kind: Kind::GuardScope, text });
        }
        _ => {}
    }
    let (b, a) = (before.unwrap_or(&none), after.unwrap_or(&none));
    let BlocksEntry { jobs, materials, classes, rules, plants } = b;
    for (label, b, a) in [
        (("blocks jobs", "frena labores"), jobs, &a.jobs),
        (("blocks materials", "frena materiales"), materials, &a.materials),
        (("blocks classes", "frena clases"), classes, &a.classes),
        (("blocks on plants", "frena en plantas"), plants, &a.plants),
    ] {
        ids(Kind::GuardScope, label, b, a, words, out);
    }
    let of = |list: &[At<String>], set: &Set, before: bool| {
        list.iter().map(|id| rule_item(&id.value, None, set, before, words)).collect::<Vec<_>>()
    };
    let label = words.pick("blocks rules", "frena reglas");
    let (b, a) = (of(rules, words.before, true), of(&a.rules, words.after, false));
    listed::changes(Kind::GuardScope, &label, &b, &a, words, out);
}

fn amounts(before: &[AmountEntry], after: &[AmountEntry], words: Words<'_>, out: &mut Vec<Sentence>) {
    if before.len() != after.len() {
        let (b, a) = (before.len(), after.len());
        let text = words.pick(format!("{a} amounts instead of {b}"), format!("{a} cantidades en vez de {b}"));
        out.push(Sentence { kind: Kind::Amount, text });
    }
    for (b, a) in before.iter().zip(after) {
        let label = format!("{} “{}”", words.pick("amount", "cantidad"), words.text(&a.what));
        let (items_b, items_a) = (amount_items(b, words), amount_items(a, words));
        listed::changes(Kind::Amount, &label, &items_b, &items_a, words, out);
    }
}

fn amount_items(amount: &AmountEntry, words: Words<'_>) -> Vec<Item> {
    let AmountEntry { what: _, call, inputs, typical, max_of } = amount;
    let called = call.iter().map(|call| Item::valued("call", words.pick("reckoned by", "se calcula con"), &call.value));
    let given = inputs.iter().map(|(name, input)| {
        Item::valued(format!("with {name}"), name, normal::value(&input.value)).shown(&input.value)
    });
    let usual = typical.iter().map(|typical| {
        let shown = format!("{}..{} {}", number(typical.min), number(typical.max), typical.unit.value);
        Item::valued("typical", words.pick("usual", "lo usual"), normal::value(&shown)).shown(&shown)
    });
    let most =
        max_of.iter().map(|id| Item::valued("most", words.pick("at most as for", "como mucho lo de"), &id.value));
    called.chain(given).chain(usual).chain(most).collect()
}

fn repeat_items(repeat: &RepeatEntry, words: Words<'_>) -> Vec<Item> {
    let RepeatEntry { every, at_most } = repeat;
    let every = every.iter().map(|every| {
        Item::valued("every", words.pick("every", "cada"), normal::value(&every.value)).shown(&every.value)
    });
    let most = at_most.iter().map(|most| {
        let within = normal::value(&most.within.value);
        let shown = words.pick(
            format!("{} in {}", most.times, most.within.value),
            format!("{} en {}", most.times, most.within.value),
        );
        Item::valued("at most", words.pick("at most", "como mucho"), format!("{} {within}", most.times)).shown(shown)
    });
    every.chain(most).collect()
}

fn strict(before: bool, after: bool, words: Words<'_>, out: &mut Vec<Sentence>) {
    if before != after {
        let text = match after {
            true => words.pick("facts of the day must now be known", "los datos del día deben saberse ahora"),
            false => words.pick("facts of the day need no longer be known", "los datos del día ya no han de saberse"),
        };
        out.push(Sentence { kind: Kind::Strict, text });
    }
}

fn out_of_season(before: &OutsideEntry, after: &OutsideEntry, words: Words<'_>, out: &mut Vec<Sentence>) {
    let OutsideEntry { early, late, never } = before;
    for (name, b, a) in [
        (words.pick("before its window", "antes de su plazo"), early, &after.early),
        (words.pick("after its window", "después de su plazo"), late, &after.late),
        (words.pick("where it has no window", "donde no tiene plazo"), never, &after.never),
    ] {
        if b.is_empty() != a.is_empty() {
            let text = match a.is_empty() {
                true => words.pick(format!("says nothing any more {name}"), format!("ya no dice nada {name}")),
                false => words.pick(format!("now says something {name}"), format!("ahora dice algo {name}")),
            };
            out.push(Sentence { kind: Kind::OutOfSeason, text });
        }
    }
}

fn outside_words(before: &OutsideEntry, after: &OutsideEntry) -> bool {
    [(&before.early, &after.early), (&before.late, &after.late), (&before.never, &after.never)]
        .into_iter()
        .any(|(b, a)| both(b, a) && b != a)
}

/// A hold that is still there in the same cases with other words.
fn hold_words(before: &RuleEntry, after: &RuleEntry) -> bool {
    let same = before.hold.len() == after.hold.len();
    let key = |hold: &crate::pack::rule::HoldEntry| normal::text(hold.condition.text());
    match same {
        true => before.hold.iter().zip(&after.hold).any(|(b, a)| {
            let moved = after.hold.iter().find(|other| key(other) == key(b)).unwrap_or(a);
            moved.because != b.because
        }),
        false => before.hold.iter().any(|b| after.hold.iter().any(|a| key(a) == key(b) && a.because != b.because)),
    }
}

fn amount_words(before: &[AmountEntry], after: &[AmountEntry]) -> bool {
    before.iter().zip(after).any(|(b, a)| b.what != a.what)
}
