//! A word without its endings, and as it sounds.

use rust_stemmers::{Algorithm, Stemmer};

/// The stem of a folded word. Other letters than a to z have no endings that we know.
pub(super) fn stem(word: &str, algorithm: Algorithm) -> String {
    if !word.bytes().all(|byte| byte.is_ascii_lowercase()) {
        return word.to_owned();
    }
    Stemmer::create(algorithm).stem(word).into_owned()
}

/// A Spanish word without the ending that makes it small: `hojita` is `hoja`, `blanquito` is `blanco`.
pub(super) fn full_size(word: &str) -> Option<String> {
    let singular = word.strip_suffix('s').unwrap_or(word);
    let (root, vowel) = singular
        .strip_suffix("ita")
        .map(|root| (root, 'a'))
        .or(singular.strip_suffix("ito").map(|root| (root, 'o')))?;
    if root.len() < 3 {
        return None;
    }
    Some(match (root.strip_suffix("qu"), root.strip_suffix("ec")) {
        (Some(root), _) => format!("{root}c{vowel}"),
        (None, Some(root)) if root.len() >= 3 => root.to_owned(),
        _ => format!("{root}{vowel}"),
    })
}

/// A Spanish stem as it sounds to those who write by ear: `h` is silent, `b` and `v`, `s`, `z` and soft `c`, `ll` and `y`,
/// `j` and soft `g` are one.
pub(super) fn sound(stem: &str) -> String {
    let letters: Vec<char> = stem.chars().collect();
    let mut out = String::new();
    for (at, letter) in letters.iter().enumerate() {
        let before = at.checked_sub(1).and_then(|at| letters.get(at)).copied();
        let after = letters.get(at + 1).copied();
        let soft = matches!(after, Some('e' | 'i'));
        let sounds = match letter {
            'h' if before != Some('c') => continue,
            'v' => 'b',
            'z' => 's',
            'c' if soft => 's',
            'c' if after == Some('h') => 'c',
            'c' => 'k',
            'q' => 'k',
            'u' if before == Some('q') => continue,
            'g' if soft => 'j',
            'u' if before == Some('g') && soft => continue,
            'l' if before == Some('l') => {
                out.pop();
                'y'
            }
            other => *other,
        };
        if !out.ends_with(sounds) {
            out.push(sounds);
        }
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn endings_go() {
        for (a, b) in [("buds", "bud"), ("yellowing", "yellow"), ("curled", "curling")] {
            assert_eq!(stem(a, Algorithm::English), stem(b, Algorithm::English));
        }
        for (a, b) in [("amarillas", "amarillo"), ("secas", "seco"), ("manchadas", "manchado")] {
            assert_eq!(stem(a, Algorithm::Spanish), stem(b, Algorithm::Spanish));
        }
        assert_eq!(stem("жук", Algorithm::English), "жук");
    }

    #[test]
    fn small_things_are_things() {
        for (small, whole) in
            [("hojitas", "hoja"), ("blanquito", "blanco"), ("florecitas", "flor"), ("gusanitos", "gusano")]
        {
            assert_eq!(full_size(small).as_deref(), Some(whole));
        }
        assert_eq!(full_size("hoja"), None);
        assert_eq!(full_size("ito"), None);
    }

    #[test]
    fn what_is_written_by_ear_sounds_the_same() {
        for (a, b) in [
            ("ojas", "hojas"),
            ("capuyos", "capullos"),
            ("biejas", "viejas"),
            ("senicilla", "cenicilla"),
            ("calbas", "calvas"),
            ("rais", "raiz"),
        ] {
            assert_eq!(sound(a), sound(b), "{a} {b}");
        }
        assert_ne!(sound("hoja"), sound("hongo"));
        assert_ne!(sound("mancha"), sound("manca"));
    }
}
