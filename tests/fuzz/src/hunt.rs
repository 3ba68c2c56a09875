//! The engine's program: one target, named in the environment because the engine reads the command line.
#![no_main]

use fuzz::{TARGETS, Target};
use libfuzzer_sys::fuzz_target;
use std::path::Path;
use std::sync::OnceLock;

/// Which target; where none is named, all names are printed.
const TARGET: &str = "LIGHTROUND_FUZZ";
/// A folder for what to begin with.
const INPUTS: &str = "LIGHTROUND_FUZZ_INPUTS";

static HUNTED: OnceLock<&Target> = OnceLock::new();

fuzz_target!(
    init: {
        let Ok(name) = std::env::var(TARGET) else {
            TARGETS.iter().for_each(|target| println!("{}", target.name));
            std::process::exit(0);
        };
        let target = Target::named(&name).expect("the task names a target");
        if let Some(folder) = std::env::var_os(INPUTS) {
            target.lay_out(Path::new(&folder)).expect("the task gives a folder for inputs");
        }
        HUNTED.get_or_init(|| target);
    },
    |bytes: &[u8]| {
        HUNTED.get().expect("the target was found at the start").feed(bytes);
    }
);
