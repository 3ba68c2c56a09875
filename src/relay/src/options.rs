//! What the relay is told on its command line.

use std::net::SocketAddr;
use std::path::PathBuf;
use thiserror::Error;

/// How the relay is called.
pub const USAGE: &str = "\
usage: lightround-relay [--app DIR] [--listen ADDRESS]

  --app DIR         the folder of the built app (usually dist)
  --listen ADDRESS  address and port, 127.0.0.1:8017 if not said; port 0 takes any free one and prints it";

/// What the relay serves and where.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Options {
    /// The folder of the built app.
    pub app: PathBuf,
    /// Address and port; port 0 lets the system choose.
    pub listen: SocketAddr,
}

/// Why the command line can't be followed.
#[derive(Debug, PartialEq, Eq, Error)]
pub enum OptionsError {
    /// `--help` was given.
    #[error("help was asked for")]
    HelpAsked,
    /// An option that the relay doesn't have.
    #[error("The relay has no option {0}.")]
    Unknown(String),
    /// An option without its value.
    #[error("{0} needs a value after it.")]
    NoValue(&'static str),
    /// The address isn't one.
    #[error("--listen needs an address with its port, as in 127.0.0.1:8017, not {0}.")]
    NotAnAddress(String),
}

impl Default for Options {
    fn default() -> Self {
        Self {
            app: PathBuf::from("dist"),
            listen: SocketAddr::from(([127, 0, 0, 1], 8017)),
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
        let mut arguments = arguments;
        while let Some(argument) = arguments.next() {
            match argument.as_str() {
                "--app" => {
                    options.app = arguments
                        .next()
                        .ok_or(OptionsError::NoValue("--app"))?
                        .into();
                }
                "--listen" => {
                    let said = arguments.next().ok_or(OptionsError::NoValue("--listen"))?;
                    options.listen = said.parse().map_err(|_| OptionsError::NotAnAddress(said))?;
                }
                "--help" | "-h" => return Err(OptionsError::HelpAsked),
                _ => return Err(OptionsError::Unknown(argument)),
            }
        }
        Ok(options)
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
                listen: "127.0.0.1:0".parse().unwrap()
            }
        );
        assert_eq!(parse("").unwrap(), Options::default());
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
    }
}
