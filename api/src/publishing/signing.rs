//! The key that signs releases, and the public keys whose signatures count.
//!
//! The key is made at the first start, in a file that only its owner may read. `trusted.keys` lists public keys, one a line: to
//! change the key, the new one's line is added on every node, then the file of the key is exchanged; the old line stays as long as
//! releases signed with it are to be read.

use std::fs::{self, OpenOptions};
use std::io::{self, Write as _};
use std::path::Path;

use ed25519_dalek::{Signature, Signer as _, SigningKey, VerifyingKey};

use super::NotDone;
use crate::store::place::StorePlace;
use crate::store::tables::sha256;

/// The keys of this process.
pub struct Keyring {
    signing: Option<SigningKey>,
    trusted: Vec<(String, VerifyingKey)>,
}

impl std::fmt::Debug for Keyring {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.debug_list().entries(self.trusted.iter().map(|(id, _)| id)).finish()
    }
}

/// The name of a public key: the first 16 digits of its hash.
fn id_of(key: &VerifyingKey) -> String {
    sha256(key.as_bytes()).chars().take(16).collect()
}

fn hex(bytes: &[u8]) -> String {
    bytes.iter().map(|byte| format!("{byte:02x}")).collect()
}

fn unhex<const N: usize>(text: &str) -> Option<[u8; N]> {
    let text = text.trim();
    if text.len() != 2 * N || !text.is_ascii() {
        return None;
    }
    let mut out = [0; N];
    for (at, byte) in out.iter_mut().enumerate() {
        *byte = u8::from_str_radix(text.get(2 * at..2 * at + 2)?, 16).ok()?;
    }
    Some(out)
}

impl Keyring {
    /// Reads the keys of a place, and makes them at its first start.
    ///
    /// # Errors
    /// [`NotDone::Unsigned`]: a file can't be read or written, holds no key, or the key's file is open to others.
    pub fn open(place: &StorePlace) -> Result<Self, NotDone> {
        let (file, list) = (place.signing_key(), place.trusted_keys());
        let unsigned = |path: &Path, error: &dyn std::fmt::Display| {
            NotDone::Unsigned(format!("the file of keys `{}`: {error}", path.display()))
        };
        if !list.exists() {
            match make(&file) {
                Ok(()) => {}
                Err(error) if error.kind() == io::ErrorKind::AlreadyExists => {}
                Err(error) => return Err(unsigned(&file, &error)),
            }
        }
        let signing = if file.exists() { Some(read(&file).map_err(|e| unsigned(&file, &e))?) } else { None };
        if !list.exists() {
            let own = signing.as_ref().map(SigningKey::verifying_key);
            let line = own.map(|key| format!("{}\n", hex(key.as_bytes()))).unwrap_or_default();
            fs::write(&list, line).map_err(|e| unsigned(&list, &e))?;
        }
        let mut trusted = Vec::new();
        for line in fs::read_to_string(&list).map_err(|e| unsigned(&list, &e))?.lines() {
            let line = line.split('#').next().unwrap_or_default().trim();
            if line.is_empty() {
                continue;
            }
            let key = unhex::<32>(line).and_then(|bytes| VerifyingKey::from_bytes(&bytes).ok());
            let key = key.ok_or_else(|| unsigned(&list, &"a line is not a public key"))?;
            trusted.push((id_of(&key), key));
        }
        Ok(Self { signing, trusted })
    }

    /// A ring of one key, for tests and tools.
    #[must_use]
    pub fn of(secret: [u8; 32]) -> Self {
        let signing = SigningKey::from_bytes(&secret);
        let public = signing.verifying_key();
        Self { signing: Some(signing), trusted: vec![(id_of(&public), public)] }
    }

    /// The name of the key that signs here.
    ///
    /// # Errors
    /// [`NotDone::Unsigned`]: this machine has none.
    pub fn own_id(&self) -> Result<String, NotDone> {
        self.signing.as_ref().map(|key| id_of(&key.verifying_key())).ok_or_else(no_key)
    }

    /// The names of the keys whose signatures count.
    pub fn trusted(&self) -> impl Iterator<Item = &str> {
        self.trusted.iter().map(|(id, _)| id.as_str())
    }

    /// Signs a text; the signature in hexadecimal.
    ///
    /// # Errors
    /// [`NotDone::Unsigned`]: this machine has no key.
    pub fn sign(&self, text: &str) -> Result<String, NotDone> {
        let key = self.signing.as_ref().ok_or_else(no_key)?;
        Ok(hex(&key.sign(text.as_bytes()).to_bytes()))
    }

    /// Whether a trusted key of this name signed this text.
    ///
    /// # Errors
    /// Why not, in words.
    pub fn verify(&self, key_id: &str, text: &str, signature: &str) -> Result<(), String> {
        let Some((_, key)) = self.trusted.iter().find(|(id, _)| id == key_id) else {
            return Err(format!("signed with the key `{key_id}`, which is not in `trusted.keys`"));
        };
        let signature = unhex::<64>(signature).map(|bytes| Signature::from_bytes(&bytes));
        let signature = signature.ok_or_else(|| "the signature is not one".to_owned())?;
        key.verify_strict(text.as_bytes(), &signature).map_err(|_| "the signature does not fit".to_owned())
    }
}

fn no_key() -> NotDone {
    NotDone::Unsigned("this machine has no `signing.key`: it can read releases, not make them".to_owned())
}

fn make(file: &Path) -> io::Result<()> {
    let mut secret = [0; 32];
    getrandom::fill(&mut secret).map_err(|error| io::Error::other(error.to_string()))?;
    let mut options = OpenOptions::new();
    options.write(true).create_new(true);
    #[cfg(unix)]
    std::os::unix::fs::OpenOptionsExt::mode(&mut options, 0o600);
    let mut out = options.open(file)?;
    out.write_all(format!("{}\n", hex(&secret)).as_bytes())?;
    out.sync_all()
}

fn read(file: &Path) -> Result<SigningKey, String> {
    #[cfg(unix)]
    {
        use std::os::unix::fs::PermissionsExt as _;
        let mode = fs::metadata(file).map_err(|e| e.to_string())?.permissions().mode();
        if mode & 0o077 != 0 {
            return Err(format!("others may read it (mode {:o}), expected mode 600", mode & 0o777));
        }
    }
    let text = fs::read_to_string(file).map_err(|e| e.to_string())?;
    unhex::<32>(&text).map(|bytes| SigningKey::from_bytes(&bytes)).ok_or_else(|| "it holds no key".to_owned())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_signature_fits_its_text_and_its_key_only() {
        let (one, two) = (Keyring::of([1; 32]), Keyring::of([2; 32]));
        let id = one.own_id().expect("a key");
        let signature = one.sign("what was said").expect("signed");
        assert_eq!(one.verify(&id, "what was said", &signature), Ok(()));
        assert_eq!(one.verify(&id, "what was meant", &signature), Err("the signature does not fit".to_owned()));
        assert_eq!(one.verify(&id, "what was said", "stripped"), Err("the signature is not one".to_owned()));
        assert!(two.verify(&id, "what was said", &signature).is_err_and(|told| told.contains("not in `trusted.keys`")));
        let other = two.sign("what was said").expect("signed");
        assert!(one.verify(&id, "what was said", &other).is_err());
    }

    // RFC 8032, section 7.1, test 1: the public key of this secret one, and the signature of the empty message.
    #[test]
    fn keys_and_signatures_are_those_of_rfc_8032() {
        let secret = unhex("9d61b19deffd5a60ba844af492ec2cc44449c5697b326919703bac031cae7f60").expect("hex");
        let ring = Keyring::of(secret);
        let public = ring.trusted.first().map(|(_, key)| hex(key.as_bytes()));
        assert_eq!(public.as_deref(), Some("d75a980182b10ab7d54bfed3c964073a0ee172f3daa62325af021a68f707511a"));
        assert_eq!(
            ring.sign("").expect("signed"),
            "e5564300c360ac729086e2cc806e828a84877f1eb8e5d974d873e065224901555fb8821590a33bacc61e39701cf9b46bd25bf5f0595bbe24655141438e7a100b"
        );
    }
}
