//! What was worked out lately, by the content that it was worked out from.
//!
//! What is a pure function of its key never grows old. The bytes are bounded; what was not asked for the longest goes
//! first. Nothing is written anywhere.

use std::collections::BTreeMap;
use std::sync::{Arc, Mutex, PoisonError};

/// Values by their keys, so many bytes of them.
#[derive(Debug)]
pub struct Lately<T> {
    most_bytes: usize,
    kept: Mutex<Kept<T>>,
}

#[derive(Debug)]
struct Kept<T> {
    by_key: BTreeMap<String, Entry<T>>,
    bytes: usize,
    clock: u64,
}

#[derive(Debug)]
struct Entry<T> {
    value: Arc<T>,
    bytes: usize,
    asked: u64,
}

impl<T> Lately<T> {
    /// None yet; at most so many bytes.
    #[must_use]
    pub fn new(most_bytes: usize) -> Self {
        Self { most_bytes, kept: Mutex::new(Kept { by_key: BTreeMap::new(), bytes: 0, clock: 0 }) }
    }

    /// How many are kept, and their bytes.
    #[must_use]
    pub fn size(&self) -> (usize, usize) {
        let kept = self.kept.lock().unwrap_or_else(PoisonError::into_inner);
        (kept.by_key.len(), kept.bytes)
    }

    /// The value of a key, if it is kept.
    #[must_use]
    pub fn find(&self, key: &str) -> Option<Arc<T>> {
        let mut kept = self.kept.lock().unwrap_or_else(PoisonError::into_inner);
        kept.clock += 1;
        let now = kept.clock;
        let entry = kept.by_key.get_mut(key)?;
        entry.asked = now;
        Some(Arc::clone(&entry.value))
    }

    /// Keeps a value of so many bytes; one that is larger than all room is not kept.
    pub fn keep(&self, key: String, value: &Arc<T>, bytes: usize) {
        let bytes = key.len() + bytes;
        if bytes > self.most_bytes {
            return;
        }
        let mut kept = self.kept.lock().unwrap_or_else(PoisonError::into_inner);
        kept.clock += 1;
        let entry = Entry { value: Arc::clone(value), bytes, asked: kept.clock };
        kept.bytes += bytes;
        if let Some(old) = kept.by_key.insert(key, entry) {
            kept.bytes -= old.bytes;
        }
        while kept.bytes > self.most_bytes {
            let Some(oldest) = kept.by_key.iter().min_by_key(|(_, entry)| entry.asked).map(|(key, _)| key.clone())
            else {
                break;
            };
            if let Some(gone) = kept.by_key.remove(&oldest) {
                kept.bytes -= gone.bytes;
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn asked(lately: &Lately<u8>, key: &str) -> bool {
        let is_new = lately.find(key).is_none();
        if is_new {
            lately.keep(key.to_owned(), &Arc::new(0), 9);
        }
        is_new
    }

    #[test]
    fn each_is_worked_out_once_and_the_one_not_asked_for_the_longest_goes_first() {
        let lately = Lately::new(20);
        assert!(asked(&lately, "a") && asked(&lately, "b"));
        assert!(!asked(&lately, "a") && !asked(&lately, "b") && !asked(&lately, "a"));
        assert!(asked(&lately, "c"), "a third one is new");
        assert_eq!(lately.size(), (2, 20));
        assert!(!asked(&lately, "a"), "it was asked for lately");
        assert!(asked(&lately, "b"), "it had to go");
    }

    #[test]
    fn what_is_larger_than_all_room_is_not_kept() {
        let lately = Lately::new(5);
        assert!(asked(&lately, "a") && asked(&lately, "a"));
        assert_eq!(lately.size(), (0, 0));
    }
}
