//! Several releases of the core in one library: pinned, as of a moment, taken back, in layers; and past answers given again.

use std::sync::Arc;

use chrono::{DateTime, Utc};
use lammas::library::{Library, Release, Withdrawn};
use lammas::problem::Problem;
use lammas::sets::embedded;
use lammas::sets::rules::{Rules, Served};
use lammas::settings::rules::RuleSettings;
use lammas::v1::advice::reply::{self, Reply};
use lammas::v1::replay::again;
use lammas_engine::compile::set::Set;
use lammas_engine::layer::compile_layers;
use lammas_engine::read::PackFile;
use serde_json::{Value, json};

fn moment(text: &str) -> DateTime<Utc> {
    text.parse().expect("a moment")
}

fn edited(edits: &[(&str, &str, &str)], published: &str) -> Arc<Release> {
    let mut files = embedded::files();
    for (path, from, to) in edits {
        let file = files.iter_mut().find(|file| file.path == *path).expect("the file");
        assert!(file.text.contains(from), "`{from}` stands in {path}");
        file.text = file.text.replace(from, to);
    }
    Arc::new(Release::of_files(files).expect("it can be read").published(moment(published)))
}

const VERSION: &str = "version: \"2026.11.1\"";

fn first() -> Arc<Release> {
    edited(&[], "2026-11-01T00:00:00Z")
}

/// The late cut waits in more cases.
fn second() -> Arc<Release> {
    edited(
        &[
            ("pack.yaml", VERSION, "version: \"2026.12.1\""),
            ("rules/rose-cuts.yaml", "season.heat_left < 550 °Cd", "season.heat_left < 5000 °Cd"),
        ],
        "2026-12-01T00:00:00Z",
    )
}

/// The deadheading is called otherwise.
fn third() -> Arc<Release> {
    edited(
        &[
            ("pack.yaml", VERSION, "version: \"2027.1.1\""),
            ("rules/rose-cuts.yaml", "Deadhead to a strong bud", "Take off what has faded"),
        ],
        "2027-01-10T00:00:00Z",
    )
}

fn house(files: &[(&str, &str)]) -> Arc<Release> {
    let header =
        "name: house\nversion: \"2026.11.5\"\nlanguages: [en, es]\ntitle: {en: House, es: Casa}\nover: [core]\n";
    let mut all = vec![PackFile { path: "pack.yaml".to_owned(), text: header.to_owned() }];
    all.extend(files.iter().map(|(path, text)| PackFile { path: (*path).to_owned(), text: (*text).to_owned() }));
    Arc::new(Release::of_files(all).expect("it can be read").published(moment("2026-11-05T00:00:00Z")))
}

fn compiled(release: &Release) -> Arc<Set> {
    let (set, faults) = compile_layers(&[release.files.to_vec()]);
    Arc::new(set.unwrap_or_else(|| panic!("{faults:?}")))
}

fn serving(releases: &[&Arc<Release>]) -> Rules {
    let library = Library::of(releases.iter().map(|release| Arc::clone(release)));
    let newest = library.newest("core").expect("a core").clone();
    let served = Served { library, standard: vec!["core".to_owned()], set: compiled(&newest) };
    Rules::serving(served, &RuleSettings { stacks: 3, ..RuleSettings::default() })
}

fn ask(rules: &Rules, question: &Value, now: &str) -> Result<Reply, Problem> {
    reply::to(serde_json::from_value(question.clone()).expect("a question"), None, rules, moment(now))
}

const NOW: &str = "2027-02-01T12:00:00Z";

fn rose(more: &Value) -> Value {
    let mut question = json!({
        "climate": {"id": "hot-dry-valley"},
        "date": "2026-09-15",
        "plant": {"type": "rose", "traits": {"flowering": "repeat"}, "age_years": 4},
        "condition": {"signs": [{"sign": "spent-blooms"}]}
    });
    for (name, value) in more.as_object().into_iter().flatten() {
        question[name] = value.clone();
    }
    question
}

fn versions(reply: &Reply) -> Vec<String> {
    let answer: Value = serde_json::from_str(&reply.text).expect("JSON");
    let sets = answer["rule_sets"].as_array().cloned().unwrap_or_default();
    sets.iter()
        .map(|set| format!("{}@{}", set["name"].as_str().unwrap_or(""), set["version"].as_str().unwrap_or("")))
        .collect()
}

/// Pointer and detail of each wrong place.
fn refused(rules: &Rules, more: &Value) -> Vec<String> {
    let problem = ask(rules, &rose(more), NOW).expect_err("it is refused");
    assert_eq!(problem.kind().status, 422, "{problem}");
    problem.errors().iter().map(|error| format!("{} {}", error.pointer, error.detail)).collect()
}

#[test]
fn a_request_gets_the_newest_a_pinned_version_or_the_one_that_held_then() {
    let (first, second, third) = (first(), second(), third());
    let rules = serving(&[&first, &second, &third]);
    let of =
        |more: Value| versions(&ask(&rules, &rose(&more), NOW).unwrap_or_else(|problem| panic!("{more}: {problem}")));
    assert_eq!(of(json!({})), ["core@2027.1.1"]);
    assert_eq!(of(json!({"rule_sets": ["core@2026.12.1"]})), ["core@2026.12.1"]);
    assert_eq!(of(json!({"as_of": "2026-12-15"})), ["core@2026.12.1"]);
    assert_eq!(of(json!({"as_of": "2026-12-01T00:00:00Z", "rule_sets": ["core"]})), ["core@2026.12.1"]);
    assert_eq!(of(json!({"as_of": "2026-11-30T23:59:59Z"})), ["core@2026.11.1"]);
    // The date means its end at the place: 30 November ends in Los Angeles at 8:00 UTC on 1 December (IANA time zone database).
    assert_eq!(of(json!({"as_of": "2026-11-30"})), ["core@2026.12.1"]);
    let cut = |more: Value| {
        let reply = ask(&rules, &rose(&more), NOW).expect("an answer");
        let answer: Value = serde_json::from_str(&reply.text).expect("JSON");
        let has = |list: &str| {
            answer[list].as_array().is_some_and(|all| all.iter().any(|one| one["id"] == "rose.renewal-cut"))
        };
        (has("tasks"), has("held"))
    };
    assert_eq!(cut(json!({"as_of": "2026-11-15"})), (true, false));
    assert_eq!(cut(json!({"as_of": "2026-12-15"})), (false, true));
}

#[test]
fn a_moment_that_can_t_be_had_is_refused_with_the_reason() {
    let (first, second) = (first(), second());
    let rules = serving(&[&first, &second]);
    assert_eq!(
        refused(&rules, &json!({"as_of": "2027-02-02"})),
        ["/as_of expected a moment, or the end of a day, that is over"]
    );
    assert_eq!(refused(&rules, &json!({"as_of": "2027-02-01T12:00:01Z"})).len(), 1);
    assert_eq!(
        refused(&rules, &json!({"as_of": "2026-10-30"})),
        ["/as_of the rule set `core` was first published at 2026-11-01T00:00:00Z"]
    );
    assert_eq!(
        refused(&rules, &json!({"as_of": "2026-12-15", "rule_sets": ["core@2026.11.1"]})),
        ["/as_of expected a date or pinned versions in `rule_sets`, found both"]
    );
    assert_eq!(
        refused(&rules, &json!({"rule_sets": ["core@2026.1.1"]})),
        ["/rule_sets/0 unknown rule set `core@2026.1.1`, expected `core@2026.12.1` or `core@2026.11.1`"]
    );
    assert_eq!(
        refused(&rules, &json!({"rule_sets": ["south"]})),
        ["/rule_sets/0 unknown rule set `south`, expected `core` or `core@2026.12.1`"]
    );
    let folder = Rules::of(compiled(&Release { published_at: None, ..(*first).clone() }), &RuleSettings::default());
    assert_eq!(
        versions(&ask(&folder, &rose(&json!({"rule_sets": ["core@2026.11.1"]})), NOW).expect("an answer")),
        ["core@2026.11.1"]
    );
}

#[test]
fn a_version_that_was_taken_back_still_answers_and_says_so() {
    let first = first();
    let mut taken = (*second()).clone();
    taken.withdrawn =
        Some(Withdrawn { at: moment("2026-12-03T00:00:00Z"), because: "The cut waited too often.".to_owned() });
    let rules = serving(&[&first, &Arc::new(taken)]);
    let reply = ask(&rules, &rose(&json!({})), NOW).expect("an answer");
    assert_eq!(versions(&reply), ["core@2026.11.1"], "the newest is one that holds");
    assert!(!reply.text.contains("withdrawn"));
    let pinned = ask(&rules, &rose(&json!({"rule_sets": ["core@2026.12.1"]})), NOW).expect("an answer");
    let answer: Value = serde_json::from_str(&pinned.text).expect("JSON");
    assert_eq!(
        answer["withdrawn"],
        json!([{"name": "core", "version": "2026.12.1", "since": "2026-12-03T00:00:00Z", "because": "The cut waited too often."}])
    );
}

#[test]
fn house_rules_are_laid_over_the_core_that_they_fit_and_few_are_kept() {
    let (first, second) = (first(), second());
    let withheld = "- withhold: rose.renewal-cut\n  because: {en: Not here., es: Aquí no.}\n";
    let plain = house(&[("rules/house.yaml", withheld)]);
    let rules = serving(&[&first, &second, &plain]);
    let both = json!({"rule_sets": ["core", "house"]});
    let reply = ask(&rules, &rose(&both), NOW).expect("an answer");
    assert_eq!(versions(&reply), ["core@2026.12.1", "house@2026.11.5"]);
    assert!(reply.text.contains("\"kind\":\"withheld\",\"because\":\"Not here.\""));
    assert_eq!(
        refused(&rules, &json!({"rule_sets": ["house"]})),
        ["/rule_sets/0 `house` lies over `core`, which must stand before it"]
    );
    assert_eq!(
        refused(&rules, &json!({"rule_sets": ["core", "core@2026.11.1"]})),
        ["/rule_sets/1 the rule set `core` stands twice"]
    );
    for sets in
        [json!(["core@2026.11.1"]), json!(["core@2026.11.1", "house"]), json!(["core@2026.12.1", "house@2026.11.5"])]
    {
        ask(&rules, &rose(&json!({"rule_sets": sets})), NOW).expect("an answer");
    }
    assert!(rules.stacks().len() <= 3, "{}", rules.stacks().len());
    // A house that has seen the first core's cut stays with it until somebody has looked.
    let (pack, _) = lammas_engine::layer::read_layers(&[first.files.to_vec()]).expect("it is read");
    let cut = pack.rules.iter().find(|filed| filed.entry.id.value == "rose.renewal-cut").expect("the cut");
    let seen = lammas_engine::layer::seen(&cut.entry);
    let words = format!("- reword: rose.renewal-cut\n  expects: \"{seen}\"\n  title: {{en: Cut for the late flush}}\n");
    let rules = serving(&[&first, &second, &house(&[("rules/house.yaml", &words)])]);
    assert_eq!(versions(&ask(&rules, &rose(&both), NOW).expect("an answer")), ["core@2026.11.1", "house@2026.11.5"]);
    let pinned = refused(&rules, &json!({"rule_sets": ["core@2026.12.1", "house"]}));
    assert!(
        pinned[0].starts_with(
            "/rule_sets `core@2026.12.1, house@2026.11.5` can't be laid over each other: house/rules/house.yaml:2:12"
        ),
        "{pinned:?}"
    );
}

#[test]
fn another_library_takes_the_place_of_the_old_one_at_once_or_not_at_all() {
    let (first, second) = (first(), second());
    let rules = serving(&[&first]);
    let library = Library::of([first, second]);
    let standard = |name: &str| vec![name.to_owned()];
    assert!(rules.take_library(library.clone(), standard("south")).is_err());
    assert_eq!(versions(&ask(&rules, &rose(&json!({})), NOW).expect("an answer")), ["core@2026.11.1"]);
    rules.take_library(library, standard("core")).expect("it is taken");
    assert_eq!(versions(&ask(&rules, &rose(&json!({})), NOW).expect("an answer")), ["core@2026.12.1"]);
}

/// Questions of many kinds, with their recall text.
fn questions() -> Vec<Value> {
    let mut all = Vec::new();
    let climates = [
        json!({"id": "hot-dry-valley"}),
        json!({"id": "cold-inland"}),
        json!({"id": "mild-maritime", "differences": {"nights_k": -2}}),
        json!({"latitude": 34.2, "longitude": -118.6}),
        json!({"latitude": -34.6, "elevation_m": 25, "normals": {
            "tmin_c": [20, 19, 17, 14, 11, 8, 8, 9, 11, 13, 16, 18], "tmax_c": [30, 29, 27, 23, 19, 16, 15, 17, 19, 23, 26, 29]}}),
    ];
    for (place, climate) in climates.iter().enumerate() {
        for (at, plant) in ["rose", "citrus", "lawn", "tomato", "hydrangea"].iter().enumerate() {
            for month in 0..12 {
                let mut question = json!({"climate": climate, "plant": {"type": plant}, "recall": true});
                if (month + at) % 4 != 0 {
                    question["date"] = json!(format!("2026-{:02}-{:02}", month + 1, 3 + place * 4));
                }
                if month % 3 == 0 {
                    question["history"] = json!([]);
                    question["condition"] = json!({"signs": []});
                }
                if month % 5 == 1 {
                    question["language"] = json!("es");
                    question["detail"] = json!(["brief", "full"][at % 2]);
                    question["units"] = json!(["us", "si"][place % 2]);
                    question["limit"] = json!(2);
                }
                if month % 4 == 2 {
                    question["site"] = json!({"soil": {"texture": "clay", "ph": 7.9}, "planting": "ground"});
                }
                all.push(question);
            }
        }
    }
    all
}

/// What `POST /v1/replay` says of something that was kept.
fn replayed(rules: &Rules, kept: &Value, now: &str) -> (Value, String) {
    let asked = serde_json::from_value(kept.clone()).expect("a request");
    let (text, _) =
        again::replay(&asked, None, rules, moment(now)).unwrap_or_else(|problem| panic!("{problem}: {kept}"));
    (serde_json::from_str(&text).expect("JSON"), text)
}

#[test]
fn three_hundred_recorded_answers_are_given_again_byte_for_byte_after_several_releases() {
    let (first, second, third) = (first(), second(), third());
    let mut taken = (*second).clone();
    taken.withdrawn = Some(Withdrawn { at: moment("2027-01-05T00:00:00Z"), because: "Too strict.".to_owned() });
    let stages = [
        (vec![first.clone()], "2026-11-20T12:00:00Z"),
        (vec![first.clone(), second], "2026-12-20T12:00:00Z"),
        (vec![first, Arc::new(taken), third], "2027-01-20T12:00:00Z"),
    ];
    let rules = serving(&[&stages[0].0[0]]);
    let mut recorded: Vec<(Value, String)> = Vec::new();
    let questions = questions();
    assert!(questions.len() >= 300, "{}", questions.len());
    for (number, (releases, now)) in stages.iter().enumerate() {
        rules.take_library(Library::of(releases.clone()), vec!["core".to_owned()]).expect("it is taken");
        for question in questions.iter().skip(number).step_by(stages.len()) {
            recorded.push((question.clone(), ask(&rules, question, now).expect("an answer").text));
        }
    }
    let mut longest = 0;
    let mut sets = std::collections::BTreeMap::<String, usize>::new();
    for (question, text) in &recorded {
        let answer: Value = serde_json::from_str(text).expect("JSON");
        let recall = answer["recall"].as_str().unwrap_or_else(|| panic!("no recall text: {question}"));
        longest = longest.max(recall.len());
        let (again, raw) = replayed(&rules, &json!({"recall": recall}), "2028-06-01T00:00:00Z");
        assert_eq!(again["same"], "same", "{question}: {}", again["differs"]);
        assert!(raw.ends_with(&format!("\"answer\":{text}}}")), "{question}: the bytes differ");
        *sets.entry(again["rule_sets"][0]["version"].to_string()).or_default() += 1;
    }
    assert_eq!(sets.len(), 3, "answers of each release: {sets:?}");
    assert!(longest < 4096, "{longest}");
}

#[test]
fn an_answer_can_be_kept_in_four_ways() {
    let (first, second) = (first(), second());
    let rules = serving(&[&first]);
    let question = rose(&json!({"recall": true}));
    let text = ask(&rules, &question, NOW).expect("an answer").text;
    let answer: Value = serde_json::from_str(&text).expect("JSON");
    let plain = json!({"climate": {"id": "hot-dry-valley"}, "plant": {"type": "rose"}, "date": "2026-09-15"});
    let short: Value = serde_json::from_str(&ask(&rules, &plain, NOW).expect("an answer").text).expect("JSON");
    assert_eq!(short["reference"], "hot-dry-valley/rose/2026-09-15/core@2026.11.1");
    assert!(answer.get("reference").is_none(), "signs can't be said over the telephone in one line");
    rules.take_library(Library::of([first, second]), vec!["core".to_owned()]).expect("it is taken");
    let same = |kept: Value| {
        let (again, _) = replayed(&rules, &kept, NOW);
        (again["from"].as_str().unwrap_or("").to_owned(), again["same"].as_str().unwrap_or("").to_owned())
    };
    let is = |from: &str, same: &str| (from.to_owned(), same.to_owned());
    assert_eq!(same(json!({"recall": answer["recall"]})), is("recall", "same"));
    assert_eq!(same(json!({"answer": answer})), is("recall", "same"));
    assert_eq!(same(json!({"answer": short})), is("reference", "same"));
    assert_eq!(same(json!({"reference": short["reference"]})), is("reference", "not-compared"));
    let mut bare = question.clone();
    bare["recall"] = json!(false);
    assert_eq!(same(json!({"request": bare, "digest": answer["digest"]})), is("request", "same-decision"));
    let mut without = answer.clone();
    without.as_object_mut().expect("members").shift_remove("recall");
    assert_eq!(same(json!({"request": bare, "answer": without})), is("request", "same"));
    assert_eq!(same(json!({"request": bare, "digest": "00".repeat(32)})), is("request", "differs"));
}

#[test]
fn where_the_answer_of_now_is_another_the_rules_that_differ_are_told_with_the_reason() {
    let (first, second) = (first(), second());
    let old = serving(&[&first]);
    let question = rose(&json!({}));
    let then: Value = serde_json::from_str(&ask(&old, &question, NOW).expect("an answer").text).expect("JSON");
    let new = serving(&[&second]);
    let kept = json!({"request": question, "digest": then["digest"], "answer": {"tasks": then["tasks"], "held": then["held"], "depends_on": then["depends_on"]}});
    let (again, _) = replayed(&new, &kept, NOW);
    assert_eq!(again["same"], "differs");
    let cut = again["differs"]
        .as_array()
        .expect("a list")
        .iter()
        .find(|one| one["rule"] == "rose.renewal-cut")
        .expect("the cut");
    assert!(cut["then"].as_str().is_some_and(|then| then.starts_with("advised, place")), "{cut}");
    assert_eq!(cut["now"], "held: hold");
    assert!(cut["because"].as_str().is_some_and(|because| because.contains("warmth")), "{cut}");
    assert_eq!(again["then"]["tasks"], then["tasks"]);
}

#[test]
fn what_can_t_be_given_again_is_refused_with_the_reason() {
    let (first, second) = (first(), second());
    let rules = serving(&[&first]);
    let refused = |rules: &Rules, kept: &Value| -> Vec<String> {
        let asked = serde_json::from_value(kept.clone()).expect("a request");
        let problem = again::replay(&asked, None, rules, moment(NOW)).expect_err("it is refused");
        assert_eq!(problem.kind().status, 422, "{problem}");
        problem.errors().iter().map(|error| format!("{} {}", error.pointer, error.detail)).collect()
    };
    assert_eq!(
        refused(&rules, &json!({})),
        ["/recall expected `recall`, `answer`, `request` with its `digest`, or `reference`"]
    );
    assert!(refused(&rules, &json!({"recall": "hello"}))[0].starts_with("/recall this is no recall text"));
    assert!(refused(&rules, &json!({"reference": "valley"}))[0].starts_with("/reference expected a reference such as"));
    let gone = refused(&rules, &json!({"reference": "hot-dry-valley/rose/2026-09-15/core@2020.1.1"}));
    assert!(gone[0].starts_with("/reference unknown rule set `core@2020.1.1`"), "{gone:?}");
    assert_eq!(
        refused(&rules, &json!({"request": rose(&json!({}))})),
        ["/digest expected the `digest` of the answer beside its request"]
    );
    let undated = json!({"climate": {"id": "hot-dry-valley"}, "plant": {"type": "rose"}});
    assert_eq!(
        refused(&rules, &json!({"request": undated, "digest": "00"})),
        ["/request/date expected the date for which it was answered"]
    );
    let unknown = json!({"request": rose(&json!({"plant": {"type": "triffid"}})), "digest": "00"});
    assert!(refused(&rules, &unknown)[0].starts_with("/request/plant/type "), "{:?}", refused(&rules, &unknown));
    let text = ask(&rules, &rose(&json!({"recall": true})), NOW).expect("an answer").text;
    let answer: Value = serde_json::from_str(&text).expect("JSON");
    let elsewhere = refused(&serving(&[&second]), &json!({"answer": answer}));
    assert!(elsewhere[0].starts_with("/answer/recall the release `core@2026.11.1` ("), "{elsewhere:?}");
    assert!(elsewhere[0].ends_with("is not kept here"), "{elsewhere:?}");
}
