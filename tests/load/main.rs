//! How much of the server's speed an answer leaves: requests a second of `POST /v1/advice` against those of a call on the
//! same server that gives back as many fixed bytes. `cargo bench -p lammas-tests --bench load` prints them and their ratios,
//! and ends with 1 when the ratio of a question that is asked again and again is under its floor.
//!
//! Two ratios: the same question again, as of a page that many visitors open, whose answer the server still has; and each
//! answer worked out anew, the season known, as of questions that are all different.
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
    let mut anew = settings.clone();
    anew.rules.answers_mb = 0;
    let anew = Server::with(anew, |_| {});
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
    let ask = |of: &Server, path: &str| client::Call::new(of.address(), path, &body);
    let calls = [ask(&server, "/fixed"), ask(&server, "/v1/advice"), ask(&anew, "/v1/advice")];
    let mut best = [0.0_f64; 3];
    for _ in 0..rounds {
        for (call, best) in calls.iter().zip(&mut best) {
            *best = best.max(call.a_second(CONNECTIONS, round));
        }
    }
    let [fixed, again, anew] = best;
    let ratio = again / fixed;
    println!("question {} bytes, answer {size} bytes, {CONNECTIONS} connections, 1 worker", body.len());
    println!("fixed bytes                 {fixed:>9.0} a second");
    println!("POST /v1/advice, again      {again:>9.0} a second, ratio {ratio:.3} (floor {FLOOR:.2})");
    println!("POST /v1/advice, each anew  {anew:>9.0} a second, ratio {:.3}", anew / fixed);
    if is_trial || ratio >= FLOOR { ExitCode::SUCCESS } else { ExitCode::FAILURE }
}
