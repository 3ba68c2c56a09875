//! Every target for a moment. The memory that a target takes is counted for the whole process, so they go one after the
//! other, in one test.

use fuzz::{Mutations, TARGETS, Target};
use std::fmt::Write;
use std::panic::{AssertUnwindSafe, catch_unwind};
use std::time::{Duration, Instant};

/// How long each target is fed with changed inputs.
const MOMENT: Duration = Duration::from_millis(1_200);

/// The same for every run, so that a change of the code is what makes a run fail, and not chance.
const SEED: u64 = 1;

fn feed(target: &Target, bytes: &[u8]) {
    if catch_unwind(AssertUnwindSafe(|| target.feed(bytes))).is_err() {
        let hex = bytes.iter().fold(String::new(), |mut hex, byte| {
            let _ = write!(hex, "{byte:02x}");
            hex
        });
        panic!(
            "{0} fails on these bytes; keep them as a file in tests/fuzz/corpus/{0}:\n{hex}",
            target.name
        );
    }
}

#[test]
fn no_bytes_break_what_every_reader_promises() {
    for target in TARGETS {
        let inputs = target.inputs();
        assert!(!inputs.is_empty(), "{} begins with nothing", target.name);
        for input in &inputs {
            feed(target, input);
        }
        let mut mutations = Mutations::new(&inputs, SEED);
        let (began, mut fed) = (Instant::now(), 0_u32);
        while began.elapsed() < MOMENT {
            mutations
                .by_ref()
                .take(10)
                .for_each(|input| feed(target, &input));
            fed += 10;
        }
        println!("{}: {} inputs, {fed} changes", target.name, inputs.len());
    }
}

#[test]
fn every_folder_of_the_corpus_is_a_targets() {
    let corpus = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("corpus");
    for folder in std::fs::read_dir(corpus).expect("there is a corpus") {
        let name = folder.expect("it can be listed").file_name();
        let name = name.to_string_lossy();
        assert!(Target::named(&name).is_some(), "{name} is no target");
    }
}
