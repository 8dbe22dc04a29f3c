//! Files that are no YAML, or not of the shape that their folder wants.

use crate::{Broken, walk};

#[test]
fn what_has_not_the_shape_of_its_kind_is_told_with_its_field() {
    walk(BROKEN);
}

const BROKEN: &[Broken] = &[
    Broken {
        name: "an id that is a list",
        edits: &[("words/jobs.yaml", "- {id: feed,", "- {id: [feed],")],
        at: "[feed], name: {en:",
        says: "words/jobs.yaml:2:8: error[wrong-shape]: `id` is one value, not a list and not a group of fields",
    },
    Broken {
        name: "a field that stands there twice",
        edits: &[("words/jobs.yaml", "- {id: feed,", "- {id: feed, id: food,")],
        at: "id: food, name: {e",
        says: "words/jobs.yaml:2:14: error[wrong-shape]: the field `id` stands there twice\n  help: take one of them out",
    },
    Broken {
        name: "an entry that is a word",
        edits: &[("words/jobs.yaml", "- {id: feed, name: {en: \"Feed\", es: \"Abonar\"}}", "- feed")],
        at: "feed",
        says: "words/jobs.yaml:2:3: error[wrong-shape]: the entry has fields of its own, found `feed`\n  help: write its fields in braces, `{…}`, or a line each, deeper than it",
    },
    Broken {
        name: "a text without its languages",
        edits: &[("words/jobs.yaml", "- {id: feed, name: {en: \"Feed\", es: \"Abonar\"}}", "- {id: feed, name: Feed}")],
        at: "Feed}",
        says: "words/jobs.yaml:2:20: error[wrong-shape]: `name` has fields of its own, found `Feed`\n  help: a text is written per language: `{en: \"…\", es: \"…\"}`",
    },
    Broken {
        name: "an entry without its name",
        edits: &[("words/jobs.yaml", "- {id: feed, name: {en: \"Feed\", es: \"Abonar\"}}", "- {id: feed}")],
        at: "id: feed}",
        says: "words/jobs.yaml:2:4: error[wrong-shape]: the field `name` is missing here",
    },
    Broken {
        name: "a text that is a list",
        edits: &[("words/jobs.yaml", "{en: \"Feed\", es: \"Abonar\"}", "{en: [Feed]}")],
        at: "[Feed]}}",
        says: "words/jobs.yaml:2:25: error[wrong-shape]: `en` is one value, not a list and not a group of fields",
    },
    Broken {
        name: "a grade in words",
        edits: &[(
            "rules/rose.yaml",
            "urgency: 2, impact: 2}\n  evidence: common",
            "urgency: high, impact: 2}\n  evidence: common",
        )],
        at: "high, impact: 2}",
        says: "rules/rose.yaml:18:19: error[wrong-shape]: `urgency` is a whole number from 0 to 3, found `high`",
    },
    Broken {
        name: "a grade below nothing",
        edits: &[(
            "rules/rose.yaml",
            "urgency: 2, impact: 2}\n  evidence: common",
            "urgency: -1, impact: 2}\n  evidence: common",
        )],
        at: "-1, impact: 2}",
        says: "rules/rose.yaml:18:19: error[wrong-shape]: `urgency` is a whole number from 0 to 3, found `-1`",
    },
    Broken {
        name: "a rank without its impact",
        edits: &[("rules/rose.yaml", "urgency: 2, impact: 2}\n  evidence: common", "urgency: 2}\n  evidence: common")],
        at: "urgency: 2}",
        says: "rules/rose.yaml:18:10: error[wrong-shape]: the field `impact` is missing here",
    },
    Broken {
        name: "an evidence that there is not",
        edits: &[("rules/rose.yaml", "evidence: common-practice", "evidence: commonpractice")],
        at: "commonpractice",
        says: "rules/rose.yaml:19:13: error[wrong-shape]: `evidence` can't be `commonpractice`\n  help: did you mean `common-practice`?",
    },
    Broken {
        name: "a kind that there is not",
        edits: &[("rules/rose.yaml", "kind: know", "kind: note")],
        at: "note",
        says: "rules/rose.yaml:84:9: error[wrong-shape]: `kind` can't be `note`\n  help: it is one of task, avoid, know",
    },
    Broken {
        name: "expectations that are no list",
        edits: &[(
            "rules/rose.yaml",
            "expect: [{what: new-shoots, after: 7..14 days}, {what: bloom, after: 550 °Cd}]",
            "expect: {what: new-shoots, after: 7..14 days}",
        )],
        at: "{what: new-shoots,",
        says: "rules/rose.yaml:23:11: error[wrong-shape]: `expect` is a list, found a group of fields\n  help: write it in brackets: `[…]`",
    },
    Broken {
        name: "a rule for a word",
        edits: &[("rules/rose.yaml", "for: {plant: rose, problem: rose-aphids}", "for: rose")],
        at: "rose",
        says: "rules/rose.yaml:61:8: error[wrong-shape]: `for` has fields of its own, found `rose`\n  help: write its fields in braces, `{…}`, or a line each, deeper than it",
    },
    Broken {
        name: "plants that are no list",
        edits: &[("rules/guards.yaml", "for: {plants: all}", "for: {plants: rose}")],
        at: "rose}",
        says: "rules/guards.yaml:4:17: error[wrong-shape]: expected `all` or a list of ids, found `rose`\n  help: write `[rose]`",
    },
    Broken {
        name: "plants that are a number",
        edits: &[("rules/guards.yaml", "for: {plants: all}", "for: {plants: 3}")],
        at: "plants: 3}",
        says: "rules/guards.yaml:4:9: error[wrong-shape]: expected `all` or a list of ids, found `3`",
    },
    Broken {
        name: "an order without its days",
        edits: &[("rules/rose.yaml", "before: [rose.feed]", "before: [{rule: rose.feed}]")],
        at: "rule: rose.feed}]",
        says: "rules/rose.yaml:24:13: error[wrong-shape]: the field `days` is missing here",
    },
    Broken {
        name: "an order that is no list",
        edits: &[("rules/rose.yaml", "before: [rose.feed]", "before: rose.feed")],
        at: "rose.feed",
        says: "rules/rose.yaml:24:11: error[wrong-shape]: `before` is a list, found `rose.feed`\n  help: write it in brackets: `[…]`",
    },
    Broken {
        name: "days in words",
        edits: &[("rules/rose.yaml", "before: [rose.feed]", "before: [{rule: rose.feed, days: two}]")],
        at: "two}]",
        says: "rules/rose.yaml:24:36: error[wrong-shape]: `days` is a whole number from 0 to 65535, found `two`",
    },
    Broken {
        name: "an order that is a number",
        edits: &[("rules/rose.yaml", "before: [rose.feed]", "before: [3]")],
        at: "3]",
        says: "rules/rose.yaml:24:12: error[wrong-shape]: expected a rule's id, or `{rule: id, days: 14}`, found `3`",
    },
    Broken {
        name: "a number in words",
        edits: &[("rules/rose.yaml", "typical: {min: 30,", "typical: {min: thirty,")],
        at: "thirty, max: 60, u",
        says: "rules/rose.yaml:43:22: error[wrong-shape]: `min` is a number, found `thirty`",
    },
    Broken {
        name: "a condition that is a list",
        edits: &[("rules/rose.yaml", "when: \"plant.age >= 1 year and signs has spent-blooms\"", "when: [a]")],
        at: "[a]",
        says: "rules/rose.yaml:9:9: error[wrong-shape]: `when` is one value, not a list and not a group of fields",
    },
    Broken {
        name: "a side that there is not",
        edits: &[("rules/rose.yaml", "window: {opens: growing.start", "window: {open: growing.start")],
        at: "open: growing.star",
        says: "rules/rose.yaml:31:12: error[wrong-shape]: there is no field `open` here\n  help: did you mean `opens`?",
    },
    Broken {
        name: "a hold with a slip in its field",
        edits: &[(
            "rules/rose.yaml",
            "  hold:\n    - if: \"soil.moisture = dry\"",
            "  holds:\n    - if: \"soil.moisture = dry\"",
        )],
        at: "holds:",
        says: "rules/rose.yaml:32:3: error[wrong-shape]: there is no field `holds` here\n  help: did you mean `hold`?",
    },
    Broken {
        name: "yes or no in other words",
        edits: &[("plants/rose.yaml", "scientific: [\"Rosa\"]}", "scientific: [\"Rosa\"]}\n  food_use: maybe")],
        at: "maybe",
        says: "plants/rose.yaml:4:13: error[wrong-shape]: `food_use` is yes or no, found `maybe`",
    },
    Broken {
        name: "languages that are no list",
        edits: &[("pack.yaml", "languages: [en, es]", "languages: en")],
        at: "en",
        says: "pack.yaml:3:12: error[wrong-shape]: `languages` is a list, found `en`\n  help: write it in brackets: `[…]`",
    },
    Broken {
        name: "a pack without its name",
        edits: &[("pack.yaml", "name: mini\n", "")],
        at: "title: {en: \"A sma",
        says: "pack.yaml:3:1: error[wrong-shape]: the field `name` is missing here",
    },
    Broken {
        name: "a place on the plant that there is not",
        edits: &[("words/signs.yaml", "where: shoot-tip", "where: shoot")],
        at: "shoot",
        says: "words/signs.yaml:8:10: error[wrong-shape]: `where` can't be `shoot`\n  help: it is one of shoot-tip, leaf-upper, leaf-under, bud, flower, fruit, stem, crown, root, soil, whole-plant",
    },
    Broken {
        name: "a date that there is not",
        edits: &[(
            "words/sources.yaml",
            "how_read: \"from memory\"",
            "how_read: \"from memory\", review_by: 2027-13-01",
        )],
        at: "2027-13-01}",
        says: "words/sources.yaml:2:88: error[wrong-shape]: `review_by` is a date such as `2026-09-15`, found `2027-13-01`",
    },
    Broken {
        name: "a year beyond counting",
        edits: &[("words/sources.yaml", "how_read: \"from memory\"", "how_read: \"from memory\", year: 99999")],
        at: "99999}",
        says: "words/sources.yaml:2:83: error[wrong-shape]: `year` is a whole number from 0 to 65535, found `99999`",
    },
    Broken {
        name: "signs that are no group",
        edits: &[("problems/rose.yaml", "signs: {always: [aphids]}", "signs: [aphids]")],
        at: "[aphids]",
        says: "problems/rose.yaml:6:10: error[wrong-shape]: `signs` has fields of its own, found a list\n  help: write its fields in braces, `{…}`, or a line each, deeper than it",
    },
    Broken {
        name: "a maximum on something else",
        edits: &[(
            "materials/materials.yaml",
            "maximum: [{per: plant, value: 60 g}",
            "maximum: [{per: tree, value: 60 g}",
        )],
        at: "tree, value: 60 g}",
        says: "materials/materials.yaml:6:19: error[wrong-shape]: `per` can't be `tree`\n  help: it is one of area, plant, litre",
    },
    Broken {
        name: "a separation without its days",
        edits: &[("materials/materials.yaml", "[{class: sulphur-spray, days: 14}]", "[{class: sulphur-spray}]")],
        at: "class: sulphur-spr",
        says: "materials/materials.yaml:13:17: error[wrong-shape]: the field `days` is missing here",
    },
    Broken {
        name: "days with a unit where none is wanted",
        edits: &[(
            "materials/materials.yaml",
            "[{class: sulphur-spray, days: 14}]",
            "[{class: sulphur-spray, days: 14 days}]",
        )],
        at: "14 days}]",
        says: "materials/materials.yaml:13:45: error[wrong-shape]: `days` is a whole number from 0 to 65535, found `14 days`",
    },
    Broken {
        name: "a latitude in words",
        edits: &[("climates/valley.yaml", "latitude: 34.2", "latitude: north")],
        at: "north, elevation_m",
        says: "climates/valley.yaml:4:23: error[wrong-shape]: `latitude` is a number, found `north`",
    },
    Broken {
        name: "a climate with a slip in its field",
        edits: &[("climates/valley.yaml", "elevation_m", "elevation")],
        at: "elevation: 230, no",
        says: "climates/valley.yaml:4:29: error[wrong-shape]: there is no field `elevation` here\n  help: did you mean `elevation_m`?",
    },
    Broken {
        name: "a day that there is not",
        edits: &[("scenarios/rose/late-summer.yaml", "date: 2026-09-15", "date: 2026-09-31")],
        at: "2026-09-31",
        says: "scenarios/rose/late-summer.yaml:4:9: error[wrong-shape]: `date` is a date such as `2026-09-15`, found `2026-09-31`",
    },
    Broken {
        name: "a tab",
        edits: &[("scenarios/rose/late-summer.yaml", "  status: advised", "  status: advised\n	advised: x")],
        at: "advised",
        says: "scenarios/rose/late-summer.yaml:8:11: error[not-yaml]: while scanning a plain scalar, found a tab\n  help: the slip is here or close by: look for a quote or bracket left open, or a tab at the beginning of a line",
    },
    Broken {
        name: "a dash without its space",
        edits: &[("words/outlooks.yaml", "- {id: new-shoots", "-{id: new-shoots")],
        at: "-{id: new-shoots, ",
        says: "words/outlooks.yaml:1:1: error[wrong-shape]: this file is a list of entries\n  help: each entry begins with `- ` at the beginning of a line",
    },
    Broken {
        name: "a brace that is left open",
        edits: &[(
            "words/outlooks.yaml",
            "- {id: new-shoots, name: {en: \"New shoots\", es: \"Brotes nuevos\"}}",
            "- {id: new-shoots, name: {en: \"New shoots\", es: \"Brotes nuevos\"}",
        )],
        at: "- {id: bloom, name",
        says: "words/outlooks.yaml:2:1: error[not-yaml]: \"-\" is only valid inside a block\n  help: the slip is here or close by: look for a quote or bracket left open, or a tab at the beginning of a line",
    },
    Broken {
        name: "an escape that there is not",
        edits: &[("words/outlooks.yaml", "{en: \"New shoots\"", "{en: \"New \\q shoots\"")],
        at: "\"New \\q shoots\", e",
        says: "words/outlooks.yaml:1:31: error[not-yaml]: while parsing a quoted scalar, found unknown escape character\n  help: the slip is here or close by: look for a quote or bracket left open, or a tab at the beginning of a line",
    },
    Broken {
        name: "an alias of nothing",
        edits: &[("words/outlooks.yaml", "{en: \"New shoots\"", "{en: *shoots")],
        at: "*shoots, es: \"Brot",
        says: "words/outlooks.yaml:1:31: error[not-yaml]: alias references unknown anchor\n  help: the slip is here or close by: look for a quote or bracket left open, or a tab at the beginning of a line",
    },
    Broken {
        name: "two documents in a file",
        edits: &[("words/outlooks.yaml", "", "---\n- x\n")],
        at: "- x",
        says: "words/outlooks.yaml:4:1: error[not-yaml]: the file holds several documents: `---` may stand only at its top\n  help: the slip is here or close by: look for a quote or bracket left open, or a tab at the beginning of a line",
    },
    Broken {
        name: "a file that means nothing",
        edits: &[("words/tools.yaml", "", "- {id: hoe}\n")],
        at: "",
        says: "words/tools.yaml: error[wrong-shape]: the folder of this file means nothing in a pack\n  help: the folders are words, materials, problems, plants, rules, climates, scenarios",
    },
    Broken {
        name: "a folder that means nothing",
        edits: &[("notes/x.yaml", "", "- x\n")],
        at: "",
        says: "notes/x.yaml: error[wrong-shape]: the folder of this file means nothing in a pack\n  help: the folders are words, materials, problems, plants, rules, climates, scenarios",
    },
    Broken {
        name: "a file that is a word",
        edits: &[("rules/str.yaml", "", "hello\n")],
        at: "hello",
        says: "rules/str.yaml:1:1: error[wrong-shape]: this file is a list of entries\n  help: each entry begins with `- ` at the beginning of a line",
    },
    Broken {
        name: "a file that is one entry",
        edits: &[("rules/map.yaml", "", "id: x\n")],
        at: "id: x",
        says: "rules/map.yaml:1:1: error[wrong-shape]: this file is a list of entries\n  help: each entry begins with `- ` at the beginning of a line",
    },
];
