//! How long one question takes: the rose of the core rules in a hot dry valley in September, step by step, and the season
//! of a profile that nobody has asked about before.
#![expect(clippy::disallowed_methods, reason = "a benchmark reads the rule files, the engine never does")]

use std::fs;
use std::hint::black_box;
use std::path::Path;

use criterion::{Criterion, criterion_group, criterion_main};
use lammas_agronomy::season::{Season, SiteShift};
use lammas_engine::compile::set::{Set, compile};
use lammas_engine::decide::decision::{Decision, decide};
use lammas_engine::decide::moment::Moment;
use lammas_engine::decide::outcome::{Outcome, Verdict};
use lammas_engine::explain::answer::Task;
use lammas_engine::explain::task;
use lammas_engine::explain::voice::Voice;
use lammas_engine::explain::whole::{self, Extent};
use lammas_engine::pack::rule::Kind;
use lammas_engine::question::Question;
use lammas_engine::rank::order;
use lammas_engine::read::{PackFile, read};
use lammas_engine::scenario;

/// The service's allocator.
#[global_allocator]
static ALLOCATOR: mimalloc::MiMalloc = mimalloc::MiMalloc;

const SCENARIO: &str = "september-hot-dry-valley.yaml";

fn walk(root: &Path, folder: &Path, out: &mut Vec<PackFile>) {
    for entry in fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        if path.is_dir() {
            walk(root, &path, out);
        } else if path.extension().is_some_and(|e| e == "yaml") {
            let name = path.strip_prefix(root).unwrap().to_string_lossy().replace('\\', "/");
            out.push(PackFile { path: name, text: fs::read_to_string(&path).unwrap() });
        }
    }
}

fn core() -> Set {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("../packs/core");
    let mut files = Vec::new();
    walk(&root, &root, &mut files);
    let (set, faults) = compile(read(&files).unwrap());
    set.unwrap_or_else(|| panic!("{faults:#?}"))
}

fn asked(set: &Set) -> Question {
    let found = set.pack.scenarios.iter().find(|filed| filed.file.ends_with(SCENARIO)).unwrap();
    scenario::question(set, &found.entry.ask).unwrap()
}

/// The tasks that apply, in their order.
fn ranked<'d>(decision: &'d Decision, moment: &Moment<'_>) -> Vec<&'d Verdict> {
    let is_task = |v: &&Verdict| moment.set.rules[v.rule as usize].kind == Kind::Task;
    let mut tasks: Vec<&Verdict> =
        decision.verdicts.iter().filter(|v| v.outcome == Outcome::Applies).filter(is_task).collect();
    order::put(&mut tasks, moment);
    tasks
}

fn explained<'a>(tasks: &[&Verdict], moment: &Moment<'a>) -> Vec<Task<'a>> {
    let shown: Vec<u32> = tasks.iter().map(|v| v.rule).collect();
    let voice = Voice::new(moment, "en").unwrap();
    let mut explained = Vec::with_capacity(tasks.len());
    explained.extend(tasks.iter().filter_map(|v| task::of(v, &shown, false, voice)));
    explained
}

fn rose(criterion: &mut Criterion) {
    let set = core();
    let question = asked(&set);
    let book = &set.plants[usize::from(question.plant)];
    let moment = || Moment::new(&set, book, &question, question.day);
    let first = moment();
    let decision = decide(&first);
    // A question that turned out nothing would be quick and show nothing.
    assert!(explained(&ranked(&decision, &first), &first).len() >= 5, "{decision:#?}");

    let mut group = criterion.benchmark_group(format!("rose of {} rules", book.rules.len()));
    group.bench_function("decide", |b| b.iter(|| decide(&black_box(moment())).verdicts.len()));
    group.bench_function("decide and rank", |b| {
        b.iter(|| {
            let moment = black_box(moment());
            let decision = decide(&moment);
            ranked(&decision, &moment).len()
        });
    });
    group.bench_function("decide, rank and explain the tasks", |b| {
        b.iter(|| {
            let moment = black_box(moment());
            let decision = decide(&moment);
            explained(&ranked(&decision, &moment), &moment).len()
        });
    });
    group.bench_function("whole answer", |b| {
        b.iter(|| whole::answer(&set, black_box(&question), "en", Extent::STANDARD).map(|answer| answer.tasks.len()));
    });
    group.bench_function("season of a new profile", |b| {
        b.iter(|| Season::new(black_box(&question.climate.profile), SiteShift::default()));
    });
    group.finish();
}

criterion_group!(benches, rose);
criterion_main!(benches);
