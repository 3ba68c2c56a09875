use super::*;
use std::io;

/// Reads a command line, an environment of `NAME=value` words, and a file that says `written`.
fn read(line: &str, around: &str, written: &str) -> Result<Task, OptionsError> {
    let words = line.split_whitespace().map(String::from);
    let pair = |word: &str| {
        word.split_once('=')
            .map(|(name, value)| (name.to_owned(), value.to_owned()))
    };
    let around = around.split_whitespace().filter_map(pair);
    Task::read(words, around, |_| Ok(written.to_owned()))
}

fn serving(line: &str, around: &str, written: &str) -> Serving {
    match read(line, around, written) {
        Ok(Task::Serve(serving)) => *serving,
        other => panic!("{other:?}"),
    }
}

fn sentence(line: &str, around: &str, written: &str) -> String {
    read(line, around, written).unwrap_err().to_string()
}

#[test]
fn says_where_and_what() {
    let said = serving("--app built --listen 127.0.0.1:0", "", "");
    let expected = Serving {
        app: "built".into(),
        listen: "127.0.0.1:0".parse().unwrap(),
        ..Serving::default()
    };
    assert_eq!(said, expected);
    assert_eq!(serving("", "", ""), Serving::default());
    assert_eq!(serving("serve", "", ""), Serving::default());
    let invite = Task::Invite {
        data: "kept.sqlite".into(),
        days: 2,
    };
    assert_eq!(
        read("invite --data kept.sqlite --days 2", "", ""),
        Ok(invite)
    );
    let erase = Task::Erase {
        data: "kept.sqlite".into(),
        vault: VaultId::from_bytes([0xab; 16]),
    };
    let line = format!("erase --data kept.sqlite --vault {}", "ab".repeat(16));
    assert_eq!(read(&line, "", ""), Ok(erase));
    let carry = Task::Carry {
        data: "kept.sqlite".into(),
        vault: VaultId::from_bytes([0xab; 16]),
        to: "back.carry".into(),
    };
    let line = line.replace("erase", "carry") + " --to back.carry";
    assert_eq!(read(&line, "", ""), Ok(carry));
}

#[test]
fn the_command_line_comes_before_the_environment_and_that_before_the_file() {
    let file = "room = 1\nburst = 1\neach-second = 1\ndata = \"kept.sqlite\"\n";
    let around =
        "LIGHTROUND_RELAY_CONFIG=relay.toml LIGHTROUND_RELAY_ROOM=2 LIGHTROUND_RELAY_EACH_SECOND=2";
    let said = serving("--each-second 3", around, file);
    assert_eq!(
        said.limits.rate,
        Rate {
            burst: 1,
            each_second: 3
        }
    );
    assert_eq!(said.limits.quota.bytes, 2 << 20);
    assert_eq!(said.data.as_deref(), Some("kept.sqlite"));
}

#[test]
fn every_lasting_setting_may_stand_in_the_file_and_in_the_environment() {
    let file = r#"
        # A clinic's relay.
        app = "built"
        listen = "0.0.0.0:443"
        data = "postgres://relay@localhost/relay"
        certificate = "chain.pem"
        key = "key.pem"
        metrics = "127.0.0.1:9017"
        room = 512
        burst = 50
        each-second = 5
        patience = 7
        connections = 99
    "#;
    let expected = Serving {
        app: "built".into(),
        listen: "0.0.0.0:443".parse().unwrap(),
        data: Some("postgres://relay@localhost/relay".into()),
        limits: Limits {
            quota: Quota { bytes: 512 << 20 },
            rate: Rate {
                burst: 50,
                each_second: 5,
            },
            patience: Duration::from_secs(7),
            connections: 99,
        },
        certificate: Some(CertificateFiles {
            chain: "chain.pem".into(),
            key: "key.pem".into(),
        }),
        metrics: Some("127.0.0.1:9017".parse().unwrap()),
    };
    assert_eq!(serving("--config relay.toml", "", file), expected);
    let pairs = file
        .lines()
        .filter_map(|line| line.trim().split_once(" = "));
    let words: Vec<String> = pairs
        .map(|(name, value)| {
            let name = name.to_uppercase().replace('-', "_");
            format!("LIGHTROUND_RELAY_{name}={}", value.trim_matches('"'))
        })
        .collect();
    assert_eq!(serving("", &words.join(" "), ""), expected);
}

#[test]
fn a_file_for_serving_serves_every_task() {
    let file = "data = \"kept.sqlite\"\nlisten = \"0.0.0.0:443\"\n";
    let vaults = Task::Vaults("kept.sqlite".into());
    assert_eq!(read("vaults --config relay.toml", "", file), Ok(vaults));
}

#[test]
fn refuses_with_one_sentence_that_says_where() {
    for (line, said) in [
        ("--app", "--app needs a value after it."),
        ("--verbose", "The relay has no option --verbose."),
        ("run", "The relay has no option run."),
        ("--room 1 --room 2", "--room is said twice."),
        ("--days 2", "--days has nothing to do with serve."),
        (
            "vaults --data kept --room 2",
            "--room has nothing to do with vaults.",
        ),
        (
            "--listen 8017",
            "--listen needs an address with its port, as in 127.0.0.1:8017, not 8017.",
        ),
        (
            "--certificate chain.pem",
            "A certificate and its key go together: say both --certificate and --key, or neither.",
        ),
        (
            "--metrics 127.0.0.1:9017",
            "--metrics tells how much is carried: say with --data where the entries are kept.",
        ),
        ("backup --data kept", "--to must be said."),
        ("restore --data kept", "--from must be said."),
        ("erase --data kept", "--vault must be said."),
        ("carry --data kept --to back.carry", "--vault must be said."),
        (
            "erase --data kept --to back.carry",
            "--to has nothing to do with erase.",
        ),
        (
            "erase --data kept --vault 12",
            "--vault needs the 32 digits (0 to 9, a to f) of a vault, not 12.",
        ),
    ] {
        assert_eq!(sentence(line, "", ""), said, "{line}");
    }
    assert_eq!(read("--help", "", ""), Err(OptionsError::HelpAsked));
    for task in [
        "invite", "vaults", "verify", "backup", "restore", "carry", "erase",
    ] {
        assert_eq!(read(task, "", ""), Err(OptionsError::NoData), "{task}");
    }
    for value in ["0", "-1", "many", "1.5", "99999999999"] {
        let said = sentence(&format!("--room {value}"), "", "");
        assert_eq!(
            said,
            format!("--room needs a whole number from 1 to 1000000, not {value}.")
        );
    }
}

#[test]
fn a_slip_in_the_environment_is_not_passed_over() {
    assert_eq!(
        sentence("", "LIGHTROUND_RELAY_ROOMS=2", ""),
        "The environment has LIGHTROUND_RELAY_ROOMS, which is no setting of the relay's."
    );
    assert_eq!(
        sentence("invite --data kept", "LIGHTROUND_RELAY_DAYS=2", ""),
        "The environment has LIGHTROUND_RELAY_DAYS, which is no setting of the relay's."
    );
    assert_eq!(
        sentence("", "LIGHTROUND_RELAY_ROOM=much", ""),
        "LIGHTROUND_RELAY_ROOM needs a whole number from 1 to 1000000, not much."
    );
    // What is not the relay's is nobody's business here.
    assert_eq!(
        serving("", "LIGHTROUND_RELAY=x LIGHTROUND_ROOM=2 ROOM=x", ""),
        Serving::default()
    );
}

#[test]
fn a_slip_in_the_file_is_said_with_its_place() {
    for (file, said) in [
        (
            "rooms = 2",
            "relay.toml has rooms, which is no setting that can stand there.",
        ),
        (
            "days = 2",
            "relay.toml has days, which is no setting that can stand there.",
        ),
        (
            "config = \"other.toml\"",
            "relay.toml has config, which is no setting that can stand there.",
        ),
        (
            "room = \"much\"",
            "room in relay.toml needs a whole number from 1 to 1000000, not much.",
        ),
        (
            "room = [2]",
            "room in relay.toml is neither a text in quotes nor a whole number.",
        ),
        (
            "room = true",
            "room in relay.toml is neither a text in quotes nor a whole number.",
        ),
    ] {
        assert_eq!(sentence("--config relay.toml", "", file), said, "{file}");
    }
    for (file, line) in [
        ("room 2", 1),
        ("\nroom = 2\nroom = 3", 3),
        ("# well\napp = \"built", 2),
    ] {
        let said = sentence("--config relay.toml", "", file);
        assert!(
            said.starts_with(&format!("Line {line} of relay.toml makes no sense: ")),
            "{said}"
        );
        assert_eq!(said.lines().count(), 1, "{said}");
    }
    let gone = Task::read(
        ["--config", "relay.toml"].map(String::from).into_iter(),
        std::iter::empty(),
        |_| Err(io::ErrorKind::NotFound.into()),
    );
    assert_eq!(
        gone.unwrap_err().to_string(),
        "relay.toml can't be read: entity not found."
    );
}

#[test]
fn every_setting_and_task_is_explained() {
    for setting in &settings::SETTINGS {
        assert!(
            USAGE.contains(&format!("  --{} ", setting.name)),
            "{}",
            setting.name
        );
    }
    for task in settings::TASKS {
        assert!(
            USAGE
                .lines()
                .any(|line| line.starts_with(&format!("  {task} "))),
            "{task}"
        );
    }
}
