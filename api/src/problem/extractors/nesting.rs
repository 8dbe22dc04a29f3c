//! How deep a JSON text is nested, told before it is parsed.

/// Whether lists and objects stand more than `most` deep in `text`. Text that is not JSON gets some answer: the
/// parser will refuse it.
pub(super) fn is_deeper(text: &[u8], most: usize) -> bool {
    // Most requests have fewer brackets than they could have levels: counting is much cheaper than following.
    if text.iter().filter(|byte| matches!(byte, b'{' | b'[')).count() <= most {
        return false;
    }
    let (mut depth, mut in_text, mut escaped) = (0_usize, false, false);
    for byte in text {
        match byte {
            _ if escaped => escaped = false,
            b'\\' if in_text => escaped = true,
            b'"' => in_text = !in_text,
            b'{' | b'[' if !in_text => {
                depth += 1;
                if depth > most {
                    return true;
                }
            }
            b'}' | b']' if !in_text => depth = depth.saturating_sub(1),
            _ => {}
        }
    }
    false
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn brackets_in_text_do_not_count() {
        assert!(is_deeper(b"[[[1]]]", 2));
        assert!(!is_deeper(b"[[[1]]]", 3));
        assert!(!is_deeper(b"[[],[],[],[]]", 2));
        assert!(!is_deeper(br#"["[[[[", "a\"[[[["]"#, 2));
        assert!(is_deeper(br#"["\\", [[1]]]"#, 2));
    }
}
