//! JSON pointers (RFC 6901).

use serde_path_to_error::{Path, Segment};

/// One step into a JSON value.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) enum Step {
    /// The member of an object.
    Key(String),
    /// The entry of a list, from 0.
    Index(usize),
}

/// The pointer to the member `name` of the value at `parent`.
#[must_use]
pub fn below(parent: &str, name: &str) -> String {
    let mut pointer = parent.to_owned();
    push(&mut pointer, name);
    pointer
}

/// The pointer to the entry `index` of the list at `parent`.
#[must_use]
pub fn entry(parent: &str, index: usize) -> String {
    format!("{parent}/{index}")
}

pub(crate) fn written(steps: &[Step]) -> String {
    let mut pointer = String::new();
    for step in steps {
        match step {
            Step::Key(key) => push(&mut pointer, key),
            Step::Index(index) => push(&mut pointer, &index.to_string()),
        }
    }
    pointer
}

/// The steps of a path as the reader tracked them; a part it could not name ends it.
pub(crate) fn steps(path: &Path) -> Vec<Step> {
    path.iter()
        .map_while(|segment| match segment {
            Segment::Seq { index } => Some(Step::Index(*index)),
            Segment::Map { key } => Some(Step::Key(key.clone())),
            Segment::Enum { .. } | Segment::Unknown => None,
        })
        .collect()
}

fn push(pointer: &mut String, name: &str) {
    pointer.push('/');
    for c in name.chars() {
        match c {
            '~' => pointer.push_str("~0"),
            '/' => pointer.push_str("~1"),
            c => pointer.push(c),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn special_characters_are_escaped_as_rfc_6901_section_3_says() {
        assert_eq!(below("/inputs", "a/b~c"), "/inputs/a~1b~0c");
        assert_eq!(written(&[Step::Key("days".into()), Step::Index(3)]), "/days/3");
        assert_eq!(written(&[]), "");
    }
}
