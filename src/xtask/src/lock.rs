//! Versions from `Cargo.lock`.

use anyhow::{Context, Result, bail};
use std::path::Path;

/// The one version of a package that the lock file holds.
///
/// # Errors
/// Where the file can't be read, or names the package not once.
pub fn version(lock_file: &Path, package: &str) -> Result<String> {
    let text = std::fs::read_to_string(lock_file)
        .with_context(|| format!("{} can't be read", lock_file.display()))?;
    match versions(&text, package).as_slice() {
        [one] => Ok((*one).to_owned()),
        [] => bail!("{} names no package {package}.", lock_file.display()),
        several => bail!(
            "{} names {package} in several versions: {}.",
            lock_file.display(),
            several.join(", ")
        ),
    }
}

fn versions<'a>(text: &'a str, package: &str) -> Vec<&'a str> {
    text.split("[[package]]")
        .filter(|entry| field(entry, "name") == Some(package))
        .filter_map(|entry| field(entry, "version"))
        .collect()
}

fn field<'a>(entry: &'a str, name: &str) -> Option<&'a str> {
    entry.lines().find_map(|line| {
        line.strip_prefix(name)?
            .trim_start()
            .strip_prefix('=')?
            .trim()
            .strip_prefix('"')?
            .strip_suffix('"')
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    const LOCK: &str = "\
version = 4

[[package]]
name = \"wasm-bindgen\"
version = \"0.2.130\"
source = \"registry\"
dependencies = [
 \"cfg-if\",
]

[[package]]
name = \"wasm-bindgen-futures\"
version = \"0.4.60\"

[[package]]
name = \"rand\"
version = \"0.8.5\"

[[package]]
name = \"rand\"
version = \"0.9.1\"
";

    #[test]
    fn finds_exactly_the_package_named() {
        assert_eq!(versions(LOCK, "wasm-bindgen"), ["0.2.130"]);
        assert_eq!(versions(LOCK, "rand"), ["0.8.5", "0.9.1"]);
        assert!(versions(LOCK, "wasm").is_empty());
    }
}
