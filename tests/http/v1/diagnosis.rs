use lammas::problem::kinds::{INVALID_REQUEST, UNKNOWN_CLIMATE, UNKNOWN_PLANT};
use lammas_tests::server::Server;
use serde_json::{Value, json};

fn ask(plant: &str, signs: &[&str]) -> Value {
    let signs: Vec<Value> = signs.iter().map(|sign| json!({"sign": sign})).collect();
    json!({"plant": {"type": plant}, "condition": {"signs": signs}})
}

fn ids<'a>(list: &'a Value, member: &str) -> Vec<&'a str> {
    list.as_array().expect("a list").iter().filter_map(|entry| entry[member].as_str()).collect()
}

fn cause<'a>(answer: &'a Value, id: &str) -> &'a Value {
    let causes = answer["causes"].as_array().expect("causes");
    causes.iter().find(|cause| cause["id"] == id).unwrap_or_else(|| panic!("no cause `{id}`: {answer}"))
}

#[test]
fn causes_are_ranked_and_each_says_which_signs_spoke() {
    let answer = Server::start().post("/v1/diagnosis", &ask("rose", &["pale-stippling", "webbing"])).ok();
    assert_eq!(answer["status"], "likely");
    let mites = &answer["causes"][0];
    assert_eq!((&mites["id"], &mites["likelihood"]), (&json!("spider-mites"), &json!("likely")));
    // A sign of every case makes 4 points, one of most cases 2; the weather is not known.
    assert_eq!(mites["points"], 6);
    let why = mites["why"].as_array().expect("why");
    let sum: i64 = why.iter().filter_map(|why| why["points"].as_i64()).sum();
    assert_eq!(sum, 6, "{mites}");
    let spoke: Vec<&str> =
        why.iter().filter(|why| why["is_so"] == true).filter_map(|why| why["sign"].as_str()).collect();
    assert_eq!(spoke, ["pale-stippling", "webbing"]);
    assert!(why.iter().any(|why| why["grade"] == "favours" && why["is_so"].is_null()), "{mites}");
}

#[test]
fn without_a_climate_the_weather_says_nothing_and_no_work_is_due() {
    let answer = Server::start().post("/v1/diagnosis", &ask("rose", &["pale-stippling"])).ok();
    assert!(answer["climate"].is_null() && answer["asked"]["climate"].is_null(), "{answer}");
    assert!(answer["asked"]["date"].is_null(), "today is no part of it: {answer}");
    assert_eq!((&answer["tasks"], &answer["held"]), (&json!([]), &json!([])));
    let treatments = &cause(&answer, "spider-mites")["treatments"];
    assert!(treatments.as_array().is_some_and(|all| all.iter().all(|one| one["outcome"].is_null())), "{treatments}");
    assert!(answer["remarks"][0].as_str().is_some_and(|remark| remark.contains("No climate was given")), "{answer}");
}

#[test]
fn what_the_caller_gave_counts_also_without_a_climate() {
    let mut question = ask("rose", &["yellow-between-veins"]);
    let server = Server::start();
    let points = |question: &Value| {
        let answer = server.post("/v1/diagnosis", question).ok();
        cause(&answer, "iron-chlorosis")["points"].as_i64().expect("points")
    };
    let bare = points(&question);
    question["site"] = json!({"soil": {"ph": 8.2}});
    question["water"] = json!({"source_alkaline": true});
    assert_eq!(points(&question), bare + 4, "two things that favour it, two points each");
}

#[test]
fn the_weather_of_the_place_speaks_where_a_climate_is_given() {
    let server = Server::start();
    let points = |climate: &str, date: &str| {
        let mut question = ask("rose", &["pale-stippling", "webbing"]);
        question["climate"] = json!({"id": climate});
        question["date"] = json!(date);
        cause(&server.post("/v1/diagnosis", &question).ok(), "spider-mites")["points"].as_i64().expect("points")
    };
    assert!(points("hot-dry-valley", "2026-08-15") > points("mild-maritime", "2026-05-15"));
}

#[test]
fn the_works_that_are_due_climb_the_ladder_and_safety_stands_at_each_rung() {
    let mut question = ask("rose", &["pale-stippling", "webbing"]);
    question["climate"] = json!({"id": "hot-dry-valley"});
    question["date"] = json!("2026-06-01");
    question["condition"]["signs"][0]["share_pct"] = json!(40);
    let answer = Server::start().post("/v1/diagnosis", &question).ok();
    let mites = cause(&answer, "spider-mites");
    assert_eq!(mites["threshold"]["reached"], true);
    let rungs = ids(&mites["treatments"], "rung");
    const LADDER: [&str; 5] = ["cultural", "mechanical", "biological", "material", "professional"];
    let places: Vec<_> = rungs.iter().map(|rung| LADDER.iter().position(|known| known == rung)).collect();
    assert!(places.is_sorted() && places.len() >= 2, "{rungs:?}");
    let tasks = ids(&answer["tasks"], "id");
    assert_eq!(tasks.first(), Some(&"rose.mite-wash"), "water before oil: {tasks:?}");
    for treatment in mites["treatments"].as_array().expect("treatments") {
        let is_material = treatment["rung"] == "material";
        assert!(!is_material || treatment["cautions"].as_array().is_some_and(|c| !c.is_empty()), "{treatment}");
    }
    assert!(answer["notice"].as_str().is_some_and(|notice| notice.contains("label")));
}

#[test]
fn the_sign_to_look_at_next_says_how_to_look_and_what_each_answer_leads_to() {
    let server = Server::start();
    let mut question = ask("rose", &["scorched-petals", "browned-petal-streaks"]);
    question["climate"] = json!({"id": "hot-dry-valley"});
    question["date"] = json!("2026-09-15");
    let answer = server.post("/v1/diagnosis", &question).ok();
    let look = &answer["look_next"];
    assert!(look["look"].as_str().is_some_and(|how| how.len() > 10), "{look}");
    let answers = look["answers"].as_array().expect("answers");
    assert_eq!(answers.len(), 3, "yes, no, can't tell");
    // What is foretold is what comes: each answer is put where its pointer says, and asked again.
    for foretold in &answers[..2] {
        let mut next = question.clone();
        let list = foretold["pointer"].as_str().and_then(|at| at.strip_suffix("/-")).expect("a list");
        let at = list.rsplit('/').next().expect("a name");
        let condition = next["condition"].as_object_mut().expect("an object");
        let entries = condition.entry(at).or_insert_with(|| json!([]));
        entries.as_array_mut().expect("a list").push(foretold["value"].clone());
        let then = server.post("/v1/diagnosis", &next).ok();
        let came: Vec<(&str, i64)> = then["causes"]
            .as_array()
            .expect("causes")
            .iter()
            .take(3)
            .map(|cause| (cause["id"].as_str().expect("an id"), cause["points"].as_i64().expect("points")))
            .collect();
        let said: Vec<(&str, i64)> = foretold["leads_to"]
            .as_array()
            .expect("causes")
            .iter()
            .map(|cause| (cause["id"].as_str().expect("an id"), cause["points"].as_i64().expect("points")))
            .collect();
        assert_eq!(came, said, "{foretold}");
    }
}

#[test]
fn a_hidden_sign_that_nobody_looked_for_stays_unknown() {
    let server = Server::start();
    let thrips = |question: &Value| {
        let answer = server.post("/v1/diagnosis", question).ok();
        let why = cause(&answer, "thrips")["why"].as_array().expect("why").clone();
        why.iter().find(|why| why["sign"] == "thrips-in-bloom").expect("the sign")["is_so"].clone()
    };
    let mut question = ask("rose", &["browned-petal-streaks"]);
    assert_eq!(thrips(&question), Value::Null);
    question["condition"]["looked_closely"] = json!(true);
    assert_eq!(thrips(&question), json!(false));
    question["condition"]["looked_closely"] = json!(false);
    question["condition"]["not_seen"] = json!(["thrips-in-bloom"]);
    assert_eq!(thrips(&question), json!(false));
}

#[test]
fn it_works_for_every_plant_and_in_spanish() {
    let server = Server::start();
    for (plant, sign, expected) in [
        ("rose", "white-powder", "powdery-mildew"),
        ("citrus", "winding-mines", "citrus-leafminer"),
        ("lawn", "turf-lifts", "white-grubs"),
    ] {
        let mut question = ask(plant, &[sign]);
        question["language"] = json!("es");
        let answer = server.post("/v1/diagnosis", &question);
        assert_eq!(answer.header("content-language"), "es");
        let answer = answer.ok();
        assert!(ids(&answer["causes"], "id").contains(&expected), "{plant}: {answer}");
        assert!(answer["notice"].as_str().is_some_and(|notice| notice.starts_with("La etiqueta")));
        assert!(answer["remarks"][0].as_str().is_some_and(|remark| remark.starts_with("No se dio")), "{answer}");
    }
}

#[test]
fn signs_that_no_problem_explains_are_said_to_be_so() {
    let answer = Server::start().post("/v1/diagnosis", &ask("rose", &["spent-blooms"])).ok();
    assert_eq!((&answer["status"], &answer["causes"]), (&json!("none"), &json!([])));
    assert!(
        answer["remarks"][0].as_str().is_some_and(|remark| remark.starts_with("Nothing that is known here")),
        "{answer}"
    );
}

#[test]
fn a_question_that_can_not_be_answered_names_every_place() {
    let server = Server::start();
    let at = |problem: &lammas::problem::wire::ProblemBody| {
        let mut at: Vec<String> = problem.errors.iter().map(|error| error.pointer.clone()).collect();
        at.sort();
        at
    };
    for nothing in [json!({}), json!({"signs": []})] {
        let question = json!({"plant": {"type": "rose"}, "condition": nothing});
        assert_eq!(at(&server.post("/v1/diagnosis", &question).problem(INVALID_REQUEST)), ["/condition/signs"]);
    }
    let question =
        json!({"plant": {"type": "roze"}, "condition": {"signs": [{"sign": "webing"}]}, "climate": {"id": "x"}});
    let problem = server.post("/v1/diagnosis", &question).problem(UNKNOWN_PLANT);
    assert_eq!(at(&problem), ["/climate/id", "/condition/signs/0/sign", "/plant/type"]);
    let question =
        json!({"plant": {"type": "rose"}, "condition": {"signs": [{"sign": "webbing"}]}, "climate": {"id": "x"}});
    let _ = server.post("/v1/diagnosis", &question).problem(UNKNOWN_CLIMATE);
    let problem = server.post("/v1/diagnosis", &json!({"plant": {"type": "rose"}})).problem(INVALID_REQUEST);
    assert_eq!(at(&problem), ["/condition"]);
}
