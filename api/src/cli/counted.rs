//! Counts as people read them.

/// `1,234,567`.
pub(super) fn count(number: u64) -> String {
    let digits = number.to_string();
    let mut out = String::new();
    for (at, digit) in digits.chars().enumerate() {
        if at > 0 && (digits.len() - at).is_multiple_of(3) {
            out.push(',');
        }
        out.push(digit);
    }
    out
}

/// `1 answer`, `1,234 answers`.
pub(super) fn counted(number: u64, what: &str) -> String {
    format!("{} {what}{}", count(number), if number == 1 { "" } else { "s" })
}

/// The first few of a list, and how many more there are.
pub(super) fn first_of(list: &[String], most: usize, between: &str) -> String {
    let shown = list.iter().take(most).cloned().collect::<Vec<String>>().join(between);
    if list.len() > most { format!("{shown}{between}and {} more", count((list.len() - most) as u64)) } else { shown }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn thousands_are_told_apart() {
        assert_eq!([0, 999, 1000, 1_234_567].map(count), ["0", "999", "1,000", "1,234,567"]);
        assert_eq!([counted(1, "answer"), counted(2, "answer")], ["1 answer", "2 answers"]);
    }

    #[test]
    fn a_long_list_is_cut_and_says_so() {
        let list = ["a", "b", "c"].map(str::to_owned);
        assert_eq!(first_of(&list, 2, ", "), "a, b, and 1 more");
        assert_eq!(first_of(&list, 3, ", "), "a, b, c");
    }
}
