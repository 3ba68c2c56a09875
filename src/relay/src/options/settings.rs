//! Every setting by its name, once.

/// How the relay is called.
pub const USAGE: &str = "\
usage: lightround-relay [serve] [--app DIR] [--listen ADDRESS] [--data PLACE] ...
       lightround-relay invite  --data PLACE [--days NUMBER]
       lightround-relay vaults  --data PLACE
       lightround-relay verify  --data PLACE
       lightround-relay backup  --data PLACE --to FILE
       lightround-relay restore --data PLACE --from FILE
       lightround-relay carry   --data PLACE --vault ID --to FILE
       lightround-relay erase   --data PLACE --vault ID

  serve    serves the app and, with --data, carries entries between tablets
  invite   prints a code with which somebody can open one vault here, once
  vaults   lists the vaults: how many tablets, entries and bytes
  verify   walks every log of every vault, and fails if anything is wrong
  backup   copies into a file what that file lacks, while the relay runs
  restore  copies out of such a file what is lacking here, while the relay runs; nothing here is overwritten
  carry    writes a vault into a carry file, for whoever has lost every tablet and has the recovery sheet
  erase    erases a vault with all its entries, here and for good

  --config FILE         a file of these settings, one a line, as in: room = 512
  --data PLACE          where entries are kept: a file, or postgres://user@host/database
  --days NUMBER         how long the code is good, 7 if not said
  --to FILE             the backup, which may hold an earlier one; or the carry file, which must not be there yet
  --from FILE           the backup
  --vault ID            the vault, by the 32 digits that `vaults` shows

  --app DIR             the folder of the built app (usually dist)
  --listen ADDRESS      address and port, 127.0.0.1:8017 if not said; port 0 takes any free one and prints it
  --certificate FILE    a certificate in PEM, to serve https by itself; behind a proxy that does, leave it out
  --key FILE            the certificate's private key in PEM
  --metrics ADDRESS     address and port where counts are told to Prometheus; nowhere if not said
  --room MEBIBYTES      the most that one vault may take, 4096 if not said
  --burst NUMBER        requests that one tablet may make at once, 200 if not said
  --each-second NUMBER  requests that it may make every second after that, 20 if not said
  --patience SECONDS    how long a request may take to come, 30 if not said
  --connections NUMBER  connections that may be open at a time, 1024 if not said

A setting may also stand in the environment: --each-second as LIGHTROUND_RELAY_EACH_SECOND. The command line comes before
the environment, and that before the file.";

/// What every variable of the environment that is the relay's begins with.
pub const VARIABLE: &str = "LIGHTROUND_RELAY_";

/// A setting.
pub struct Setting {
    /// Its name in a file; with two dashes before it, on the command line.
    pub name: &'static str,
    /// What it belongs to.
    pub of: Of,
}

/// What a setting belongs to.
#[derive(Clone, Copy, PartialEq, Eq)]
pub enum Of {
    /// Every task. It may stand anywhere.
    All,
    /// Serving. It may stand anywhere; where it isn't served, it is not looked at.
    Serving,
    /// Tasks of these names alone, and a matter of the moment: it stands on the command line alone.
    Only(&'static [&'static str]),
}

/// All of them.
pub const SETTINGS: [Setting; 16] = [
    of("config", Of::All),
    of("data", Of::All),
    of("days", Of::Only(&["invite"])),
    of("to", Of::Only(&["backup", "carry"])),
    of("from", Of::Only(&["restore"])),
    of("vault", Of::Only(&["carry", "erase"])),
    of("app", Of::Serving),
    of("listen", Of::Serving),
    of("certificate", Of::Serving),
    of("key", Of::Serving),
    of("metrics", Of::Serving),
    of("room", Of::Serving),
    of("burst", Of::Serving),
    of("each-second", Of::Serving),
    of("patience", Of::Serving),
    of("connections", Of::Serving),
];

/// All tasks. The first is done where none is named.
pub const TASKS: [&str; 8] = [
    "serve", "invite", "vaults", "verify", "backup", "restore", "carry", "erase",
];

const fn of(name: &'static str, of: Of) -> Setting {
    Setting { name, of }
}

impl Setting {
    /// Whether a task that was named may be given this one on its command line.
    pub fn goes_with(&self, task: &str) -> bool {
        match self.of {
            Of::All => true,
            Of::Serving => task == TASKS[0],
            Of::Only(tasks) => tasks.contains(&task),
        }
    }

    /// Whether it may stand in the environment.
    pub fn lasts(&self) -> bool {
        !matches!(self.of, Of::Only(_))
    }

    /// Its variable in the environment.
    pub fn variable(&self) -> String {
        format!("{VARIABLE}{}", self.name.to_uppercase().replace('-', "_"))
    }
}
