//! How much of the server's speed an answer leaves: requests a second of `POST /v1/advice` against those of a call on the
//! same server that gives back as many fixed bytes. `cargo bench -p lammas-tests --bench load` prints both and their ratio,
//! and ends with 1 when the ratio is under its floor.
//!
//! The clients run on the same machine, in the same process: absolute numbers are of that machine, and the clients' own
//! work weighs on the fixed answers more than on the others, so the ratio is, if anything, flattered. Read it beside runs
//! on the same machine.

mod client;

use std::env;
use std::process::ExitCode;
use std::time::Duration;

use actix_web::{HttpResponse, web};
use lammas::settings::Settings;
use lammas_tests::server::Server;
use serde_json::json;

/// The ratio that must be reached.
const FLOOR: f64 = 0.30;
/// Connections that are kept open.
const CONNECTIONS: usize = 8;
/// Rounds of each call, in turns: the best counts, since other work can only slow a round down.
const ROUNDS: usize = 5;
const ROUND: Duration = Duration::from_secs(2);

#[expect(clippy::print_stdout, reason = "the figures are what it is for")]
fn main() -> ExitCode {
    // `cargo test --benches` only asks whether it runs.
    let is_trial = !env::args().any(|argument| argument == "--bench");
    let (rounds, round) = if is_trial { (1, Duration::from_millis(50)) } else { (ROUNDS, ROUND) };
    let question = json!({
        "climate": {"id": "hot-dry-valley"}, "date": "2026-09-15",
        "plant": {"type": "rose", "traits": {"flowering": "repeat"}, "age_years": 4},
        "site": {"planting": "ground", "soil": {"texture": "clay-loam", "ph": 8.2}},
        "water": {"method": "basin", "source_alkaline": true},
        "condition": {"signs": [{"sign": "spent-blooms"}, {"sign": "scorched-petals"}, {"sign": "crowded-centre"}]},
    });
    let mut settings = Settings::default();
    settings.listen.address.set_port(0);
    settings.listen.workers = 1;
    settings.deadlines.stop_s = 1;
    // The size of the fixed answer is known once the other has been given once.
    let size = Server::with(settings.clone(), |_| {}).post("/v1/advice", &question).body.len();
    let bytes = web::Bytes::from(vec![b'x'; size]);
    let server = Server::with(settings, move |config| {
        let bytes = bytes.clone();
        // It takes the question in as well, and looks at none of it.
        let answer = move |_question: web::Bytes| {
            let bytes = bytes.clone();
            async move { HttpResponse::Ok().content_type("application/json").body(bytes) }
        };
        config.route("/fixed", web::post().to(answer));
    });
    let body = question.to_string();
    let ask = |path: &str| client::Call::new(server.address(), path, &body);
    let (advice, fixed) = (ask("/v1/advice"), ask("/fixed"));
    let (mut best_advice, mut best_fixed) = (0.0_f64, 0.0_f64);
    for _ in 0..rounds {
        best_fixed = best_fixed.max(fixed.a_second(CONNECTIONS, round));
        best_advice = best_advice.max(advice.a_second(CONNECTIONS, round));
    }
    let ratio = best_advice / best_fixed;
    println!("question {} bytes, answer {size} bytes, {CONNECTIONS} connections, 1 worker", body.len());
    println!("fixed bytes     {best_fixed:>9.0} a second");
    println!("POST /v1/advice {best_advice:>9.0} a second");
    println!("ratio           {ratio:>9.3} (floor {FLOOR:.2})");
    if is_trial || ratio >= FLOOR { ExitCode::SUCCESS } else { ExitCode::FAILURE }
}
