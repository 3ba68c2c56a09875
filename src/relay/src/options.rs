//! What the relay is told on its command line.

use std::net::SocketAddr;
use std::path::PathBuf;
use thiserror::Error;

/// How the relay is called.
pub const USAGE: &str = "\
usage: lightround-relay [serve] [--app DIR] [--listen ADDRESS] [--data PLACE] [--room MEBIBYTES]
       lightround-relay invite --data PLACE [--days NUMBER]
       lightround-relay vaults --data PLACE
       lightround-relay verify --data PLACE

  serve    serves the app and, with --data, carries entries between tablets
  invite   prints a code with which somebody can open one vault here, once
  vaults   lists the vaults: how many tablets, entries and bytes
  verify   walks every log of every vault, and fails if anything is wrong

  --app DIR         the folder of the built app (usually dist)
  --listen ADDRESS  address and port, 127.0.0.1:8017 if not said; port 0 takes any free one and prints it
  --data PLACE      where entries are kept: a file, or postgres://user@host/database
  --room MEBIBYTES  the most that one vault may take, 4096 if not said
  --days NUMBER     how long the code is good, 7 if not said";

/// What is to be done.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Task {
    /// Serve until asked to stop.
    #[default]
    Serve,
    /// Print an invitation.
    Invite,
    /// List the vaults.
    Vaults,
    /// Walk everything that is kept.
    Verify,
}

/// What the relay does, and where.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Options {
    /// What is to be done.
    pub task: Task,
    /// The folder of the built app.
    pub app: PathBuf,
    /// Address and port; port 0 lets the system choose.
    pub listen: SocketAddr,
    /// Where frames are kept; none to serve the app alone.
    pub data: Option<String>,
    /// The most mebibytes of a vault.
    pub room: u64,
    /// Days that an invitation is good.
    pub days: u64,
}

/// Why the command line can't be followed.
#[derive(Debug, PartialEq, Eq, Error)]
pub enum OptionsError {
    /// `--help` was given.
    #[error("help was asked for")]
    HelpAsked,
    /// An option or a task that the relay doesn't have.
    #[error("The relay has no option {0}.")]
    Unknown(String),
    /// An option without its value.
    #[error("{0} needs a value after it.")]
    NoValue(&'static str),
    /// The address isn't one.
    #[error("--listen needs an address with its port, as in 127.0.0.1:8017, not {0}.")]
    NotAnAddress(String),
    /// A number isn't one, or is 0.
    #[error("{0} needs a whole number from 1 on, not {1}.")]
    NotANumber(&'static str, String),
    /// A task about what is kept, and not said where that is.
    #[error("Say with --data where the entries are kept.")]
    NoData,
}

impl Default for Options {
    fn default() -> Self {
        Self {
            task: Task::Serve,
            app: PathBuf::from("dist"),
            listen: SocketAddr::from(([127, 0, 0, 1], 8017)),
            data: None,
            room: 4096,
            days: 7,
        }
    }
}

impl Options {
    /// Reads the arguments, without the program's own name.
    ///
    /// # Errors
    /// One sentence for the first argument that can't be followed.
    pub fn parse(arguments: impl Iterator<Item = String>) -> Result<Self, OptionsError> {
        let mut options = Self::default();
        let mut arguments = arguments.peekable();
        if let Some(task) = arguments.peek().and_then(|word| task(word)) {
            options.task = task;
            arguments.next();
        }
        while let Some(argument) = arguments.next() {
            let mut value = |name| arguments.next().ok_or(OptionsError::NoValue(name));
            match argument.as_str() {
                "--app" => options.app = value("--app")?.into(),
                "--listen" => {
                    let said = value("--listen")?;
                    options.listen = said.parse().map_err(|_| OptionsError::NotAnAddress(said))?;
                }
                "--data" => options.data = Some(value("--data")?),
                "--room" => options.room = number("--room", value("--room")?)?,
                "--days" => options.days = number("--days", value("--days")?)?,
                "--help" | "-h" => return Err(OptionsError::HelpAsked),
                _ => return Err(OptionsError::Unknown(argument)),
            }
        }
        if options.task != Task::Serve && options.data.is_none() {
            return Err(OptionsError::NoData);
        }
        Ok(options)
    }
}

fn task(word: &str) -> Option<Task> {
    match word {
        "serve" => Some(Task::Serve),
        "invite" => Some(Task::Invite),
        "vaults" => Some(Task::Vaults),
        "verify" => Some(Task::Verify),
        _ => None,
    }
}

fn number(name: &'static str, said: String) -> Result<u64, OptionsError> {
    // Up to a million: mebibytes and days are turned into smaller units.
    match said.parse() {
        Ok(number @ 1..=1_000_000) => Ok(number),
        _ => Err(OptionsError::NotANumber(name, said)),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn parse(line: &str) -> Result<Options, OptionsError> {
        Options::parse(line.split_whitespace().map(String::from))
    }

    #[test]
    fn says_where_and_what() {
        let options = parse("--app built --listen 127.0.0.1:0").unwrap();
        assert_eq!(
            options,
            Options {
                app: "built".into(),
                listen: "127.0.0.1:0".parse().unwrap(),
                ..Options::default()
            }
        );
        assert_eq!(parse("").unwrap(), Options::default());
        assert_eq!(parse("serve").unwrap(), Options::default());
        let invite = parse("invite --data kept.sqlite --days 2").unwrap();
        let expected = Options {
            task: Task::Invite,
            data: Some("kept.sqlite".into()),
            days: 2,
            ..Options::default()
        };
        assert_eq!(invite, expected);
    }

    #[test]
    fn refuses_with_one_sentence() {
        assert_eq!(parse("--app"), Err(OptionsError::NoValue("--app")));
        assert_eq!(
            parse("--listen 8017"),
            Err(OptionsError::NotAnAddress("8017".into()))
        );
        assert_eq!(
            parse("--verbose"),
            Err(OptionsError::Unknown("--verbose".into()))
        );
        assert_eq!(parse("--help"), Err(OptionsError::HelpAsked));
        for task in ["invite", "vaults", "verify"] {
            assert_eq!(parse(task), Err(OptionsError::NoData));
        }
        for said in ["0", "-1", "many", "99999999999"] {
            let refused = Err(OptionsError::NotANumber("--room", said.into()));
            assert_eq!(parse(&format!("--room {said}")), refused);
        }
    }
}
