//! An emergency that waits: for a season, a hold, a fact that somebody would have to find out first; or that does not say
//! at once who to call.

use crate::compile::set::Set;
use crate::compile::term::Term;
use crate::fault::Fault;
use crate::pack::expression::place;
use crate::pack::rule::{Kind, RuleEntry};
use crate::pack::{Filed, shapes::AllOr};

/// Looks at every emergency.
pub(super) fn look(set: &Set, faults: &mut Vec<Fault>) {
    for (Filed { file, entry }, number) in set.pack.rules.iter().zip(0u32..) {
        if entry.emergency.is_none() {
            continue;
        }
        let mut say = |message: String, help: &str| {
            faults.push(Fault::error("emergency-can-wait", place(file, &entry.id), message).help(help));
        };
        let id = &entry.id.value;
        if entry.kind != Kind::Task {
            say(format!("`{id}` is an emergency and no task"), "somebody has to be called: take `kind` out");
        }
        for field in waits(entry) {
            say(format!("the emergency `{id}` has `{field}`"), "nobody in danger waits for that: take it out");
        }
        if entry.rank.urgency < 3 || entry.rank.impact < 3 {
            say(format!("the emergency `{id}` has a lower rank"), "write `rank: {urgency: 3, impact: 3}`");
        }
        if entry.professional.is_empty() {
            say(
                format!("the emergency `{id}` does not send to a professional"),
                "say in `professional` why this is nothing to see to oneself",
            );
        }
        let terms = terms(number, set);
        if terms.iter().any(|term| !is_told(term)) {
            say(
                format!("the emergency `{id}` asks for more than signs and the region"),
                "whoever is in danger tells what is seen, and nothing else is asked",
            );
        }
        let is_danger = |term: &&Term| matches!(term, Term::Sign(sign) if is_emergency(*sign, set));
        if !terms.iter().any(is_danger) {
            say(
                format!("the emergency `{id}` reads no sign with `emergency: true`"),
                "mark the sign, so that it is heard for every plant",
            );
        }
    }
}

fn is_emergency(sign: u16, set: &Set) -> bool {
    set.pack.signs.get(usize::from(sign)).is_some_and(|sign| sign.entry.emergency)
}

/// The fields that let it wait, or that make no sense in danger.
fn waits(entry: &RuleEntry) -> Vec<&'static str> {
    let outside = &entry.outside;
    let fields = [
        ("window", !entry.window.0.is_empty()),
        ("hold", !entry.hold.is_empty()),
        ("outside", !(outside.early.is_empty() && outside.late.is_empty() && outside.never.is_empty())),
        ("materials", !entry.materials.is_empty()),
        ("amount", !entry.amount.is_empty()),
        ("expect", !entry.expect.is_empty()),
        ("before", !entry.before.is_empty()),
        ("after", !entry.after.is_empty()),
        ("keep_apart", !entry.keep_apart.is_empty()),
        ("clashes", !entry.clashes.is_empty()),
        ("repeat", entry.repeat.is_some()),
        ("alternate", entry.alternate.is_some()),
        ("law", entry.law.is_some()),
        ("problem", entry.whom.problem.is_some()),
        ("where", entry.whom.traits.is_some()),
    ];
    fields.into_iter().filter(|(_, is_there)| *is_there).map(|(name, _)| name).collect()
}

/// What the condition of a rule reads, of the first plant that has it.
pub(super) fn terms(number: u32, set: &Set) -> Vec<&Term> {
    let found = set.plants.iter().find_map(|book| Some((book, book.rules.iter().find(|rule| rule.rule == number)?)));
    let Some((book, rule)) = found else { return Vec::new() };
    let mut out = Vec::new();
    rule.when.atoms(&mut |atom| {
        let term = book.atoms.get(atom as usize).and_then(|atom| book.probes.get(atom.probe as usize));
        if let Some(term) = term {
            term.walk(&mut |part| out.push(part));
        }
    });
    out
}

const fn is_told(term: &Term) -> bool {
    matches!(
        term,
        Term::Sign(_) | Term::Severity(_) | Term::Share(_) | Term::RegionIs(_) | Term::RegionFlag(_) | Term::Literal(_)
    )
}

/// Whether a rule is for every plant.
pub(super) const fn is_for_all(entry: &RuleEntry) -> bool {
    matches!(entry.whom.plants, Some(AllOr::All))
}

#[cfg(test)]
pub(super) const DANGER: [super::cases::support::Edit<'static>; 2] = [
    (
        "words/signs.yaml",
        "- id: white-powder\n",
        "- id: power-line\n  emergency: true\n  where: whole-plant\n  seen: plain\n  name: {en: \"Power line in the tree\", es: \"Cable en el árbol\"}\n  look: {en: \"A wire touches it.\", es: \"Un cable lo toca.\"}\n- id: white-powder\n",
    ),
    (
        "rules/rose.yaml",
        "- id: rose.soak\n",
        "- id: rose.line\n  job: water\n  title: {en: \"Call the supplier\", es: \"Llame al suministrador\"}\n  for: {plants: all}\n  when: \"signs has power-line\"\n  emergency:\n    call: {en: \"The supplier.\", es: \"Al suministrador.\"}\n  rank: {urgency: 3, impact: 3}\n  evidence: consensus\n  strength: do\n  why: {en: \"It can kill.\", es: \"Puede matar.\"}\n  steps: {en: [\"Keep away.\"], es: [\"Aléjese.\"]}\n  professional: {en: \"Trained crews only.\", es: \"Solo personal formado.\"}\n  sources: [common-practice]\n- id: rose.soak\n",
    ),
];

#[cfg(test)]
pub(super) const CASE: super::cases::Case = super::cases::Case {
    code: "emergency-can-wait",
    trips: &[
        DANGER[0],
        DANGER[1],
        ("rules/rose.yaml", "when: \"signs has power-line\"", "when: \"signs has power-line and soil.ph < 7\""),
    ],
    also: &[],
    at: "rose.line",
    says: "rules/rose.yaml:47:7: error[emergency-can-wait]: the emergency `rose.line` asks for more than signs and the region\n  help: whoever is in danger tells what is seen, and nothing else is asked",
    just_not: &DANGER,
};
