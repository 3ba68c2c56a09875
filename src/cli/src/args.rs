//! Options of the form `--name value`, each given once, in any order.

use anyhow::{Context, Result, bail, ensure};

/// The options of one command, taken out one by one.
pub struct Options {
    given: Vec<(String, String)>,
}

impl Options {
    /// Pairs the words up; `known` are the names without their dashes.
    ///
    /// Fails on an unknown or repeated name, a word that belongs to no name, and a name without a value.
    pub fn read(words: &[String], known: &[&str]) -> Result<Self> {
        let mut given: Vec<(String, String)> = Vec::new();
        for pair in words.chunks(2) {
            let Some(name) = pair[0].strip_prefix("--") else {
                bail!("“{}” belongs to no option", pair[0]);
            };
            ensure!(known.contains(&name), "there is no --{name}");
            let value = pair
                .get(1)
                .with_context(|| format!("--{name} has no value"))?;
            ensure!(
                given.iter().all(|(earlier, _)| earlier != name),
                "--{name} is given twice"
            );
            given.push((name.to_owned(), value.clone()));
        }
        Ok(Self { given })
    }

    /// Takes an option's value, if it was given.
    pub fn take(&mut self, name: &str) -> Option<String> {
        let at = self.given.iter().position(|(given, _)| given == name)?;
        Some(self.given.swap_remove(at).1)
    }

    /// Takes an option's value, or fails with the sentence that says why it is needed.
    pub fn need(&mut self, name: &str, why: &'static str) -> Result<String> {
        self.take(name)
            .with_context(|| format!("--{name} is missing: {why}"))
    }
}

/// Reads an unsigned measure such as a distance; `unit` may follow the number.
pub fn measure(text: &str, unit: &str) -> Result<f64> {
    text.trim()
        .trim_end_matches(unit)
        .trim_end()
        .parse()
        // The reader's own words about numbers would mean nothing to the person who typed.
        .ok()
        .with_context(|| format!("“{text}” is not a number of {unit}"))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn words(line: &str) -> Vec<String> {
        line.split_whitespace().map(str::to_owned).collect()
    }

    #[test]
    fn options_come_in_any_order_and_may_be_negative() {
        let mut options = Options::read(&words("--b -1.00 --a 2"), &["a", "b"]).unwrap();
        assert_eq!(options.take("a").as_deref(), Some("2"));
        assert_eq!(options.take("b").as_deref(), Some("-1.00"));
        assert_eq!(options.take("b"), None);
    }

    #[test]
    fn slips_are_named() {
        for (line, sentence) in [
            ("--c 1", "there is no --c"),
            ("--a", "--a has no value"),
            ("--a 1 --a 2", "--a is given twice"),
            ("1 --a", "“1” belongs to no option"),
        ] {
            let error = Options::read(&words(line), &["a", "b"]).err().unwrap();
            assert_eq!(error.to_string(), sentence);
        }
    }

    #[test]
    fn a_measure_may_carry_its_unit() {
        assert_eq!(measure("66.5 cm", "cm").ok(), Some(66.5));
        assert_eq!(measure("4", "mm").ok(), Some(4.0));
        let error = measure("arm's length", "cm").unwrap_err();
        assert_eq!(format!("{error:#}"), "“arm's length” is not a number of cm");
    }
}
