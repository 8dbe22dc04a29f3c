//! Migrations have equal names on both sides, and what was shipped is never changed.

use lammas::store::migrations::{File, POSTGRES, SQLITE};
use lammas::store::tables::sha256;

/// Shipped migrations: moment, name, SHA-256 of the SQLite file, of the PostgreSQL file. A row is never changed.
const SHIPPED: &[(i64, &str, &str, &str)] = &[
    (
        20261125120000,
        "documents",
        "c22738268fa7fa66d48496de60cdf2e2d5c7404bb5176f5d7d425d6174aeab03",
        "a44ab6adf0736ef8cb72765e6329cabf39deb553f9b9ca03a09171a383193dd8",
    ),
    (
        20261125120100,
        "releases",
        "a69dc350b6ca2b0fb807a8f3f7bcf4b7b8ebfd43741f62a6d33370f11587d3a0",
        "2743588f00fd77480a6195cde4c6b2aa512ba00807eb74726954be963227c7f9",
    ),
    (
        20261125120200,
        "audit",
        "0341ac77e65897ed2ed0b98ee2fbe08f69334ab77179401ac083d43a9b22398a",
        "e2103b756fdd38bd2fa8f55931947e7cd218bc5efb585da93e160df7434adcea",
    ),
    (
        20261125120300,
        "keys",
        "0c004688795fbc4c9641df51d509c6ee53f412cf3b6c6576a6c770cf1305cfed",
        "b0e7748807853da7a7fe86417a7b8bad76f0c94e81f92627560f57190fc8fb84",
    ),
    (
        20261125120400,
        "climates",
        "45c17062cc37dd47288e44fac140bb411bd50b0b54fd2f96eef6201f29beaa23",
        "0533e68250a176a4da5402319a4e9575e11e38c13b71531bc5c1feb9a92b5e6d",
    ),
];

#[test]
fn both_stores_have_migrations_of_equal_names() {
    let names = |files: &[File]| files.iter().map(|(moment, name, _)| (*moment, *name)).collect::<Vec<_>>();
    assert_eq!(names(SQLITE), names(POSTGRES));
    assert!(SQLITE.is_sorted_by_key(|(moment, ..)| *moment));
}

#[test]
fn a_migration_that_was_shipped_is_never_changed() {
    let found: Vec<_> = SQLITE
        .iter()
        .zip(POSTGRES)
        .map(|((moment, name, lite), (_, _, postgres))| {
            (*moment, *name, sha256(lite.as_bytes()), sha256(postgres.as_bytes()))
        })
        .collect();
    let shipped: Vec<_> =
        SHIPPED.iter().map(|(moment, name, a, b)| (*moment, *name, (*a).to_owned(), (*b).to_owned())).collect();
    assert_eq!(found, shipped, "a new migration gets a new row here; an old one must not change");
}

#[test]
fn every_file_of_the_folders_is_in_the_program() {
    for (folder, files) in [("sqlite", SQLITE), ("postgres", POSTGRES)] {
        let path = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("../migrations").join(folder);
        assert_eq!(std::fs::read_dir(path).expect("the folder").count(), files.len(), "{folder}");
    }
}
