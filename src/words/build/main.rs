//! Turns the words into functions when the project is built.

mod message;
mod rust;
mod topics;

use std::path::Path;
use std::{env, fs};

fn main() {
    println!("cargo::rerun-if-changed=en");
    println!("cargo::rerun-if-changed=de");
    println!("cargo::rerun-if-changed=build");
    let english = topics::read(Path::new("en"));
    let german = topics::read(Path::new("de"));
    topics::check(&english, &german);
    let to = env::var_os("OUT_DIR").expect("cargo gives a build script its OUT_DIR");
    fs::write(
        Path::new(&to).join("messages.rs"),
        rust::areas(&english, &german),
    )
    .expect("the OUT_DIR can be written to");
}
