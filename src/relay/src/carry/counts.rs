//! What is counted: how many requests of which kind ended how, how long they took, how many bytes. Nothing of whom or of
//! what: every label is one of the relay's own words.

use std::collections::BTreeMap;
use std::fmt::{self, Write};
use std::sync::atomic::{AtomicU64, Ordering};
use std::sync::{Mutex, PoisonError};

/// Upper bounds in milliseconds of the spans in which durations are counted; the last span has no end.
const BOUNDS: [u64; 10] = [5, 10, 25, 50, 100, 250, 500, 1_000, 2_500, 10_000];

/// All counts since the relay began.
#[derive(Debug, Default)]
pub struct Counts {
    requests: Mutex<BTreeMap<&'static str, Kind>>,
    troubles: AtomicU64,
}

/// The counts of one kind of request.
#[derive(Debug, Default)]
struct Kind {
    by_status: BTreeMap<u16, u64>,
    /// One for each bound, and the last for what took longer.
    by_time: [u64; BOUNDS.len() + 1],
    millis: u64,
    bytes_in: u64,
    bytes_out: u64,
}

/// One request that was answered.
#[derive(Clone, Copy, Debug)]
pub struct Request {
    pub what: &'static str,
    pub status: u16,
    pub millis: u64,
    pub bytes_in: u64,
    pub bytes_out: u64,
}

impl Counts {
    pub fn count(&self, request: Request) {
        let mut requests = self.requests.lock().unwrap_or_else(PoisonError::into_inner);
        let kind = requests.entry(request.what).or_default();
        *kind.by_status.entry(request.status).or_default() += 1;
        let span = BOUNDS.iter().position(|bound| request.millis <= *bound);
        kind.by_time[span.unwrap_or(BOUNDS.len())] += 1;
        kind.millis += request.millis;
        kind.bytes_in = kind.bytes_in.saturating_add(request.bytes_in);
        kind.bytes_out = kind.bytes_out.saturating_add(request.bytes_out);
    }

    pub fn trouble(&self) {
        self.troubles.fetch_add(1, Ordering::Relaxed);
    }
}

/// The text that Prometheus reads: its exposition format, version 0.0.4.
impl fmt::Display for Counts {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        let requests = self.requests.lock().unwrap_or_else(PoisonError::into_inner);
        heading(
            out,
            "lightround_requests_total",
            "counter",
            "Requests answered, by kind and status.",
        )?;
        for (what, kind) in &*requests {
            for (status, count) in &kind.by_status {
                let labels = format!(r#"{{what="{what}",status="{status}"}}"#);
                writeln!(out, "lightround_requests_total{labels} {count}")?;
            }
        }
        heading(
            out,
            "lightround_request_seconds",
            "histogram",
            "How long requests took.",
        )?;
        for (what, kind) in &*requests {
            kind.durations(out, what)?;
        }
        heading(
            out,
            "lightround_received_bytes_total",
            "counter",
            "Bytes of bodies received.",
        )?;
        for (what, kind) in &*requests {
            writeln!(
                out,
                r#"lightround_received_bytes_total{{what="{what}"}} {}"#,
                kind.bytes_in
            )?;
        }
        heading(
            out,
            "lightround_sent_bytes_total",
            "counter",
            "Bytes of bodies sent.",
        )?;
        for (what, kind) in &*requests {
            writeln!(
                out,
                r#"lightround_sent_bytes_total{{what="{what}"}} {}"#,
                kind.bytes_out
            )?;
        }
        heading(
            out,
            "lightround_store_troubles_total",
            "counter",
            "Times that the store failed or was busy.",
        )?;
        writeln!(
            out,
            "lightround_store_troubles_total {}",
            self.troubles.load(Ordering::Relaxed)
        )
    }
}

impl Kind {
    fn durations(&self, out: &mut impl Write, what: &str) -> fmt::Result {
        let mut so_far = 0;
        for (at, count) in self.by_time.iter().enumerate() {
            so_far += count;
            let bound = BOUNDS
                .get(at)
                .map_or_else(|| "+Inf".to_owned(), |millis| seconds(*millis));
            let labels = format!(r#"{{what="{what}",le="{bound}"}}"#);
            writeln!(out, "lightround_request_seconds_bucket{labels} {so_far}")?;
        }
        let sum = seconds(self.millis);
        writeln!(
            out,
            r#"lightround_request_seconds_sum{{what="{what}"}} {sum}"#
        )?;
        writeln!(
            out,
            r#"lightround_request_seconds_count{{what="{what}"}} {so_far}"#
        )
    }
}

fn seconds(millis: u64) -> String {
    format!("{}.{:03}", millis / 1_000, millis % 1_000)
}

fn heading(out: &mut impl Write, name: &str, kind: &str, help: &str) -> fmt::Result {
    writeln!(out, "# HELP {name} {help}\n# TYPE {name} {kind}")
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Expected lines from memory of the format's published description (Prometheus, "Exposition formats", text, 0.0.4):
    /// buckets hold all that took no longer, and the last equals the count.
    #[test]
    fn durations_are_counted_upwards() {
        let counts = Counts::default();
        for millis in [0, 5, 6, 400, 60_000] {
            counts.count(Request {
                what: "pull",
                status: 200,
                millis,
                bytes_in: 3,
                bytes_out: 7,
            });
        }
        counts.trouble();
        let said = counts.to_string();
        for line in [
            r#"lightround_requests_total{what="pull",status="200"} 5"#,
            r#"lightround_request_seconds_bucket{what="pull",le="0.005"} 2"#,
            r#"lightround_request_seconds_bucket{what="pull",le="0.010"} 3"#,
            r#"lightround_request_seconds_bucket{what="pull",le="0.250"} 3"#,
            r#"lightround_request_seconds_bucket{what="pull",le="0.500"} 4"#,
            r#"lightround_request_seconds_bucket{what="pull",le="10.000"} 4"#,
            r#"lightround_request_seconds_bucket{what="pull",le="+Inf"} 5"#,
            r#"lightround_request_seconds_sum{what="pull"} 60.411"#,
            r#"lightround_request_seconds_count{what="pull"} 5"#,
            r#"lightround_received_bytes_total{what="pull"} 15"#,
            r#"lightround_sent_bytes_total{what="pull"} 35"#,
            "lightround_store_troubles_total 1",
        ] {
            assert!(said.lines().any(|there| there == line), "{line}\n{said}");
        }
    }
}
