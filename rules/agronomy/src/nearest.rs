//! The nearest known name to a word that is not known.

/// The known name nearest to `word` by edits (insert, delete, change, swap of neighbours), if it is near enough to be
/// meant: at most a third of the word's letters, and at least one. A tie goes to the name that sorts first.
#[must_use]
pub fn nearest<'a>(word: &str, known: impl IntoIterator<Item = &'a str>) -> Option<&'a str> {
    nearest_names(word, known, 1).into_iter().next()
}

/// Up to `count` known names near to `word`, nearest first.
#[must_use]
pub fn nearest_names<'a>(word: &str, known: impl IntoIterator<Item = &'a str>, count: usize) -> Vec<&'a str> {
    let word = word.to_lowercase();
    let letters = word.chars().count();
    let reach = (letters / 3).max(1);
    let mut near: Vec<(usize, &str)> = known
        .into_iter()
        // A name that is much longer or shorter is not meant; a text far longer than any name is never compared at all.
        .filter(|name| name.chars().count().abs_diff(letters) <= reach)
        .map(|name| (strsim::osa_distance(&word, &name.to_lowercase()), name))
        .filter(|(edits, _)| *edits <= reach)
        .collect();
    near.sort_unstable();
    near.dedup();
    near.into_iter().take(count).map(|(_, name)| name).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_slip_of_the_finger_finds_its_name() {
        let known = ["rose", "citrus", "lawn"];
        assert_eq!(nearest("roze", known), Some("rose"));
        assert_eq!(nearest("rsoe", known), Some("rose"));
        assert_eq!(nearest("citris", known), Some("citrus"));
    }

    #[test]
    fn nothing_typed_and_a_text_longer_than_any_name_find_nothing() {
        assert_eq!(nearest("", ["rose"]), None);
        assert_eq!(nearest(&"rose".repeat(100_000), ["rose"]), None);
    }

    #[test]
    fn a_foreign_word_finds_nothing() {
        assert_eq!(nearest("umbrella", ["rose", "citrus"]), None);
    }

    #[test]
    fn a_tie_goes_to_the_name_that_sorts_first() {
        assert_eq!(nearest("bat", ["cat", "bar"]), Some("bar"));
    }
}
