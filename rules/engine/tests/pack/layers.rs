//! A set laid over another: who speaks, what is held, what is said, by which hash it is known.

use lammas_agronomy::profile::Profile;
use lammas_agronomy::season::SiteShift;
use lammas_engine::compile::set::Set;
use lammas_engine::explain::whole::{self, Extent};
use lammas_engine::layer::{check_layers, compile_layers, read_layers};
use lammas_engine::question::Climate;
use lammas_engine::question::said::Said;
use lammas_engine::question::understand::{profile, understand};
use lammas_engine::read::PackFile;
use lammas_engine::version::hash;
use serde_json::{Value, json};

use crate::support::MINI;

fn file(path: &str, text: &str) -> PackFile {
    PackFile { path: path.to_owned(), text: text.to_owned() }
}

fn mini() -> Vec<PackFile> {
    MINI.iter().map(|(path, text)| file(path, text)).collect()
}

fn set_over(name: &str, over: &str, files: &[(&str, &str)]) -> Vec<PackFile> {
    let header =
        format!("name: {name}\nversion: \"2026.9.1\"\nlanguages: [en, es]\ntitle: {{en: T, es: T}}\nover: {over}\n");
    let mut all = vec![file("pack.yaml", &header)];
    all.extend(files.iter().map(|(path, text)| file(path, text)));
    all
}

const BECAUSE: &str = "because: {en: The house says so., es: Lo dice la casa.}";

fn house(rules: &str) -> Vec<PackFile> {
    set_over("house", "[mini]", &[("rules/house.yaml", rules)])
}

fn compiled(layers: &[Vec<PackFile>]) -> Set {
    let (set, faults) = compile_layers(layers);
    set.unwrap_or_else(|| panic!("{}", faults.iter().map(ToString::to_string).collect::<Vec<_>>().join("\n")))
}

fn climate(set: &Set) -> Profile {
    profile(&set.pack.climates[0].entry.profile, "").expect("a profile")
}

fn answer(set: &Set, more: &Value) -> Value {
    let mut asked = json!({
        "date": "2026-09-15",
        "plant": {"type": "rose", "age_years": 4.0, "traits": {"flowering": "repeat"}},
        "condition": {"signs": [{"sign": "spent-blooms"}]},
        "history": []
    });
    for (name, value) in more.as_object().into_iter().flatten() {
        asked[name] = value.clone();
    }
    let said: Said = serde_json::from_value(asked).expect("a question");
    let climate = std::sync::Arc::new(Climate::new(None, climate(set), SiteShift::default()));
    let question = understand(&said, set, climate, None).expect("it is understood");
    let answer = whole::answer(set, &question, "en", Extent::FULL).expect("an answer");
    serde_json::to_value(answer).expect("JSON")
}

fn entry<'a>(answer: &'a Value, list: &str, id: &str) -> Option<&'a Value> {
    answer[list].as_array()?.iter().find(|entry| entry["id"] == id)
}

/// The hash that the checker names for an entry.
fn seen(layers: &[Vec<PackFile>], id: &str) -> String {
    let (pack, _) = read_layers(layers).expect("it is laid");
    let filed = pack.rules.iter().find(|filed| filed.entry.id.value == id).expect("the rule");
    lammas_engine::layer::seen(&filed.entry)
}

#[test]
fn each_answer_names_the_sets_lowest_first_and_its_digest_hangs_on_all_of_them() {
    let alone = compiled(&[mini()]);
    let note = "- id: rose.house-note\n  kind: know\n  title: {en: N, es: N}\n  for: {plant: rose}\n  when: \"signs has spent-blooms\"\n  evidence: consensus\n  strength: do\n  why: {en: W., es: W.}\n  sources: [recalled]\n";
    let layers = [mini(), house(note)];
    let both = compiled(&layers);
    let (below, above) = (answer(&alone, &json!({})), answer(&both, &json!({})));
    let names = |answer: &Value| -> Vec<String> {
        answer["rule_sets"]
            .as_array()
            .expect("sets")
            .iter()
            .map(|set| set["name"].as_str().unwrap_or("").to_owned())
            .collect()
    };
    assert_eq!((names(&below), names(&above)), (vec!["mini".to_owned()], vec!["mini".to_owned(), "house".to_owned()]));
    assert_eq!(below["asked"], above["asked"]);
    assert_ne!(below["digest"], above["digest"]);
    assert_eq!(below["rule_sets"][0]["sha256"], above["rule_sets"][0]["sha256"], "the lower set is what it was");
    assert_eq!(entry(&above, "notes", "rose.house-note").map(|note| &note["title"]), Some(&json!("N")));
    assert_eq!(above["tasks"].as_array().map(Vec::len), below["tasks"].as_array().map(Vec::len));
}

#[test]
fn a_withheld_rule_is_held_with_the_words_of_the_house_and_holds_nobody() {
    let alone = compiled(&[mini()]);
    let layers = [mini(), house(&format!("- withhold: rose.renewal-cut\n  {BECAUSE}\n"))];
    let both = compiled(&layers);
    let (below, above) = (answer(&alone, &json!({})), answer(&both, &json!({})));
    assert!(entry(&below, "tasks", "rose.renewal-cut").is_some(), "{}", below["held"]);
    let held = entry(&above, "held", "rose.renewal-cut").expect("it is held");
    assert_eq!((&held["kind"], &held["because"]), (&json!("withheld"), &json!("The house says so.")));
    assert_eq!(held["rule_set"], "mini");
    assert_eq!(held.get("look_again"), None);
    assert!(entry(&above, "tasks", "rose.renewal-cut").is_none());
    // Where it would not come at all it is not told of.
    let faded = json!({"condition": {"signs": [], "not_seen": ["spent-blooms"]}});
    assert!(entry(&answer(&both, &faded), "held", "rose.renewal-cut").is_none());
}

#[test]
fn a_task_says_which_set_gave_it_its_meaning_and_which_reworded_or_tightened_it() {
    let feed = seen(&[mini()], "rose.feed");
    let soak = seen(&[mini()], "rose.soak");
    let words = format!(
        "- reword: rose.feed\n  expects: \"{feed}\"\n  title: {{en: Feed the roses}}\n\
         - replace: rose.soak\n  expects: \"{soak}\"\n  {BECAUSE}\n  job: water\n  title: {{en: Water, es: Riegue}}\n  for: {{plant: rose}}\n  \
         rank: {{urgency: 2, impact: 2}}\n  evidence: consensus\n  strength: do\n  why: {{en: It is dry., es: Hay sequía.}}\n  steps: {{en: [Water.], es: [Riegue.]}}\n  sources: [recalled]\n"
    );
    let both = compiled(&[mini(), house(&words)]);
    let spring = answer(&both, &json!({"date": "2026-05-05"}));
    let soak = entry(&spring, "tasks", "rose.soak").expect("it is advised");
    assert_eq!((&soak["rule_set"], &soak["version"], &soak["also"]), (&json!("house"), &json!("2026.9.1"), &json!([])));
    let feed = entry(&spring, "tasks", "rose.feed").expect("it is advised");
    assert_eq!((&feed["rule_set"], &feed["also"]), (&json!("mini"), &json!(["house"])));
    assert_eq!(feed["title"], "Feed the roses");
}

#[test]
fn a_tightened_rule_waits_in_more_cases_and_a_fault_in_the_new_hold_stands_in_the_house_s_file() {
    let feed = seen(&[mini()], "rose.feed");
    let words = |condition: &str| {
        format!(
            "- tighten: rose.feed\n  expects: \"{feed}\"\n  {BECAUSE}\n  hold:\n    - if: \"{condition}\"\n      because: {{en: Too young., es: Demasiado joven.}}\n"
        )
    };
    let both = compiled(&[mini(), house(&words("plant.age < 6 years"))]);
    let spring = answer(&both, &json!({"date": "2026-05-05"}));
    let held = entry(&spring, "held", "rose.feed").expect("it is held");
    assert_eq!((&held["kind"], &held["because"]), (&json!("hold"), &json!("Too young.")));
    let checked = check_layers(&[mini(), house(&words("plant.agee < 6 years"))]);
    let fault = checked.faults.first().expect("a fault");
    assert_eq!((fault.code, fault.place.to_string().as_str()), ("unknown-fact", "house/rules/house.yaml:5:12"));
}

#[test]
fn a_fault_of_words_from_above_stands_where_they_were_written() {
    let feed = seen(&[mini()], "rose.feed");
    let words = format!("- reword: rose.feed\n  expects: \"{feed}\"\n  title: {{en: Feed in May}}\n");
    let checked = check_layers(&[mini(), house(&words)]);
    let fault = checked.faults.first().expect("a fault");
    assert_eq!((fault.code, fault.place.file.as_str(), fault.place.line), ("month-named", "house/rules/house.yaml", 1));
    assert!(fault.related.iter().any(|(place, _)| place.file == "mini/rules/rose.yaml"), "{fault}");
}

#[test]
fn of_two_sets_that_speak_of_one_entry_the_upper_wins_and_a_finding_says_so() {
    let feed = seen(&[mini()], "rose.feed");
    let title =
        |feed: &str, title: &str| format!("- reword: rose.feed\n  expects: \"{feed}\"\n  title: {{en: {title}}}\n");
    let lower = house(&title(&feed, "Feed the roses"));
    let after = seen(&[mini(), lower.clone()], "rose.feed");
    assert_ne!(feed, after);
    let upper = set_over("street", "[mini, house]", &[("rules/street.yaml", &title(&after, "Feed every rose"))]);
    let layers = [mini(), lower, upper];
    let checked = check_layers(&layers);
    let said: Vec<(&str, &str)> = checked.faults.iter().map(|fault| (fault.code, fault.place.file.as_str())).collect();
    assert_eq!(said, [("changed-twice", "street/rules/street.yaml")]);
    let set = checked.set.expect("it loads");
    let spring = answer(&set, &json!({"date": "2026-05-05"}));
    let feed = entry(&spring, "tasks", "rose.feed").expect("it is advised");
    assert_eq!((&feed["title"], &feed["also"]), (&json!("Feed every rose"), &json!(["house", "street"])));
}

#[test]
fn a_set_is_known_by_what_it_says_itself_and_other_words_are_no_other_meaning() {
    let read = |files: &[PackFile]| lammas_engine::read::read(files).expect("it can be read");
    let withheld = read(&house(&format!("- withhold: rose.soak\n  {BECAUSE}\n")));
    let other = read(&house("- withhold: rose.soak\n  because: {en: Another reason., es: Otra razón.}\n"));
    let more =
        read(&house(&format!("- withhold: rose.soak\n  {BECAUSE}\n- reword: rose.feed\n  title: {{en: Feed them}}\n")));
    let none = read(&house(&format!("- withhold: rose.feed\n  {BECAUSE}\n")));
    assert_ne!(hash::of_pack(&withheld), hash::of_pack(&other));
    assert_eq!(hash::of_meaning(&withheld), hash::of_meaning(&other));
    assert_ne!(hash::of_pack(&withheld), hash::of_pack(&more));
    assert_eq!(hash::of_meaning(&withheld), hash::of_meaning(&more));
    assert_ne!(hash::of_meaning(&withheld), hash::of_meaning(&none));
}

#[test]
fn a_set_that_lies_over_another_says_so_and_finds_it_there() {
    let note = format!("- withhold: rose.soak\n  {BECAUSE}\n");
    let says = |layers: &[Vec<PackFile>]| {
        let faults = check_layers(layers).faults;
        faults.iter().map(|fault| format!("{} {}", fault.place, fault.code)).collect::<Vec<_>>()
    };
    assert_eq!(says(&[house(&note)]), ["rules/house.yaml:1:13 nothing-below"]);
    let elsewhere = set_over("house", "[core]", &[("rules/house.yaml", &note)]);
    assert_eq!(says(&[mini(), elsewhere]), ["house/pack.yaml:5:8 nothing-below"]);
    let mut silent = house(&note);
    silent[0].text = silent[0].text.replace("over: [mini]\n", "");
    assert_eq!(says(&[mini(), silent]), ["house/pack.yaml:1:7 missing-field"]);
    assert_eq!(says(&[mini(), house(&note)]), Vec::<String>::new());
}

#[test]
fn a_word_that_does_not_stand_first_is_told_where_it_belongs() {
    let words = format!("- {BECAUSE}\n  withhold: rose.soak\n");
    let checked = check_layers(&[mini(), house(&words)]);
    let fault = checked.faults.first().expect("a fault").to_string();
    assert!(
        fault.starts_with("house/rules/house.yaml:1:3: error[wrong-shape]: there is no field `because` here"),
        "{fault}"
    );
    let words = "- title: {en: T, es: T}\n  reword: rose.soak\n";
    let fault = check_layers(&[mini(), house(words)]).faults.first().expect("a fault").to_string();
    assert!(fault.contains("help: `reword` stands first in its entry: `- reword: ID`"), "{fault}");
}

#[test]
fn the_scenarios_of_layers_are_those_of_the_uppermost_set() {
    let scenario = "name: \"The soak is held\"\nask:\n  climate: {id: valley}\n  date: 2026-07-15\n  plant: {type: rose}\nexpect:\n  held: [{rule: rose.soak, kind: withheld}]\n";
    let note = format!("- withhold: rose.soak\n  {BECAUSE}\n");
    let house = set_over("house", "[mini]", &[("rules/house.yaml", &note), ("scenarios/soak.yaml", scenario)]);
    let set = compiled(&[mini(), house]);
    let outcomes = lammas_engine::scenario::run_all(&set);
    assert_eq!(outcomes.len(), 1);
    assert!(outcomes[0].passed(), "{:?}", outcomes[0].differs);
}
