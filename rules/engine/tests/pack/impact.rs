//! The answers that impact says another set would change are those that change.
//!
//! The other way round it is done here by brute force: each request is asked of both sets as anybody would, through
//! `understand` and the whole answer, and what the answers decide is compared byte for byte.

use std::sync::Arc;

use lammas_agronomy::season::SiteShift;
use lammas_engine::compile::set::{Set, compile};
use lammas_engine::explain::answer::{Answer, HeldBy};
use lammas_engine::explain::whole::{self, Extent};
use lammas_engine::impact::change::How;
use lammas_engine::impact::compared::Stands;
use lammas_engine::impact::grid::{Grid, Part, Portion};
use lammas_engine::impact::report::Report;
use lammas_engine::impact::requests::Requests;
use lammas_engine::question::said::Said;
use lammas_engine::question::understand::{profile, understand};
use lammas_engine::question::{Climate, Question};
use lammas_engine::read::read;
use lammas_engine::scenario;
use lammas_engine::typical::weeks::WEEKS;
use serde_json::{Value, json};

use crate::shipped::{files, set};

/// An edit of the shipped set: what it is, the files with what is replaced in them, conditions that it bears on, and whether
/// it changes a decision at all.
struct Edit {
    name: &'static str,
    changes: &'static [(&'static str, &'static str, &'static str)],
    when: &'static [&'static str],
    matters: bool,
}

const fn edit(
    name: &'static str,
    changes: &'static [(&'static str, &'static str, &'static str)],
    when: &'static [&'static str],
) -> Edit {
    Edit { name, changes, when, matters: true }
}

const EDITS: &[Edit] = &[
    edit(
        "a guard begins earlier",
        &[("rules/guards.yaml", "opens: first_frost.median - 8 weeks", "opens: first_frost.median - 14 weeks")],
        &["feed", "pale"],
    ),
    edit(
        "a guard of every plant is stricter",
        &[("rules/guards.yaml", "ahead(max, tmax, 3 days) > 32 °C", "ahead(max, tmax, 3 days) > 24 °C")],
        &["aphid", "scale", "mildew"],
    ),
    edit(
        "a hold wants more warmth",
        &[("rules/rose-cuts.yaml", "season.heat_left < 550 °Cd", "season.heat_left < 900 °Cd")],
        &["september-s", "spent-blooms"],
    ),
    edit(
        "a rule is less urgent",
        &[("rules/rose-cuts.yaml", "rank: {urgency: 2, impact: 2}", "rank: {urgency: 1, impact: 2}")],
        &["september-s", "spent-blooms"],
    ),
    edit(
        "a window opens earlier",
        &[("rules/rose-cuts.yaml", "opens: hot_season.end - 4 weeks else", "opens: hot_season.end - 6 weeks else")],
        &["september-s", "spent-blooms"],
    ),
    edit(
        "another age is asked for",
        &[(
            "rules/rose-cuts.yaml",
            "plant.age >= 1 year and (signs has crowded-centre",
            "plant.age >= 6 years and (signs has crowded-centre",
        )],
        &["sign spent-blooms", "september-shut", "unknown-age"],
    ),
    edit(
        "a usual amount is smaller",
        &[(
            "rules/citrus-growing.yaml",
            "typical: {min: 150, max: 230, unit: g}",
            "typical: {min: 120, max: 230, unit: g}",
        )],
        &["feed"],
    ),
    edit(
        "a rule wants a warmer soil",
        &[("rules/citrus-growing.yaml", "and soil_10cm >= 13 °C", "and soil_10cm >= 19 °C")],
        &["spring-feed", "iron"],
    ),
    edit(
        "a task for now is for the week",
        &[("rules/lawn-water-heat.yaml", "rank: {urgency: 3, impact: 2}", "rank: {urgency: 2, impact: 2}")],
        &["footprints", "thirsty"],
    ),
    edit(
        "less rain holds the water",
        &[(
            "rules/lawn-water-heat.yaml",
            "signs has footprints-stay and soil_10cm >= 8 °C\"\n  hold:\n    - if: \"sum(rain, 7 days) > 25 mm\"",
            "signs has footprints-stay and soil_10cm >= 8 °C\"\n  hold:\n    - if: \"sum(rain, 7 days) > 8 mm\"",
        )],
        &["footprints", "thirsty"],
    ),
    edit(
        "a problem is worth acting on earlier",
        &[(
            "problems/citrus.yaml",
            "threshold: \"share(domed-scales) >= 10 %\"",
            "threshold: \"share(domed-scales) >= 4 %\"",
        )],
        &["scale"],
    ),
    edit(
        "roses are once-flowering if nobody says",
        &[("plants/rose.yaml", "usual: repeat", "usual: once")],
        &["spent-blooms", "january"],
    ),
    edit(
        "a note has another name",
        &[("rules/rose-cuts.yaml", "id: rose.flowers-until-the-cold", "id: rose.blooms-until-the-cold")],
        &["september-s", "spent-blooms"],
    ),
    edit(
        "a sign is hidden now",
        &[(
            "words/signs.yaml",
            "- id: footprints-stay\n  where: leaf-upper\n  seen: plain",
            "- id: footprints-stay\n  where: leaf-upper\n  seen: hidden",
        )],
        &["sign ", "thirsty"],
    ),
    edit(
        "two tasks have no order",
        &[
            ("rules/citrus-water-heat.yaml", "  before: [citrus.feed]\n", ""),
            ("rules/citrus-growing.yaml", "  after: [citrus.deep-soak]\n", ""),
        ],
        &["feed", "soak"],
    ),
    edit(
        "a new sign can be told",
        &[
            (
                "words/signs.yaml",
                "- id: footprints-stay\n",
                "- id: heavy-dew\n  where: leaf-upper\n  seen: plain\n  name: {en: \"Dew\", es: \"Rocío\"}\n  look: {en: \"Look.\", es: \"Mire.\"}\n- id: footprints-stay\n",
            ),
            (
                "rules/lawn-water-heat.yaml",
                "signs has footprints-stay and soil_10cm",
                "(signs has footprints-stay or signs has heavy-dew) and soil_10cm",
            ),
        ],
        &["heavy-dew", "footprints"],
    ),
    Edit {
        name: "other words",
        changes: &[
            ("rules/rose-cuts.yaml", "Cut back for the late flush", "Cut for the late flush"),
            (
                "rules/rose-cuts.yaml",
                "Too little warmth is left to ripen new shoots",
                "There is too little warmth for new shoots",
            ),
        ],
        when: &["september-s", "spent-blooms"],
        matters: false,
    },
];

fn edited(changes: &[(&str, &str, &str)]) -> Set {
    let mut files = files();
    for (path, from, to) in changes {
        let file = files.iter_mut().find(|file| file.path == *path).unwrap_or_else(|| panic!("no {path}"));
        assert!(file.text.contains(from), "`{from}` is not in {path}");
        file.text = file.text.replacen(from, to, 1);
    }
    let (set, faults) = compile(read(&files).unwrap_or_else(|faults| panic!("{faults:#?}")));
    set.unwrap_or_else(|| panic!("{faults:#?}"))
}

/// What an answer decides, as bytes.
fn decided(answer: &Answer<'_>, set: &Set) -> String {
    let hold = |rule: &str, text: &str| {
        let entry = &set.pack.rules[set.names.rules.wide(rule).unwrap() as usize].entry;
        // A text may begin alike for two holds only if it has a fact in it.
        let begins = |hold: &lammas_engine::pack::rule::HoldEntry| {
            text.starts_with(hold.because.get("en").split('{').next().unwrap_or_default())
        };
        entry.hold.iter().position(begins)
    };
    let block = |rule: &str, by: &HeldBy<'_>| {
        json!([by.kind, by.rule, if by.kind == "hold" { hold(rule, &by.because) } else { None }])
    };
    let tasks: Vec<Value> = answer
        .tasks
        .iter()
        .map(|task| {
            let check: Vec<Value> = task
                .check_first
                .iter()
                .map(|c| c.guard.map_or_else(|| json!(hold(task.id, &c.text)), |guard| json!(guard)))
                .collect();
            let amounts: Vec<Value> = task
                .amounts
                .iter()
                .map(|a| {
                    json!([a.value, a.unit, a.us, a.basis, a.capped, a.needs, a.typical.map(|range| (**range).clone())])
                })
                .collect();
            json!([task.id, task.priority.band, task.window, check, amounts])
        })
        .collect();
    let mut held: Vec<Value> = answer
        .held
        .iter()
        .map(|h| json!([h.id, h.blocks.iter().map(|by| block(h.id, by)).collect::<Vec<_>>()]))
        .collect();
    let mut depends: Vec<Value> = answer.depends_on.iter().map(|d| json!([d.id, d.could_be])).collect();
    let mut notes: Vec<Value> = answer.notes.iter().map(|note| json!(note.id)).collect();
    for list in [&mut held, &mut depends, &mut notes] {
        list.sort_by_key(ToString::to_string);
    }
    let questions: Vec<Value> = answer
        .questions
        .iter()
        .map(|q| json!([q.fact, q.answers.iter().filter_map(|answer| answer.value.clone()).collect::<Vec<_>>()]))
        .collect();
    json!([tasks, held, depends, notes, questions]).to_string()
}

/// What a set answers to a request, as bytes; none: it refuses it.
fn asked(set: &Set, said: &Said, climate: &Arc<Climate>) -> Option<String> {
    let question: Question = understand(said, set, Arc::clone(climate), None).ok()?;
    let extent = Extent { most_depends: usize::MAX, ..Extent::STANDARD };
    Some(decided(&whole::answer(set, &question, "en", extent).unwrap(), set))
}

/// A grid of few places and conditions: the first, some of the others, and those that an edit bears on.
fn few<'a>(before: &'a Set, after: &'a Set, number: usize, when: &[&str]) -> Grid<'a> {
    let mut grid = Grid::of(before, after, None, false);
    let mut at = 0;
    grid.places.retain(|_| {
        at += 1;
        (at + number).is_multiple_of(4)
    });
    for (_, cases) in &mut grid.plants {
        let mut at = 0;
        cases.retain(|case| {
            at += 1;
            at == 1 || (at + number).is_multiple_of(29) || when.iter().any(|words| case.name.contains(words))
        });
    }
    grid
}

/// The portions of the plants that are edited, and of some others.
fn some(grid: &Grid<'_>, number: usize) -> Vec<Portion> {
    let mut portions = grid.portions();
    portions.retain(|portion| {
        let (plant, _) = &grid.plants[portion.plant];
        ["rose", "citrus", "lawn"].contains(&plant.as_str()) || (portion.plant + number).is_multiple_of(9)
    });
    portions
}

/// The cells of a portion in every third week that changed by brute force and as impact says; how many questions that were.
fn compare(grid: &Grid<'_>, portion: Portion, part: &Part, name: &str) -> (u64, u64) {
    let (mut asked_of, mut differ) = (0, 0);
    let (plant, cases) = &grid.plants[portion.plant];
    let spot = &grid.places[portion.place];
    let climates = |hollow| [spot.climate(hollow), spot.climate(hollow)];
    for (number, case) in cases.iter().enumerate() {
        let [of_before, of_after] = climates(case.is_hollow());
        for week in (1..=WEEKS).filter(|week| (usize::from(*week) + number).is_multiple_of(3)) {
            let said = grid.request(portion, number, week).unwrap();
            let (was, is) = (asked(grid.before, &said, &of_before), asked(grid.after, &said, &of_after));
            let predicted = part.changed.get(&number).is_some_and(|weeks| weeks.has(week));
            assert_eq!(
                was != is,
                predicted,
                "{name}: {plant}, {}, week {week}, {}\n{was:?}\n{is:?}",
                spot.id,
                case.name
            );
            asked_of += 1;
            differ += u64::from(was != is);
        }
    }
    (asked_of, differ)
}

fn walk(numbers: impl Iterator<Item = usize>) {
    let before = set();
    for number in numbers {
        let edit = &EDITS[number];
        let after = edited(edit.changes);
        let grid = few(&before, &after, number, edit.when);
        let (mut asked_of, mut differ) = (0, 0);
        for portion in some(&grid, number) {
            let (asked, differs) = compare(&grid, portion, &grid.run(portion), edit.name);
            asked_of += asked;
            differ += differs;
        }
        assert_eq!(differ > 0, edit.matters, "{}: {differ} of {asked_of} change", edit.name);
    }
}

// Two tests, so that two cores share the work.
#[test]
fn the_answers_said_to_change_are_those_that_change_even_edits() {
    walk((0..EDITS.len()).step_by(2));
}

#[test]
fn the_answers_said_to_change_are_those_that_change_odd_edits() {
    walk((1..EDITS.len()).step_by(2));
}

#[test]
fn a_request_of_an_example_is_the_question_that_changed() {
    let (before, after) = (set(), edited(EDITS[2].changes));
    let grid = few(&before, &after, 2, EDITS[2].when);
    let on = some(&grid, 2);
    let parts: Vec<Part> = grid
        .portions()
        .into_iter()
        .map(|portion| if on.contains(&portion) { grid.run(portion) } else { Part::default() })
        .collect();
    let report = Report::of(&grid, &parts);
    let held = |how: How| matches!(how, How::Outcome(Stands::Advised, Stands::Held));
    let group = report.groups.iter().find(|g| g.rule == "rose.renewal-cut" && held(g.how)).expect("it is held now");
    let example = &group.example;
    let said = grid.request(example.portion, example.case, example.week).unwrap();
    let stands = |set: &Set| {
        let question = scenario::question(set, &said).unwrap();
        let answer = whole::answer(set, &question, "en", Extent::STANDARD).unwrap();
        (answer.tasks.iter().any(|t| t.id == group.rule), answer.held.iter().any(|h| h.id == group.rule))
    };
    assert_eq!((stands(&before), stands(&after)), ((true, false), (false, true)));
    let (was, is) = example.detail.as_ref().unwrap();
    assert_eq!((was.as_str(), is.as_str()), ("", "its hold `season.heat_left < 900 °Cd`"));
    assert!(report.changed <= report.answers && report.by_plant.iter().sum::<u64>() == report.changed);
    let places: u64 = group.places.iter().map(|(_, weeks)| u64::from(weeks.count())).sum();
    assert!(group.answers >= places, "{group:?}");
}

#[test]
fn requests_that_change_are_those_of_the_scenarios_that_change() {
    let before = set();
    let after = edited(EDITS[2].changes);
    let mut requests = Requests::default();
    let mut expected = Vec::new();
    for (line, filed) in (1..).zip(&before.pack.scenarios) {
        let ask = |set: &Set| scenario::question(set, &filed.entry.ask).unwrap();
        let (was, is) = (ask(&before), ask(&after));
        assert!(requests.look(line, "rose", (&before, Some(&was)), (&after, Some(&is))));
        let by_brute_force = |set: &Set| {
            let said = &filed.entry.ask;
            let climate = Climate::new(
                None,
                was.climate.profile.clone(),
                SiteShift { frost_hollow: said.site.frost_hollow == Some(true) },
            );
            asked(set, said, &Arc::new(climate))
        };
        if by_brute_force(&before) != by_brute_force(&after) {
            expected.push(line);
        }
    }
    assert_eq!(requests.answers, before.pack.scenarios.len() as u64);
    assert!(!expected.is_empty());
    assert_eq!(requests.changed, expected);
    // A request that neither set can be asked is no answer.
    assert!(!requests.look(0, "rose", (&before, None), (&after, None)));
    assert_eq!(requests.answers, before.pack.scenarios.len() as u64);
}

#[test]
fn a_climate_that_a_set_changes_is_named() {
    let mut files = files();
    let file = files.iter_mut().find(|file| file.path == "climates/demo.yaml").unwrap();
    file.text = file.text.replacen("id: monsoon-hills", "id: monsoon-slopes", 1);
    let before = set();
    // The scenarios of the old name are left as they are: their place is simply gone.
    let (after, _) = compile(read(&files).unwrap());
    let moved = lammas_engine::typical::places::moved(&before, &after.unwrap());
    assert_eq!(moved, [("monsoon-hills".to_owned(), "gone"), ("monsoon-slopes".to_owned(), "added")]);
    let spot =
        Grid::of(&before, &before, None, false).places.into_iter().find(|spot| spot.id == "monsoon-hills").unwrap();
    assert_eq!(spot.said.id.as_deref(), Some("monsoon-hills"));
    assert!(profile(&spot.said, "/climate").is_err(), "a climate that both know is said by its id");
}
