//! The kinds of defects, and how each is planted into a healthy set.

use serde_json::{Value as Json, json};

use super::garden::{Draws, Garden};

/// A defect that was planted: whichever finding of its code names one of these finds it.
pub(crate) struct Planted {
    pub(crate) ids: Vec<String>,
}

type Plant = fn(&mut Garden, &mut Draws) -> Option<Planted>;

/// A kind of defect: what it is, the code that must find it, how it is planted.
pub(crate) struct Kind {
    pub(crate) name: &'static str,
    pub(crate) code: &'static str,
    pub(crate) plant: Plant,
}

const fn kind(name: &'static str, code: &'static str, plant: Plant) -> Kind {
    Kind { name, code, plant }
}

/// Every kind.
pub(crate) const KINDS: [Kind; 20] = [
    kind("leave alone what a task orders", "contradiction", leave_alone),
    kind("opposed works of one class", "contradiction", opposed),
    kind("a guard that covers a task", "never-applies", covering_guard),
    kind("a hold that is always true", "never-applies", constant_hold),
    kind("a condition true nowhere", "never-true", impossible),
    kind("a hold true nowhere", "never-true", impossible_hold),
    kind("two bounds of one fact that exclude each other", "never-holds", crossed_bounds),
    kind("window and condition apart", "never-due", out_of_season),
    kind("a window that opens nowhere", "window-never-opens", shut_window),
    kind("a task behind a safer one", "masked", beaten),
    kind("a task inside a wider one", "masked", narrower),
    kind("the same rule in other words", "duplicate-in-meaning", copied),
    kind("a reckoned amount above the maximum", "reckoned-above-maximum", too_much_reckoned),
    kind("a usual amount above the maximum", "amount-above-maximum", too_much),
    kind("an order in a circle", "order-in-a-circle", circle),
    kind("repeated sooner than its material allows", "separation-cannot-be-met", too_soon),
    kind("a hazardous material without a caution", "missing-caution", uncautioned),
    kind("a text in one language", "missing-translation", untranslated),
    kind("no source", "missing-source", unfounded),
    kind("a text quotes a fact that is not read", "unknown-placeholder", quoted),
];

fn text(entry: &Json, field: &str) -> String {
    entry[field].as_str().unwrap_or_default().to_owned()
}

fn is_task(rule: &Json) -> bool {
    // Nothing stands in the way of an emergency, and it hides behind nothing.
    rule["emergency"].is_null() && (rule["kind"] == "task")
}

fn is_guard(rule: &Json) -> bool {
    !rule["blocks"].is_null()
}

fn is_empty(rule: &Json, field: &str) -> bool {
    rule[field].is_null() || rule[field].as_array().is_some_and(Vec::is_empty)
}

/// One of the rules that are such.
fn pick(garden: &Garden, draws: &mut Draws, is_such: impl Fn(&Json) -> bool) -> Option<usize> {
    let such: Vec<usize> =
        garden.rules.iter().enumerate().filter(|(_, rule)| is_such(rule)).map(|(at, _)| at).collect();
    draws.one(&such).copied()
}

/// A rule of a few words, for the same plants as another.
fn new_rule(id: &str, like: &Json, fields: Json) -> Json {
    let mut rule = json!({
        "id": id, "title": {"en": "Something new", "es": "Algo nuevo"}, "for": like["for"],
        "evidence": "common-practice", "strength": "do",
        "why": {"en": "It was planted here.", "es": "Se plantó aquí."},
        "steps": {"en": ["Do it."], "es": ["Hágalo."]}, "sources": like["sources"],
    });
    if let (Some(rule), Json::Object(fields)) = (rule.as_object_mut(), fields) {
        rule.extend(fields.into_iter().filter(|(_, value)| !value.is_null()));
    }
    if rule["kind"] == "avoid" {
        rule.as_object_mut().expect("a rule").remove("steps");
    }
    rule
}

fn planted(ids: impl IntoIterator<Item = String>) -> Option<Planted> {
    Some(Planted { ids: ids.into_iter().collect() })
}

/// Takes what quotes facts out of the texts: the rule then may read others.
fn plain(value: &mut Json) {
    match value {
        Json::String(text) => {
            while let (Some(from), Some(to)) = (text.find('{'), text.find('}')) {
                if from > to {
                    break;
                }
                text.replace_range(from..=to, "so much");
            }
        }
        Json::Array(list) => list.iter_mut().for_each(plain),
        Json::Object(fields) => fields.values_mut().for_each(plain),
        _ => {}
    }
}

fn plain_texts(rule: &mut Json) {
    for field in ["why", "steps", "outside", "hold"] {
        plain(&mut rule[field]);
        if rule[field].is_null() {
            rule.as_object_mut().expect("a rule").remove(field);
        }
    }
}

fn leave_alone(garden: &mut Garden, draws: &mut Draws) -> Option<Planted> {
    let task = garden.rules[pick(garden, draws, |rule| is_task(rule) && rule["job"].is_string())?].clone();
    let id = "any.seeded-avoid".to_owned();
    let mut avoid = new_rule(&id, &task, json!({"kind": "avoid", "job": task["job"], "when": task["when"]}));
    avoid["strength"] = json!("avoid");
    if draws.below(2) == 0 && !is_empty(&task, "materials") {
        avoid["materials"] = task["materials"].clone();
    }
    garden.rules.push(avoid);
    planted([id])
}

fn opposed(garden: &mut Garden, draws: &mut Draws) -> Option<Planted> {
    let is_such =
        |rule: &Json| is_task(rule) && (rule["job"] == "feed" || rule["job"] == "prune" && rule["manner"] == "hard");
    let at = pick(garden, draws, is_such)?;
    let task = garden.rules[at].clone();
    garden.with_job("transplant");
    let id = "any.seeded-move".to_owned();
    let urgency = draws.below(4);
    garden.rules.push(new_rule(&id, &task, json!({"job": "transplant", "rank": {"urgency": urgency, "impact": 1}})));
    planted([id])
}

fn covering_guard(garden: &mut Garden, draws: &mut Draws) -> Option<Planted> {
    let task = garden.rules[pick(garden, draws, is_task)?].clone();
    let id = text(&task, "id");
    let mut guard =
        new_rule("guard.seeded", &task, json!({"kind": "avoid", "when": task["when"], "blocks": {"rules": [id]}}));
    guard["strength"] = json!("avoid");
    garden.rules.push(guard);
    planted([id])
}

fn constant_hold(garden: &mut Garden, draws: &mut Draws) -> Option<Planted> {
    let at = pick(garden, draws, |rule| is_task(rule) && !is_guard(rule))?;
    let rule = &mut garden.rules[at];
    let own = text(rule, "when");
    let always = [
        "soil.moisture in {dry, moist, wet}".to_owned(),
        "plant.age >= 0 years".to_owned(),
        "tmax >= tmin".to_owned(),
        "water.method = basin or water.method != basin".to_owned(),
        if own.is_empty() { "daylength >= 0 h".to_owned() } else { own },
    ];
    let condition = draws.one(&always)?.clone();
    let mut holds = rule["hold"].as_array().cloned().unwrap_or_default();
    holds.push(json!({"if": condition, "because": {"en": "Not now.", "es": "Ahora no."}}));
    rule["hold"] = Json::Array(holds);
    planted([text(rule, "id")])
}

const NOWHERE: [&str; 6] = [
    "climate.mild_winter and climate.cold_winter",
    "climate.frost_free and frost.chance > 50 %",
    "climate.wet_winter and climate.dry_winter",
    "tmin > tmax",
    "tmean > tmax + 0 K",
    "climate.extreme_min > 10 °C and frost.chance > 80 %",
];

fn impossible(garden: &mut Garden, draws: &mut Draws) -> Option<Planted> {
    let at = pick(garden, draws, |_| true)?;
    let rule = &mut garden.rules[at];
    let when = text(rule, "when");
    let nowhere = draws.one(&NOWHERE)?;
    rule["when"] = if when.is_empty() { json!(nowhere) } else { json!(format!("({when}) and {nowhere}")) };
    planted([text(rule, "id")])
}

fn impossible_hold(garden: &mut Garden, draws: &mut Draws) -> Option<Planted> {
    let at = pick(garden, draws, |rule| !is_guard(rule))?;
    let rule = &mut garden.rules[at];
    let mut holds = rule["hold"].as_array().cloned().unwrap_or_default();
    holds.push(json!({"if": draws.one(&NOWHERE)?, "because": {"en": "Not now.", "es": "Ahora no."}}));
    rule["hold"] = Json::Array(holds);
    planted([text(rule, "id")])
}

fn crossed_bounds(garden: &mut Garden, draws: &mut Draws) -> Option<Planted> {
    let at = pick(garden, draws, |_| true)?;
    let rule = &mut garden.rules[at];
    let when = text(rule, "when");
    let bound = 5 + draws.below(30);
    let crossed = format!("soil.ec < {bound} dS/m and soil.ec > {} dS/m", bound + 1);
    rule["when"] = if when.is_empty() { json!(crossed) } else { json!(format!("({when}) and {crossed}")) };
    planted(["soil.ec".to_owned()])
}

/// Windows with conditions that are never true while they are open.
const APART: [(&str, &str, &str); 5] = [
    ("longest_day - 20 days", "longest_day + 20 days", "daylength < 8 h"),
    ("shortest_day - 30 days", "shortest_day + 10 days", "daylength > 15 h"),
    ("first_frost.median", "first_frost.median + 3 weeks", "season.heat_left > 2000 °Cd"),
    ("last_frost.median - 10 days", "last_frost.median", "weeks_to(last_frost.median) > 3 weeks"),
    ("coldest_week - 1 week", "coldest_week + 1 week", "tmean > 34 °C and season.half != even"),
];

fn out_of_season(garden: &mut Garden, draws: &mut Draws) -> Option<Planted> {
    let at = pick(garden, draws, |rule| rule["law"].is_null() && is_empty(rule, "window"))?;
    let rule = &mut garden.rules[at];
    let (opens, closes, when) = *draws.one(&APART)?;
    rule["window"] = json!([{"opens": opens, "closes": closes}]);
    rule["when"] = json!(when);
    plain_texts(rule);
    planted([text(rule, "id")])
}

fn shut_window(garden: &mut Garden, draws: &mut Draws) -> Option<Planted> {
    let at = pick(garden, draws, |_| true)?;
    let rule = &mut garden.rules[at];
    let marker = draws.one(&["warmest_week", "coldest_week", "longest_day", "first_frost.median"])?;
    let days = 1 + draws.below(60);
    rule["window"] = json!([{"opens": marker, "closes": format!("{marker} - {days} days")}]);
    planted([text(rule, "id")])
}

fn beaten(garden: &mut Garden, draws: &mut Draws) -> Option<Planted> {
    let at = pick(garden, draws, |rule| {
        let job = rule["job"].as_str().unwrap_or_default();
        is_task(rule) && job != "water" && !job.starts_with("protect-")
    })?;
    let task = garden.rules[at].clone();
    garden.with_job("protect-frost");
    let id = text(&task, "id");
    let cover =
        new_rule("any.seeded-cover", &task, json!({"job": "protect-frost", "when": task["when"], "clashes": [id]}));
    garden.rules.push(cover);
    planted([id])
}

fn narrower(garden: &mut Garden, draws: &mut Draws) -> Option<Planted> {
    let quiet =
        ["scout", "mulch", "clean-up", "deadhead", "train", "harvest", "thin", "sow", "store", "propagate", "plant"];
    let is_such = |rule: &Json| {
        is_task(rule)
            && quiet.contains(&rule["job"].as_str().unwrap_or_default())
            && ["repeat", "alternate"].iter().all(|field| rule[*field].is_null())
            && ["materials", "keep_apart", "after", "clashes", "law"].iter().all(|field| is_empty(rule, field))
    };
    if !garden.rules.iter().any(is_such) {
        // A quiet work, where the set has none.
        let like = garden.rules[pick(garden, draws, |rule| is_task(rule) && rule["for"]["problem"].is_null())?].clone();
        garden.with_job("scout");
        garden.rules.push(new_rule(
            "any.seeded-scout",
            &like,
            json!({"kind": "task", "job": "scout", "when": like["when"]}),
        ));
    }
    let wide = garden.rules[pick(garden, draws, is_such)?].clone();
    let mut narrow = wide.clone();
    let id = "any.seeded-narrow".to_owned();
    let more = draws.one(&["plant.age > 2 years", "site.wind = windy", "soil.ph < 6.5", "vigour = weak"])?;
    let when = text(&wide, "when");
    narrow["id"] = json!(id);
    narrow["when"] = if when.is_empty() { json!(more) } else { json!(format!("({when}) and {more}")) };
    narrow["title"] = json!({"en": "Something new", "es": "Algo nuevo"});
    garden.rules.push(narrow);
    planted([id])
}

fn copied(garden: &mut Garden, draws: &mut Draws) -> Option<Planted> {
    let at = pick(garden, draws, |rule| rule["alternate"].is_null() && !is_guard(rule))?;
    let mut copy = garden.rules[at].clone();
    let id = if is_task(&copy) { "any.seeded-copy" } else { "any.seeded-note" }.to_owned();
    copy["id"] = json!(id);
    copy["title"] = json!({"en": "The same again", "es": "Otra vez lo mismo"});
    let when = text(&copy, "when");
    // The parts of a plain conjunction change places.
    if let Some((left, right)) = when.split_once(" and ").filter(|_| !when.contains('(') && !when.contains(" or ")) {
        copy["when"] = json!(format!("{right} and {left}"));
    }
    garden.rules.push(copy);
    planted([id])
}

fn too_much_reckoned(garden: &mut Garden, draws: &mut Draws) -> Option<Planted> {
    // Each with the most grams that it bears.
    let bears: Vec<(String, f64)> = garden
        .materials
        .iter()
        .filter(|material| material["hazard"] != "label" && material["hazard"] != "restricted")
        .filter_map(|material| {
            let grams = |max: &Json| max["value"].as_str()?.strip_suffix(" g")?.parse::<f64>().ok();
            let most = material["maximum"].as_array()?.iter().filter_map(grams).reduce(f64::max)?;
            Some((text(material, "id"), most))
        })
        .collect();
    let (material, most) = draws.one(&bears)?.clone();
    let plant = text(draws.one(&garden.plants)?, "id");
    let like = json!({"for": {"plant": plant}, "sources": garden.rules.first()?["sources"]});
    let id = "any.seeded-amount".to_owned();
    let (rate, percent) = (15 + draws.below(30), 5 + draws.below(15));
    #[expect(clippy::cast_precision_loss, reason = "small numbers")]
    let bearable = (most * percent as f64 / 100.0 / rate as f64).ceil();
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a small whole number")]
    let area = bearable as usize + 1 + draws.below(6);
    let amount = json!([{
        "what": {"en": "How much", "es": "Cuánto"}, "call": "product_for_rate",
        "with": {
            "nutrient_rate": format!("{rate} g/m²"),
            "area": format!("{area} m²"),
            "analysis": format!("{percent} %"),
        },
    }]);
    garden.rules.push(new_rule(&id, &like, json!({"job": "feed", "materials": [material], "amount": amount})));
    planted([id])
}

fn too_much(garden: &mut Garden, draws: &mut Draws) -> Option<Planted> {
    let bears: Vec<(String, String, f64)> = garden
        .materials
        .iter()
        .filter(|material| material["hazard"] != "label" && material["hazard"] != "restricted")
        .filter_map(|material| {
            let value = material["maximum"].as_array()?.first()?["value"].as_str()?.to_owned();
            let (number, unit) = value.split_once(' ')?;
            Some((text(material, "id"), unit.to_owned(), number.parse().ok()?))
        })
        .collect();
    let (material, unit, most) = draws.one(&bears)?.clone();
    let plant = text(draws.one(&garden.plants)?, "id");
    let like = json!({"for": {"plant": plant}, "sources": garden.rules.first()?["sources"]});
    #[expect(clippy::cast_precision_loss, reason = "a small number")]
    let more = most + 1.0 + draws.below(100) as f64;
    let amount = json!([{
        "what": {"en": "How much", "es": "Cuánto"}, "max_of": material,
        "typical": {"min": most / 2.0, "max": more.max(most * 1.5), "unit": unit},
    }]);
    let rule = new_rule("any.seeded-usual", &like, json!({"job": "feed", "materials": [material], "amount": amount}));
    garden.rules.push(rule);
    planted([material])
}

fn circle(garden: &mut Garden, draws: &mut Draws) -> Option<Planted> {
    let first = pick(garden, draws, is_task)?;
    let second = pick(garden, draws, is_task).filter(|second| *second != first)?;
    let ids = [text(&garden.rules[first], "id"), text(&garden.rules[second], "id")];
    for (rule, other) in [(first, &ids[1]), (second, &ids[0])] {
        let mut before = garden.rules[rule]["before"].as_array().cloned().unwrap_or_default();
        before.push(json!({"rule": other, "days": 0}));
        garden.rules[rule]["before"] = Json::Array(before);
    }
    planted(ids)
}

fn too_soon(garden: &mut Garden, draws: &mut Draws) -> Option<Planted> {
    let at = pick(garden, draws, |rule| rule["repeat"]["every"].is_string() && !is_empty(rule, "materials"))?;
    let rule = &mut garden.rules[at];
    let every = text(&rule["repeat"], "every");
    let longest: usize = every.split(' ').next()?.rsplit("..").next()?.parse().ok()?;
    let mut apart = rule["keep_apart"].as_array().cloned().unwrap_or_default();
    apart.push(json!({"material": rule["materials"][0], "days": longest + 1 + draws.below(20)}));
    rule["keep_apart"] = Json::Array(apart);
    planted([text(rule, "id")])
}

fn uncautioned(garden: &mut Garden, draws: &mut Draws) -> Option<Planted> {
    let hazardous: Vec<usize> =
        (0..garden.materials.len()).filter(|at| garden.materials[*at]["hazard"] == "label").collect();
    let material = &mut garden.materials[*draws.one(&hazardous)?];
    material["cautions"] = json!([]);
    planted([text(material, "id")])
}

fn untranslated(garden: &mut Garden, draws: &mut Draws) -> Option<Planted> {
    let at = pick(garden, draws, |_| true)?;
    let field = *draws.one(&["title", "why"])?;
    let rule = &mut garden.rules[at];
    rule[field].as_object_mut()?.remove("es");
    plain(&mut rule[field]);
    planted([text(rule, "id")])
}

fn unfounded(garden: &mut Garden, draws: &mut Draws) -> Option<Planted> {
    let at = pick(garden, draws, |_| true)?;
    garden.rules[at]["sources"] = json!([]);
    planted([text(&garden.rules[at], "id")])
}

fn quoted(garden: &mut Garden, draws: &mut Draws) -> Option<Planted> {
    let at = pick(garden, draws, |rule| !rule.to_string().contains("weather.leaf_wet"))?;
    let rule = &mut garden.rules[at];
    rule["why"] = json!({"en": "Wet for {weather.leaf_wet}.", "es": "Mojado {weather.leaf_wet}."});
    planted([text(rule, "id")])
}
