use crate::scene::Scene;
use lightround_relay::{commands, verify};
use std::process::Command;

#[tokio::test]
async fn what_is_kept_is_listed_and_verified() {
    let mut scene = Scene::new("listed").await;
    let log = scene.devices[1].log(4);
    scene.push(1, &log).await;
    let table = commands::vaults(scene.store.as_ref()).unwrap();
    let lines: Vec<&str> = table.lines().collect();
    let bytes: usize = log.iter().map(|frame| frame.bytes().len()).sum();
    let fields: Vec<&str> = lines[1].split_whitespace().collect();
    assert_eq!(
        fields,
        [
            scene.vault.to_string().as_str(),
            "1",
            "5",
            &bytes.to_string(),
            "0",
            "1700000000"
        ]
    );
    assert_eq!(lines.len(), 2);
    let verified = verify(scene.store.as_ref()).unwrap();
    assert_eq!(
        verified.to_string(),
        "1 vaults, 5 entries sound, 0 things wrong"
    );
}

#[tokio::test]
async fn whatever_was_done_to_the_file_is_found() {
    for (at, (harm, found)) in [
        ("UPDATE frame SET bytes = zeroblob(length(bytes)) WHERE sequence = 3", "entry 3"),
        ("DELETE FROM frame WHERE sequence = 3", "entry 3 doesn't follow"),
        ("DELETE FROM frame WHERE sequence = 5", "entry 5 is missing"),
        ("UPDATE head SET hash = zeroblob(32)", "should end with entry 5"),
        ("UPDATE head SET sequence = 4", "should end with entry 4"),
        ("UPDATE frame SET bytes = (SELECT f.bytes FROM frame f WHERE f.sequence = 2) WHERE sequence = 3", "entry 3 doesn't follow"),
        ("DELETE FROM roll WHERE number = 2", "its roll"),
        ("UPDATE roll SET statement = x'00' WHERE number = 2", "damaged"),
    ]
    .into_iter()
    .enumerate()
    {
        let test = format!("harmed-{at}");
        let mut scene = Scene::new(&test).await;
        let log = scene.devices[1].log(4);
        scene.push(1, &log).await;
        let file = std::env::temp_dir()
            .join(format!("lightround-relay-{}-{test}", std::process::id()))
            .join("kept.sqlite");
        rusqlite::Connection::open(file).unwrap().execute_batch(harm).unwrap();
        let verified = verify(scene.store.as_ref()).unwrap();
        assert_eq!(verified.wrong.len(), 1, "{harm}: {verified}");
        assert!(verified.wrong[0].contains(found), "{harm}: {verified}");
    }
}

/// The program itself: an invitation from it opens a vault, and it fails where something is wrong.
#[tokio::test]
async fn the_program_invites_lists_and_verifies() {
    let mut scene = Scene::new("program").await;
    let log = scene.devices[1].log(1);
    scene.push(1, &log).await;
    let file = std::env::temp_dir()
        .join(format!("lightround-relay-{}-program", std::process::id()))
        .join("kept.sqlite");
    let run = |task: &str| {
        let mut command = Command::new(env!("CARGO_BIN_EXE_lightround-relay"));
        let output = command.arg(task).arg("--data").arg(&file).output().unwrap();
        (
            output.status.success(),
            String::from_utf8(output.stdout).unwrap(),
        )
    };
    let (well, code) = run("invite");
    assert!(well);
    let code: vault::Invitation = code.trim().parse().unwrap();
    let other = vault::sample::devices(97, 1).remove(0);
    let empty = vault::Roll::new(other.keys.vault());
    let lead = vault::roll::Change::Admit(vault::Role::Lead);
    let first = other.keys.state(&empty, other.keys.public(), lead).unwrap();
    let opened = scene
        .store
        .open_vault(code.hash(), lightround_relay::carry::now(), &first);
    assert_eq!(opened, Ok(lightround_relay::store::Opening::Opened));
    let (well, table) = run("vaults");
    assert!(well && table.lines().count() == 3, "{table}");
    assert_eq!(
        run("verify"),
        (true, "2 vaults, 2 entries sound, 0 things wrong\n".into())
    );
    rusqlite::Connection::open(&file)
        .unwrap()
        .execute("DELETE FROM frame WHERE sequence = 1", [])
        .unwrap();
    assert!(!run("verify").0);
}

/// The program over a relay that runs: a backup, a loss, and everything back.
#[tokio::test]
async fn the_program_backs_up_restores_and_erases_while_the_relay_runs() {
    let mut scene = Scene::new("rescued").await;
    let log = scene.devices[1].log(40);
    scene.push(1, &log[..30]).await;
    let folder =
        std::env::temp_dir().join(format!("lightround-relay-{}-rescued", std::process::id()));
    let [kept, backup] = ["kept.sqlite", "backup.sqlite"].map(|name| folder.join(name));
    let run = |task: &str, more: &[&str]| {
        let mut command = Command::new(env!("CARGO_BIN_EXE_lightround-relay"));
        let output = command
            .arg(task)
            .arg("--data")
            .arg(&kept)
            .args(more)
            .output()
            .unwrap();
        let said = [output.stdout, output.stderr].concat();
        (output.status.success(), String::from_utf8(said).unwrap())
    };
    let backup = backup.to_str().unwrap();
    let done = |frames| {
        (
            true,
            format!("1 vaults, {frames} entries copied, 0 things wrong\n"),
        )
    };
    assert_eq!(run("backup", &["--to", backup]), done(30));
    scene.push(1, &log[30..35]).await;
    assert_eq!(run("backup", &["--to", backup]), done(5));
    scene.push(1, &log[35..]).await;

    let vault = scene.vault.to_string();
    let erased = format!("vault {vault} is erased, with 41 entries\n");
    assert_eq!(run("erase", &["--vault", &vault]), (true, erased));
    let heads = sync::exchange::Request::Heads;
    assert_eq!(
        scene.ask(1, &heads).await.status,
        404,
        "it is gone from the running relay"
    );
    let (well, said) = run("erase", &["--vault", &vault]);
    assert!(
        !well && said.ends_with(&format!("there is nothing of a vault {vault} here.\n")),
        "{said}"
    );

    assert_eq!(run("restore", &["--from", backup]), done(35));
    assert_eq!(
        scene.ask(1, &heads).await.status,
        200,
        "it is back on the running relay"
    );
    // Whoever has more brings it: what the backup lacked is healed by a tablet.
    let (status, _) = scene.push(1, &log[30..]).await;
    assert_eq!(status, 200);
    assert_eq!(
        run("verify", &[]),
        (true, "1 vaults, 41 entries sound, 0 things wrong\n".into())
    );
}

/// The program over a relay that runs: what it has of a vault, as tablets take it in.
#[tokio::test]
async fn the_program_writes_a_vault_into_a_carry_file_and_over_none() {
    let mut scene = Scene::new("carried").await;
    let log = scene.devices[1].log(9);
    scene.push(1, &log).await;
    let folder =
        std::env::temp_dir().join(format!("lightround-relay-{}-carried", std::process::id()));
    let file = folder.join("back.carry");
    let run = |vault: &str| {
        let mut command = Command::new(env!("CARGO_BIN_EXE_lightround-relay"));
        command
            .arg("carry")
            .arg("--data")
            .arg(folder.join("kept.sqlite"));
        command.args(["--vault", vault, "--to"]).arg(&file);
        let output = command.output().unwrap();
        let said = [output.stdout, output.stderr].concat();
        (output.status.success(), String::from_utf8(said).unwrap())
    };
    let (well, said) = run(&"0".repeat(32));
    assert!(
        !well && said.contains("there is nothing of a vault"),
        "{said}"
    );
    assert!(!file.exists());
    let vault = scene.vault.to_string();
    let (well, said) = run(&vault);
    assert!(well && said.contains(": 10 entries, "), "{said}");
    let bytes = std::fs::read(&file).unwrap();
    let carried = sync::carry::CarryFile::parse(&bytes).unwrap();
    assert_eq!(carried.vault, scene.vault);
    assert_eq!(carried.logs.len(), 1);
    assert_eq!(carried.logs[0].frames, log);
    assert!(carried.roll.len() > 1, "the roll goes along");
    let (well, said) = run(&vault);
    assert!(!well && said.contains("can't be written"), "{said}");
    assert_eq!(std::fs::read(&file).unwrap(), bytes);
}

#[test]
fn a_slip_in_a_place_is_said_and_makes_no_file() {
    let app = crate::common::built_app("slips");
    let folder = app.parent().unwrap();
    let [kept, gone] = ["kept.sqlite", "gone.sqlite"].map(|name| folder.join(name));
    drop(lightround_relay::store::SqliteStore::open(&kept).unwrap());
    let [kept, gone] = [&kept, &gone].map(|file| file.to_str().unwrap());
    for (line, said) in [
        (vec!["verify", "--data", gone], "there is no file"),
        (vec!["vaults", "--data", gone], "there is no file"),
        (
            vec!["erase", "--data", gone, "--vault", &"0".repeat(32)],
            "there is no file",
        ),
        (
            vec!["backup", "--data", gone, "--to", "never.sqlite"],
            "there is no file",
        ),
        (
            vec!["restore", "--data", kept, "--from", gone],
            "there is no file",
        ),
        (
            vec!["backup", "--data", kept, "--to", kept],
            "a backup is another file",
        ),
        (
            vec!["restore", "--data", kept, "--from", kept],
            "a backup is another file",
        ),
        (
            vec!["backup", "--data", kept, "--to", "postgres://a/b"],
            "a backup is a file",
        ),
    ] {
        let mut command = Command::new(env!("CARGO_BIN_EXE_lightround-relay"));
        let output = command.args(&line).output().unwrap();
        let sentence = String::from_utf8(output.stderr).unwrap();
        assert!(!output.status.success(), "{line:?}");
        assert!(
            sentence.contains(said) && sentence.lines().count() == 1,
            "{line:?}: {sentence}"
        );
    }
    assert!(!std::path::Path::new(gone).exists());
}
