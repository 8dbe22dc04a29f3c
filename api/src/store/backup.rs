//! A whole store in one file, taken while it is served, and put back into an empty store of either back end.
//!
//! The file is gzip: a line that says what it is, a line a row, and a last line with the hash of all before it. Answers kept for an
//! Idempotency-Key are left out (they last a day), and so are the signing key and the trusted keys: they are no content of the
//! store, and whoever has both could sign.

use std::io::{self, BufRead, BufReader, Read, Write};

use flate2::Compression;
use flate2::read::MultiGzDecoder;
use flate2::write::GzEncoder;
use serde_json::{Value as Json, json};
use sha2::{Digest, Sha256};

use super::{Row, StoreError, Transaction, Value};

/// A table: its name, the kinds of its columns (`t` text, `n` number, `b` bytes), how it is read and written.
struct Table {
    name: &'static str,
    kinds: &'static str,
    read: &'static str,
    write: &'static str,
}

macro_rules! tables {
    ($($name:literal $kinds:literal ($columns:literal) by $order:literal values ($values:literal);)*) => {
        /// In the order in which rows may be written.
        const TABLES: &[Table] = &[$(Table {
            name: $name,
            kinds: $kinds,
            read: concat!("select ", $columns, " from ", $name, " order by ", $order),
            write: concat!("insert into ", $name, " (", $columns, ") values (", $values, ")"),
        }),*];
    };
}

tables! {
    "organisation" "ttn" ("name, title, made_ms") by "made_ms" values ("$1, $2, $3");
    "document" "tbn" ("sha256, bytes, made_ms") by "made_ms" values ("$1, $2, $3");
    "rule_set" "ttn" ("name, organisation, made_ms") by "made_ms" values ("$1, $2, $3");
    "draft" "tttnttntnt" ("id, rule_set, document, revision, note, made_by, made_ms, changed_by, changed_ms, state") by "made_ms"
        values ("$1, $2, $3, $4, $5, $6, $7, $8, $9, $10");
    "release" "ntntttttttnnttt" ("number, rule_set, place, version, set_sha256, document, held, how, draft, published_by, published_ms, audit_sequence, audit_hash, key_id, signature") by "number"
        values ("$1, $2, $3, $4, $5, $6, $7, $8, $9, $10, $11, $12, $13, $14, $15");
    "schedule" "ttttntttntnnt" ("id, draft, rule_set, document, at_ms, wall, zone, state, made_ms, made_by, ended_ms, release, told") by "made_ms"
        values ("$1, $2, $3, $4, $5, $6, $7, $8, $9, $10, $11, $12, $13");
    "held_back" "nttttttnttnt" ("id, rule_set, kind, entry, caution, because, made_by, made_ms, verdict, reviewed_by, reviewed_ms, review_because") by "id"
        values ("$1, $2, $3, $4, $5, $6, $7, $8, $9, $10, $11, $12");
    "audit" "nntttttt" ("sequence, at_ms, who, act, what, detail, previous, hash") by "sequence"
        values ("$1, $2, $3, $4, $5, $6, $7, $8");
    "audit_head" "nnttt" ("one, sequence, hash, key_id, signature") by "one" values ("$1, $2, $3, $4, $5");
    "api_key" "ttttttnnnn" ("id, organisation, name, hash, scopes, made_by, made_ms, expires_ms, revoked_ms, last_used_ms") by "made_ms"
        values ("$1, $2, $3, $4, $5, $6, $7, $8, $9, $10");
    "climate" "nttttn" ("number, id, sha256, body, made_by, made_ms") by "number" values ("$1, $2, $3, $4, $5, $6");
    "weather" "tnttn" ("climate, issued_ms, sha256, body, made_ms") by "issued_ms" values ("$1, $2, $3, $4, $5");
    "product_map" "ttnttn" ("organisation, name, revision, body, changed_by, changed_ms") by "changed_ms" values ("$1, $2, $3, $4, $5, $6");
}

/// What a backup says it is.
const WHAT: &str = "lammas backup 1";
/// A line is not longer.
const LONGEST_LINE: u64 = 256 << 20;

struct Hashed<W> {
    out: W,
    hash: Sha256,
    rows: u64,
}

impl<W: Write> Hashed<W> {
    fn line(&mut self, line: &Json) -> io::Result<()> {
        let line = format!("{line}\n");
        self.hash.update(line.as_bytes());
        self.out.write_all(line.as_bytes())
    }
}

fn hex(bytes: &[u8]) -> String {
    bytes.iter().fold(String::with_capacity(2 * bytes.len()), |mut out, byte| {
        use std::fmt::Write as _;
        let _ = write!(out, "{byte:02x}");
        out
    })
}

fn unhex(text: &str) -> Option<Vec<u8>> {
    let pairs = text.as_bytes().chunks(2);
    pairs.map(|pair| u8::from_str_radix(std::str::from_utf8(pair).ok()?, 16).ok()).collect()
}

/// Writes everything that this reading sees; how many rows.
///
/// # Errors
/// The store fails, or the file can't be written.
pub async fn write(work: &mut dyn Transaction, out: impl Write + Send, now_ms: i64) -> Result<u64, StoreError> {
    let full = |error: io::Error| StoreError::Full(error.to_string());
    let mut out = Hashed { out: GzEncoder::new(out, Compression::default()), hash: Sha256::new(), rows: 0 };
    out.line(&json!({"what": WHAT, "made_ms": now_ms})).map_err(full)?;
    for table in TABLES {
        for row in work.query(table.read, &[]).await? {
            out.line(&json!([table.name, row_json(&row)])).map_err(full)?;
            out.rows += 1;
        }
    }
    let hash = hex(&out.hash.clone().finalize());
    let rows = out.rows;
    out.line(&json!({"rows": rows, "sha256": hash})).map_err(full)?;
    out.out.finish().and_then(|mut file| file.flush()).map_err(full)?;
    Ok(rows)
}

fn row_json(row: &Row) -> Json {
    let value = |value: &Option<Value>| match value {
        None => Json::Null,
        Some(Value::Text(text)) => json!(text),
        Some(Value::Whole(number)) => json!(number),
        Some(Value::Bytes(bytes)) => json!(bytes.as_deref().map(hex)),
    };
    Json::Array(row.0.iter().map(value).collect())
}

/// Puts a backup into an empty store; how many rows. Nothing of it is kept unless all of it can be.
///
/// # Errors
/// [`StoreError::Refused`] when the store is not empty, [`StoreError::Damaged`] when the backup is not whole.
pub async fn restore(work: &mut dyn Transaction, from: impl Read) -> Result<u64, StoreError> {
    let damaged = |told: &str| StoreError::Damaged(format!("the backup {told}"));
    for table in TABLES {
        if !work.query(table.read, &[]).await?.is_empty() {
            return Err(StoreError::Refused(format!("the store is not empty: `{}` has rows", table.name)));
        }
    }
    let mut lines = BufReader::new(MultiGzDecoder::new(from).take(LONGEST_LINE * 16));
    let (mut hash, mut rows, mut first, mut ended) = (Sha256::new(), 0_u64, true, false);
    loop {
        let mut line = String::new();
        let read = lines.by_ref().take(LONGEST_LINE).read_line(&mut line).map_err(|_| damaged("can't be unpacked"))?;
        if read == 0 {
            break;
        }
        if ended {
            return Err(damaged("goes on after its end"));
        }
        let value: Json = serde_json::from_str(&line).map_err(|_| damaged("has a line that can't be read"))?;
        if first {
            if value.get("what").and_then(Json::as_str) != Some(WHAT) {
                return Err(damaged("is not one that this program reads"));
            }
            first = false;
        } else if let Some(expected) = value.get("sha256").and_then(Json::as_str) {
            if expected != hex(&hash.clone().finalize()) || value.get("rows").and_then(Json::as_u64) != Some(rows) {
                return Err(damaged("was changed"));
            }
            ended = true;
        } else {
            put(work, &value).await?;
            rows += 1;
        }
        hash.update(line.as_bytes());
    }
    if ended { Ok(rows) } else { Err(damaged("is cut off")) }
}

async fn put(work: &mut dyn Transaction, line: &Json) -> Result<(), StoreError> {
    let damaged = || StoreError::Damaged("the backup has a row that can't be read".to_owned());
    let (name, values) = (line.get(0).and_then(Json::as_str), line.get(1).and_then(Json::as_array));
    let (Some(name), Some(values)) = (name, values) else { return Err(damaged()) };
    let table = TABLES.iter().find(|table| table.name == name).ok_or_else(damaged)?;
    if values.len() != table.kinds.len() {
        return Err(damaged());
    }
    let mut row = Vec::with_capacity(values.len());
    for (value, kind) in values.iter().zip(table.kinds.chars()) {
        row.push(match (kind, value) {
            ('t', Json::Null) => Value::Text(None),
            ('n', Json::Null) => Value::Whole(None),
            ('b', Json::Null) => Value::Bytes(None),
            ('t', Json::String(text)) => Value::Text(Some(text.clone())),
            ('n', Json::Number(number)) => Value::Whole(Some(number.as_i64().ok_or_else(damaged)?)),
            ('b', Json::String(text)) => Value::Bytes(Some(unhex(text).ok_or_else(damaged)?)),
            _ => return Err(damaged()),
        });
    }
    work.execute(table.write, &row).await.map(|_| ())
}
