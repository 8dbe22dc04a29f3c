//! The audit trail shows what was done to it, and names the row.

use lammas::publishing::Desk;
use lammas::publishing::verify::{Report, verify};
use lammas::store::Transaction;
use lammas::store::tables::audit::{self, AuditRow};
use lammas::store::tables::releases;
use lammas_tests::stores::{both, wait};

use crate::garden::renamed;

/// A name, what is done, whether the rows are chained anew, the row that is named, and what is said of it.
type Case = (&'static str, &'static [&'static str], bool, Option<i64>, &'static str);

/// Somebody with the database in hand, who takes its locks off first.
const NO_LOCKS: [&[&str]; 2] = [
    &["drop trigger audit_is_not_changed", "drop trigger audit_is_not_deleted", "drop trigger release_is_not_deleted"],
    &[
        "drop trigger audit_is_not_changed on audit",
        "drop trigger audit_is_not_deleted on audit",
        "drop trigger release_is_not_deleted on release",
    ],
];

async fn run(work: &mut dyn Transaction, statements: &[&'static str]) {
    for statement in statements {
        work.execute(statement, &[]).await.unwrap_or_else(|error| panic!("{statement}: {error}"));
    }
}

/// Chains all rows anew, as somebody does who knows how it is done but has no key.
async fn chain_anew(work: &mut dyn Transaction) {
    let rows = audit::after(work, 0, 1000).await.expect("read");
    run(work, &["delete from audit"]).await;
    let mut previous = audit::BEFORE_THE_FIRST.to_owned();
    for (at, row) in rows.into_iter().enumerate() {
        let mut row = AuditRow { sequence: i64::try_from(at + 1).expect("few"), previous, ..row };
        row.hash = row.own_hash();
        previous = row.hash.clone();
        audit::insert(work, &row).await.expect("kept");
    }
    let last = audit::last(work).await.expect("read").expect("rows");
    let head = audit::head(work).await.expect("read").expect("an end");
    audit::set_head(work, &audit::Head { sequence: last.sequence, hash: last.hash, ..head }).await.expect("kept");
}

fn says(report: &Report, row: Option<i64>, words: &str) -> bool {
    report.findings.iter().any(|finding| finding.row == row && finding.told.contains(words))
}

#[test]
fn edits_deletions_insertions_other_orders_old_dates_a_cut_tail_and_a_new_chain_are_found() {
    for ((place, _folder), no_locks) in both().into_iter().zip(NO_LOCKS) {
        wait(async {
            let desk = Desk::open(&place).await.expect("opens");
            for version in ["2026.11.1", "2026.11.2"] {
                let draft = desk.import(&renamed(version), "", "ana").await.expect("a draft");
                desk.publish(&draft.id, None, "ana", None).await.expect("a release");
            }
            for name in ["one", "two", "three", "four"] {
                desk.new_key(name, &[], None, "ana").await.expect("a key");
            }
            let mut work = desk.store.read().await.expect("reads");
            let sound = verify(&mut *work, &desk.keyring, None).await.expect("examined");
            assert_eq!((sound.rows, sound.releases, sound.findings.len()), (8, 2, 0), "{sound:?}");
            let seen = releases::after(&mut *work, 1).await.expect("read").pop().expect("the second release");
            drop(work);

            let cases: [Case; 9] = [
                ("edited", &["update audit set who = 'bo' where sequence = 5"], false, Some(5), "was edited"),
                (
                    "edited, its hash too",
                    &["update audit set who = 'bo' where sequence = 5"],
                    true,
                    None,
                    "the signed end of the trail is not ours",
                ),
                ("deleted", &["delete from audit where sequence = 5"], false, Some(5), "is missing"),
                (
                    "inserted",
                    &[
                        "insert into audit (sequence, at_ms, who, act, what, detail, previous, hash) select 9, at_ms, who, act, what, \
                       detail, hash, hash from audit where sequence = 8",
                    ],
                    false,
                    Some(9),
                    "was edited",
                ),
                (
                    "moved",
                    &[
                        "update audit set sequence = 100 where sequence = 5",
                        "update audit set sequence = 5 where sequence = 6",
                        "update audit set sequence = 6 where sequence = 100",
                    ],
                    false,
                    Some(5),
                    "was edited",
                ),
                ("dated back", &["update audit set at_ms = 1 where sequence = 7"], false, Some(7), "dated before"),
                ("the tail cut off", &["delete from audit where sequence > 6"], false, Some(7), "is missing"),
                (
                    "written anew",
                    &["update audit set who = 'bo' where sequence = 2"],
                    true,
                    Some(2),
                    "signed release 1",
                ),
                (
                    "the last release and its tail cut off",
                    &[
                        "update schedule set release = null",
                        "delete from release where number = 2",
                        "delete from audit where sequence > 3",
                    ],
                    false,
                    None,
                    "release 2, which this machine has served, is gone",
                ),
            ];
            for (name, statements, anew, row, words) in cases {
                let mut work = desk.store.begin().await.expect("writes");
                run(&mut *work, no_locks).await;
                run(&mut *work, statements).await;
                if anew {
                    chain_anew(&mut *work).await;
                }
                let report = verify(&mut *work, &desk.keyring, Some(&seen)).await.expect("examined");
                assert!(says(&report, row, words), "{}: {name}: {:?}", desk.store.back_end(), report.findings);
                // Dropped: the next case finds the trail as it was.
            }
            let mut work = desk.store.read().await.expect("reads");
            assert_eq!(verify(&mut *work, &desk.keyring, Some(&seen)).await.expect("examined").findings, []);
        });
    }
}

#[test]
fn nothing_is_written_behind_a_trail_that_does_not_end_as_it_was_signed() {
    for ((place, _folder), no_locks) in both().into_iter().zip(NO_LOCKS) {
        wait(async {
            let desk = Desk::open(&place).await.expect("opens");
            desk.new_key("one", &[], None, "ana").await.expect("a key");
            desk.new_key("two", &[], None, "ana").await.expect("a key");
            let mut work = desk.store.begin().await.expect("writes");
            run(&mut *work, no_locks.get(..2).expect("two")).await;
            run(&mut *work, &["delete from audit where sequence = 2"]).await;
            work.commit().await.expect("kept");
            let error = desk.new_key("three", &[], None, "ana").await.expect_err("refused").to_string();
            assert!(error.contains("does not end where it was signed"), "{error}");
        });
    }
}
