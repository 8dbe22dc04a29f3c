//! What the scenarios of the shipped set would notice.

use lammas_engine::check::check;
use lammas_engine::scenario::mutate::{Bench, Operator, Score};

use crate::shipped::{files, set};

fn scores(bench: &Bench<'_>, ids: &[&str]) -> Vec<Score> {
    ids.iter().map(|id| bench.score(bench.subject(id).unwrap()).unwrap()).collect()
}

/// A slice: one rule of each material that changes with heat, bees, rain or repeats. All of them are tried by
/// `lammas scenarios --mutate`.
#[test]
fn four_of_five_changes_of_a_rule_that_can_do_harm_are_noticed() {
    let set = set();
    let bench = Bench::new(&set).unwrap();
    let ids = [
        "rose.sawfly-spinosad",
        "rose.aphid-oil",
        "lawn.weed-preventer",
        "guard.no-sprays-in-heat",
        "citrus.copper-on-crown",
    ];
    for score in scores(&bench, &ids) {
        assert!(score.hazardous && score.mutants >= 5, "{score:#?}");
        assert!(score.noticed * 5 >= score.mutants * 4, "{score:#?}");
        assert_eq!(score.noticed + score.survivors.len(), score.mutants);
    }
}

#[test]
fn without_scenarios_nothing_is_noticed_and_every_change_is_told_with_its_place() {
    let mut set = set();
    set.pack.scenarios.clear();
    let bench = Bench::new(&set).unwrap();
    let [score] = &scores(&bench, &["rose.sawfly-spinosad"])[..] else { panic!("one score") };
    assert_eq!((score.noticed, score.survivors.len()), (0, score.mutants));
    let raised = score.survivors.iter().find(|survivor| survivor.operator == Operator::ThresholdRaised).unwrap();
    assert_eq!(raised.place.file, "rules/rose-chewing-pests.yaml");
    assert!(raised.place.line > 1 && raised.change.contains("35 %") && raised.change.contains("25 %"), "{raised:?}");
}

#[test]
fn a_scenario_that_differs_already_is_told_instead() {
    let mut files = files();
    let file = files.iter_mut().find(|file| file.path == "scenarios/rose/aphids-few.yaml").unwrap();
    file.text = file.text.replace("expect:", "expect:\n  status: needs-facts");
    let set = check(&files).set.unwrap();
    let failed = Bench::new(&set).unwrap_err();
    assert_eq!(failed.len(), 1, "{failed:#?}");
    assert!(failed[0].differs[0].starts_with("status: expected needs-facts, got "), "{failed:#?}");
}

#[test]
fn a_separation_that_the_material_asks_for_as_well_does_not_count_twice() {
    let set = set();
    let bench = Bench::new(&set).unwrap();
    let [score] = &scores(&bench, &["rose.mildew-sulphur"])[..] else { panic!("one score") };
    let apart = |survivor: &&lammas_engine::scenario::mutate::Survivor| {
        matches!(survivor.operator, Operator::SeparationDropped | Operator::SeparationShortened)
    };
    assert_eq!(score.survivors.iter().filter(apart).count(), 0, "{score:#?}");
}
