//! The text of a key: `lammas_<id>_<secret><checksum>`. The prefix lets scanners find a leaked one, the id is public, the secret has
//! 160 bits and only its hash is kept, the checksum tells a slip of the pen from a wrong key without asking the store.

use lammas_engine::version::hash;

use crate::store::StoreError;

/// Every key begins so.
pub const PREFIX: &str = "lammas_";
const ID_BYTES: usize = 6;
const SECRET_BYTES: usize = 20;
const CHECK: usize = 8;

/// A key as its holder has it. It is shown once.
#[derive(Clone, PartialEq, Eq)]
pub struct Secret {
    id: String,
    secret: String,
}

impl std::fmt::Debug for Secret {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "{PREFIX}{}_…", self.id)
    }
}

impl Secret {
    /// A new one.
    ///
    /// # Errors
    /// This machine gives no random numbers.
    pub fn new() -> Result<Self, StoreError> {
        let mut bytes = [0_u8; ID_BYTES + SECRET_BYTES];
        getrandom::fill(&mut bytes).map_err(|error| StoreError::Broken(error.to_string()))?;
        let digits: String = bytes.iter().map(|byte| format!("{byte:02x}")).collect();
        let (id, secret) = digits.split_at(2 * ID_BYTES);
        Ok(Self { id: id.to_owned(), secret: secret.to_owned() })
    }

    /// From its text; nothing when it is not one, or mistyped.
    #[must_use]
    pub fn parse(text: &str) -> Option<Self> {
        let (id, rest) = text.strip_prefix(PREFIX)?.split_once('_')?;
        let digits = |part: &str, count: usize| {
            part.len() == count && part.bytes().all(|b| b.is_ascii_digit() || (b'a'..=b'f').contains(&b))
        };
        if !digits(id, 2 * ID_BYTES) || !digits(rest, 2 * SECRET_BYTES + CHECK) {
            return None;
        }
        let (secret, check) = rest.split_at(2 * SECRET_BYTES);
        let found = Self { id: id.to_owned(), secret: secret.to_owned() };
        (found.check() == check).then_some(found)
    }

    /// Its public part.
    #[must_use]
    pub fn id(&self) -> &str {
        &self.id
    }

    /// What is kept of it.
    #[must_use]
    pub fn hash(&self) -> String {
        hash::of_text(&format!("lammas key\n{}\n{}", self.id, self.secret))
    }

    /// The whole text, to be shown once.
    #[must_use]
    pub fn shown(&self) -> String {
        format!("{PREFIX}{}_{}{}", self.id, self.secret, self.check())
    }

    fn check(&self) -> String {
        let sum = hash::of_text(&format!("lammas key checksum\n{}\n{}", self.id, self.secret));
        sum.chars().take(CHECK).collect()
    }
}

/// Whether two hashes are the same, in a time that does not tell where they differ.
#[must_use]
pub fn same(a: &str, b: &str) -> bool {
    a.len() == b.len() && a.bytes().zip(b.bytes()).fold(0, |all, (x, y)| all | (x ^ y)) == 0
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_key_is_read_back_and_any_slip_is_noticed() {
        let key = Secret::new().expect("random numbers");
        let text = key.shown();
        assert_eq!(Secret::parse(&text), Some(key.clone()));
        assert!(!format!("{key:?}").contains(&key.secret));
        for at in PREFIX.len()..text.len() {
            let mut other: Vec<u8> = text.bytes().collect();
            if let Some(byte) = other.get_mut(at) {
                *byte = if *byte == b'0' { b'1' } else { b'0' };
            }
            assert_eq!(Secret::parse(&String::from_utf8(other).expect("text")), None, "a slip at {at}");
        }
        for other in ["", "lammas_", &text[..text.len() - 1], &format!("{text}0"), &text.to_uppercase()] {
            assert_eq!(Secret::parse(other), None, "{other}");
        }
        assert_ne!(Secret::new().expect("another").shown(), text);
    }

    #[test]
    fn hashes_are_compared_whole() {
        assert!(same("abc", "abc") && !same("abc", "abd") && !same("abc", "ab") && !same("xbc", "abc"));
    }
}
