//! What one set may say of those below it: the mini pack with a set `house` over it.

use super::cases::Case;

pub(super) const CASES: [Case; 7] = [
    Case {
        code: "exists-below",
        trips: &[(
            "house/rules/rose.yaml",
            "",
            "- id: rose.scorch-is-heat\n  kind: know\n  title: {en: \"Faded flowers\", es: \"Flores marchitas\"}\n  for: {plant: rose}\n  when: \"signs has spent-blooms\"\n  evidence: consensus\n  strength: do\n  why: {en: \"They feed nobody.\", es: \"No alimentan a nadie.\"}\n  sources: [common-practice]\n",
        )],
        also: &[],
        at: "rose.scorch-is-heat",
        says: "house/rules/rose.yaml:1:7: error[exists-below]: a set below has the rule `rose.scorch-is-heat` already\n  help: give it another id, or write `replace` for `id` to put it in the place of that one\n  mini/rules/rose.yaml:83:7: it stands here below",
        just_not: &[(
            "house/rules/rose.yaml",
            "",
            "- id: rose.faded-flowers\n  kind: know\n  title: {en: \"Faded flowers\", es: \"Flores marchitas\"}\n  for: {plant: rose}\n  when: \"signs has spent-blooms\"\n  evidence: consensus\n  strength: do\n  why: {en: \"They feed nobody.\", es: \"No alimentan a nadie.\"}\n  sources: [common-practice]\n",
        )],
    },
    Case {
        code: "nothing-below",
        trips: &[(
            "house/rules/rose.yaml",
            "",
            "- withhold: rose.renewal-ct\n  because: {en: \"The house does it in another way.\", es: \"La casa lo hace de otra manera.\"}\n",
        )],
        also: &[],
        at: "rose.renewal-ct",
        says: "house/rules/rose.yaml:1:13: error[nothing-below]: no set below has a rule `rose.renewal-ct`\n  help: did you mean `rose.renewal-cut`?",
        just_not: &[(
            "house/rules/rose.yaml",
            "",
            "- withhold: rose.renewal-cut\n  because: {en: \"The house does it in another way.\", es: \"La casa lo hace de otra manera.\"}\n",
        )],
    },
    Case {
        code: "stale-expects",
        trips: &[(
            "house/rules/rose.yaml",
            "",
            "- reword: rose.feed\n  expects: \"0123456789abcdef\"\n  title: {en: \"Feed the roses\", es: \"Abone los rosales\"}\n",
        )],
        also: &[],
        at: "\"0123456789abcdef\"",
        says: "house/rules/rose.yaml:2:12: error[stale-expects]: the rule `rose.feed` below is not the one that this `reword` saw (`0123456789abcdef`)\n  help: look at it again; where this still fits it, write `expects: \"572846e362bdb64b\"`",
        just_not: &[(
            "house/rules/rose.yaml",
            "",
            "- reword: rose.feed\n  expects: \"572846e362bdb64b\"\n  title: {en: \"Feed the roses\", es: \"Abone los rosales\"}\n",
        )],
    },
    Case {
        code: "not-a-tightening",
        trips: &[(
            "house/materials/feeds.yaml",
            "",
            "- tighten: granular-feed\n  expects: \"261b71bceeee7fd2\"\n  because: {en: \"The house does it in another way.\", es: \"La casa lo hace de otra manera.\"}\n  maximum: [{per: area, value: 80 g/m²}]\n",
        )],
        also: &[],
        at: "80 g/m²",
        says: "house/materials/feeds.yaml:4:32: error[not-a-tightening]: the most below is `75 g/m²`, `80 g/m²` is more\n  help: a `tighten` can only lower it",
        just_not: &[(
            "house/materials/feeds.yaml",
            "",
            "- tighten: granular-feed\n  expects: \"261b71bceeee7fd2\"\n  because: {en: \"The house does it in another way.\", es: \"La casa lo hace de otra manera.\"}\n  maximum: [{per: area, value: 70 g/m²}]\n",
        )],
    },
    Case {
        code: "placeholders-differ",
        trips: &[(
            "house/rules/rose.yaml",
            "",
            "- reword: rose.soak\n  expects: \"9e4e6e94732ce38e\"\n  why: {en: \"It is thirsty.\"}\n",
        )],
        also: &[],
        at: "rose.soak",
        says: "house/rules/rose.yaml:1:11: error[placeholders-differ]: other words with other placeholders in `why`, `en`: below `{water.interval}`\n  help: quote in the new text what the text below quotes, each as often as there",
        just_not: &[(
            "house/rules/rose.yaml",
            "",
            "- reword: rose.soak\n  expects: \"9e4e6e94732ce38e\"\n  why: {en: \"It is thirsty each {water.interval}.\"}\n",
        )],
    },
    Case {
        code: "loosened",
        trips: &[(
            "house/materials/feeds.yaml",
            "",
            "- replace: granular-feed\n  expects: \"261b71bceeee7fd2\"\n  because: {en: \"The house does it in another way.\", es: \"La casa lo hace de otra manera.\"}\n  classes: [nitrogen]\n  name: {en: \"Granular feed\", es: \"Abono granulado\"}\n  analysis: {en: \"10-10-10\", es: \"10-10-10\"}\n  hazard: low\n  maximum: [{per: plant, value: 80 g}, {per: area, value: 75 g/m²}]\n  cautions: [salts-burn]\n  sources: [common-practice]\n",
        )],
        also: &[],
        at: "granular-feed",
        says: "house/materials/feeds.yaml:1:12: error[loosened]: the material `granular-feed` loses the maximum of 60 g\n  help: keep it, or let it go with `loosen: true`, a second reviewer (`reviewed_by: [one, another]`)",
        just_not: &[(
            "house/materials/feeds.yaml",
            "",
            "- replace: granular-feed\n  expects: \"261b71bceeee7fd2\"\n  because: {en: \"The house does it in another way.\", es: \"La casa lo hace de otra manera.\"}\n  loosen: true\n  reviewed_by: [A. Gardener, B. Grower]\n  classes: [nitrogen]\n  name: {en: \"Granular feed\", es: \"Abono granulado\"}\n  analysis: {en: \"10-10-10\", es: \"10-10-10\"}\n  hazard: low\n  maximum: [{per: plant, value: 80 g}, {per: area, value: 75 g/m²}]\n  cautions: [salts-burn]\n  sources: [common-practice]\n",
        )],
    },
    Case {
        code: "changed-twice",
        trips: &[(
            "house/rules/rose.yaml",
            "",
            "- reword: rose.feed\n  expects: \"572846e362bdb64b\"\n  title: {en: \"Feed the roses\"}\n- reword: rose.feed\n  expects: \"572846e362bdb64b\"\n  title: {en: \"Feed every rose\"}\n",
        )],
        also: &[],
        at: "rose.feed",
        says: "house/rules/rose.yaml:4:11: warning[changed-twice]: this set speaks of the rule `rose.feed` twice\n  house/rules/rose.yaml:1:11: it is spoken of here as well",
        just_not: &[(
            "house/rules/rose.yaml",
            "",
            "- reword: rose.feed\n  expects: \"572846e362bdb64b\"\n  title: {en: \"Feed the roses\"}\n- tighten: rose.feed\n  expects: \"572846e362bdb64b\"\n  because: {en: \"The house does it in another way.\", es: \"La casa lo hace de otra manera.\"}\n  cautions: [salts-burn]\n  repeat: {every: 35..42 days}\n",
        )],
    },
];
