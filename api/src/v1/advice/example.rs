//! The example of the document: the hot dry valley in September, and a brief answer to it.

use serde_json::{Value, json};

/// A question.
pub(crate) fn request() -> Value {
    json!({
        "climate": {"id": "hot-dry-valley"},
        "date": "2026-09-15",
        "plant": {"type": "rose", "traits": {"flowering": "repeat"}, "age_years": 4},
        "site": {"planting": "ground", "soil": {"texture": "clay-loam", "ph": 8.2}},
        "water": {"method": "basin", "source_alkaline": true},
        "condition": {"signs": [{"sign": "spent-blooms"}, {"sign": "scorched-petals"}, {"sign": "crowded-centre"}]},
        "detail": "brief", "limit": 1
    })
}

/// An answer to it.
pub(crate) fn answer() -> Value {
    serde_json::from_str(include_str!("example.json")).unwrap_or_default()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::v1::advice::answer::AdviceAnswer;

    #[test]
    fn the_example_is_an_answer() {
        let read: AdviceAnswer = serde_json::from_value(answer()).expect("it fits");
        assert_eq!(serde_json::to_value(read).expect("JSON"), answer());
    }
}
