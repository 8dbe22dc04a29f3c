//! What was decided, in short: which rules were advised, held, or hung on something. Two of them tell which rules differ.

use serde::{Deserialize, Serialize};
use serde_json::Value;
use utoipa::ToSchema;

/// What was decided, in short.
#[derive(Clone, Debug, Default, PartialEq, Eq, Deserialize, Serialize)]
#[serde(deny_unknown_fields)]
pub struct Decided {
    /// Rules that were advised, in their order.
    pub tasks: Vec<String>,
    /// Rules that were held, each as `id kind`.
    pub held: Vec<String>,
    /// Rules that hung on something.
    pub depends: Vec<String>,
}

/// A rule of which something else was decided.
#[derive(Clone, Debug, PartialEq, Eq, Deserialize, Serialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct ReplayDiffers {
    /// The rule.
    #[schema(example = "rose.renewal-cut")]
    pub rule: String,
    /// What became of it then.
    #[schema(example = "advised, place 2")]
    pub then: String,
    /// What becomes of it now.
    #[schema(example = "held: hold")]
    pub now: String,
    /// Why, in the words of the answer of now.
    #[schema(example = "Too little warmth is left to ripen new shoots before frost.")]
    pub because: String,
}

impl Decided {
    /// What an answer says.
    #[must_use]
    pub fn of(answer: &Value) -> Self {
        let list = |name: &str| answer.get(name).and_then(Value::as_array).into_iter().flatten();
        let id = |entry: &Value| entry.get("id").and_then(Value::as_str).map(str::to_owned);
        let held = |entry: &Value| Some(format!("{} {}", id(entry)?, entry.get("kind")?.as_str()?));
        Self {
            tasks: list("tasks").chain(list("safety_of_cut")).filter_map(id).collect(),
            held: list("held").filter_map(held).collect(),
            depends: list("depends_on").filter_map(id).collect(),
        }
    }

    /// What became of a rule.
    fn of_rule(&self, rule: &str) -> String {
        if let Some(place) = self.tasks.iter().position(|id| id == rule) {
            return format!("advised, place {}", place + 1);
        }
        let held = self.held.iter().find_map(|held| held.split_once(' ').filter(|(id, _)| *id == rule));
        if let Some((_, kind)) = held {
            return format!("held: {kind}");
        }
        if self.depends.iter().any(|id| id == rule) { "depends".to_owned() } else { "not there".to_owned() }
    }

    /// The rules of which something else was decided, in their order then, what is new behind them.
    #[must_use]
    pub fn differing(&self, now: &Self, answer: &Value) -> Vec<ReplayDiffers> {
        let ids = |decided: &Self| -> Vec<String> {
            let held = decided.held.iter().filter_map(|held| held.split(' ').next().map(str::to_owned));
            decided.tasks.iter().cloned().chain(held).chain(decided.depends.iter().cloned()).collect()
        };
        let mut rules = ids(self);
        rules.extend(ids(now));
        let mut seen = Vec::new();
        rules.retain(|rule| {
            !seen.contains(rule) && {
                seen.push(rule.clone());
                true
            }
        });
        rules
            .into_iter()
            .filter_map(|rule| {
                let (was, is) = (self.of_rule(&rule), now.of_rule(&rule));
                (was != is).then(|| ReplayDiffers { because: because(&rule, answer), rule, then: was, now: is })
            })
            .collect()
    }
}

/// Why an answer says of a rule what it says.
fn because(rule: &str, answer: &Value) -> String {
    let find = |list: &str| {
        answer.get(list)?.as_array()?.iter().find(|entry| entry.get("id").and_then(Value::as_str) == Some(rule))
    };
    let text = |value: Option<&Value>| value.and_then(Value::as_str).map(str::to_owned);
    let words = |entry: &Value| {
        text(entry.get("because"))
            .or_else(|| text(entry.pointer("/reasons/0/text")))
            .or_else(|| {
                let on = entry.get("on")?.as_array()?;
                Some(on.iter().filter_map(Value::as_str).collect::<Vec<_>>().join(", "))
            })
            .unwrap_or_default()
    };
    ["tasks", "held", "depends_on"].into_iter().find_map(find).map(words).unwrap_or_default()
}

#[cfg(test)]
mod tests {
    use serde_json::json;

    use super::*;

    #[test]
    fn the_rules_that_differ_are_told_with_the_reason_of_now() {
        let then = json!({"tasks": [{"id": "a"}, {"id": "b"}], "held": [], "depends_on": [{"id": "d"}]});
        let now = json!({
            "tasks": [{"id": "b", "reasons": [{"text": "It is time."}]}],
            "held": [{"id": "a", "kind": "hold", "because": "Too cold."}],
            "depends_on": [{"id": "d", "on": ["soil.ph"]}, {"id": "e", "on": ["plant.age", "soil.ph"]}]
        });
        let differs = Decided::of(&then).differing(&Decided::of(&now), &now);
        let row = |rule: &str, then: &str, now: &str, because: &str| ReplayDiffers {
            rule: rule.into(),
            then: then.into(),
            now: now.into(),
            because: because.into(),
        };
        assert_eq!(
            differs,
            [
                row("a", "advised, place 1", "held: hold", "Too cold."),
                row("b", "advised, place 2", "advised, place 1", "It is time."),
                row("e", "not there", "depends", "plant.age, soil.ph"),
            ]
        );
        assert_eq!(Decided::of(&now).differing(&Decided::of(&now), &now), []);
    }
}
