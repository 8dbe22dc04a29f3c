//! A language as it is typed.

use crate::v1::question::choices::Language;

/// `en` or `es`.
pub(super) fn parse(text: &str) -> Result<Language, String> {
    let found = Language::ALL.iter().find(|language| language.word() == text);
    found.copied().ok_or_else(|| "expected `en` or `es`".to_owned())
}
