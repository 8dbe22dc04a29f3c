//! Conditions, windows and spans that can't be read, or mean nothing.

use crate::{Broken, walk};

#[test]
fn what_is_wrong_with_an_expression_is_told_at_the_word() {
    walk(BROKEN);
}

const BROKEN: &[Broken] = &[
    Broken {
        name: "a chain of comparisons",
        edits: &[(
            "rules/rose.yaml",
            "when: \"not climate.frost_free or water.interval < 8 days\"",
            "when: \"6 < soil.ph < 7\"",
        )],
        at: "< 7\"",
        says: "rules/rose.yaml:51:22: error[unreadable-expression]: comparisons can't be chained\n  help: join two comparisons with `and`",
    },
    Broken {
        name: "an expression that is empty",
        edits: &[("rules/rose.yaml", "plant.age >= 1 year and signs has spent-blooms", "")],
        at: "\"",
        says: "rules/rose.yaml:9:10: error[unreadable-expression]: the expression is empty",
    },
    Broken {
        name: "two words without a joint",
        edits: &[("rules/rose.yaml", "plant.age >= 1 year and signs has spent-blooms", "signs has spent blooms")],
        at: "blooms\"",
        says: "rules/rose.yaml:9:26: error[unreadable-expression]: `blooms` does not fit here\n  help: join conditions with `and` or `or`; write ids with hyphens",
    },
    Broken {
        name: "a parenthesis left open",
        edits: &[("rules/rose.yaml", "plant.age >= 1 year and signs has spent-blooms", "(plant.age >= 1 year")],
        at: "\"",
        says: "rules/rose.yaml:9:30: error[unreadable-expression]: `)` is missing after the part in parentheses",
    },
    Broken {
        name: "a sign of equality too many",
        edits: &[("rules/rose.yaml", "plant.age >= 1 year and signs has spent-blooms", "soil.ph == 7")],
        at: "== 7\"",
        says: "rules/rose.yaml:9:18: error[unreadable-expression]: `=` stands once\n  help: write `=`",
    },
    Broken {
        name: "a mark that means nothing",
        edits: &[("rules/rose.yaml", "plant.age >= 1 year and signs has spent-blooms", "soil.ph ≥ 7")],
        at: "≥ 7\"",
        says: "rules/rose.yaml:9:18: error[unreadable-expression]: `≥` means nothing in an expression\n  help: write `<=`, `>=`, `!=`",
    },
    Broken {
        name: "is known",
        edits: &[("rules/rose.yaml", "plant.age >= 1 year and signs has spent-blooms", "soil.ph is known")],
        at: "known\"",
        says: "rules/rose.yaml:9:21: error[unreadable-expression]: only `is absent` may follow `is`\n  help: compare with `=`; there is no `is known`: what is not known stays unknown",
    },
    Broken {
        name: "a product of two facts",
        edits: &[("rules/rose.yaml", "plant.age >= 1 year and signs has spent-blooms", "soil.ph * soil.ec > 7")],
        at: "soil.ec > 7\"",
        says: "rules/rose.yaml:9:20: error[unreadable-expression]: only a plain number may follow `*` or `/`\n  help: a product of two facts has no meaning here",
    },
    Broken {
        name: "a division by nothing",
        edits: &[("rules/rose.yaml", "plant.age >= 1 year and signs has spent-blooms", "soil.ph / 0 > 7")],
        at: "0 > 7\"",
        says: "rules/rose.yaml:9:20: error[unreadable-expression]: division by zero",
    },
    Broken {
        name: "signs without has",
        edits: &[("rules/rose.yaml", "plant.age >= 1 year and signs has spent-blooms", "signs spent-blooms")],
        at: "spent-blooms\"",
        says: "rules/rose.yaml:9:16: error[unreadable-expression]: `has` is missing after `signs`\n  help: write `signs has spent-blooms`",
    },
    Broken {
        name: "nested too deep",
        edits: &[(
            "rules/rose.yaml",
            "plant.age >= 1 year and signs has spent-blooms",
            "((((((((((((((((((((((((((((((((((((((((site.mulched))))))))))))))))))))))))))))))))))))))))",
        )],
        at: "(((((((site.mulche",
        says: "rules/rose.yaml:9:43: error[unreadable-expression]: the expression is nested more than 32 deep",
    },
    Broken {
        name: "a fact with a slip",
        edits: &[("rules/rose.yaml", "plant.age >= 1 year and signs has spent-blooms", "plant.agge >= 1 year")],
        at: "plant.agge >= 1 ye",
        says: "rules/rose.yaml:9:10: error[unknown-fact]: there is no fact or marker `plant.agge`\n  help: did you mean `plant.age`?",
    },
    Broken {
        name: "a trait by its short name in a condition",
        edits: &[("rules/rose.yaml", "plant.age >= 1 year and signs has spent-blooms", "flowering = repeat")],
        at: "flowering = repeat",
        says: "rules/rose.yaml:9:10: error[unknown-fact]: there is no fact or marker `flowering`\n  help: outside `where` a trait is written `plant.trait(flowering)`",
    },
    Broken {
        name: "a trait that there is not",
        edits: &[("rules/rose.yaml", "where: \"flowering = repeat\"", "where: \"flowring = repeat\"")],
        at: "flowring = repeat\"",
        says: "rules/rose.yaml:4:30: error[unknown-fact]: `rose` has no trait `flowring`\n  help: did you mean `flowering`?",
    },
    Broken {
        name: "a value of a trait that there is not",
        edits: &[("rules/rose.yaml", "where: \"flowering = repeat\"", "where: \"flowering = twice\"")],
        at: "twice\"}",
        says: "rules/rose.yaml:4:42: error[unknown-name]: `twice` is no value of this trait of `rose`\n  help: there are: once, repeat",
    },
    Broken {
        name: "a fact without its arguments",
        edits: &[("rules/rose.yaml", "plant.age >= 1 year and signs has spent-blooms", "severity = slight")],
        at: "severity = slight\"",
        says: "rules/rose.yaml:9:10: error[unknown-fact]: there is no fact or marker `severity`\n  help: `severity` takes arguments: `severity(ID)`",
    },
    Broken {
        name: "arguments that do not fit",
        edits: &[("rules/rose.yaml", "plant.age >= 1 year and signs has spent-blooms", "mean(tmax) > 30 °C")],
        at: "mean(tmax) > 30 °C",
        says: "rules/rose.yaml:9:10: error[wrong-type]: the arguments of `mean` do not fit\n  help: write `mean(tmin tmax tmean rain et0 rh, N days)`",
    },
    Broken {
        name: "a fact that takes no arguments",
        edits: &[("rules/rose.yaml", "plant.age >= 1 year and signs has spent-blooms", "soil.ph(3) > 7")],
        at: "soil.ph(3) > 7\"",
        says: "rules/rose.yaml:9:10: error[wrong-type]: `soil.ph` takes no arguments",
    },
    Broken {
        name: "a row of days that there is not",
        edits: &[("rules/rose.yaml", "plant.age >= 1 year and signs has spent-blooms", "mean(tmaxx, 7 days) > 30 °C")],
        at: "tmaxx, 7 days) > 3",
        says: "rules/rose.yaml:9:15: error[unknown-fact]: `tmaxx` is no row of days\n  help: did you mean `tmax`?",
    },
    Broken {
        name: "a sum of temperatures",
        edits: &[("rules/rose.yaml", "plant.age >= 1 year and signs has spent-blooms", "sum(tmax, 7 days) > 30 °C")],
        at: "tmax, 7 days) > 30",
        says: "rules/rose.yaml:9:14: error[wrong-type]: a sum of `tmax` has no meaning\n  help: take the `mean`",
    },
    Broken {
        name: "weeks against a temperature",
        edits: &[(
            "rules/rose.yaml",
            "plant.age >= 1 year and signs has spent-blooms",
            "weeks_to(first_frost.median) < 8 °C",
        )],
        at: "weeks_to(first_fro",
        says: "rules/rose.yaml:9:10: error[wrong-unit]: `weeks_to(first_frost.median)` is a duration (h, days, weeks), `8 °C` is a temperature (°C, °F)\n  help: compare `weeks_to(first_frost.median)` with a duration (h, days, weeks)",
    },
    Broken {
        name: "a difference without K",
        edits: &[(
            "rules/rose.yaml",
            "plant.age >= 1 year and signs has spent-blooms",
            "mean(tmax, 7 days) - tmax > 5 °C",
        )],
        at: "mean(tmax, 7 days)",
        says: "rules/rose.yaml:9:10: error[wrong-unit]: `mean(tmax, 7 days) - tmax` is a temperature difference (K), `5 °C` is a temperature (°C, °F)\n  help: a difference of temperatures is in K",
    },
    Broken {
        name: "a unit that there is not",
        edits: &[("rules/rose.yaml", "plant.age >= 1 year and signs has spent-blooms", "tmax > 30 Celsius")],
        at: "30 Celsius\"",
        says: "rules/rose.yaml:9:17: error[wrong-unit]: `Celsius` is no unit\n  help: the units are °C °F K day h week year °Cd °Fd mm cm m in ft m² ft² L gal g kg oz lb % mm/day km/h m/s mph kPa dS/m g/m²",
    },
    Broken {
        name: "a number without its unit",
        edits: &[("rules/rose.yaml", "plant.age >= 1 year and signs has spent-blooms", "tmax > 30")],
        at: "tmax > 30\"",
        says: "rules/rose.yaml:9:10: error[wrong-unit]: `tmax` is a temperature (°C, °F), `30` is a number without a unit\n  help: compare `tmax` with a temperature (°C, °F)",
    },
    Broken {
        name: "years that are no age",
        edits: &[("rules/rose.yaml", "plant.age >= 1 year and signs has spent-blooms", "water.interval > 1 year")],
        at: "water.interval > 1",
        says: "rules/rose.yaml:9:10: error[wrong-unit]: years measure only the age of a plant\n  help: write weeks",
    },
    Broken {
        name: "two temperatures added",
        edits: &[("rules/rose.yaml", "plant.age >= 1 year and signs has spent-blooms", "tmax + tmin > 30 °C")],
        at: "tmax + tmin > 30 °",
        says: "rules/rose.yaml:9:10: error[wrong-unit]: two temperatures can't be added\n  help: add a difference in K",
    },
    Broken {
        name: "a temperature doubled",
        edits: &[("rules/rose.yaml", "plant.age >= 1 year and signs has spent-blooms", "tmax * 2 > 30 °C")],
        at: "tmax * 2 > 30 °C\"",
        says: "rules/rose.yaml:9:10: error[wrong-unit]: a temperature can't be multiplied: 20 °C is not twice 10 °C",
    },
    Broken {
        name: "a part of a day",
        edits: &[("rules/rose.yaml", "plant.age >= 1 year and signs has spent-blooms", "mean(tmax, 1.5 days) > 30 °C")],
        at: "1.5 days) > 30 °C\"",
        says: "rules/rose.yaml:9:21: error[wrong-unit]: a whole number of days from 1 to 400 is needed here",
    },
    Broken {
        name: "choices in an order that they have not",
        edits: &[("rules/rose.yaml", "plant.age >= 1 year and signs has spent-blooms", "soil.texture < clay")],
        at: "soil.texture < cla",
        says: "rules/rose.yaml:9:10: error[wrong-type]: the choices of `soil.texture` have no order\n  help: compare them with `=`, `!=` or `in {…}`",
    },
    Broken {
        name: "a choice that there is not",
        edits: &[("rules/rose.yaml", "plant.age >= 1 year and signs has spent-blooms", "soil.moisture = damp")],
        at: "damp\"",
        says: "rules/rose.yaml:9:26: error[unknown-name]: `damp` is no soil moisture of `rose`\n  help: there are: dry, moist, wet",
    },
    Broken {
        name: "yes or no compared",
        edits: &[("rules/rose.yaml", "plant.age >= 1 year and signs has spent-blooms", "site.mulched = yes")],
        at: "site.mulched = yes",
        says: "rules/rose.yaml:9:10: error[wrong-type]: `site.mulched` is yes or no\n  help: write `site.mulched` or `not site.mulched`",
    },
    Broken {
        name: "a set that no condition reads",
        edits: &[(
            "rules/rose.yaml",
            "plant.age >= 1 year and signs has spent-blooms",
            "water.restricted_days = monday",
        )],
        at: "water.restricted_d",
        says: "rules/rose.yaml:9:10: error[wrong-type]: `water.restricted_days` is a set of weekdays, which no condition can read",
    },
    Broken {
        name: "a number out of its range",
        edits: &[("rules/rose.yaml", "plant.age >= 1 year and signs has spent-blooms", "soil.ph > 72")],
        at: "72\"",
        says: "rules/rose.yaml:9:20: error[number-out-of-range]: `soil.ph` is never 72: it lies between 2 and 12",
    },
    Broken {
        name: "a cut-off below its base",
        edits: &[(
            "rules/rose.yaml",
            "plant.age >= 1 year and signs has spent-blooms",
            "heat_sum(30 °C, 10 °C, from growing.start) > 5 °Cd",
        )],
        at: "10 °C, from growin",
        says: "rules/rose.yaml:9:26: error[range-reversed]: the upper cut-off must lie above the base",
    },
    Broken {
        name: "a sign that there is not",
        edits: &[("rules/rose.yaml", "plant.age >= 1 year and signs has spent-blooms", "signs has spent-bloms")],
        at: "spent-bloms\"",
        says: "rules/rose.yaml:9:20: error[unknown-name]: there is no sign `spent-bloms`\n  help: did you mean `spent-blooms`?",
    },
    Broken {
        name: "a stage that the plant has not",
        edits: &[("rules/rose.yaml", "plant.age >= 1 year and signs has spent-blooms", "plant.stage = late-flush")],
        at: "late-flush\"",
        says: "rules/rose.yaml:9:24: error[unknown-name]: `late-flush` is no stage of `rose`\n  help: there are: dormant, leaf-out, bloom",
    },
    Broken {
        name: "a work that there is not",
        edits: &[(
            "rules/rose.yaml",
            "plant.age >= 1 year and signs has spent-blooms",
            "not done(feeed, within 28 days)",
        )],
        at: "feeed, within 28 d",
        says: "rules/rose.yaml:9:19: error[unknown-name]: there is no job, material or class `feeed`\n  help: did you mean `feed`?",
    },
    Broken {
        name: "a marker with a slip",
        edits: &[(
            "rules/rose.yaml",
            "closes: first_frost.median - 8 weeks\n",
            "closes: first_frost.medium - 8 weeks\n",
        )],
        at: "first_frost.medium",
        says: "rules/rose.yaml:8:13: error[unknown-marker]: there is no marker `first_frost.medium`\n  help: did you mean `first_frost.median`?",
    },
    Broken {
        name: "an offset in hours",
        edits: &[("rules/rose.yaml", "closes: first_frost.median - 8 weeks\n", "closes: first_frost.median - 8 h\n")],
        at: "8 h",
        says: "rules/rose.yaml:8:34: error[wrong-unit]: `-8 h` is not a number of days or weeks",
    },
    Broken {
        name: "an offset without its unit",
        edits: &[("rules/rose.yaml", "closes: first_frost.median - 8 weeks\n", "closes: first_frost.median - 8\n")],
        at: "8",
        says: "rules/rose.yaml:8:34: error[wrong-unit]: `-8` is not a number of days or weeks",
    },
    Broken {
        name: "a side that is a fact",
        edits: &[("rules/rose.yaml", "closes: first_frost.median - 8 weeks\n", "closes: season.heat_left - 8 weeks\n")],
        at: "season.heat_left -",
        says: "rules/rose.yaml:8:13: error[unknown-marker]: there is no marker `season.heat_left`\n  help: `season.heat_left` is a fact: it has a value on each day, and no day of its own",
    },
    Broken {
        name: "chill without its hours",
        edits: &[(
            "plants/rose.yaml",
            "begins: \"heat_reached(180 °Cd, 5 °C, from coldest_week)\"",
            "begins: \"chill_reached(800 °Cd)\"",
        )],
        at: "800 °Cd)",
        says: "plants/rose.yaml:15:48: error[wrong-unit]: a number in h is needed here",
    },
    Broken {
        name: "more chill than a year has hours",
        edits: &[(
            "plants/rose.yaml",
            "begins: \"heat_reached(180 °Cd, 5 °C, from coldest_week)\"",
            "begins: \"chill_reached(9000 h)\"",
        )],
        at: "9000 h)",
        says: "plants/rose.yaml:15:48: error[number-out-of-range]: `9000 h` is no whole number of hours from 1 to 8784",
    },
    Broken {
        name: "a heat sum from nowhere",
        edits: &[(
            "plants/rose.yaml",
            "begins: \"heat_reached(180 °Cd, 5 °C, from coldest_week)\"",
            "begins: \"heat_reached(180 °Cd, 5 °C)\"",
        )],
        at: "heat_reached(180 °",
        says: "plants/rose.yaml:15:34: error[wrong-type]: the arguments do not fit\n  help: write it like `heat_reached(120 °Cd, 5 °C, from coldest_week)`",
    },
    Broken {
        name: "an expectation in grams",
        edits: &[("rules/rose.yaml", "after: 7..14 days", "after: 7..14 g")],
        at: "7..14 g}, {what: b",
        says: "rules/rose.yaml:23:38: error[wrong-unit]: `7..14 g` is neither days nor a heat sum\n  help: such as `7..14 days` or `550 °Cd`",
    },
    Broken {
        name: "a range that runs backwards",
        edits: &[("rules/rose.yaml", "after: 7..14 days", "after: 14..7 days")],
        at: "14..7 days}, {what",
        says: "rules/rose.yaml:23:38: error[unreadable-expression]: the range runs from the smaller to the larger number",
    },
    Broken {
        name: "a repeat in months",
        edits: &[("rules/rose.yaml", "every: 7..10 days", "every: 1..2 months")],
        at: "1..2 months}",
        says: "rules/rose.yaml:68:19: error[wrong-unit]: `1 months` is not a number of days or weeks",
    },
    Broken {
        name: "a condition folded over two lines",
        edits: &[(
            "rules/rose.yaml",
            "when: \"plant.age >= 1 year and signs has spent-blooms\"",
            "when: >\n    plant.age >= 1 year and\n    signs has spent-bloms",
        )],
        at: "plant.age >= 1 yea",
        says: "rules/rose.yaml:10:5: error[expression-over-lines]: an expression goes on over several lines, or is written with escapes\n  help: write it on one line in double quotes, as it is\nrules/rose.yaml:10:5: error[unknown-name]: there is no sign `spent-bloms`\n  help: did you mean `spent-blooms`?",
    },
    Broken {
        name: "a condition in single quotes",
        edits: &[(
            "rules/rose.yaml",
            "when: \"plant.age >= 1 year and signs has spent-blooms\"",
            "when: 'soil.ph > 72'",
        )],
        at: "72'",
        says: "rules/rose.yaml:9:20: error[number-out-of-range]: `soil.ph` is never 72: it lies between 2 and 12",
    },
    Broken {
        name: "a condition without quotes",
        edits: &[("rules/rose.yaml", "when: \"plant.age >= 1 year and signs has spent-blooms\"", "when: soil.ph > 72")],
        at: "72",
        says: "rules/rose.yaml:9:19: error[number-out-of-range]: `soil.ph` is never 72: it lies between 2 and 12",
    },
];
