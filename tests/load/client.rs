//! A small HTTP/1.1 client for load: connections that stay open, one request after the other on each.

use std::io::{BufRead, BufReader, Read, Write};
use std::net::{SocketAddr, TcpStream};
use std::thread;
use std::time::{Duration, Instant};

/// One call, as its bytes.
pub(crate) struct Call {
    address: SocketAddr,
    bytes: Vec<u8>,
}

impl Call {
    /// A POST of JSON.
    pub(crate) fn new(address: SocketAddr, path: &str, body: &str) -> Self {
        let head = format!(
            "POST {path} HTTP/1.1\r\nhost: here\r\ncontent-type: application/json\r\ncontent-length: {}\r\n\r\n",
            body.len()
        );
        Self { address, bytes: [head.as_bytes(), body.as_bytes()].concat() }
    }

    /// How often a second it is answered over so many connections.
    ///
    /// # Panics
    /// When a connection breaks or an answer is not a 200.
    pub(crate) fn a_second(&self, connections: usize, for_as_long: Duration) -> f64 {
        let started = Instant::now();
        let answered: u64 = thread::scope(|scope| {
            let threads: Vec<_> =
                (0..connections).map(|_| scope.spawn(move || self.answered(started + for_as_long))).collect();
            threads.into_iter().map(|thread| thread.join().expect("a connection that holds")).sum()
        });
        answered as f64 / started.elapsed().as_secs_f64()
    }

    fn answered(&self, until: Instant) -> u64 {
        let stream = TcpStream::connect(self.address).expect("it listens");
        stream.set_nodelay(true).expect("no delay");
        let mut reader = BufReader::with_capacity(64 * 1024, stream);
        let mut line = String::new();
        let mut body = Vec::new();
        let mut count = 0;
        while Instant::now() < until {
            reader.get_mut().write_all(&self.bytes).expect("written");
            let length = head(&mut reader, &mut line);
            body.resize(length, 0);
            reader.read_exact(&mut body).expect("a whole body");
            count += 1;
        }
        count
    }
}

/// Reads a head to its end: the length of the body that follows.
fn head(reader: &mut impl BufRead, line: &mut String) -> usize {
    let mut length = None;
    for place in 0.. {
        line.clear();
        reader.read_line(line).expect("a line");
        let text = line.trim_end();
        if place == 0 {
            assert!(text.starts_with("HTTP/1.1 200"), "{text}");
        } else if text.is_empty() {
            break;
        } else if let Some((name, value)) = text.split_once(':')
            && name.eq_ignore_ascii_case("content-length")
        {
            length = value.trim().parse().ok();
        }
    }
    length.expect("the server tells the length")
}
