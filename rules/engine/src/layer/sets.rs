//! Sets read, lowest first, and what must be so for one to lie over another.

use std::collections::BTreeMap;
use std::sync::Arc;

use super::lay::Laying;
use crate::fault::{Fault, Weight, in_order};
use crate::pack::expression::place;
use crate::pack::layer::Layer;
use crate::pack::{Filed, Pack};
use crate::read::{PackFile, read};
use crate::version::hash;

/// The files of several sets, each path behind the name of its set; those of one set by itself as they are. A set whose name
/// can't be read goes by its number.
#[must_use]
pub fn files(layers: &[Vec<PackFile>]) -> Vec<PackFile> {
    if let [alone] = layers {
        return alone.clone();
    }
    layers
        .iter()
        .zip(1..)
        .flat_map(|(files, number)| {
            let name = name_of(files).unwrap_or_else(|| format!("set-{number}"));
            files.iter().map(move |file| PackFile { path: format!("{name}/{}", file.path), text: file.text.clone() })
        })
        .collect()
}

/// The name that a set gives itself.
fn name_of(files: &[PackFile]) -> Option<String> {
    let header = files.iter().find(|file| file.path == "pack.yaml")?;
    let fields: serde_json::Value = serde_saphyr::from_str(&header.text).ok()?;
    Some(fields.get("name")?.as_str()?.to_owned())
}

/// Reads sets and lays each over those before it. Beside the pack come findings that don't keep it from being used.
///
/// # Errors
/// What can't be read, and what may not be said of the sets below.
pub fn read_layers(layers: &[Vec<PackFile>]) -> Result<(Pack, Vec<Fault>), Vec<Fault>> {
    let mut faults = Vec::new();
    let mut packs = Vec::new();
    for (files, number) in layers.iter().zip(1..) {
        let name = name_of(files).unwrap_or_else(|| format!("set-{number}"));
        let prefix = if layers.len() > 1 { format!("{name}/") } else { String::new() };
        match read(files) {
            Ok(pack) => packs.push(moved(pack, &prefix)),
            Err(found) => faults.extend(found.into_iter().map(|mut fault| {
                fault.place.file = format!("{prefix}{}", fault.place.file);
                fault.related.iter_mut().for_each(|(place, _)| place.file = format!("{prefix}{}", place.file));
                fault
            })),
        }
    }
    if !faults.is_empty() {
        return Err(in_order(faults));
    }
    let layer = |pack: &Pack| Layer {
        name: pack.header.name.value.clone(),
        version: pack.header.version.value.clone(),
        sha256: hash::of_pack(pack),
    };
    let sets: Vec<Layer> = packs.iter().map(layer).collect();
    let mut packs = packs.into_iter();
    let Some(mut below) = packs.next() else { return Err(Vec::new()) };
    lowest(&below, &mut faults);
    for (number, above) in packs.enumerate() {
        stands_on(&above, sets.get(..=number).unwrap_or_default(), &mut faults);
        Laying { number: number + 1, faults: &mut faults }.over(&mut below, &above);
    }
    let faults = in_order(faults);
    if faults.iter().any(|fault| fault.weight == Weight::Error) {
        return Err(faults);
    }
    if sets.len() > 1 {
        below.laid.layers = sets;
    }
    Ok((below, faults))
}

/// A pack whose files stand in a folder of their own.
fn moved(mut pack: Pack, prefix: &str) -> Pack {
    if prefix.is_empty() {
        return pack;
    }
    let mut paths: BTreeMap<Arc<str>, Arc<str>> = BTreeMap::new();
    macro_rules! moved {
        ($($list:ident),*) => {$(
            for filed in &mut pack.$list {
                let path = paths.entry(Arc::clone(&filed.file));
                filed.file = Arc::clone(path.or_insert_with(|| Arc::from(format!("{prefix}{}", filed.file))));
            }
        )*};
    }
    moved!(
        jobs, classes, stages, outlooks, signs, cautions, sources, materials, problems, plants, rules, climates,
        scenarios, changes
    );
    pack.files = pack.files.into_iter().map(|(path, text)| (format!("{prefix}{path}"), text)).collect();
    pack.root = prefix.to_owned();
    pack
}

/// The lowest set speaks of no other.
fn lowest(pack: &Pack, faults: &mut Vec<Fault>) {
    for Filed { file, entry } in &pack.changes {
        let message =
            format!("there is no set below in which the {} `{}` could stand", entry.kind.word(), entry.id.value);
        let help = "name the set below before this one, or write `id` for an entry of its own";
        faults.push(Fault::error("nothing-below", place(file, &entry.id), message).help(help));
    }
    let header = format!("{}pack.yaml", pack.root);
    for over in pack.header.over.iter().filter(|_| pack.changes.is_empty()) {
        let message = format!("this set lies over `{}`, which is not below it", over.value);
        faults.push(Fault::error("nothing-below", place(&header, over), message).help("name that set before this one"));
    }
}

/// The sets that a set says it lies over are there, in their order.
fn stands_on(above: &Pack, below: &[Layer], faults: &mut Vec<Fault>) {
    let header = format!("{}pack.yaml", above.root);
    let names: Vec<&str> = below.iter().map(|layer| layer.name.as_str()).collect();
    if above.header.over.is_empty() {
        let message = format!("`{}` does not say over which sets it lies", above.header.name.value);
        let help = format!("write `over: [{}]`", names.join(", "));
        faults.push(Fault::error("missing-field", place(&header, &above.header.name), message).help(help));
    }
    let mut from = 0;
    for over in &above.header.over {
        match names.iter().skip(from).position(|name| *name == over.value) {
            Some(at) => from += at + 1,
            None => {
                let message = format!("this set lies over `{}`, which is not below it", over.value);
                let help = format!("below it are, in this order: {}", names.join(", "));
                faults.push(Fault::error("nothing-below", place(&header, over), message).help(help));
            }
        }
    }
}
