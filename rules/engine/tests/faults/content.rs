//! Packs that can be read and compiled, and are wrong all the same.

use crate::{Broken, walk};

#[test]
fn what_reads_well_and_is_wrong_is_told_as_well() {
    walk(BROKEN);
}

const BROKEN: &[Broken] = &[
    Broken {
        name: "a rule of no plant",
        edits: &[("rules/rose.yaml", "- id: rose.soak", "- id: deep-soak")],
        at: "deep-soak",
        says: "rules/rose.yaml:47:7: error[bad-id]: `deep-soak` does not say which plant it is for\n  help: the plant comes first, then a dot: `rose.renewal-cut`; `guard.` or `any.` for several plants",
    },
    Broken {
        name: "a rule of a plant with a slip",
        edits: &[("rules/rose.yaml", "- id: rose.soak", "- id: rsoe.soak")],
        at: "rsoe.soak",
        says: "rules/rose.yaml:47:7: error[bad-id]: `rsoe` in `rsoe.soak` is no plant of the set\n  help: did you mean `rose`?",
    },
    Broken {
        name: "an id with capitals",
        edits: &[
            ("words/signs.yaml", "- id: scorched-petals", "- id: Scorched_Petals"),
            ("rules/rose.yaml", "signs has scorched-petals", "signs has spent-blooms"),
        ],
        at: "Scorched_Petals",
        says: "words/signs.yaml:17:7: error[bad-id]: `Scorched_Petals` is not written as an id is\n  help: small letters, digits and hyphens: `scorched-petals`\nwords/signs.yaml:17:7: warning[unused-entry]: nothing uses the sign `Scorched_Petals`\n  help: name it in a condition or a problem, or take it out",
    },
    Broken {
        name: "a guard that blocks nothing",
        edits: &[("rules/guards.yaml", "blocks: {classes: [nitrogen], plants: [rose]}", "blocks: {plants: [rose]}")],
        at: "blocks: {plants: [",
        says: "rules/guards.yaml:16:3: error[missing-field]: the guard `guard.no-nitrogen-before-frost` blocks nothing\n  help: name `jobs`, `materials`, `classes` or `rules`; `plants` only narrows them",
    },
    Broken {
        name: "a task that blocks",
        edits: &[(
            "rules/rose.yaml",
            "  materials: [garden-oil]\n",
            "  materials: [garden-oil]\n  blocks: {jobs: [water]}\n",
        )],
        at: "blocks: {jobs: [wa",
        says: "rules/rose.yaml:68:3: error[missing-field]: the task `rose.oil-aphids` blocks others\n  help: only `kind: avoid` can: write a guard of its own",
    },
    Broken {
        name: "a note with steps",
        edits: &[(
            "rules/rose.yaml",
            "  when: \"signs has scorched-petals\"\n",
            "  when: \"signs has scorched-petals\"\n  steps: {en: [\"Wait.\"], es: [\"Espere.\"]}\n",
        )],
        at: "steps: {en: [\"Wait",
        says: "rules/rose.yaml:88:3: error[missing-field]: `steps` means nothing in `rose.scorch-is-heat`: it is a note, not work\n  help: take it out, or write a task",
    },
    Broken {
        name: "a note with a job",
        edits: &[(
            "rules/rose.yaml",
            "  when: \"signs has scorched-petals\"\n",
            "  when: \"signs has scorched-petals\"\n  job: water\n",
        )],
        at: "job: water",
        says: "rules/rose.yaml:88:3: error[missing-field]: the note `rose.scorch-is-heat` has a job\n  help: a note asks for no work: take it out",
    },
    Broken {
        name: "a rule for nobody",
        edits: &[(
            "rules/rose.yaml",
            "- id: rose.soak\n  job: water\n  title: {en: \"Soak the root zone\", es: \"Riegue a fondo\"}\n  for: {plant: rose}",
            "- id: rose.soak\n  job: water\n  title: {en: \"Soak the root zone\", es: \"Riegue a fondo\"}\n  for: {plants: []}",
        )],
        at: "for: {plants: []}",
        says: "rules/rose.yaml:50:3: error[missing-field]: `rose.soak` is for nobody\n  help: name a `plant`, `plants` or a `problem` in `for`",
    },
    Broken {
        name: "a window without sides",
        edits: &[(
            "rules/rose.yaml",
            "window: {opens: growing.start else shortest_day + 8 weeks, closes: first_frost.median - 8 weeks else shortest_day - 8 weeks}",
            "window: {best: growing.start}",
        )],
        at: "growing.start}",
        says: "rules/rose.yaml:31:18: error[missing-field]: a window of `rose.feed` neither opens nor closes\n  help: write `opens`, `closes` or both; without a window the rule is open all year",
    },
    Broken {
        name: "a separation from nothing",
        edits: &[(
            "materials/materials.yaml",
            "keep_apart: [{class: sulphur-spray, days: 14}]",
            "keep_apart: [{class: sulphur-spray, days: 14}, {days: 3}]",
        )],
        at: "days: 3}]",
        says: "materials/materials.yaml:13:51: error[missing-field]: `garden-oil` is kept apart from nothing\n  help: name a `material`, a `class` or a `job`",
    },
    Broken {
        name: "an amount without a number",
        edits: &[("rules/rose.yaml", "      typical: {min: 30, max: 60, unit: g}\n", "")],
        at: "what: {en: \"Feed f",
        says: "rules/rose.yaml:42:7: error[missing-field]: an amount of `rose.feed` says no number\n  help: give `call`, `typical` or both",
    },
    Broken {
        name: "a repeat that says nothing",
        edits: &[("rules/rose.yaml", "repeat: {every: 7..10 days}", "repeat: {}")],
        at: "repeat: {}",
        says: "rules/rose.yaml:68:3: error[missing-field]: `repeat` of `rose.oil-aphids` says nothing\n  help: give `every`, `at_most` or both",
    },
    Broken {
        name: "a task without steps",
        edits: &[(
            "rules/rose.yaml",
            "  steps: {en: [\"Fill the basin slowly.\"], es: [\"Llene la cuenca despacio.\"]}\n",
            "",
        )],
        at: "rose.soak",
        says: "rules/rose.yaml:47:7: error[missing-wording]: `steps` of the rule `rose.soak` says nothing\n  help: write it in every language: en, es",
    },
    Broken {
        name: "a reason that says nothing",
        edits: &[("rules/rose.yaml", "why: {en: \"Oil smothers them.\", es: \"El aceite los asfixia.\"}", "why: {}")],
        at: "why: {}",
        says: "rules/rose.yaml:65:3: error[missing-wording]: `why` of the rule `rose.oil-aphids` says nothing\n  help: write it in every language: en, es",
    },
    Broken {
        name: "a language that the pack has not",
        edits: &[(
            "rules/rose.yaml",
            "why: {en: \"Oil smothers them.\", es:",
            "why: {fr: \"Elle les étouffe.\", en: \"Oil smothers them.\", es:",
        )],
        at: "fr: \"Elle les étou",
        says: "rules/rose.yaml:65:9: error[missing-translation]: `fr` is no language of the pack\n  help: the pack is written in en, es; a further language is declared in `pack.yaml`",
    },
    Broken {
        name: "a step less in one language",
        edits: &[(
            "rules/rose.yaml",
            "es: [\"Saque la madera seca.\", \"Acorte el resto un tercio.\"]",
            "es: [\"Saque la madera seca.\"]",
        )],
        at: "es: [\"Saque la mad",
        says: "rules/rose.yaml:22:72: error[missing-translation]: `steps` of the rule `rose.renewal-cut` has 1 in `es` and 2 in `en`\n  help: each step stands once in every language, in the same order",
    },
    Broken {
        name: "a pack in no language",
        edits: &[("pack.yaml", "languages: [en, es]", "languages: []")],
        at: "languages: []",
        says: "pack.yaml:3:1: error[missing-field]: the pack is written in no language\n  help: such as `languages: [en, es]`",
    },
    Broken {
        name: "a source without its title",
        edits: &[("words/sources.yaml", "title: \"Recalled from handbooks\"", "title: \" \"")],
        at: "recalled, title: \"",
        says: "words/sources.yaml:2:8: error[missing-wording]: `title` of the source `recalled` is empty\n  help: name the work as it names itself, and say how it was read: `common practice` and `from memory` are answers too",
    },
    Broken {
        name: "a brace that is never closed",
        edits: &[("rules/rose.yaml", "en: \"Oil smothers them.\"", "en: \"Oil {smothers them.\"")],
        at: "{smothers them.\", ",
        says: "rules/rose.yaml:65:18: error[unknown-placeholder]: `{` has no partner\n  help: braces hold a fact that the rule reads, such as `{soil.ph}`",
    },
    Broken {
        name: "braces around prose",
        edits: &[("rules/rose.yaml", "en: \"Oil smothers them.\"", "en: \"Oil {smothers them}.\"")],
        at: "{smothers them}.\",",
        says: "rules/rose.yaml:65:18: error[unknown-placeholder]: `{smothers them}` is neither a fact nor a number: `them` does not fit here\n  help: braces hold a fact that the rule reads, such as `{soil.ph}`, or a number such as `{36 °C}`",
    },
    Broken {
        name: "braces in a caution",
        edits: &[
            ("words/cautions.yaml", "\"Wear thick gloves.\"", "\"Wear {2 mm} gloves.\""),
            ("words/cautions.yaml", "\"Use guantes gruesos.\"", "\"Use guantes de {2 mm}.\""),
        ],
        at: "{2 mm} gloves.\", e",
        says: "words/cautions.yaml:2:47: error[unknown-placeholder]: `{2 mm}` stays as it is: only the texts of rules are filled in\n  help: write it out\nwords/cautions.yaml:2:84: error[unknown-placeholder]: `{2 mm}` stays as it is: only the texts of rules are filled in\n  help: write it out",
    },
    Broken {
        name: "braces with a slip",
        edits: &[
            ("rules/rose.yaml", "why: {en: \"About {season.heat_left} of", "why: {en: \"About {season.heat_lft} of"),
            ("rules/rose.yaml", "es: \"Quedan unos {season.heat_left} de", "es: \"Quedan unos {season.heat_lft} de"),
        ],
        at: "{season.heat_lft} ",
        says: "rules/rose.yaml:21:20: error[unknown-placeholder]: the rule `rose.renewal-cut` does not read `season.heat_lft`\n  help: did you mean `season.heat_left`?\nrules/rose.yaml:21:91: error[unknown-placeholder]: the rule `rose.renewal-cut` does not read `season.heat_lft`\n  help: did you mean `season.heat_left`?",
    },
    Broken {
        name: "a number in braces in one language only",
        edits: &[(
            "rules/rose.yaml",
            "Only when no day above {36 °C} is forecast.",
            "Only when no hot day is forecast.",
        )],
        at: "en: \"Only when no ",
        says: "rules/rose.yaml:14:17: error[unknown-placeholder]: `hold.because` quotes `{36 °C}` in `es` and not in `en`\n  help: every language quotes the same facts and numbers",
    },
    Broken {
        name: "a usual range in no unit",
        edits: &[("rules/rose.yaml", "max: 60, unit: g}", "max: 60, unit: gr}")],
        at: "gr}",
        says: "rules/rose.yaml:43:41: error[wrong-unit]: `gr` is no unit\n  help: did you mean `g`?",
    },
    Broken {
        name: "a usual range in another unit than is reckoned",
        edits: &[(
            "rules/rose.yaml",
            "      typical: {min: 30, max: 60, unit: g}\n",
            "      call: product_for_rate\n      with: {nutrient_rate: 10 g/m², area: 2 m², analysis: 10 %}\n      typical: {min: 1, max: 2, unit: L}\n",
        )],
        at: "L}",
        says: "rules/rose.yaml:45:39: error[wrong-unit]: `product_for_rate` is in g, its usual range in L\n  help: give the usual range in a unit of what is reckoned",
    },
    Broken {
        name: "an urgency of 7",
        edits: &[(
            "rules/rose.yaml",
            "urgency: 2, impact: 2}\n  evidence: common",
            "urgency: 7, impact: 2}\n  evidence: common",
        )],
        at: "urgency: 7, impact",
        says: "rules/rose.yaml:18:10: error[number-out-of-range]: `urgency` runs from 0 to 3, found 7",
    },
    Broken {
        name: "a factor beyond reason",
        edits: &[("plants/rose.yaml", "factor: 0.6", "factor: 60")],
        at: "factor: 60, root_d",
        says: "plants/rose.yaml:18:11: error[number-out-of-range]: `water.factor` of `rose` lies between 0 and 2, found 60",
    },
    Broken {
        name: "a maximum in litres on an area",
        edits: &[("materials/materials.yaml", "value: 75 g/m²", "value: 75 L")],
        at: "75 L}]",
        says: "materials/materials.yaml:6:59: error[wrong-unit]: `75 L` is not a mass on an area (g/m²)",
    },
    Broken {
        name: "a root depth in grams",
        edits: &[("plants/rose.yaml", "root_depth: 45 cm", "root_depth: 45 g")],
        at: "45 g, depletion: 0",
        says: "plants/rose.yaml:18:36: error[wrong-unit]: `45 g` is not a length (mm, cm, m, in, ft)",
    },
    Broken {
        name: "a month in Spanish",
        edits: &[("rules/rose.yaml", "es: \"El aceite los asfixia.\"", "es: \"En mayo el aceite los asfixia.\"")],
        at: "mayo el aceite los",
        says: "rules/rose.yaml:65:43: error[month-named]: `why` of the rule `rose.oil-aphids` names a month: `mayo`\n  help: say it by the season: `before the first frost`, `when the heat breaks`",
    },
    Broken {
        name: "a restricted material in a gardener's hands",
        edits: &[(
            "materials/materials.yaml",
            "es: \"Aceite de jardín\"}\n  hazard: label",
            "es: \"Aceite de jardín\"}\n  hazard: restricted",
        )],
        at: "garden-oil]",
        says: "rules/rose.yaml:67:15: error[missing-caution]: `garden-oil` is restricted, and the rule `rose.oil-aphids` does not send to a professional\n  help: say in `professional` why this is work for a licensed one",
    },
    Broken {
        name: "an id twice in two files",
        edits: &[(
            "rules/more.yaml",
            "",
            "- id: rose.soak\n  kind: know\n  title: {en: \"Soak\", es: \"Riegue\"}\n  for: {plant: rose}\n  evidence: consensus\n  strength: do\n  why: {en: \"It drinks.\", es: \"Bebe.\"}\n  sources: [recalled]\n",
        )],
        at: "rose.soak",
        says: "rules/rose.yaml:47:7: error[repeated-id]: the rule `rose.soak` is there twice\n  help: give one of them another id, or put the two together\n  rules/more.yaml:1:7: it stands here first",
    },
    Broken {
        name: "a hold that never holds",
        edits: &[("rules/rose.yaml", "if: \"season.heat_left < 550 °Cd\"", "if: \"season.heat_left < 0 °Cd\"")],
        at: "season.heat_left <",
        says: "rules/rose.yaml:11:12: error[never-holds]: `season.heat_left < 0 °Cd` can never be true\n  help: its value lies between 0 and 15000",
    },
    Broken {
        name: "a condition that excludes what `where` wants",
        edits: &[(
            "rules/rose.yaml",
            "plant.age >= 1 year and signs has spent-blooms",
            "plant.trait(flowering) = once and signs has spent-blooms",
        )],
        at: "plant.trait(flower",
        says: "rules/rose.yaml:9:10: error[never-holds]: `plant.trait(flowering) = once` can't hold together with `flowering = repeat`\n  help: both are needed here: write `or` between them, or mend one of the bounds\n  rules/rose.yaml:4:30: it stands here",
    },
    Broken {
        name: "turns inside the separation",
        edits: &[("rules/rose.yaml", "gap: 14 days", "gap: 13 days")],
        at: "13 days}",
        says: "rules/rose.yaml:81:43: error[separation-cannot-be-met]: `rose.sulphur-mildew` follows `rose.oil-aphids` after 13 days, but is kept 14 days apart from the class `sulphur-spray`\n  help: lengthen `gap`, or choose another partner",
    },
];
