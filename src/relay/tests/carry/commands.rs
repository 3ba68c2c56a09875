use crate::scene::Scene;
use lightround_relay::store::Desk;
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

/// Asked to stop, the program ends by itself, well, and leaves everything in place.
#[cfg(unix)]
#[test]
fn the_program_stops_when_it_is_asked_to() {
    use std::io::{BufRead, BufReader};
    use std::process::Stdio;
    let app = crate::common::built_app("stopped");
    let file = app.parent().unwrap().join("kept.sqlite");
    let mut running = Command::new(env!("CARGO_BIN_EXE_lightround-relay"))
        .args(["serve", "--listen", "127.0.0.1:0", "--app"])
        .arg(&app)
        .arg("--data")
        .arg(&file)
        .stdout(Stdio::piped())
        .spawn()
        .unwrap();
    let mut said = String::new();
    BufReader::new(running.stdout.take().unwrap())
        .read_line(&mut said)
        .unwrap();
    assert!(
        said.starts_with("Lightround is at http://127.0.0.1:"),
        "{said}"
    );
    let asked = Command::new("kill")
        .arg("-TERM")
        .arg(running.id().to_string())
        .status();
    assert!(asked.unwrap().success());
    assert!(running.wait().unwrap().success());
    assert!(
        lightround_relay::store::SqliteStore::open(&file)
            .unwrap()
            .ready()
            .is_ok()
    );
}
