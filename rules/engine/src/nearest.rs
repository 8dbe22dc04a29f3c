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
    let letters: Vec<char> = word.to_lowercase().chars().collect();
    let reach = (letters.len() / 3).max(1);
    let mut near: Vec<(usize, &str)> = known
        .into_iter()
        .filter_map(|name| {
            let other: Vec<char> = name.to_lowercase().chars().collect();
            if other.len().abs_diff(letters.len()) > reach {
                return None;
            }
            let edits = edits(&letters, &other);
            (edits <= reach).then_some((edits, name))
        })
        .collect();
    near.sort_unstable();
    near.dedup();
    near.into_iter().take(count).map(|(_, name)| name).collect()
}

/// Optimal string alignment distance.
fn edits(a: &[char], b: &[char]) -> usize {
    let mut before: Vec<usize> = Vec::new();
    let mut last: Vec<usize> = (0..=b.len()).collect();
    for (i, x) in a.iter().enumerate() {
        let mut row = vec![i + 1];
        for (j, y) in b.iter().enumerate() {
            let at = |row: &[usize], k: usize| row.get(k).copied().unwrap_or(usize::MAX / 2);
            let mut cost = (at(&last, j) + usize::from(x != y)).min(at(&last, j + 1) + 1).min(at(&row, j) + 1);
            let swapped = i > 0 && j > 0 && a.get(i - 1) == Some(y) && b.get(j - 1) == Some(x);
            if swapped && x != y {
                cost = cost.min(at(&before, j - 1) + 1);
            }
            row.push(cost);
        }
        before = std::mem::replace(&mut last, row);
    }
    last.last().copied().unwrap_or(0)
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
    fn a_foreign_word_finds_nothing() {
        assert_eq!(nearest("umbrella", ["rose", "citrus"]), None);
    }

    #[test]
    fn a_tie_goes_to_the_name_that_sorts_first() {
        assert_eq!(nearest("bat", ["cat", "bar"]), Some("bar"));
    }
}
