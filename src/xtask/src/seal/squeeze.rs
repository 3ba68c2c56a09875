//! Brotli at its strongest, once at build time, so that the relay starts at once and sends the least.

use anyhow::{Context, Result};
use brotli::enc::BrotliEncoderParams;
use std::ffi::OsString;
use std::fs;
use std::path::{Path, PathBuf};
use std::thread;

/// Brotli's highest quality and its widest window.
const QUALITY: i32 = 11;
const WINDOW_BITS: i32 = 24;

/// Makes the copies of many files, a thread for each processor.
///
/// # Errors
/// Where a file can't be read or its copy written.
pub fn beside_all(dist: &Path, files: &[PathBuf]) -> Result<()> {
    let threads = thread::available_parallelism().map_or(1, usize::from);
    thread::scope(|scope| {
        let lanes: Vec<_> = (0..threads)
            .map(|lane| {
                scope.spawn(move || {
                    files
                        .iter()
                        .skip(lane)
                        .step_by(threads)
                        .try_for_each(|file| beside(&dist.join(file)))
                })
            })
            .collect();
        // A panic in a lane is a fault of the compressor: let it be seen as one.
        lanes.into_iter().try_for_each(|lane| {
            lane.join()
                .unwrap_or_else(|panic| std::panic::resume_unwind(panic))
        })
    })
}

/// Writes `name.br` beside a file, if that is smaller.
///
/// # Errors
/// Where the file can't be read or its copy written.
pub fn beside(path: &Path) -> Result<()> {
    let plain = fs::read(path).with_context(|| format!("{} can't be read", path.display()))?;
    let parameters = BrotliEncoderParams {
        quality: QUALITY,
        lgwin: WINDOW_BITS,
        size_hint: plain.len(),
        ..Default::default()
    };
    let mut copy = Vec::new();
    brotli::BrotliCompress(&mut plain.as_slice(), &mut copy, &parameters)?;
    if copy.len() < plain.len() {
        fs::write(copy_of(path), copy)?;
    }
    Ok(())
}

/// Bytes that travel for a file of a sealed build.
///
/// # Errors
/// Where the file isn't there.
pub fn wire_size(path: &Path) -> Result<u64> {
    let travelling = Some(copy_of(path))
        .filter(|copy| copy.exists())
        .unwrap_or_else(|| path.to_owned());
    Ok(fs::metadata(&travelling)
        .with_context(|| format!("{} can't be read", travelling.display()))?
        .len())
}

fn copy_of(path: &Path) -> PathBuf {
    let mut name = OsString::from(path);
    name.push(".br");
    name.into()
}
