//! What was said, where, and what counts where it was said more than once.

use super::OptionsError;
use super::settings::{SETTINGS, Setting, TASKS, VARIABLE};
use std::collections::HashMap;
use std::net::SocketAddr;
use std::path::{Path, PathBuf};

/// A value, and how it was said: for errors.
pub struct Saying {
    pub value: String,
    pub at: String,
}

/// All that was said, and what is to be done.
pub struct Sayings {
    pub task: &'static str,
    /// The layers, by weight.
    layers: [Layer; 3],
}

type Layer = HashMap<&'static str, Saying>;

impl Sayings {
    pub fn gather(
        arguments: impl Iterator<Item = String>,
        environment: impl Iterator<Item = (String, String)>,
        read: impl FnOnce(&Path) -> std::io::Result<String>,
    ) -> Result<Self, OptionsError> {
        let (task, spoken) = on_the_command_line(arguments)?;
        let around = in_the_environment(environment)?;
        let file = spoken.get("config").or_else(|| around.get("config"));
        let written = match file.map(|file| PathBuf::from(&file.value)) {
            Some(file) => in_the_file(&file, read)?,
            None => Layer::new(),
        };
        Ok(Self {
            task,
            layers: [spoken, around, written],
        })
    }

    pub fn get(&self, name: &str) -> Option<&Saying> {
        self.layers.iter().find_map(|layer| layer.get(name))
    }

    pub fn needed(&self, name: &str) -> Result<String, OptionsError> {
        let saying = self.get(name).map(|saying| saying.value.clone());
        saying.ok_or_else(|| OptionsError::Needed(format!("--{name}")))
    }

    pub fn number(&self, name: &str) -> Result<Option<u64>, OptionsError> {
        let number = |Saying { value, at }: &Saying| match value.parse() {
            // Up to a million: mebibytes, days and seconds are turned into smaller units.
            Ok(number @ 1..=1_000_000) => Ok(number),
            _ => Err(OptionsError::NotANumber {
                at: at.clone(),
                value: value.clone(),
            }),
        };
        self.get(name).map(number).transpose()
    }

    pub fn address(&self, name: &str) -> Result<Option<SocketAddr>, OptionsError> {
        let address = |Saying { value, at }: &Saying| {
            value.parse().map_err(|_| OptionsError::NotAnAddress {
                at: at.clone(),
                value: value.clone(),
            })
        };
        self.get(name).map(address).transpose()
    }
}

fn on_the_command_line(
    arguments: impl Iterator<Item = String>,
) -> Result<(&'static str, Layer), OptionsError> {
    let mut arguments = arguments.peekable();
    let named = |word: &String| TASKS.into_iter().find(|task| task == word);
    let task = arguments.peek().and_then(named);
    if task.is_some() {
        arguments.next();
    }
    let task = task.unwrap_or(TASKS[0]);
    let mut layer = Layer::new();
    while let Some(at) = arguments.next() {
        if at == "--help" || at == "-h" {
            return Err(OptionsError::HelpAsked);
        }
        let setting = at.strip_prefix("--").and_then(known);
        let Some(setting) = setting else {
            return Err(OptionsError::Unknown(at));
        };
        if !setting.goes_with(task) {
            return Err(OptionsError::Elsewhere(at, task));
        }
        let Some(value) = arguments.next() else {
            return Err(OptionsError::NoValue(at));
        };
        let saying = Saying {
            value,
            at: at.clone(),
        };
        if layer.insert(setting.name, saying).is_some() {
            return Err(OptionsError::Twice(at));
        }
    }
    Ok((task, layer))
}

fn in_the_environment(
    environment: impl Iterator<Item = (String, String)>,
) -> Result<Layer, OptionsError> {
    let ours = environment.filter(|(variable, _)| variable.starts_with(VARIABLE));
    ours.map(|(variable, value)| {
        let setting = SETTINGS
            .iter()
            .find(|setting| setting.lasts() && setting.variable() == variable);
        match setting {
            Some(setting) => Ok((
                setting.name,
                Saying {
                    value,
                    at: variable,
                },
            )),
            None => Err(OptionsError::UnknownVariable(variable)),
        }
    })
    .collect()
}

fn in_the_file(
    file: &Path,
    read: impl FnOnce(&Path) -> std::io::Result<String>,
) -> Result<Layer, OptionsError> {
    let text = read(file).map_err(|why| OptionsError::Unreadable {
        file: file.to_owned(),
        why: why.to_string(),
    })?;
    let table: toml::Table = text
        .parse()
        .map_err(|error| senseless(file, &text, &error))?;
    table
        .into_iter()
        .map(|(name, value)| {
            let at = format!("{name} in {}", file.display());
            // A file that names another would be a second place to look.
            let setting = known(&name).filter(|setting| setting.lasts() && name != "config");
            let setting = setting.ok_or_else(|| OptionsError::UnknownInFile {
                file: file.to_owned(),
                name,
            })?;
            let value = match value {
                toml::Value::String(text) => text,
                toml::Value::Integer(number) => number.to_string(),
                _ => return Err(OptionsError::NoSuchValue { at }),
            };
            Ok((setting.name, Saying { value, at }))
        })
        .collect()
}

fn senseless(file: &Path, text: &str, error: &toml::de::Error) -> OptionsError {
    let before = error.span().and_then(|span| text.get(..span.start));
    OptionsError::Senseless {
        file: file.to_owned(),
        line: 1 + before.map_or(0, |before| before.matches('\n').count()),
        why: error.message().replace('\n', ", "),
    }
}

fn known(name: &str) -> Option<&'static Setting> {
    SETTINGS.iter().find(|setting| setting.name == name)
}
