//! Random rules, and how they are written.

use proptest::collection::vec;
use proptest::option::weighted;
use proptest::prelude::*;
use proptest::sample::select;

use super::conditions;
use super::windows::{self, Pattern};

/// A rule before the ids of the others are known: they stand as numbers.
#[derive(Clone, Debug)]
pub(crate) struct RuleSpec {
    prefix: &'static str,
    fields: Vec<String>,
    links: Links,
}

/// What a rule says of others, by their place.
#[derive(Clone, Debug, Default)]
struct Links {
    after: Option<(usize, u16)>,
    before: Option<(usize, u16)>,
    clashes: Option<usize>,
    blocks_rule: Option<usize>,
    alternate: Option<u16>,
}

const TASKS: &[&str] = &[
    "prune",
    "prune",
    "protect-frost",
    "protect-heat",
    "feed",
    "feed",
    "transplant",
    "treat-pest",
    "treat-disease",
    "water",
    "mulch",
    "harvest",
    "deadhead",
];
const MATERIALS: &[&str] = &["urea", "compost", "oil-spray", "soap-spray", "sulphur-dust", "copper-salt"];

fn field(key: &str, value: &str) -> String {
    format!("{key}: {value}")
}

fn texts(words: &str) -> String {
    format!("{{en: \"{words}\"}}")
}

fn whom(traits: bool) -> BoxedStrategy<String> {
    let who = prop_oneof![
        4 => Just("plant: rose"),
        3 => Just("plants: [rose, apple]"),
        9 => Just("plants: all"),
        1 => Just("plant: fern"),
        1 => Just("plants: all, problem: mites"),
        1 => Just("problem: chlorosis"),
    ];
    let traits = weighted(if traits { 0.15 } else { 0.0 }, conditions::of_traits());
    (who, traits)
        .prop_map(|(who, traits)| match traits {
            Some(traits) => format!("{{{who}, where: \"{traits}\"}}"),
            None => format!("{{{who}}}"),
        })
        .boxed()
}

fn hold() -> impl Strategy<Value = String> {
    (conditions::hold(), proptest::bool::weighted(0.15)).prop_map(|(condition, strict)| {
        format!("{{if: \"{condition}\", because: {{en: B}}{}}}", if strict { ", strict: true" } else { "" })
    })
}

fn weight() -> impl Strategy<Value = Vec<String>> {
    let evidence = select(&["consensus", "trial", "common-practice", "doubtful"][..]);
    (0_u8..=3, 0_u8..=3, evidence, proptest::bool::weighted(0.3)).prop_map(|(urgency, impact, evidence, consider)| {
        vec![
            format!("rank: {{urgency: {urgency}, impact: {impact}}}"),
            field("evidence", evidence),
            field("strength", if consider { "consider" } else { "do" }),
        ]
    })
}

fn outside() -> impl Strategy<Value = Option<String>> {
    weighted(
        0.7,
        (any::<bool>(), any::<bool>(), any::<bool>()).prop_map(|(early, late, never)| {
            let words = [(early, "early"), (late, "late"), (never, "never")];
            let shown: Vec<String> =
                words.iter().filter(|(yes, _)| *yes).map(|(_, word)| format!("{word}: {{en: O}}")).collect();
            format!("outside: {{{}}}", shown.join(", "))
        }),
    )
}

fn repeat() -> impl Strategy<Value = Option<String>> {
    let every = (3_u16..=20, 0_u16..=20).prop_map(|(least, more)| format!("every: {least}..{} days", least + more));
    let at_most = (1_u16..=3, 10_u16..=120)
        .prop_map(|(times, within)| format!("at_most: {{times: {times}, within: {within} days}}"));
    weighted(
        0.25,
        prop_oneof![
            every.clone(),
            at_most.clone(),
            (every, at_most).prop_map(|(every, most)| format!("{every}, {most}")),
        ]
        .prop_map(|inside| format!("repeat: {{{inside}}}")),
    )
}

fn keep_apart() -> impl Strategy<Value = Option<String>> {
    let what = prop_oneof![
        select(MATERIALS).prop_map(|m| format!("material: {m}")),
        select(&["nitrogen", "oil", "sulphur", "organic"][..]).prop_map(|c| format!("class: {c}")),
        select(TASKS).prop_map(|j| format!("job: {j}")),
    ];
    weighted(0.2, vec((what, 1_u16..=21), 1..=2)).prop_map(|list| {
        list.map(|list| {
            let inside: Vec<String> =
                list.into_iter().map(|(what, days)| format!("{{{what}, days: {days}}}")).collect();
            format!("keep_apart: [{}]", inside.join(", "))
        })
    })
}

fn window_field(windows: &[Pattern]) -> Option<String> {
    match windows {
        [] => None,
        [one] => Some(field("window", &windows::written(one))),
        many => Some(format!("window: [{}]", many.iter().map(windows::written).collect::<Vec<_>>().join(", "))),
    }
}

type Work = (&'static str, Option<&'static str>, Vec<&'static str>);

fn work() -> impl Strategy<Value = Work> {
    (select(TASKS), weighted(0.4, select(&["hard", "overhead"][..])), vec(select(MATERIALS), 0..=2)).prop_map(
        |(job, manner, mut materials)| {
            materials.sort_unstable();
            materials.dedup();
            // Only works that spread something carry materials.
            if !matches!(job, "feed" | "treat-pest" | "treat-disease" | "mulch" | "water") {
                materials.clear();
            }
            (job, manner, materials)
        },
    )
}

fn links() -> impl Strategy<Value = Links> {
    let other = || (0_usize..64, prop_oneof![2 => Just(0_u16), 1 => 1_u16..=14]);
    (weighted(0.15, other()), weighted(0.15, other()), weighted(0.12, 0_usize..64), weighted(0.1, 3_u16..=20))
        .prop_map(|(after, before, clashes, alternate)| Links { after, before, clashes, alternate, blocks_rule: None })
}

fn common(kind: &'static str) -> Vec<String> {
    vec![
        field("kind", kind),
        field("title", &texts("T")),
        field("why", &texts("W")),
        "sources: [common-practice]".to_owned(),
    ]
}

fn task() -> impl Strategy<Value = RuleSpec> {
    let first = (
        whom(true),
        windows::windows(),
        weighted(0.4, conditions::when()),
        prop_oneof![3 => Just(Vec::new()), 2 => vec(hold(), 1..=2)],
        outside(),
        weight(),
    );
    let second = (work(), repeat(), keep_apart(), links(), proptest::bool::weighted(0.1));
    let kind = prop_oneof![9 => Just("task"), 1 => Just("avoid")];
    (kind, first, second).prop_map(
        |(kind, (whom, windows, when, holds, outside, weight), (work, repeat, apart, links, strict))| {
            let mut fields = common(kind);
            fields.push(field("for", &whom));
            fields.extend(window_field(&windows));
            fields.extend(when.map(|when| format!("when: \"{when}\"")));
            if !holds.is_empty() {
                fields.push(format!("hold: [{}]", holds.join(", ")));
            }
            fields.extend(outside);
            fields.extend(weight);
            let (job, manner, materials) = work;
            fields.push(field("job", job));
            fields.extend(manner.map(|manner| field("manner", manner)));
            if !materials.is_empty() {
                fields.push(format!("materials: [{}]", materials.join(", ")));
            }
            fields.extend(repeat);
            fields.extend(apart);
            if strict {
                fields.push("strict: true".to_owned());
            }
            RuleSpec { prefix: "any", fields, links }
        },
    )
}

fn know() -> impl Strategy<Value = RuleSpec> {
    (whom(true), windows::windows(), conditions::when(), weight()).prop_map(|(whom, windows, when, weight)| {
        let mut fields = common("know");
        fields.push(field("for", &whom));
        fields.extend(window_field(&windows));
        fields.push(format!("when: \"{when}\""));
        fields.extend(weight);
        RuleSpec { prefix: "any", fields, links: Links::default() }
    })
}

/// Someone is in danger.
fn emergency() -> impl Strategy<Value = RuleSpec> {
    (select(&["{plants: all}", "{plant: rose}"][..]), conditions::sign(), weight()).prop_map(|(whom, when, weight)| {
        let mut fields = common("task");
        fields.push(field("for", whom));
        fields.push(format!("when: \"{when}\""));
        fields.extend(weight);
        fields.push("job: scout".to_owned());
        fields.push(format!("emergency: {{call: {}}}", texts("C")));
        RuleSpec { prefix: "any", fields, links: Links::default() }
    })
}

fn guard() -> impl Strategy<Value = RuleSpec> {
    let blocks = prop_oneof![
        select(TASKS).prop_map(|job| format!("jobs: [{job}, prune]")),
        select(MATERIALS).prop_map(|m| format!("materials: [{m}]")),
        Just("classes: [nitrogen]".to_owned()),
        Just("jobs: [feed], classes: [nitrogen, organic]".to_owned()),
        Just("jobs: [treat-pest, treat-disease], plants: [rose]".to_owned()),
    ];
    let first = (whom(true), windows::windows(), weighted(0.7, conditions::hold()));
    (first, blocks, weighted(0.2, 0_usize..64), proptest::bool::weighted(0.2)).prop_map(
        |((whom, windows, when), blocks, rule, strict)| {
            let mut fields = common("avoid");
            fields.push(field("for", &whom));
            fields.extend(window_field(&windows));
            fields.extend(when.map(|when| format!("when: \"{when}\"")));
            fields.extend(["evidence: consensus".to_owned(), "strength: avoid".to_owned()]);
            if strict {
                fields.push("strict: true".to_owned());
            }
            if rule.is_none() {
                fields.push(format!("blocks: {{{blocks}}}"));
            }
            RuleSpec { prefix: "guard", fields, links: Links { blocks_rule: rule, ..Links::default() } }
        },
    )
}

/// Three to twelve rules.
pub(crate) fn rules() -> impl Strategy<Value = Vec<RuleSpec>> {
    vec(
        prop_oneof![
            32 => task().boxed(),
            4 => know().boxed(),
            8 => guard().boxed(),
            1 => emergency().boxed()
        ],
        3..=12,
    )
}

/// A rule as the ids of its place say, with its fields in their order.
fn written(spec: &RuleSpec, at: usize, ids: &[String], turns: &[Option<usize>]) -> Vec<String> {
    let mut fields = vec![field("id", &ids[at])];
    fields.extend(spec.fields.iter().cloned());
    let links = &spec.links;
    let order = |(other, days): (usize, u16)| {
        if days == 0 { ids[other].clone() } else { format!("{{rule: {}, days: {days}}}", ids[other]) }
    };
    // The order must have no circle: what is named comes before in the list of ids, or after.
    if let Some((other, days)) = links.after
        && at > 0
    {
        fields.push(format!("after: [{}]", order((other % at, days))));
    }
    if let Some((other, days)) = links.before
        && at + 1 < ids.len()
    {
        fields.push(format!("before: [{}]", order((at + 1 + other % (ids.len() - at - 1), days))));
    }
    if let Some(other) = links.clashes
        && other % ids.len() != at
    {
        fields.push(format!("clashes: [{}]", ids[other % ids.len()]));
    }
    if let Some(other) = links.blocks_rule {
        fields.push(format!("blocks: {{rules: [{}]}}", ids[other % ids.len()]));
    }
    if let (Some(gap), Some(partner)) = (links.alternate, turns[at]) {
        fields.push(format!("alternate: {{with: {}, gap: {gap} days}}", ids[partner]));
    }
    fields
}

/// The ids by place. They run against the order of the rules, so that neither follows from the other.
pub(crate) fn ids(specs: &[RuleSpec]) -> Vec<String> {
    specs.iter().enumerate().map(|(at, spec)| format!("{}.r{:02}", spec.prefix, (at * 7 + 3) % 13)).collect()
}

/// The rules as entries, each a list of fields.
pub(crate) fn entries(specs: &[RuleSpec]) -> Vec<Vec<String>> {
    let ids = ids(specs);
    // Turns are taken by two neighbours, and by no three.
    let mut turns: Vec<Option<usize>> = vec![None; specs.len()];
    for at in 1..specs.len() {
        let tasks = specs[at].prefix == "any" && specs[at - 1].prefix == "any";
        if at % 2 == 1 && tasks {
            turns[at] = Some(at - 1);
            turns[at - 1] = Some(at);
        }
    }
    specs.iter().enumerate().map(|(at, spec)| written(spec, at, &ids, &turns)).collect()
}

/// One entry as text.
pub(crate) fn text(fields: &[String]) -> String {
    let mut out = String::new();
    for (at, field) in fields.iter().enumerate() {
        out.push_str(if at == 0 { "- " } else { "  " });
        out.push_str(field);
        out.push('\n');
    }
    out
}

/// All of them in one file.
pub(crate) fn file(specs: &[RuleSpec]) -> Vec<(String, String)> {
    vec![("rules/all.yaml".to_owned(), entries(specs).iter().map(|entry| text(entry)).collect())]
}
