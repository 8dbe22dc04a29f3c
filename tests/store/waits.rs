//! Every wait has an end, and SQLite is used as its authors mean.

use std::time::{Duration, Instant};

use lammas::store::StoreError;
use lammas::store::open::open;
use lammas::store::sqlite::SqliteStore;
use lammas::store::tables::sets;
use lammas_tests::stores::{both, wait};
use sqlx::Row as _;

#[test]
fn a_file_keeps_a_log_ahead_of_writing_and_puts_every_commit_on_the_disk() {
    let [(place, _folder), _] = both();
    wait(async {
        let store = SqliteStore::open(&place.database()).await.expect("opens");
        for (pragma, expected) in [
            ("pragma journal_mode", "wal"),
            ("pragma synchronous", "2"),
            ("pragma foreign_keys", "1"),
            ("pragma busy_timeout", "5000"),
            ("pragma trusted_schema", "0"),
            ("pragma integrity_check", "ok"),
        ] {
            let row = sqlx::query(pragma).fetch_one(store.pool()).await.expect("answers");
            let found = row.try_get::<String, _>(0).or_else(|_| row.try_get::<i64, _>(0).map(|n| n.to_string()));
            assert_eq!(found.expect("a value"), expected, "{pragma}");
        }
    });
}

#[test]
fn a_writer_who_waits_for_another_is_told_so_in_the_end_and_then_can_write() {
    for (place, _folder) in both() {
        wait(async {
            let (one, two) = (open(&place).await.expect("opens"), open(&place).await.expect("opens twice"));
            let held = one.begin().await.expect("the first writer");
            let begun = Instant::now();
            let error = match two.begin().await {
                Ok(_) => panic!("{}: two writers at once", one.back_end()),
                Err(error) => error,
            };
            assert!(matches!(error, StoreError::Busy(_)), "{}: {error}", one.back_end());
            assert!(error.passes());
            let waited = begun.elapsed();
            assert!(waited > Duration::from_secs(4) && waited < Duration::from_secs(7), "{waited:?}");
            drop(held);
            let mut work = two.begin().await.expect("now it is free");
            sets::put_organisation(&mut *work, "club", "A club", 1).await.expect("written");
            work.commit().await.expect("kept");
        });
    }
}

#[test]
fn a_server_that_is_not_there_is_away_and_not_waited_for() {
    let folder = lammas_tests::stores::Folder::new();
    let nobody = "postgres://app@127.0.0.1:1/app";
    let place = lammas::store::place::StorePlace::parse(nobody, Some(folder.path())).expect("a place");
    let begun = Instant::now();
    let error = wait(open(&place)).expect_err("nobody answers");
    assert!(matches!(error, StoreError::Away(_)), "{error}");
    assert!(begun.elapsed() < Duration::from_secs(7));
}
