//! Many rules: the engine beside loops written by hand for the same rules and documents, in the same run.
//!
//! 60 plants; a rule names one to three of them and joins two to five conditions; 256 documents of 40 facts and up to four
//! signs. Two series: *growing*, where every plant has its share of the rules and the conditions are narrowed so that about
//! eleven apply to a document; and *steady*, where the plant asked about has twenty rules in every set.
#![allow(clippy::disallowed_methods, reason = "a benchmark looks at the clock, the engine never does")]
#![allow(clippy::print_stdout, reason = "the table is what it is run for")]

mod engine;
mod facts;
mod making;
mod plain;

use std::hint::black_box;
use std::time::Instant;

use criterion::{BenchmarkId, Criterion};
use lammas_engine::compile::set::Set;
use lammas_engine::question::Question;
use making::{Document, Rule};

/// How many rules apply to a document, from a thousand rules upward.
const MATCHED: f64 = 11.0;
/// Rules of the plant asked about in the steady series.
const STEADY: usize = 20;
/// Rounds of the table: in each the engine and the loops take turns, and of each the least disturbed round counts.
const ROUNDS: usize = 60;
/// How long a turn lasts at least, in ms.
const TURN_MS: u128 = 3;

struct Workload {
    rules: Vec<Rule>,
    grouped: Vec<Vec<Rule>>,
    documents: Vec<Document>,
    set: Set,
    questions: Vec<Question>,
    matched: f64,
}

fn mean_matched(grouped: &[Vec<Rule>], documents: &[Document]) -> f64 {
    let all: usize = documents.iter().map(|document| plain::of_the_plant(grouped, document).len()).sum();
    all as f64 / documents.len() as f64
}

/// The width at which about `MATCHED` rules apply to a document.
fn width(count: usize, documents: &[Document]) -> f64 {
    let (mut low, mut high) = (0.0, 2.0);
    for _ in 0..12 {
        let middle = f64::midpoint(low, high);
        let rules = making::rules(count, middle, None);
        if mean_matched(&plain::grouped(&rules), documents) < MATCHED { low = middle } else { high = middle }
    }
    high
}

impl Workload {
    fn of(count: usize, steady: bool) -> Self {
        let documents = making::documents(steady.then_some(0));
        let width = width(if steady { 1_000 } else { count.max(1_000) }, &making::documents(None));
        let rules = making::rules(count, width, steady.then_some(STEADY));
        let grouped = plain::grouped(&rules);
        let set = engine::set(&rules);
        let questions = engine::questions(&set, &documents);
        let matched = mean_matched(&grouped, &documents);
        let workload = Self { rules, grouped, documents, set, questions, matched };
        workload.agrees();
        workload
    }

    /// All three name the same rules, and there is something to name.
    fn agrees(&self) {
        assert!(self.matched > 0.5, "{}", self.matched);
        for (at, (document, question)) in self.documents.iter().zip(&self.questions).enumerate() {
            let expected = plain::of_all(&self.rules, document);
            assert_eq!(plain::of_the_plant(&self.grouped, document), expected, "document {at}");
            assert_eq!(engine::decided(&self.set, question), expected, "document {at}");
        }
    }

    fn by_engine(&self) -> usize {
        self.questions.iter().map(|question| engine::decided(&self.set, black_box(question)).len()).sum()
    }

    fn by_plant(&self) -> usize {
        self.documents.iter().map(|document| plain::of_the_plant(&self.grouped, black_box(document)).len()).sum()
    }

    fn by_all(&self) -> usize {
        self.documents.iter().map(|document| plain::of_all(&self.rules, black_box(document)).len()).sum()
    }

    /// ns a document: the engine, the loop over the plant's rules, the loop over all.
    fn timed(&self) -> [f64; 3] {
        let ways: [&dyn Fn() -> usize; 3] = [&|| self.by_engine(), &|| self.by_plant(), &|| self.by_all()];
        let mut least = [f64::INFINITY; 3];
        for _ in 0..ROUNDS {
            for (way, least) in ways.iter().zip(&mut least) {
                let begin = Instant::now();
                let mut passes = 0_u32;
                while passes == 0 || begin.elapsed().as_millis() < TURN_MS {
                    black_box(way());
                    passes += 1;
                }
                let taken = begin.elapsed().as_nanos() as f64 / f64::from(passes) / self.documents.len() as f64;
                *least = least.min(taken);
            }
        }
        least
    }
}

fn main() {
    // Without `--bench` it is only checked that it runs and that all agree.
    let measure = std::env::args().any(|argument| argument == "--bench");
    let sizes: &[usize] = if measure { &[100, 1_000, 10_000, 100_000] } else { &[100, 1_000] };
    let mut criterion = Criterion::default()
        .sample_size(20)
        .warm_up_time(std::time::Duration::from_millis(300))
        .measurement_time(std::time::Duration::from_millis(1_500))
        .configure_from_args();
    for (name, steady) in [("growing", false), ("steady", true)] {
        println!(
            "{name}: ns a document\n   rules  own  apply    engine  plant's loop  whole loop  engine to plant's loop  growth"
        );
        let mut smallest = None;
        for count in sizes {
            let workload = Workload::of(*count, steady);
            let own: usize = workload.documents.iter().map(|d| workload.grouped[usize::from(d.plant)].len()).sum();
            let own = own / workload.documents.len();
            let [engine, plant, all] = workload.timed();
            let first = *smallest.get_or_insert(engine);
            println!(
                "{count:8} {own:4} {:6.1} {engine:9.0} {plant:13.0} {all:11.0} {:23.2} {:7.2}",
                workload.matched,
                engine / plant,
                engine / first
            );
            let mut group = criterion.benchmark_group(format!("{name}, 256 documents"));
            for (way, run) in
                [("engine", Workload::by_engine as fn(&Workload) -> usize), ("plant's loop", Workload::by_plant)]
            {
                group.bench_with_input(BenchmarkId::new(way, count), &workload, |b, workload| b.iter(|| run(workload)));
            }
            group.finish();
        }
    }
    criterion.final_summary();
}
