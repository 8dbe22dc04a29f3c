//! From a folder to a release on the command line.

use std::fs;
use std::path::PathBuf;

use serde_json::Value;

use super::run;

/// A folder that is gone when the test is over.
struct TestFolder(PathBuf);

impl TestFolder {
    fn new(name: &str) -> Self {
        let folder = std::env::temp_dir().join(format!("lammas-cli-{name}-{}", std::process::id()));
        fs::create_dir_all(&folder).expect("made");
        Self(folder)
    }

    fn path(&self, inside: &str) -> String {
        self.0.join(inside).to_str().expect("text").to_owned()
    }
}

impl Drop for TestFolder {
    fn drop(&mut self) {
        let _ = fs::remove_dir_all(&self.0);
    }
}

#[test]
fn a_set_is_brought_in_published_undone_held_back_kept_and_put_back() {
    let folder = TestFolder::new("store");
    let store = folder.path("garden");
    let mini = "../rules/engine/tests/data/mini";
    let with = |arguments: &[&str]| run(&[arguments, &["--store", &store, "--as", "ana"]].concat());
    let json = |arguments: &[&str]| -> Value {
        let (code, out, error) = with(&[arguments, &["--json"]].concat());
        assert_eq!(code, Some(0), "{arguments:?}: {error}");
        serde_json::from_str(&out).expect("JSON")
    };

    let draft = json(&["import", mini, "--note", "first"])["draft"].as_str().expect("a name").to_owned();
    let first = json(&["publish", &draft]);
    assert_eq!((first["rule_set"].as_str(), first["version"].as_str()), (Some("mini"), Some("2026.11.1")));
    let (code, _, error) = with(&["publish", &draft]);
    assert_eq!((code, error.contains("is published, not open")), (Some(2), true), "{error}");

    let held = json(&[
        "hold-back",
        "material",
        "garden-oil",
        "--set",
        "mini",
        "--because",
        "Burnt buds.",
        "--because",
        "es=Yemas quemadas.",
    ]);
    assert_eq!(held["version"], "2026.11.1+held.1");
    let (code, out, _) = with(&["hold-back", "--list"]);
    assert_eq!(
        (code, out.contains("held back material garden-oil (mini)") && out.contains("waits for a review")),
        (Some(0), true),
        "{out}"
    );
    let (code, _, error) = with(&["hold-back", "--review", "1", "--lift", "--because", "gone"]);
    assert_eq!((code, error.contains("another one must review it")), (Some(2), true), "{error}");

    let into = folder.path("out");
    let (code, _, error) = run(&["export", "mini@2026.11.1+held.1", "--into", &into, "--store", &store]);
    assert_eq!(code, Some(0), "{error}");
    let guard = fs::read_to_string(format!("{into}/rules/held-back.yaml")).expect("the guard");
    assert!(guard.contains("Yemas quemadas."), "{guard}");

    assert_eq!(json(&["undo", "mini"])["version"], "2026.11.1");
    assert_eq!(json(&["undo", "mini"])["version"], "2026.11.1+held.1");

    let key = json(&["key", "new", "till", "--scopes", "edit,publish"]);
    let secret = key["key"].as_str().expect("shown once").to_owned();
    let (_, listed, _) = with(&["key", "list"]);
    assert!(listed.contains("till") && !listed.contains(&secret), "{listed}");
    let (code, ..) = with(&["key", "revoke", key["id"].as_str().expect("an id")]);
    assert_eq!(code, Some(0));
    let (code, _, error) = with(&["key", "new", "till", "--scopes", "everything"]);
    assert_eq!(
        (code, error.contains("expected one of edit, publish, review, audit, weather")),
        (Some(2), true),
        "{error}"
    );

    let (code, out, _) = with(&["audit", "verify"]);
    assert_eq!((code, out.as_str()), (Some(0), "7 rows, 4 releases: all as written\n"));
    let (code, out, error) = with(&["doctor"]);
    assert_eq!(code, Some(0), "{out}{error}");
    assert!(out.contains("well   audit trail    7 rows, 4 releases"), "{out}");

    let file = folder.path("garden.gz");
    assert_eq!(with(&["backup", &file]).0, Some(0));
    let again = folder.path("again");
    fs::create_dir(&again).expect("a folder");
    for name in ["signing.key", "trusted.keys"] {
        fs::copy(format!("{store}/{name}"), format!("{again}/{name}")).expect("copied");
    }
    let (code, out, error) = run(&["restore", &file, "--store", &again]);
    assert_eq!((code, out.contains("7 audit rows, 4 releases examined")), (Some(0), true), "{out}{error}");
    assert_eq!(run(&["audit", "verify", "--store", &again]).0, Some(0));
    assert_eq!(run(&["restore", &file, "--store", &again]).0, Some(1), "it is not empty any more");

    // Nobody finds the secret of a key in the store or its backup.
    for file in ["lammas.db", "lammas.db-wal"] {
        if let Ok(bytes) = fs::read(format!("{store}/{file}")) {
            let secret = secret.rsplit('_').next().expect("its secret").as_bytes();
            assert!(!bytes.windows(secret.len()).any(|part| part == secret), "{file}");
        }
    }
}

#[cfg(unix)]
#[test]
fn the_signing_key_is_its_owners_alone() {
    use std::os::unix::fs::PermissionsExt as _;
    let folder = TestFolder::new("key");
    let store = folder.path("garden");
    assert_eq!(run(&["key", "list", "--store", &store]).0, Some(0));
    let file = format!("{store}/signing.key");
    assert_eq!(fs::metadata(&file).expect("made at the first start").permissions().mode() & 0o777, 0o600);
    fs::set_permissions(&file, fs::Permissions::from_mode(0o644)).expect("opened to others");
    let (code, _, error) = run(&["key", "list", "--store", &store]);
    assert_eq!((code, error.contains("others may read it (mode 644), expected mode 600")), (Some(2), true), "{error}");
}
