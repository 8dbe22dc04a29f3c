//! The recall text of an answer: its question and the hashes of its sets, as canonical JSON, deflated, in letters that fit into an
//! address. Nobody but its reader keeps it.

use std::io::{Read, Write};

use base64::Engine as _;
use base64::engine::general_purpose::URL_SAFE_NO_PAD;
use chrono::{DateTime, Utc};
use flate2::Compression;
use flate2::read::DeflateDecoder;
use flate2::write::DeflateEncoder;
use lammas_engine::version::canonical;
use serde::{Deserialize, Serialize};
use serde_json::Value;

use super::decided::Decided;

/// The longest recall text, in characters. A question that needs more is sent again by whoever kept it.
pub const LONGEST: usize = 4096;
/// The longest question that is read from one, in bytes.
const MOST_BYTES: u64 = 256 * 1024;
/// The form in which it is written.
const FORM: u8 = 1;

/// A set that spoke.
#[derive(Clone, Debug, PartialEq, Eq, Deserialize, Serialize)]
#[serde(deny_unknown_fields)]
pub struct RecalledSet {
    /// Its name.
    pub name: String,
    /// Its version.
    pub version: String,
    /// The hash of its content.
    pub sha256: String,
}

/// Weather that was kept for the climate of the question.
#[derive(Clone, Debug, PartialEq, Eq, Deserialize, Serialize)]
#[serde(deny_unknown_fields)]
pub struct RecalledWeather {
    /// As it is written into a file.
    pub text: String,
}

/// What an answer can be given again from.
#[derive(Clone, Debug, PartialEq, Deserialize, Serialize)]
#[serde(deny_unknown_fields)]
pub struct Recalled {
    /// The form in which this is written.
    pub form: u8,
    /// The request, as `POST /v1/advice` takes it; what was not said is left out.
    pub request: Value,
    /// The moment of asking, where the answer hangs on it: no date was said.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub at: Option<DateTime<Utc>>,
    /// The weather that was kept for the climate, if any was.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub weather: Option<RecalledWeather>,
    /// The sets, lowest first.
    pub rule_sets: Vec<RecalledSet>,
    /// The digest of the answer.
    pub digest: String,
    /// The hash of its text, without this recall text in it.
    pub text_sha256: String,
    /// The decision version of the engine.
    pub decision_version: u32,
    /// What was decided, in short.
    pub decided: Decided,
}

/// Why a text is no recall text.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
pub enum NotRecall {
    /// Another alphabet, or cut.
    #[error("this is no recall text, or not all of it: expected what stands behind `recall` in an answer")]
    Broken,
    /// A later form.
    #[error("this recall text was written by a later version of the service")]
    LaterForm,
}

impl Recalled {
    /// This form of it.
    pub(crate) const FORM: u8 = FORM;

    /// The text; none where it would be longer than [`LONGEST`].
    ///
    /// # Errors
    /// When it can't be written: the service broke.
    pub fn text(&self) -> std::io::Result<Option<String>> {
        let whole = canonical::text(&serde_json::to_value(self)?);
        let mut deflated = DeflateEncoder::new(Vec::new(), Compression::best());
        deflated.write_all(whole.as_bytes())?;
        let text = URL_SAFE_NO_PAD.encode(deflated.finish()?);
        Ok((text.len() < LONGEST).then_some(text))
    }

    /// What a text holds.
    ///
    /// # Errors
    /// [`NotRecall`] when it is none.
    pub fn read(text: &str) -> Result<Self, NotRecall> {
        let deflated = URL_SAFE_NO_PAD.decode(text.trim()).map_err(|_| NotRecall::Broken)?;
        let mut whole = String::new();
        DeflateDecoder::new(deflated.as_slice())
            .take(MOST_BYTES)
            .read_to_string(&mut whole)
            .map_err(|_| NotRecall::Broken)?;
        let value: Value = serde_json::from_str(&whole).map_err(|_| NotRecall::Broken)?;
        match value.get("form").and_then(Value::as_u64) {
            Some(form) if form > u64::from(FORM) => Err(NotRecall::LaterForm),
            _ => serde_json::from_value(value).map_err(|_| NotRecall::Broken),
        }
    }
}

/// A value without members that say nothing: `null`, empty lists and empty objects. An empty list of the history or of signs
/// says something, and stays.
#[must_use]
pub(crate) fn bare(value: Value) -> Value {
    const SAY_SOMETHING: [&str; 3] = ["history", "signs", "condition"];
    match value {
        Value::Object(map) => {
            let kept = map.into_iter().map(|(name, member)| (name, bare(member))).filter(|(name, member)| {
                let is_empty = match member {
                    Value::Null => return false,
                    Value::Array(list) => list.is_empty(),
                    Value::Object(map) => map.is_empty(),
                    Value::Bool(_) | Value::Number(_) | Value::String(_) => false,
                };
                !is_empty || SAY_SOMETHING.contains(&name.as_str())
            });
            Value::Object(kept.collect())
        }
        Value::Array(list) => Value::Array(list.into_iter().map(bare).collect()),
        other => other,
    }
}

#[cfg(test)]
mod tests {
    use serde_json::json;

    use super::*;

    fn recalled() -> Recalled {
        Recalled {
            form: FORM,
            request: json!({"climate": {"id": "hot-dry-valley"}, "plant": {"type": "rose"}}),
            at: Some("2026-09-15T19:00:00Z".parse().expect("a moment")),
            weather: None,
            rule_sets: vec![RecalledSet { name: "core".into(), version: "2026.11.1".into(), sha256: "ab".repeat(32) }],
            digest: "cd".repeat(32),
            text_sha256: "ef".repeat(32),
            decision_version: 1,
            decided: Decided::default(),
        }
    }

    #[test]
    fn what_is_written_is_read_again() {
        let text = recalled().text().expect("it is written").expect("it is short");
        assert!(text.bytes().all(|b| b.is_ascii_alphanumeric() || b == b'-' || b == b'_'), "{text}");
        assert_eq!(Recalled::read(&format!(" {text}\n")), Ok(recalled()));
    }

    #[test]
    fn what_is_no_recall_text_is_said_to_be_none() {
        let text = recalled().text().expect("it is written").expect("it is short");
        let cut = text.get(..text.len() - 10).expect("a part");
        for broken in ["", "hello", "!!", cut, "eJyrVkrLz1eyUkpKLFKqBQAdegQ0"] {
            assert_eq!(Recalled::read(broken), Err(NotRecall::Broken), "{broken}");
        }
        let later = Recalled { form: FORM + 1, ..recalled() }.text().expect("it is written").expect("it is short");
        assert_eq!(Recalled::read(&later), Err(NotRecall::LaterForm));
    }

    #[test]
    fn a_question_that_is_too_long_has_no_recall_text() {
        // What can't be made shorter: the digits of many hashes.
        let noise: Vec<String> = (0..200).map(|n| lammas_engine::version::hash::of_text(&format!("{n}"))).collect();
        let long = Recalled { request: json!({"noise": noise}), ..recalled() };
        assert_eq!(long.text().expect("it is written"), None);
    }

    #[test]
    fn an_empty_history_stays_and_other_empty_members_go() {
        let said = json!({"history": [], "wishes": [], "site": {"soil": {}}, "date": null, "condition": {"signs": []}});
        assert_eq!(bare(said), json!({"history": [], "condition": {"signs": []}}));
    }
}
