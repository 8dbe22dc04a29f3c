//! Names that stand in no vocabulary, and quantities that are called wrongly.

use crate::{Broken, walk};

#[test]
fn what_is_named_and_not_there_is_told_with_the_nearest_that_is() {
    walk(BROKEN);
}

const BROKEN: &[Broken] = &[
    Broken {
        name: "a plant that there is not",
        edits: &[("rules/rose.yaml", "for: {plant: rose, where", "for: {plant: rosse, where")],
        at: "rosse, where: \"flo",
        says: "rules/rose.yaml:4:16: error[unknown-name]: there is no plant `rosse`\n  help: did you mean `rose`?",
    },
    Broken {
        name: "a plant among several that there is not",
        edits: &[("rules/guards.yaml", "for: {plants: [rose]}", "for: {plants: [rose, tulip]}")],
        at: "tulip]}",
        says: "rules/guards.yaml:14:24: error[unknown-name]: there is no plant `tulip`\n  help: there are: rose",
    },
    Broken {
        name: "a job that there is not",
        edits: &[("rules/rose.yaml", "job: prune", "job: prunne")],
        at: "prunne",
        says: "rules/rose.yaml:2:8: error[unknown-name]: there is no job `prunne`\n  help: did you mean `prune`?",
    },
    Broken {
        name: "a material that there is not",
        edits: &[("rules/rose.yaml", "materials: [granular-feed]", "materials: [granular-fed]")],
        at: "granular-fed]",
        says: "rules/rose.yaml:40:15: error[unknown-name]: there is no material `granular-fed`\n  help: did you mean `granular-feed`?",
    },
    Broken {
        name: "a problem that there is not",
        edits: &[("rules/rose.yaml", "problem: rose-mildew}", "problem: rose-mildw}")],
        at: "rose-mildw}",
        says: "rules/rose.yaml:73:31: error[unknown-name]: there is no problem `rose-mildw`\n  help: did you mean `rose-mildew`?",
    },
    Broken {
        name: "a caution that there is not",
        edits: &[(
            "rules/rose.yaml",
            "cautions: [clean-blades, thorns]",
            "cautions: [clean-blades, thorns, pets-away]",
        )],
        at: "pets-away]",
        says: "rules/rose.yaml:25:36: error[unknown-name]: there is no caution `pets-away`\n  help: there are: clean-blades, thorns, label-rules, spray-clothing, bees-dusk, salts-burn",
    },
    Broken {
        name: "a source that there is not",
        edits: &[(
            "materials/materials.yaml",
            "cautions: [salts-burn]\n  sources: [common-practice]",
            "cautions: [salts-burn]\n  sources: [commonpractice]",
        )],
        at: "commonpractice]",
        says: "materials/materials.yaml:8:13: error[unknown-name]: there is no source `commonpractice`\n  help: did you mean `common-practice`?",
    },
    Broken {
        name: "a class that there is not",
        edits: &[("materials/materials.yaml", "classes: [nitrogen]", "classes: [nitrogn]")],
        at: "nitrogn]",
        says: "materials/materials.yaml:2:13: error[unknown-name]: there is no class `nitrogn`\n  help: did you mean `nitrogen`?",
    },
    Broken {
        name: "an outlook that there is not",
        edits: &[("rules/rose.yaml", "what: new-shoots", "what: new-shots")],
        at: "new-shots, after: ",
        says: "rules/rose.yaml:23:19: error[unknown-name]: there is no outlook `new-shots`\n  help: did you mean `new-shoots`?",
    },
    Broken {
        name: "a stage that there is not",
        edits: &[(
            "plants/rose.yaml",
            "stages: [dormant, leaf-out, bloom]",
            "stages: [dormant, leaf-out, bloom, leaf-fal]",
        )],
        at: "leaf-fal]",
        says: "plants/rose.yaml:11:38: error[unknown-name]: there is no stage `leaf-fal`\n  help: there are: dormant, leaf-out, bloom",
    },
    Broken {
        name: "leaf in a stage that the plant has not",
        edits: &[("plants/rose.yaml", "in_leaf: [leaf-out, bloom]", "in_leaf: [leaf-out, blom]")],
        at: "blom]",
        says: "plants/rose.yaml:12:23: error[unknown-name]: there is no stage of this plant `blom`\n  help: did you mean `bloom`?",
    },
    Broken {
        name: "a usual value that there is not",
        edits: &[("plants/rose.yaml", "usual: repeat", "usual: often")],
        at: "often",
        says: "plants/rose.yaml:9:14: error[unknown-name]: there is no value of this trait `often`\n  help: there are: once, repeat",
    },
    Broken {
        name: "a rule to come before that there is not",
        edits: &[("rules/rose.yaml", "before: [rose.feed]", "before: [rose.fed]")],
        at: "rose.fed]",
        says: "rules/rose.yaml:24:12: error[unknown-name]: there is no rule `rose.fed`\n  help: did you mean `rose.feed`?",
    },
    Broken {
        name: "a rule to take turns with that there is not",
        edits: &[("rules/rose.yaml", "with: rose.oil-aphids", "with: rose.oil-aphid")],
        at: "rose.oil-aphid, ga",
        says: "rules/rose.yaml:81:21: error[unknown-name]: there is no rule `rose.oil-aphid`\n  help: did you mean `rose.oil-aphids`?",
    },
    Broken {
        name: "a guard over what there is not",
        edits: &[("rules/guards.yaml", "blocks: {classes: [oil, ", "blocks: {classes: [oyl, ")],
        at: "oyl, sulphur-spray",
        says: "rules/guards.yaml:6:22: error[unknown-name]: there is no class `oyl`\n  help: did you mean `oil`?",
    },
    Broken {
        name: "a sign of a problem that there is not",
        edits: &[("problems/rose.yaml", "never: [aphids]", "never: [aphid]")],
        at: "aphid]}",
        says: "problems/rose.yaml:16:43: error[unknown-name]: there is no sign `aphid`\n  help: did you mean `aphids`?",
    },
    Broken {
        name: "a scenario that expects a band that there is not",
        edits: &[("scenarios/rose/late-summer.yaml", "check_first: \"36\"", "check_first: \"36\", band: today")],
        at: "rose.renewal-cut, ",
        says: "scenarios/rose/late-summer.yaml:9:20: error[unknown-name]: there is no band `today`\n  help: there are: now, this-week, this-month, later",
    },
    Broken {
        name: "a scenario that expects a status that there is not",
        edits: &[("scenarios/rose/late-summer.yaml", "status: advised", "status: advise")],
        at: "\"Late summer in th",
        says: "scenarios/rose/late-summer.yaml:1:7: error[unknown-name]: there is no status `advise`\n  help: did you mean `advised`?",
    },
    Broken {
        name: "a scenario that quotes a sign that there is not",
        edits: &[("scenarios/rose/late-summer.yaml", "because: [spent-blooms]", "because: [spent-bloms]")],
        at: "rose.renewal-cut, ",
        says: "scenarios/rose/late-summer.yaml:9:20: error[unknown-name]: there is no fact or sign `spent-bloms`\n  help: did you mean `spent-blooms`?",
    },
    Broken {
        name: "a scenario that holds by a kind that there is not",
        edits: &[("scenarios/rose/late-summer.yaml", "absent:", "held: [{rule: rose.feed, kind: gard}]\n  absent:")],
        at: "rose.feed, kind: g",
        says: "scenarios/rose/late-summer.yaml:10:17: error[unknown-name]: there is no kind of hold `gard`\n  help: did you mean `guard`?",
    },
    Broken {
        name: "an input that the quantity has not",
        edits: &[(
            "rules/rose.yaml",
            "      typical: {min: 30, max: 60, unit: g}\n",
            "      call: product_for_rate\n      with: {nutrient_rate: 10 g/m², area: 2 m², analyses: 10 %}\n",
        )],
        at: "10 %}",
        says: "rules/rose.yaml:44:60: error[unknown-quantity]: `product_for_rate` has no input `analyses`\n  help: did you mean `analysis`?",
    },
    Broken {
        name: "an input that is missing",
        edits: &[(
            "rules/rose.yaml",
            "      typical: {min: 30, max: 60, unit: g}\n",
            "      call: product_for_rate\n      with: {nutrient_rate: 10 g/m², area: 2 m²}\n",
        )],
        at: "product_for_rate",
        says: "rules/rose.yaml:43:13: error[unknown-quantity]: `product_for_rate` needs the input `analysis`",
    },
    Broken {
        name: "an input in another unit",
        edits: &[(
            "rules/rose.yaml",
            "      typical: {min: 30, max: 60, unit: g}\n",
            "      call: product_for_rate\n      with: {nutrient_rate: 10 g/m², area: 2 m, analysis: 10 %}\n",
        )],
        at: "2 m, analysis: 10 ",
        says: "rules/rose.yaml:44:44: error[wrong-unit]: `area` is in m2: `m` cannot be turned into `m2`: they measure different things",
    },
    Broken {
        name: "an input that is yes or no",
        edits: &[(
            "rules/rose.yaml",
            "      typical: {min: 30, max: 60, unit: g}\n",
            "      call: product_for_rate\n      with: {nutrient_rate: 10 g/m², area: site.mulched, analysis: 10 %}\n",
        )],
        at: "site.mulched, anal",
        says: "rules/rose.yaml:44:44: error[wrong-type]: `area` is a number of 0 to 1000000 m2, found yes or no",
    },
];
