//! Content by its hash: the files of a rule set. The hash is that of the text; what is kept is deflated.

use std::io::{Read as _, Write as _};

use flate2::Compression;
use flate2::read::ZlibDecoder;
use flate2::write::ZlibEncoder;
use lammas_engine::read::PackFile;
use serde_json::{Value as Json, json};

use super::sha256;
use crate::store::{StoreError, Transaction};

/// The most that a document may hold, in bytes of text.
pub const MOST_BYTES: u64 = 64 << 20;

/// The files of a rule set as one text, sorted by path, with its hash.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Document {
    /// SHA-256 of the text.
    pub sha256: String,
    text: String,
}

impl Document {
    /// Of these files.
    #[must_use]
    pub fn of(files: &[PackFile]) -> Self {
        let mut files: Vec<&PackFile> = files.iter().collect();
        files.sort_by(|a, b| a.path.cmp(&b.path));
        let files: Vec<Json> = files.iter().map(|file| json!({"path": file.path, "text": file.text})).collect();
        let text = lammas_engine::version::canonical::text(&json!({ "files": files }));
        Self { sha256: sha256(text.as_bytes()), text }
    }

    /// Of a text that says it has this hash.
    ///
    /// # Errors
    /// It has another.
    pub fn of_text(text: String, expected: &str) -> Result<Self, StoreError> {
        let found = sha256(text.as_bytes());
        if found == expected {
            Ok(Self { sha256: found, text })
        } else {
            Err(StoreError::Damaged(format!("document {expected} has the hash {found}")))
        }
    }

    /// The text.
    #[must_use]
    pub fn text(&self) -> &str {
        &self.text
    }

    /// The files.
    ///
    /// # Errors
    /// The text holds none.
    pub fn files(&self) -> Result<Vec<PackFile>, StoreError> {
        let damaged = || StoreError::Damaged(format!("document {} holds no files", self.sha256));
        let all: Json = serde_json::from_str(&self.text).map_err(|_| damaged())?;
        let files = all.get("files").and_then(Json::as_array).ok_or_else(damaged)?;
        let file = |file: &Json| {
            let part = |name: &str| file.get(name).and_then(Json::as_str).map(str::to_owned).ok_or_else(damaged);
            Ok(PackFile { path: part("path")?, text: part("text")? })
        };
        files.iter().map(file).collect()
    }
}

/// Keeps a document; one that is there already stays.
///
/// # Errors
/// Any of [`StoreError`].
pub async fn put(work: &mut dyn Transaction, document: &Document, now_ms: i64) -> Result<(), StoreError> {
    let mut deflated = ZlibEncoder::new(Vec::new(), Compression::default());
    let written = deflated.write_all(document.text.as_bytes()).and_then(|()| deflated.finish());
    let bytes = written.map_err(|error| StoreError::Broken(error.to_string()))?;
    let statement = "insert into document (sha256, bytes, made_ms) values ($1, $2, $3) on conflict do nothing";
    work.execute(statement, &[(&document.sha256).into(), bytes.as_slice().into(), now_ms.into()]).await.map(|_| ())
}

/// Reads a document, and sees that it has its hash.
///
/// # Errors
/// There is none, it has another hash, or any of [`StoreError`].
pub async fn get(work: &mut dyn Transaction, hash: &str) -> Result<Document, StoreError> {
    let rows = work.query("select bytes from document where sha256 = $1", &[hash.into()]).await?;
    let row = rows.first().ok_or_else(|| StoreError::Damaged(format!("document {hash} is not there")))?;
    let mut text = String::new();
    ZlibDecoder::new(row.bytes(0)?.as_slice())
        .take(MOST_BYTES)
        .read_to_string(&mut text)
        .map_err(|_| StoreError::Damaged(format!("document {hash} can't be unpacked")))?;
    Document::of_text(text, hash)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_document_is_the_same_whatever_the_order_of_its_files_and_another_after_any_change() {
        let file = |path: &str, text: &str| PackFile { path: path.to_owned(), text: text.to_owned() };
        let there = Document::of(&[file("a.yaml", "x: 1\n"), file("b/c.yaml", "é \u{1}\"")]);
        assert_eq!(there, Document::of(&[file("b/c.yaml", "é \u{1}\""), file("a.yaml", "x: 1\n")]));
        assert_ne!(there.sha256, Document::of(&[file("a.yaml", "x: 2\n"), file("b/c.yaml", "é \u{1}\"")]).sha256);
        let back = there.files().expect("files");
        assert_eq!(back.iter().map(|f| f.text.as_str()).collect::<Vec<_>>(), ["x: 1\n", "é \u{1}\""]);
        assert!(Document::of_text(there.text().replace("x: 1", "x: 3"), &there.sha256).is_err());
    }
}
