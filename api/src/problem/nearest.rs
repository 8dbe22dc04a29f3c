//! The name that was probably meant.

/// The one of `names` that is nearest to `word`, if one is near: at most a third of the letters added, left out,
/// changed or swapped with their neighbour. A tie goes to the first.
pub fn nearest<'a>(word: &str, names: impl IntoIterator<Item = &'a str>) -> Option<&'a str> {
    // A long word can't be near a name, and the cost grows with its square.
    let word: Vec<char> = word.chars().take(64).flat_map(char::to_lowercase).collect();
    let allowed = (word.len() / 3).max(1);
    let mut best: Option<(usize, &str)> = None;
    for name in names {
        let letters: Vec<char> = name.chars().collect();
        let far = distance(&word, &letters);
        if far <= allowed && best.is_none_or(|(least, _)| far < least) {
            best = Some((far, name));
        }
    }
    best.map(|(_, name)| name)
}

/// The optimal string alignment distance (Levenshtein's, with swaps of neighbours).
fn distance(a: &[char], b: &[char]) -> usize {
    let width = b.len() + 1;
    let mut before_last = vec![0; width];
    let mut last: Vec<usize> = (0..width).collect();
    for i in 1..=a.len() {
        let mut row = vec![i; width];
        for j in 1..=b.len() {
            let changed = usize::from(a[i - 1] != b[j - 1]);
            let mut least = (last[j] + 1).min(row[j - 1] + 1).min(last[j - 1] + changed);
            if i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1] {
                least = least.min(before_last[j - 2] + 1);
            }
            row[j] = least;
        }
        before_last = std::mem::replace(&mut last, row);
    }
    last[b.len()]
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_slip_of_the_finger_finds_its_name() {
        for (word, meant) in [
            ("plnt", Some("plant")),
            ("palnt", Some("plant")),
            ("Plants", Some("plant")),
            ("wather", Some("water")),
            ("zzz", None),
            ("", None),
        ] {
            assert_eq!(nearest(word, ["plant", "water", "site"]), meant, "{word}");
        }
    }
}
