//! The nearest of some names, for a name that was mistyped.

/// The name with the fewest changed letters, if a third of the letters or fewer must change.
pub(super) fn nearest(typed: &str, names: impl Iterator<Item = &'static str>) -> Option<&'static str> {
    // A text far longer than any name is nobody's slip of the finger.
    if typed.len() > 80 {
        return None;
    }
    let (distance, name) = names.map(|name| (changes(typed, name), name)).min_by_key(|&(distance, _)| distance)?;
    (distance <= 1 + name.chars().count() / 3).then_some(name)
}

/// Levenshtein's distance: letters to put in, leave out or change.
fn changes(from: &str, to: &str) -> usize {
    let mut row: Vec<usize> = (0..=to.chars().count()).collect();
    for (i, a) in from.chars().enumerate() {
        let mut diagonal = i;
        let mut left = i + 1;
        if let Some(first) = row.first_mut() {
            *first = left;
        }
        for (cell, b) in row.iter_mut().skip(1).zip(to.chars()) {
            let here = (diagonal + usize::from(a != b)).min(left + 1).min(*cell + 1);
            diagonal = *cell;
            *cell = here;
            left = here;
        }
    }
    row.last().copied().unwrap_or(0)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn distances_are_counted_in_letters() {
        assert_eq!(changes("kitten", "sitting"), 3);
        assert_eq!(changes("", "abc"), 3);
        assert_eq!(changes("taw", "taw"), 0);
    }

    #[test]
    fn far_names_are_not_suggested() {
        let names = || ["latitude", "tmin"].into_iter();
        assert_eq!(nearest("lattitude", names()), Some("latitude"));
        assert_eq!(nearest("wheelbarrow", names()), None);
    }
}
