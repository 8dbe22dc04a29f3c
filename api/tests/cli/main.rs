//! The program as a shell sees it: what it prints, and its exit codes.

mod compare;
mod layers;
mod records;
mod rules;
mod store;
mod weather;
mod whole;
mod why_not;

use std::io::{BufRead, BufReader, Read, Write};
use std::net::TcpStream;
use std::process::{Child, Command, Output, Stdio};

use serde_json::{Value, json};

fn lammas(arguments: &[&str]) -> Command {
    let mut command = Command::new(env!("CARGO_BIN_EXE_lammas"));
    command.args(arguments).stdin(Stdio::null());
    for variable in
        ["LAMMAS_LISTEN", "LAMMAS_PACKS", "LAMMAS_WEATHER", "LAMMAS_STORE", "LAMMAS_STORE_FILES", "LAMMAS_AS"]
    {
        command.env_remove(variable);
    }
    command
}

fn run(arguments: &[&str]) -> (Option<i32>, String, String) {
    ended(&lammas(arguments).output().expect("it runs"))
}

fn run_with(arguments: &[&str], input: &str) -> (Option<i32>, String, String) {
    let mut command = lammas(arguments);
    command.stdin(Stdio::piped()).stdout(Stdio::piped()).stderr(Stdio::piped());
    let mut child = command.spawn().expect("it runs");
    let written = child.stdin.take().expect("an input").write_all(input.as_bytes());
    // A program that is called wrongly ends before it reads.
    assert!(written.is_ok() || written.is_err_and(|e| e.kind() == std::io::ErrorKind::BrokenPipe));
    ended(&child.wait_with_output().expect("it ends"))
}

fn ended(output: &Output) -> (Option<i32>, String, String) {
    let text = |bytes: &[u8]| String::from_utf8(bytes.to_vec()).expect("text");
    (output.status.code(), text(&output.stdout), text(&output.stderr))
}

// FAO-56, example 20, last line: 5.0 mm a day, printed to 0.1.
const LYON: [&str; 4] = ["latitude=45.72 deg", "day_of_year=196", "tmin=14.8", "tmax=26.6C"];

#[test]
fn a_quantity_is_printed_for_people_and_for_programs() {
    let arguments = [&["quantity", "et0_hs"], LYON.as_slice()].concat();
    let (code, out, _) = run(&arguments);
    assert_eq!(code, Some(0));
    assert!(out.starts_with("et0_hs = 5.03") && out.contains(" mm/d\n"), "{out}");
    assert!(out.contains("source  FAO-56 equation 52"), "{out}");

    let (code, out, _) = run(&[arguments.as_slice(), &["--json"]].concat());
    assert_eq!(code, Some(0));
    let answer: Value = serde_json::from_str(&out).expect("JSON");
    assert!((answer["value"].as_f64().expect("a number") - 5.0).abs() <= 0.05, "{answer}");

    let inputs = json!({"latitude": 45.72, "day_of_year": 196, "tmin": 14.8, "tmax": 26.6}).to_string();
    let (code, piped, _) = run_with(&["quantity", "et0_hs", "--inputs", "-", "--json"], &inputs);
    assert_eq!((code, piped), (Some(0), out));
}

#[test]
fn bad_input_is_named_and_ends_with_2() {
    for (arguments, words) in [
        (vec!["quantity", "et0_h"], "did you mean `et0_hs`?"),
        (vec!["quantity", "et0_hs", "latitude=97"], "`latitude` is 97 deg"),
        (vec!["quantity", "et0_hs", "latitude"], "expected `input=value`, found `latitude`"),
        (vec!["quantity", "et0_hs", "--inputs", "/no/such/file"], "cannot read `/no/such/file`"),
        (vec!["quantity", "--check", "/no/such/file"], "cannot read `/no/such/file`"),
        (vec!["quantity", "--inputs", "-"], "required"),
        (vec!["serve", "--listen", "nowhere"], "nowhere"),
        (vec!["prune"], "unrecognized subcommand"),
    ] {
        let (code, out, error) = run(&arguments);
        assert_eq!((code, out.as_str()), (Some(2), ""), "{arguments:?}: {error}");
        assert!(error.contains(words), "{arguments:?}: {error}");
    }
    let (code, _, error) = run_with(&["quantity", "--check", "-"], "{\"cases\": []}");
    assert_eq!(code, Some(2), "{error}");
}

#[test]
fn a_server_that_cannot_listen_ends_with_3() {
    let taken = std::net::TcpListener::bind("127.0.0.1:0").expect("a free port");
    let address = taken.local_addr().expect("an address").to_string();
    let (code, _, error) = run(&["serve", "--listen", &address]);
    assert_eq!(code, Some(3), "{error}");
    assert!(error.contains(&format!("cannot listen on `{address}`")), "{error}");
}

#[test]
fn checks_that_fail_are_printed_and_counted_and_end_with_1() {
    let case = |id: &str, value: f64| {
        // FAO-56, annex 2, table 2.3: 3.168 kPa at 25 °C.
        json!({"id": id, "quantity": "saturation_vapour_pressure", "inputs": {"temperature": {"value": 25, "unit": "C"}},
            "expected": {"value": value, "unit": "kPa"}, "tolerance": {"kind": "abs", "value": 0.001}})
    };
    let both = json!({"cases": [case("right", 3.168), case("wrong", 4.0)]}).to_string();
    let (code, out, _) = run_with(&["quantity", "--check", "-"], &both);
    assert_eq!(code, Some(1));
    assert!(out.starts_with("wrong: ") && out.ends_with("\n1 passed, 1 failed\n"), "{out}");
    let right = json!({"cases": [case("right", 3.168)]}).to_string();
    let (code, out, _) = run_with(&["quantity", "--check", "-"], &right);
    assert_eq!((code, out.as_str()), (Some(0), "1 passed, 0 failed\n"));
    let (code, out, _) = run_with(&["quantity", "--check", "-", "--json"], &both);
    assert_eq!(code, Some(1));
    assert_eq!(serde_json::from_str::<Value>(&out).expect("JSON")["failed"][0]["id"], "wrong");
}

#[test]
fn records_are_found_from_whatever_folder_a_check_is_started_in() {
    let file = concat!(env!("CARGO_MANIFEST_DIR"), "/../tests/published/degree_days.json");
    let output = lammas(&["quantity", "--check", file]).current_dir(std::env::temp_dir()).output().expect("it runs");
    let (code, out, _) = ended(&output);
    assert_eq!(code, Some(0), "{out}");
    assert!(out.ends_with(" passed, 0 failed\n"), "{out}");
}

#[test]
fn the_document_is_printed() {
    let (code, out, _) = run(&["openapi"]);
    assert_eq!(code, Some(0));
    assert_eq!(serde_json::from_str::<Value>(&out).expect("JSON")["info"]["title"], "Lammas");
}

#[test]
fn whoever_reads_the_output_may_stop_reading() {
    let mut child = lammas(&["openapi"]).stdout(Stdio::piped()).stderr(Stdio::piped()).spawn().expect("it runs");
    drop(child.stdout.take());
    let mut error = String::new();
    child.stderr.take().expect("errors").read_to_string(&mut error).expect("text");
    assert_eq!((child.wait().expect("it ends").code(), error.as_str()), (Some(0), ""));
}

/// A server that is gone when the test is over.
struct Serving {
    child: Child,
    log: BufReader<std::process::ChildStderr>,
    address: String,
}

impl Serving {
    fn start() -> Self {
        let mut command = lammas(&["serve", "--listen", "127.0.0.1:0", "--workers", "1", "--log-format", "json"]);
        let mut child = command.stderr(Stdio::piped()).spawn().expect("it runs");
        let log = BufReader::new(child.stderr.take().expect("a log"));
        let mut serving = Self { child, log, address: String::new() };
        while serving.address.is_empty() {
            let mut line = String::new();
            let length = serving.log.read_line(&mut line).expect("a line");
            assert_ne!(length, 0, "it ended before it listened");
            let entry: Value = serde_json::from_str(&line).expect("JSON, line by line");
            if entry["message"] == "listening" {
                serving.address = entry["address"].as_str().expect("an address").to_owned();
            }
        }
        serving
    }

    fn ask(&self, request: &str) -> String {
        let mut connection = TcpStream::connect(&self.address).expect("it listens");
        connection.write_all(request.as_bytes()).expect("written");
        let mut answer = String::new();
        connection.read_to_string(&mut answer).expect("text, then the end");
        answer
    }
}

impl Drop for Serving {
    fn drop(&mut self) {
        let _ = self.child.kill();
        let _ = self.child.wait();
    }
}

#[test]
fn a_stopped_server_ends_in_peace_and_its_log_holds_nothing_that_callers_said() {
    let mut serving = Serving::start();
    let head = "host: here\r\nconnection: close\r\n";
    let answer = serving.ask(&format!("GET /v1/quantities?latitude=34.2345 HTTP/1.1\r\n{head}\r\n"));
    assert!(answer.starts_with("HTTP/1.1 400"), "{answer}");
    let body = "{\"inputs\": {\"latitude\": 34.2345, \"words\": \"my secret rose\"}}";
    let length = body.len();
    let answer = serving.ask(&format!(
        "POST /v1/quantities/et0_hs HTTP/1.1\r\n{head}content-type: application/json\r\ncontent-length: {length}\r\n\r\n{body}"
    ));
    assert!(answer.starts_with("HTTP/1.1 422"), "{answer}");
    let body = "{\"climate\": {\"id\": \"hot-dry-valley\"}, \"plant\": {\"type\": \"rose\"}, \"condition\": {\"words\": \"secret buds stay shut\"}}";
    let length = body.len();
    let answer = serving.ask(&format!(
        "POST /v1/advice HTTP/1.1\r\n{head}content-type: application/json\r\ncontent-length: {length}\r\n\r\n{body}"
    ));
    assert!(answer.starts_with("HTTP/1.1 200"), "{answer}");
    let answer = serving.ask(&format!("GET /v1/signs?q=secret+buds HTTP/1.1\r\n{head}\r\n"));
    assert!(answer.starts_with("HTTP/1.1 200"), "{answer}");
    let answer = serving.ask(&format!("GET /34.2345/secret HTTP/1.1\r\n{head}\r\n"));
    assert!(answer.starts_with("HTTP/1.1 404"), "{answer}");

    let stopped = Command::new("kill").arg(serving.child.id().to_string()).status().expect("`kill` runs");
    assert!(stopped.success());
    let mut log = String::new();
    serving.log.read_to_string(&mut log).expect("text");
    assert_eq!(serving.child.wait().expect("it ends").code(), Some(0));
    let answered: Vec<Value> = log
        .lines()
        .map(|line| serde_json::from_str(line).expect("JSON, line by line"))
        .filter(|entry: &Value| entry["message"] == "answered")
        .collect();
    let statuses: Vec<_> = answered.iter().map(|entry| entry["status"].as_u64()).collect();
    assert_eq!(statuses, [Some(400), Some(422), Some(200), Some(200), Some(404)]);
    assert_eq!(answered[1]["route"], "/v1/quantities/{name}");
    assert!(answered.iter().all(|entry| entry["request_id"].is_string()));
    for said in ["34.2345", "secret", "buds"] {
        assert!(!log.contains(said), "{log}");
    }
}
