//! Proves a rule set and says how long it took: `cargo run --release -p lammas-engine --example prove -- DIR [TIMES]`.
//! `… -- seeded 50` plants so many defects of each kind and prints what was found.
//! With TIMES the set is taken so many times over, each time for plants and rules of other names.
#![expect(
    clippy::print_stdout,
    clippy::disallowed_methods,
    reason = "an example reads files, tells the time and prints"
)]

use std::path::Path;
use std::time::Instant;

use lammas_engine::check::check_and_prove;
use lammas_engine::compile::set::compile;
use lammas_engine::prove::prove;
use lammas_engine::read::read;

#[path = "../tests/seeded/defects.rs"]
mod defects;
#[path = "../tests/seeded/garden.rs"]
mod garden;
#[path = "../tests/seeded/table.rs"]
mod table;
#[path = "../tests/seeded/times.rs"]
mod times;

/// Plants so many defects of each kind, half of them into the small set of the tests, and prints the table.
fn seeded(times: usize) {
    let here = Path::new(env!("CARGO_MANIFEST_DIR"));
    let mini = garden::Garden::of(&garden::files(&here.join("tests/data/mini")));
    let core = garden::Garden::of(&garden::files(&here.join("../packs/core")));
    let mut alarms = 0;
    for healthy in [&mini, &core] {
        let faults = check_and_prove(&healthy.files()).0.faults;
        alarms += faults.iter().filter(|f| defects::KINDS.iter().any(|kind| kind.code == f.code)).count();
    }
    let gardens = [(&mini, times / 2), (&core, times - times / 2)];
    let run = |(seed, kind)| (kind, table::run(kind, &gardens, seed));
    let rows: Vec<_> = (1_000_u64..).zip(&defects::KINDS).map(run).collect();
    rows.iter().flat_map(|(_, row)| &row.missed).for_each(|missed| println!("{missed}"));
    print!("{}", table::shown(&rows));
    println!("findings of these codes in the healthy sets: {alarms}");
}

fn main() {
    let mut arguments = std::env::args().skip(1);
    let folder = arguments.next().unwrap_or_else(|| "rules/packs/core".to_owned());
    if folder == "seeded" {
        return seeded(arguments.next().and_then(|times| times.parse().ok()).unwrap_or(50));
    }
    let taken: usize = arguments.next().and_then(|times| times.parse().ok()).unwrap_or(1);
    let whole = garden::Garden::of(&garden::files(Path::new(&folder)));
    let files = times::over(&whole, taken).files();
    let (set, faults) = match read(&files) {
        Ok(pack) => compile(pack),
        Err(faults) => (None, faults),
    };
    let Some(set) = set else {
        faults.iter().for_each(|fault| println!("{fault}"));
        return;
    };
    let begun = Instant::now();
    let proven = prove(&set);
    let took = begun.elapsed();
    for fault in &proven.faults {
        println!("{fault}");
        if let Some(witness) = &fault.witness {
            println!("  witness: {}: {}", witness.shows, witness.request);
        }
        if let Some(certificate) = &fault.certificate {
            println!("  certificate: {}, {} cells", certificate.claim, certificate.cells);
        }
    }
    for open in &proven.undecided {
        println!("not decided: {} {}", open.code, open.rules.join(" "));
    }
    println!("{} rules, {} searches, {} findings, {took:.2?}", set.rules.len(), proven.searches, proven.faults.len());
}
