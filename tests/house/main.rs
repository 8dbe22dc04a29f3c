//! Rules of the house that a machine can check: licences, dependencies, what the repository may not name.

use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

fn root() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).parent().unwrap().to_path_buf()
}

fn files(under: &Path, out: &mut Vec<PathBuf>) {
    for entry in fs::read_dir(under).unwrap() {
        let path = entry.unwrap().path();
        let name = path.file_name().unwrap().to_string_lossy().into_owned();
        if matches!(name.as_str(), "target" | ".git" | "node_modules") {
            continue;
        }
        if path.is_dir() { files(&path, out) } else { out.push(path) }
    }
}

fn metadata() -> serde_json::Value {
    let cargo = std::env::var_os("CARGO").unwrap_or_else(|| "cargo".into());
    let output = Command::new(cargo)
        .args(["metadata", "--format-version", "1", "--locked"])
        .current_dir(root())
        .output()
        .unwrap();
    assert!(output.status.success(), "{}", String::from_utf8_lossy(&output.stderr));
    serde_json::from_slice(&output.stdout).unwrap()
}

#[test]
fn every_dependency_may_be_used_under_a_permissive_licence() {
    const FREE: [&str; 13] = [
        "MIT",
        "MIT-0",
        "Apache-2.0",
        "Apache-2.0 WITH LLVM-exception",
        "BSD-2-Clause",
        "BSD-3-Clause",
        "ISC",
        "Zlib",
        "Unicode-3.0",
        "Unlicense",
        "0BSD",
        "BSL-1.0",
        "CDLA-Permissive-2.0",
    ];
    let metadata = metadata();
    for package in metadata["packages"].as_array().unwrap() {
        let name = &package["name"];
        let licence = package["license"].as_str().unwrap_or_else(|| panic!("{name} names no licence"));
        // `A OR B`: one is enough; `A AND B`: all are needed.
        let free = licence.replace('/', " OR ").split(" OR ").any(|choice| {
            choice
                .split(" AND ")
                .all(|part| FREE.contains(&part.trim_matches(|c: char| c == '(' || c == ')' || c == ' ')))
        });
        assert!(free, "{name} is under {licence}");
    }
}

#[test]
fn every_dependency_is_used() {
    let mut unused = Vec::new();
    for crate_folder in ["rules/agronomy", "rules/engine", "api", "tests"] {
        let folder = root().join(crate_folder);
        let manifest = fs::read_to_string(folder.join("Cargo.toml")).unwrap();
        let mut sources = Vec::new();
        files(&folder, &mut sources);
        let text: String = sources
            .iter()
            .filter(|path| path.extension().is_some_and(|e| e == "rs"))
            .map(|path| fs::read_to_string(path).unwrap())
            .collect();
        let mut in_dependencies = false;
        for line in manifest.lines() {
            if line.starts_with('[') {
                in_dependencies = line.contains("dependencies");
            } else if in_dependencies && let Some((name, _)) = line.split_once(['.', ' ', '=']) {
                let word = name.trim().replace('-', "_");
                if !word.is_empty() && !word.starts_with('#') && !text.contains(&word) {
                    unused.push(format!("{crate_folder}: {name}"));
                }
            }
        }
    }
    assert!(unused.is_empty(), "{unused:?}");
}

#[test]
fn the_repository_stands_alone() {
    let mut all = Vec::new();
    files(&root(), &mut all);
    // Put together here, so that this file does not name them.
    let forbidden = [
        format!("/{}/", "work"),
        format!("..{}", "/shared"),
        format!("shared{}", "/reference"),
        format!("/{}/", "root"),
    ];
    let mut found: BTreeMap<PathBuf, &str> = BTreeMap::new();
    for path in all {
        let Ok(text) = fs::read_to_string(&path) else { continue };
        for word in &forbidden {
            if text.contains(word.as_str()) {
                found.insert(path.clone(), word);
            }
        }
    }
    assert!(found.is_empty(), "{found:#?}");
}
