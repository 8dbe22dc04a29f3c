//! Puts the files of the core rule set into the program.

use std::fmt::Write as _;
use std::path::{Path, PathBuf};
use std::{env, fs, io};

fn main() -> io::Result<()> {
    let here = PathBuf::from(env::var_os("CARGO_MANIFEST_DIR").ok_or_else(|| io::Error::other("no manifest folder"))?);
    let core = here.join("../rules/packs/core").canonicalize()?;
    println!("cargo::rerun-if-changed={}", core.display());
    let mut files = Vec::new();
    collect(&core, &mut files)?;
    files.sort();
    let mut list = String::from("&[\n");
    for file in files {
        let inside: Vec<_> =
            file.strip_prefix(&core).map_err(io::Error::other)?.iter().map(|part| part.to_string_lossy()).collect();
        let _ = writeln!(list, "    ({:?}, include_str!({:?})),", inside.join("/"), file);
    }
    list.push(']');
    let out = PathBuf::from(env::var_os("OUT_DIR").ok_or_else(|| io::Error::other("no output folder"))?);
    fs::write(out.join("core_files.rs"), list)
}

fn collect(folder: &Path, files: &mut Vec<PathBuf>) -> io::Result<()> {
    for entry in fs::read_dir(folder)? {
        let path = entry?.path();
        // A new file in any folder must be noticed.
        println!("cargo::rerun-if-changed={}", path.display());
        if path.is_dir() {
            collect(&path, files)?;
        } else if path.extension().is_some_and(|extension| extension == "yaml") {
            files.push(path);
        }
    }
    Ok(())
}
