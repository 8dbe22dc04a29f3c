//! The mini pack: one plant, a handful of rules, in English and Spanish, with nothing wrong in it. Tests take it as it is,
//! or with one edit. Plain texts only, so that the crate's own tests and those beside it can share this file.
#![allow(dead_code, unreachable_pub, reason = "each test binary uses its own part, as does the crate itself")]

/// Its files: path inside the pack, text.
pub const MINI: [(&str, &str); 15] = [
    ("pack.yaml", include_str!("../data/mini/pack.yaml")),
    ("words/jobs.yaml", include_str!("../data/mini/words/jobs.yaml")),
    ("words/classes.yaml", include_str!("../data/mini/words/classes.yaml")),
    ("words/stages.yaml", include_str!("../data/mini/words/stages.yaml")),
    ("words/outlooks.yaml", include_str!("../data/mini/words/outlooks.yaml")),
    ("words/signs.yaml", include_str!("../data/mini/words/signs.yaml")),
    ("words/cautions.yaml", include_str!("../data/mini/words/cautions.yaml")),
    ("words/sources.yaml", include_str!("../data/mini/words/sources.yaml")),
    ("materials/materials.yaml", include_str!("../data/mini/materials/materials.yaml")),
    ("problems/rose.yaml", include_str!("../data/mini/problems/rose.yaml")),
    ("plants/rose.yaml", include_str!("../data/mini/plants/rose.yaml")),
    ("rules/rose.yaml", include_str!("../data/mini/rules/rose.yaml")),
    ("rules/guards.yaml", include_str!("../data/mini/rules/guards.yaml")),
    ("climates/valley.yaml", include_str!("../data/mini/climates/valley.yaml")),
    ("scenarios/rose/late-summer.yaml", include_str!("../data/mini/scenarios/rose/late-summer.yaml")),
];

/// One change of the mini pack: in this file, this text becomes that one. A `from` that is empty appends; a file that is
/// not there yet is made.
pub type Edit<'a> = (&'a str, &'a str, &'a str);

/// The mini pack after these edits.
///
/// # Panics
/// When a `from` does not stand in its file exactly once: the edit would test something else than it says.
pub fn edited(edits: &[Edit<'_>]) -> Vec<(String, String)> {
    let mut files: Vec<(String, String)> =
        MINI.iter().map(|(path, text)| ((*path).to_owned(), (*text).to_owned())).collect();
    for (path, from, to) in edits {
        let found = files.iter().position(|(p, _)| p == path);
        match found.and_then(|at| files.get_mut(at)) {
            Some((_, text)) if from.is_empty() => text.push_str(to),
            Some((_, text)) => {
                assert_eq!(text.matches(from).count(), 1, "`{from}` does not stand once in {path}");
                *text = text.replace(from, to);
            }
            None => {
                assert!(from.is_empty(), "there is no file {path} in which `{from}` could stand");
                files.push(((*path).to_owned(), (*to).to_owned()));
            }
        }
    }
    files
}
