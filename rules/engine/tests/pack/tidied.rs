//! Tidying: whatever a file looks like, afterwards it says the same, every comment is there in its order, and there is nothing
//! left to do. `LAMMAS_LONG=1` disturbs many more files.

use lammas_engine::read::{PackFile, read};
use lammas_engine::tidy::{comments, tidy};
use lammas_engine::version::hash;

use crate::shipped::files;
use crate::why_not::{Dice, is_long};

fn hash_of(files: &[PackFile]) -> String {
    hash::of_pack(&read(files).unwrap_or_else(|faults| panic!("{faults:#?}")))
}

#[test]
fn the_shipped_files_say_the_same_after_tidying_and_keep_their_comments() {
    let before = files();
    let mut after = files();
    for file in &mut after {
        let made = tidy(&file.text).unwrap_or_else(|untidy| panic!("{}: {untidy:?}", file.path));
        assert_eq!(comments(&made), comments(&file.text), "{}", file.path);
        assert_eq!(tidy(&made).as_ref(), Ok(&made), "{}", file.path);
        file.text = made;
    }
    assert_eq!(hash_of(&after), hash_of(&before));
}

/// The fields of each block entry in another order, other quotes, more blanks, and comments wherever one may stand.
fn disturbed(text: &str, dice: &mut Dice) -> (String, usize) {
    let mut out: Vec<String> = Vec::new();
    let mut entry: Vec<Vec<String>> = Vec::new();
    let mut put = 0;
    let flush = |entry: &mut Vec<Vec<String>>, out: &mut Vec<String>, dice: &mut Dice, put: &mut usize| {
        let mut first = true;
        while !entry.is_empty() {
            let mut field = entry.swap_remove(dice.below(entry.len()));
            if first {
                field[0].replace_range(..2, "- ");
                first = false;
            } else if dice.below(9) == 0 {
                *put += 1;
                out.push(format!("  # number {put}: it's \"so\""));
            }
            out.append(&mut field);
        }
    };
    for line in text.lines() {
        let mut line = line.to_owned();
        if dice.below(6) == 0 && !line.contains(['\'', '\\', '#', '{']) && line.matches('"').count() == 2 {
            line = line.replace('"', "'");
        }
        if dice.below(12) == 0 && !line.trim().is_empty() && !line.contains('#') {
            put += 1;
            line.push_str(&format!("   # behind {put}"));
        }
        if dice.below(10) == 0 {
            line.push_str("  ");
        }
        if let Some(first) = line.strip_prefix("- ") {
            flush(&mut entry, &mut out, dice, &mut put);
            entry.push(vec![format!("  {first}")]);
        } else if line.starts_with("  ") && !entry.is_empty() {
            if !line[2..].starts_with([' ', '-', '#']) {
                entry.push(vec![line]);
            } else {
                entry.last_mut().unwrap().push(line);
            }
        } else {
            flush(&mut entry, &mut out, dice, &mut put);
            out.push(line);
        }
        if entry.is_empty() && dice.below(5) == 0 {
            out.push(String::new());
        }
    }
    flush(&mut entry, &mut out, dice, &mut put);
    let end = if dice.below(4) == 0 { "\r\n" } else { "\n" };
    (out.iter().map(|line| format!("{line}{end}")).collect(), put)
}

#[test]
fn a_disturbed_file_says_the_same_after_tidying_and_loses_no_comment() {
    let all = files();
    let whole = hash_of(&all);
    let rules: Vec<usize> = (0..all.len()).filter(|at| all[*at].path.starts_with("rules/")).collect();
    let rounds = if is_long() { 1000 } else { 40 };
    let mut dice = Dice(0x71d7_0001);
    let (mut put, mut kept_order) = (0, 0);
    for round in 0..rounds {
        let mut files = files();
        let at = rules[dice.below(rules.len())];
        let (text, count) = disturbed(&files[at].text, &mut dice);
        put += count;
        let made = tidy(&text).unwrap_or_else(|untidy| panic!("{round}: {untidy:?}\n{text}"));
        let plain = text.replace("\r\n", "\n");
        assert_eq!(comments(&made), comments(&plain), "{round}");
        assert!(comments(&made).len() >= count, "{round}: {count} comments were put in");
        assert_eq!(tidy(&made).as_ref(), Ok(&made), "{round}");
        assert!(made.lines().all(|line| line.trim_end() == line), "{round}");
        kept_order += usize::from(made != text);
        files[at].text = made;
        assert_eq!(hash_of(&files), whole, "{round}");
    }
    println!("{rounds} disturbed files, {put} comments put in, {kept_order} changed by tidying");
    assert!(put > rounds && kept_order > rounds / 2);
}
