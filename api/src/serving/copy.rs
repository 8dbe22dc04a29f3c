//! The last signed copy of what is served: with it a node starts while the store is away.
//!
//! The first line is the hash of all the rest; inside, every release carries its signature and every document its hash.

use std::fs::{self, File};
use std::io::{self, Write as _};
use std::path::Path;

use serde_json::{Value, json};

use crate::publishing::signing::Keyring;
use crate::publishing::statement;
use crate::store::tables::documents::Document;
use crate::store::tables::releases::Release;
use crate::store::tables::sha256;

/// A release with its files.
#[derive(Clone, Debug)]
pub struct Copied {
    /// The release.
    pub release: Release,
    /// Its files, as they were written.
    pub document: Document,
}

const DAY_MS: i64 = 86_400_000;

/// Writes a copy; the old one stays until the new one is whole.
///
/// # Errors
/// The file can't be written.
pub fn write(path: &Path, copied: &[Copied], now_ms: i64) -> io::Result<()> {
    let releases: Vec<Value> = copied
        .iter()
        .map(|copied| json!({"release": release_json(&copied.release), "text": copied.document.text()}))
        .collect();
    let body = json!({"what": "lammas copy 1", "seen_ms": now_ms, "releases": releases}).to_string();
    let beside = path.with_extension("new");
    let mut file = File::create(&beside)?;
    file.write_all(format!("{}\n{body}\n", sha256(body.as_bytes())).as_bytes())?;
    file.sync_all()?;
    fs::rename(&beside, path)
}

/// Reads a copy: whole, signed by a trusted key, not older than so many days.
///
/// # Errors
/// Why it does not count, in words.
pub fn read(path: &Path, keyring: &Keyring, days: u32, now_ms: i64) -> Result<Vec<Copied>, String> {
    let whole = body(path)?;
    let seen = whole.get("seen_ms").and_then(Value::as_i64).ok_or("it does not say when it was made")?;
    if now_ms - seen > i64::from(days) * DAY_MS {
        return Err(format!("it is older than {days} days"));
    }
    let releases = whole.get("releases").and_then(Value::as_array).ok_or("it holds no releases")?;
    let mut copied = Vec::new();
    for entry in releases {
        let release = entry.get("release").and_then(release_of).ok_or("a release in it can't be read")?;
        statement::verify(&release, keyring).map_err(|why| format!("release {}: {why}", release.number))?;
        let text = entry.get("text").and_then(Value::as_str).ok_or("a release in it has no files")?;
        let document = Document::of_text(text.to_owned(), &release.document).map_err(|error| error.to_string())?;
        copied.push(Copied { release, document });
    }
    if copied.is_empty() { Err("it holds no releases".to_owned()) } else { Ok(copied) }
}

/// The releases of a copy, whoever signed them: what this machine saw last. None where there is no copy, or a broken one.
#[must_use]
pub fn releases(path: &Path) -> Vec<Release> {
    let Ok(whole) = body(path) else { return Vec::new() };
    let entries = whole.get("releases").and_then(Value::as_array).cloned().unwrap_or_default();
    entries.iter().filter_map(|entry| entry.get("release").and_then(release_of)).collect()
}

fn body(path: &Path) -> Result<Value, String> {
    let text = fs::read_to_string(path).map_err(|error| error.to_string())?;
    let (hash, body) = text.split_once('\n').ok_or("it is not whole")?;
    let body = body.strip_suffix('\n').ok_or("it is not whole")?;
    if sha256(body.as_bytes()) != hash {
        return Err("it was changed".to_owned());
    }
    serde_json::from_str(body).map_err(|error| error.to_string())
}

/// A release as JSON.
#[must_use]
pub fn release_json(release: &Release) -> Value {
    json!({
        "number": release.number, "rule_set": release.rule_set, "place": release.place, "version": release.version,
        "set_sha256": release.set_sha256, "document": release.document, "held": release.held, "how": release.how,
        "draft": release.draft, "published_by": release.published_by, "published_ms": release.published_ms,
        "audit_sequence": release.audit_sequence, "audit_hash": release.audit_hash, "key_id": release.key_id,
        "signature": release.signature,
    })
}

fn release_of(value: &Value) -> Option<Release> {
    let text = |name: &str| value.get(name).and_then(Value::as_str).map(str::to_owned);
    let whole = |name: &str| value.get(name).and_then(Value::as_i64);
    Some(Release {
        number: whole("number")?,
        rule_set: text("rule_set")?,
        place: whole("place")?,
        version: text("version")?,
        set_sha256: text("set_sha256")?,
        document: text("document")?,
        held: text("held")?,
        how: text("how")?,
        draft: text("draft"),
        published_by: text("published_by")?,
        published_ms: whole("published_ms")?,
        audit_sequence: whole("audit_sequence")?,
        audit_hash: text("audit_hash")?,
        key_id: text("key_id")?,
        signature: text("signature")?,
    })
}
