//! How long the arithmetic takes, each operation beside the floor of the same run: one sine and cosine of an angle.
//!
//! `cargo xtask bench` runs it twice, as a program of this machine and as a page in a browser, both built with the app's
//! own profile, and puts the numbers into its table. Nothing here asserts a time. What is asserted, in both places, is that the
//! arithmetic comes out the same to the last bit.

mod bits;
mod measure;
mod operations;
#[cfg(target_arch = "wasm32")]
mod page;
#[cfg(not(target_arch = "wasm32"))]
mod program;

#[cfg(target_arch = "wasm32")]
fn main() {
    page::main();
}

#[cfg(not(target_arch = "wasm32"))]
fn main() -> anyhow::Result<()> {
    program::main()
}
