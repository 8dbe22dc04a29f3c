//! Text for a terminal: wrapped at a width that reads well.

/// Characters in a line.
pub(super) const WIDTH: usize = 92;

/// A text in lines of at most [`WIDTH`] characters; the first begins with `first`, the others with as many blanks.
pub(super) fn lines(first: &str, text: &str) -> String {
    let indent = " ".repeat(first.chars().count());
    let mut out = String::new();
    let mut line = first.to_owned();
    let mut length = indent.len();
    let mut is_new = true;
    for word in text.split_whitespace() {
        let letters = word.chars().count();
        if !is_new && length + 1 + letters > WIDTH {
            out.push_str(line.trim_end());
            out.push('\n');
            line.clone_from(&indent);
            length = indent.len();
            is_new = true;
        }
        if !is_new {
            line.push(' ');
            length += 1;
        }
        line.push_str(word);
        length += letters;
        is_new = false;
    }
    out.push_str(line.trim_end());
    out.push('\n');
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn long_texts_are_wrapped_under_their_beginning() {
        let text = "word ".repeat(40);
        let shown = lines("  - ", &text);
        let all: Vec<&str> = shown.lines().collect();
        assert!(all.len() > 2 && all.iter().all(|line| line.chars().count() <= WIDTH), "{shown}");
        assert!(all[0].starts_with("  - word") && all[1].starts_with("    word"), "{shown}");
        assert_eq!(lines("a ", "b"), "a b\n");
    }
}
