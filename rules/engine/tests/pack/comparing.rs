//! Two versions of a set, compared by meaning: prepared pairs and the sentences that tell them apart.

use lammas_engine::compare::{Comparison, Kind, Words, compare, rule};
use lammas_engine::compile::set::{Set, compile};
use lammas_engine::read::{PackFile, read};
use lammas_engine::scenario::mutate::{Operator, material as material_mutants, rule as rule_mutants};

use crate::shipped;

fn compiled(files: &[PackFile]) -> Set {
    let (set, faults) = compile(read(files).unwrap_or_else(|faults| panic!("{faults:#?}")));
    set.unwrap_or_else(|| panic!("{faults:#?}"))
}

/// The files of the shipped set that say something to compare.
fn files() -> Vec<PackFile> {
    let mut files = shipped::files();
    files.retain(|file| !file.path.starts_with("scenarios/"));
    files
}

/// The shipped set with each of these texts, which must be there, replaced once.
fn edited(edits: &[(&str, &str, &str)]) -> Set {
    let mut files = files();
    for (path, from, to) in edits {
        let file = files.iter_mut().find(|file| file.path == *path).unwrap();
        assert!(file.text.contains(from), "`{from}` is not in {path}");
        file.text = file.text.replacen(from, to, 1);
    }
    compiled(&files)
}

fn all(compared: &Comparison) -> Vec<(String, Kind, String)> {
    compared
        .changes
        .iter()
        .flat_map(|change| change.sentences.iter().map(|said| (change.id.clone(), said.kind, said.text.clone())))
        .collect()
}

const SUCKING: &str = "rules/rose-sucking-pests.yaml";
const DISEASES: &str = "rules/rose-diseases.yaml";
const WINTER: &str = "rules/rose-winter.yaml";
const GUARDS: &str = "rules/guards.yaml";
const LAWN: &str = "rules/lawn-weeds.yaml";
const CUTS: &str = "rules/rose-cuts.yaml";

/// What is edited, the entry that changes, the kind of the one sentence, and a piece of it.
type Pair = (&'static [(&'static str, &'static str, &'static str)], &'static str, Kind, &'static str);

const PAIRS: &[Pair] = &[
    (
        &[(LAWN, "soil_10cm < 14 °C", "soil_10cm < 12 °C")],
        "lawn.weed-preventer",
        Kind::ConditionNarrowed,
        "applies in fewer cases: now: soil temperature at 10 cm (4 in) is under 12 °C (54 °F); before: ",
    ),
    (
        &[(LAWN, "signs has summer-weed-grass and season.half = warming and", "signs has summer-weed-grass and")],
        "lawn.weed-preventer",
        Kind::ConditionWidened,
        "applies in more cases: it no longer asks: ",
    ),
    (
        &[(LAWN, "season.half = warming and", "season.half = cooling and")],
        "lawn.weed-preventer",
        Kind::ConditionChanged,
        "applies in other cases: now: ",
    ),
    (
        &[(
            "rules/rose-chewing-pests.yaml",
            "(signs has holes-in-leaves or signs has holes-in-petals)",
            "signs has holes-in-leaves",
        )],
        "rose.snail-bait",
        Kind::ConditionNarrowed,
        "applies in fewer cases: ",
    ),
    (
        &[(LAWN, "    - if: \"plant.age < 0.3 year\"", "    - if: \"plant.age < 0.5 year\"")],
        "lawn.weed-preventer",
        Kind::HoldChanged,
        "waits in more cases: now: ",
    ),
    (
        &[(
            WINTER,
            "    opens: last_frost.median - 6 weeks else coldest_week\n    closes: last_frost.median - 2 weeks else coldest_week + 4 weeks",
            "    opens: last_frost.median - 6 weeks else coldest_week\n    closes: last_frost.median - 4 weeks else coldest_week + 2 weeks",
        )],
        "rose.dormant-oil",
        Kind::ClosesMoved,
        "closes 2 weeks earlier",
    ),
    (
        &[(
            WINTER,
            "    opens: last_frost.median - 6 weeks else coldest_week\n    closes: last_frost.median - 2 weeks",
            "    opens: last_frost.median - 40 days else coldest_week + 2 days\n    closes: last_frost.median - 2 weeks",
        )],
        "rose.dormant-oil",
        Kind::OpensMoved,
        "opens 2 days later",
    ),
    (
        &[(
            WINTER,
            "    closes: last_frost.median - 2 weeks else coldest_week + 4 weeks",
            "    closes: last_frost.median - 3 weeks else coldest_week + 4 weeks",
        )],
        "rose.dormant-oil",
        Kind::ClosesMoved,
        "closes 1 week earlier; where that never comes: as before",
    ),
    (
        &[(
            WINTER,
            "    closes: last_frost.median - 2 weeks else coldest_week + 4 weeks",
            "    closes: last_frost.late - 2 weeks else coldest_week + 4 weeks",
        )],
        "rose.dormant-oil",
        Kind::ClosesMoved,
        "(of the reference climates: ",
    ),
    (
        &[(GUARDS, "blocks: {classes: [oil, soap, sulphur, bicarbonate]}", "blocks: {classes: [oil, soap, sulphur]}")],
        "guard.no-sprays-in-heat",
        Kind::GuardScope,
        "blocks classes: no longer ",
    ),
    (
        &[(GUARDS, "ahead(max, tmax, 3 days) > 32 °C", "ahead(max, tmax, 3 days) > 29 °C")],
        "guard.no-sprays-in-heat",
        Kind::ConditionWidened,
        "applies in more cases: now: ",
    ),
    (
        &[(
            SUCKING,
            "repeat: {every: 4..7 days, at_most: {times: 3, within: 60 days}}",
            "repeat: {every: 5..7 days, at_most: {times: 3, within: 60 days}}",
        )],
        "rose.aphid-soap",
        Kind::Repeat,
        "how often: every: 5..7 days instead of 4..7 days",
    ),
    (
        &[(SUCKING, "  after: [rose.aphid-jet, rose.aphid-soap]", "  after: [rose.aphid-jet]")],
        "rose.aphid-oil",
        Kind::Order,
        "comes after: no longer “Soap aphids if the jet fails” [rose.aphid-soap]",
    ),
    (
        &[(DISEASES, "  keep_apart: [{class: oil, days: 14}]", "  keep_apart: [{class: oil, days: 21}]")],
        "rose.mildew-sulphur",
        Kind::Separation,
        "keep apart from: Oils [oil]: 3 weeks instead of 2 weeks",
    ),
    (
        &[(SUCKING, "rank: {urgency: 0, impact: 1}", "rank: {urgency: 2, impact: 1}")],
        "rose.aphid-oil",
        Kind::Rank,
        "urgency: 2 instead of 0",
    ),
    (
        &[(
            WINTER,
            "  evidence: consensus\n  strength: do\n  why: {en: \"Oil smothers scale",
            "  evidence: trial\n  strength: do\n  why: {en: \"Oil smothers scale",
        )],
        "rose.dormant-oil",
        Kind::Evidence,
        "founded on: trial instead of consensus",
    ),
    (
        &[(
            "materials/sprays.yaml",
            "keep_apart: [{class: sulphur, days: 14}, {class: copper, days: 3}]",
            "keep_apart: [{class: sulphur, days: 14}]",
        )],
        "insecticidal-soap",
        Kind::Separation,
        "keep apart from: no longer ",
    ),
    (
        &[("materials/sprays.yaml", "spray-clothing, dust-mask, bees-dusk", "spray-clothing, bees-dusk")],
        "sulphur",
        Kind::Cautions,
        "cautions: no longer “",
    ),
    (
        &[(
            "problems/rose-pests.yaml",
            "threshold: \"share(aphid-clusters) >= 50 %\"",
            "threshold: \"share(aphid-clusters) >= 30 %\"",
        )],
        "aphids",
        Kind::Setting,
        "threshold: `share(aphid-clusters) >= 30 %` instead of ",
    ),
    (
        &[(SUCKING, "Soap kills what it wets", "Soap kills whatever it wets")],
        "rose.aphid-soap",
        Kind::Reworded,
        "reworded: reason",
    ),
    (
        &[(
            SUCKING,
            "sources: [cornell-low-impact, montreal-soap, nebraska-aphids]",
            "sources: [cornell-low-impact, montreal-soap]",
        )],
        "rose.aphid-soap",
        Kind::Sources,
        "sources: no longer ",
    ),
    (
        &[(CUTS, "- id: rose.renewal-cut\n", "- id: rose.renewal-cut\n  strict: true\n")],
        "rose.renewal-cut",
        Kind::Strict,
        "facts of the day must now be known",
    ),
    (
        &[(
            SUCKING,
            "  expect: [{what: fewer-pests, after: 2..4 days}]",
            "  expect: [{what: fewer-pests, after: 2..6 days}]",
        )],
        "rose.aphid-soap",
        Kind::Outlook,
        "may be expected: ",
    ),
];

#[test]
fn each_change_is_told_in_one_sentence_of_its_kind() {
    let before = shipped::set();
    let mut wrong = Vec::new();
    for (edits, id, kind, piece) in PAIRS {
        let after = edited(edits);
        let compared = compare(&before, &after, "en", None);
        let said = all(&compared);
        let as_told = matches!(&said[..], [(changed, found, text)]
            if changed == id && found == kind && text.contains(piece) && !text.ends_with('.'));
        // The same in Spanish: the same kind, other words.
        let spanish = all(&compare(&before, &after, "es", None));
        let so_in_spanish = matches!((&said[..], &spanish[..]), ([(.., text)], [(_, found, other)])
            if found == kind && text != other);
        if compared.same_meaning || !as_told || !so_in_spanish {
            wrong.push(format!("{id} {kind:?} `{piece}`: {said:#?} {spanish:#?}"));
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

#[test]
fn what_is_only_written_in_another_way_is_no_change_of_meaning() {
    let before = shipped::set();
    let pairs: &[&[(&str, &str, &str)]] = &[
        &[(
            LAWN,
            "signs has summer-weed-grass and season.half = warming",
            "season.half = warming and signs has summer-weed-grass",
        )],
        &[(LAWN, "soil_10cm >= 10 °C and", "soil_10cm >= 50 °F and")],
        &[(LAWN, "soil_10cm >= 10 °C and", "10 °C <= soil_10cm and")],
        &[(LAWN, "soil_10cm >= 10 °C and", "(soil_10cm   >= 10 °C) and")],
        &[(
            WINTER,
            "closes: last_frost.median - 2 weeks else coldest_week + 4 weeks",
            "closes:  \"last_frost.median - 14 days  else coldest_week + 28 days\"",
        )],
        &[(
            SUCKING,
            "repeat: {every: 4..7 days, at_most: {times: 3, within: 60 days}}",
            "repeat:\n    at_most: {within: 60 days, times: 3}\n    every: 4..7 days",
        )],
        &[(SUCKING, "rank: {urgency: 0, impact: 1}", "rank: {impact: 1, urgency: 0}   # a remark")],
        &[(SUCKING, "after: [rose.aphid-jet, rose.aphid-soap]", "after: [rose.aphid-soap, rose.aphid-jet]")],
        &[(
            GUARDS,
            "blocks: {classes: [oil, soap, sulphur, bicarbonate]}",
            "blocks: {classes: [bicarbonate, sulphur, soap, oil]}",
        )],
        &[(GUARDS, "ahead(sum, rain, 2 days) > 10 mm", "ahead(sum, rain, 2 days) > 1 cm")],
        &[("rules/law.yaml", "region = GB or region = DK or region = NL", "region = NL or region = GB or region = DK")],
        &[(
            "rules/citrus-cold.yaml",
            "site.planting in {ground, raised-bed} and ahead(min, tmin, 3 days) <= 0 °C",
            "(site.planting = raised-bed or site.planting = ground) and ahead(min, tmin, 3 days) <= 32 °F",
        )],
        &[(
            "problems/rose-pests.yaml",
            "mean(tmean, 7 days) >= 12 °C and mean(tmean, 7 days) <= 26 °C",
            "mean(tmean, 7 days) <= 26 °C and mean(tmean, 7 days) >= 12 °C",
        )],
        &[("pack.yaml", "version: \"2026.11.1\"", "version: \"2026.12.1\"")],
    ];
    for edits in pairs {
        let after = edited(edits);
        let compared = compare(&before, &after, "en", None);
        assert!(compared.same_meaning, "{edits:?}: {:#?}", all(&compared));
        assert!(all(&compare(&after, &before, "en", None)).is_empty());
    }
    let mut files = shipped::files();
    files.reverse();
    files.iter_mut().for_each(|file| file.text = format!("# a remark\n{}\n", file.text));
    let compared = compare(&before, &compiled(&files), "en", None);
    assert!(compared.same_meaning && compared.same_form && compared.rules_unchanged == before.rules.len());
}

#[test]
fn a_rule_that_is_new_gone_or_only_renamed_is_told_as_that() {
    let before = shipped::set();
    let renamed = [
        (SUCKING, "- id: rose.aphid-soap\n", "- id: rose.aphid-soft-soap\n"),
        (SUCKING, "before: [rose.aphid-soap]", "before: [rose.aphid-soft-soap]"),
        (SUCKING, "after: [rose.aphid-jet, rose.aphid-soap]", "after: [rose.aphid-jet, rose.aphid-soft-soap]"),
    ];
    let after = edited(&renamed);
    let said = all(&compare(&before, &after, "en", None));
    assert_eq!(
        said,
        [("rose.aphid-soft-soap".to_owned(), Kind::Renamed, "was called `rose.aphid-soap`, same meaning".to_owned())]
    );
    let new = edited(&[(
        SUCKING,
        "- id: rose.aphid-soap\n",
        "- id: rose.more\n  kind: know\n  title: {en: \"More\", es: \"Más\"}\n  for: {plant: rose}\n  evidence: consensus\n  strength: do\n  why: {en: \"So.\", es: \"Sí.\"}\n  sources: [common-practice]\n- id: rose.aphid-soap\n",
    )]);
    let kinds = |a: &Set, b: &Set| {
        all(&compare(a, b, "en", None)).into_iter().map(|(id, kind, _)| (id, kind)).collect::<Vec<_>>()
    };
    assert_eq!(kinds(&before, &new), [("rose.more".to_owned(), Kind::Added)]);
    assert_eq!(kinds(&new, &before), [("rose.more".to_owned(), Kind::Removed)]);
}

#[test]
fn only_the_entries_that_are_asked_for_are_told() {
    let before = shipped::set();
    let after = edited(&[(SUCKING, "rank: {urgency: 0, impact: 1}", "rank: {urgency: 2, impact: 1}")]);
    let only = |ids: &[&str]| {
        let ids: Vec<String> = ids.iter().map(|id| (*id).to_owned()).collect();
        compare(&before, &after, "en", Some(&ids)).changes.len()
    };
    assert_eq!((only(&["rose.aphid-oil"]), only(&["rose.mite-oil"])), (1, 0));
}

/// The kinds of sentence that may tell of a change that was made so.
fn kinds_of(operator: Operator) -> &'static [Kind] {
    use Operator as O;
    const CONDITION: &[Kind] = &[
        Kind::ConditionNarrowed,
        Kind::ConditionWidened,
        Kind::ConditionChanged,
        Kind::HoldChanged,
        Kind::HoldAdded,
        Kind::HoldDropped,
        Kind::Whom,
    ];
    match operator {
        O::ThresholdLowered | O::ThresholdRaised | O::ComparisonTurned | O::NegationDropped | O::AndOrExchanged => {
            CONDITION
        }
        O::PartDropped | O::AlternativeDropped | O::SignDropped => CONDITION,
        O::ConditionDropped => &[Kind::ConditionWidened, Kind::Whom],
        O::ProblemDropped => &[Kind::Whom],
        O::HoldDropped => &[Kind::HoldDropped],
        O::StrictDropped => &[Kind::Strict],
        O::GuardNarrowed | O::GuardDropped => &[Kind::GuardScope],
        O::LawDropped => &[Kind::Law],
        O::SideEarlier | O::SideLater | O::ElseDropped => &[Kind::OpensMoved, Kind::BestMoved, Kind::ClosesMoved],
        O::WindowDropped => &[Kind::WindowRemoved],
        O::OutOfSeasonDropped => &[Kind::OutOfSeason],
        O::SeparationShortened => &[Kind::Separation, Kind::Order, Kind::Turns],
        O::SeparationDropped => &[Kind::Separation],
        O::RepeatShortened | O::RepeatDropped | O::OftenerAllowed => &[Kind::Repeat],
        O::OrderDropped => &[Kind::Order],
        O::ClashDropped => &[Kind::Clash],
        O::TurnsDropped => &[Kind::Turns],
        O::CautionDropped => &[Kind::Cautions],
        O::MaterialDropped => &[Kind::Materials],
        O::ClassDropped => &[Kind::Classes],
        O::MaximumRaised => &[Kind::Maximum],
        O::HazardLowered => &[Kind::Hazard],
        O::AmountDoubled | O::InputExchanged | O::CapDropped => &[Kind::Amount],
        O::UrgencyChanged | O::ImpactChanged => &[Kind::Rank],
        O::KindChanged => &[Kind::RuleKind],
        O::StrengthChanged => &[Kind::Strength],
        O::ProfessionalDropped => &[Kind::Professional],
    }
}

#[test]
fn every_mutant_of_the_shipped_set_is_told_by_its_kind_in_both_directions() {
    let set = shipped::set();
    let words = Words::within(&set, "en");
    let mut pairs = 0;
    let mut equal = 0;
    for filed in &set.pack.rules {
        for mutant in rule_mutants::mutants(filed) {
            let said = rule::differences(&filed.entry, &mutant.entry, words);
            let back = rule::differences(&mutant.entry, &filed.entry, words);
            assert_eq!(said.is_empty(), back.is_empty(), "{}: {:?}", filed.entry.id.value, mutant.operator);
            pairs += 1;
            equal += usize::from(said.is_empty());
            for sentence in &said {
                let allowed = kinds_of(mutant.operator);
                assert!(
                    allowed.contains(&sentence.kind),
                    "{}: {:?}: {sentence:?}",
                    filed.entry.id.value,
                    mutant.operator
                );
            }
            if mutant.operator == Operator::SideEarlier {
                assert!(said.iter().all(|sentence| sentence.text.contains("3 weeks earlier")), "{said:?}");
            }
            if mutant.operator == Operator::PartDropped || mutant.operator == Operator::ConditionDropped {
                let narrower = said.iter().any(|sentence| sentence.kind == Kind::ConditionNarrowed);
                assert!(
                    !narrower || filed.entry.when.as_ref().is_some_and(|when| when.text().contains("not ")),
                    "{said:?}"
                );
            }
        }
    }
    for filed in &set.pack.materials {
        for mutant in material_mutants::mutants(filed) {
            let said = lammas_engine::compare::material::differences(&filed.entry, &mutant.entry, words);
            assert!(said.iter().all(|sentence| kinds_of(mutant.operator).contains(&sentence.kind)), "{said:?}");
            assert_eq!(said.len(), 1, "{}: {:?}", filed.entry.id.value, mutant.operator);
            pairs += 1;
        }
    }
    assert!(pairs >= 2000 && equal * 50 < pairs, "{pairs} pairs, {equal} of them equal");
}
