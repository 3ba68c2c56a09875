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
  fuzz [TARGET]            feeds every reader of outside bytes, or one, with what an engine makes up, and keeps what it finds
       --minutes NUMBER      for so long each, 5 if not said
  help                     prints this";

/// Where `run` serves unless told otherwise.
const USUAL_ADDRESS: &str = "127.0.0.1:8017";

/// How long `fuzz` feeds each reader unless told otherwise.
const USUAL_MINUTES: u32 = 5;

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
    /// Feed readers with what nobody meant.
    Fuzz(Hunt),
}

/// What is fed, and for how long.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Hunt {
    /// One reader; all where none is named.
    pub target: Option<String>,
    /// How long each.
    pub minutes: u32,
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
            ["fuzz", rest @ ..] => hunt(rest)
                .map(Self::Fuzz)
                .ok_or_else(|| format!("There is no task “{}”.", words.join(" "))),
            _ => Err(format!("There is no task “{}”.", words.join(" "))),
        }
    }
}

fn hunt(words: &[&str]) -> Option<Hunt> {
    let (words, minutes) = match words {
        [rest @ .., "--minutes", minutes] => {
            (rest, minutes.parse().ok().filter(|minutes| *minutes > 0)?)
        }
        _ => (words, USUAL_MINUTES),
    };
    let target = match words {
        [] => None,
        [target] if !target.starts_with('-') => Some((*target).to_owned()),
        _ => return None,
    };
    Some(Hunt { target, minutes })
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
        let hunt = |target: Option<&str>, minutes| {
            let target = target.map(str::to_owned);
            Ok(Command::Fuzz(Hunt { target, minutes }))
        };
        assert_eq!(parse("fuzz"), hunt(None, 5));
        assert_eq!(parse("fuzz frame"), hunt(Some("frame"), 5));
        assert_eq!(parse("fuzz --minutes 60"), hunt(None, 60));
        assert_eq!(parse("fuzz frame --minutes 1"), hunt(Some("frame"), 1));
        for task in ["run", "build", "test", "bench", "fuzz", "help"] {
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
        for line in [
            "run --listen",
            "fuzz --minutes",
            "fuzz --minutes 0",
            "fuzz frame log",
        ] {
            assert!(parse(line).is_err(), "{line}");
        }
    }
}
