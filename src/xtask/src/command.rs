//! What was asked for.

/// How the tasks are called.
pub const USAGE: &str = "\
usage: cargo xtask <task>

  run [--listen ADDRESS]   brings what is missing, builds the app, serves it on this machine and prints its address
  build                    brings what is missing, builds the app into dist/ and seals it
  test                     formatting, lints, tests, licences, the build, and the journeys in three browsers
       --no-browsers         all but the journeys
       --journeys-only       only the build and the journeys
  bench                    measures the app against something in the same run, as a table and as JSON
       --sizes-only          only what needs no browser
  help                     prints this";

/// Where `run` serves unless told otherwise.
const USUAL_ADDRESS: &str = "127.0.0.1:8017";

/// A task.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Command {
    /// Print how the tasks are called.
    Help,
    /// Build and seal the app.
    Build,
    /// Build, seal and serve the app.
    Run {
        /// Address and port, as the relay takes them.
        listen: String,
    },
    /// Check everything.
    Test(Depth),
    /// Measure.
    Bench(Depth),
}

/// Whether browsers take part.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Depth {
    /// Everything.
    Whole,
    /// All that needs no browser.
    NoBrowsers,
    /// The build and what needs a browser.
    BrowsersOnly,
}

impl Command {
    /// Reads the arguments, without the program's own name.
    ///
    /// # Errors
    /// One sentence for what can't be followed.
    pub fn parse(arguments: impl Iterator<Item = String>) -> Result<Self, String> {
        let arguments: Vec<String> = arguments.collect();
        let words: Vec<&str> = arguments.iter().map(String::as_str).collect();
        match words.as_slice() {
            [] | ["help" | "--help" | "-h"] => Ok(Self::Help),
            ["build"] => Ok(Self::Build),
            ["run"] => Ok(Self::Run {
                listen: USUAL_ADDRESS.to_owned(),
            }),
            ["run", "--listen", listen] => Ok(Self::Run {
                listen: (*listen).to_owned(),
            }),
            ["test"] => Ok(Self::Test(Depth::Whole)),
            ["test", "--no-browsers"] => Ok(Self::Test(Depth::NoBrowsers)),
            ["test", "--journeys-only"] => Ok(Self::Test(Depth::BrowsersOnly)),
            ["bench"] => Ok(Self::Bench(Depth::Whole)),
            ["bench", "--sizes-only"] => Ok(Self::Bench(Depth::NoBrowsers)),
            _ => Err(format!("There is no task “{}”.", words.join(" "))),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn parse(line: &str) -> Result<Command, String> {
        Command::parse(line.split_whitespace().map(str::to_owned))
    }

    #[test]
    fn every_task_in_the_usage_is_understood() {
        assert_eq!(
            parse("test --no-browsers"),
            Ok(Command::Test(Depth::NoBrowsers))
        );
        assert_eq!(
            parse("test --journeys-only"),
            Ok(Command::Test(Depth::BrowsersOnly))
        );
        assert_eq!(
            parse("bench --sizes-only"),
            Ok(Command::Bench(Depth::NoBrowsers))
        );
        assert_eq!(
            parse("run --listen 127.0.0.1:0"),
            Ok(Command::Run {
                listen: "127.0.0.1:0".into()
            })
        );
        for task in ["run", "build", "test", "bench", "help"] {
            assert!(parse(task).is_ok(), "{task}");
            assert!(USAGE.contains(task), "{task}");
        }
    }

    #[test]
    fn what_is_not_understood_is_named() {
        assert_eq!(
            parse("test --fast"),
            Err("There is no task “test --fast”.".into())
        );
        assert!(parse("run --listen").is_err());
    }
}
