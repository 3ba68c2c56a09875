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

/// One file of settings for the program, with a variable that outweighs it, and counts at their own address.
#[cfg(unix)]
#[tokio::test]
async fn the_program_reads_its_file_and_environment() {
    use std::io::{BufRead, BufReader, Read, Write};
    use std::process::Stdio;
    let app = crate::common::built_app("settings");
    let folder = app.parent().unwrap();
    let file = folder.join("relay.toml");
    let text = format!(
        "app = {app:?}\ndata = {:?}\nlisten = \"no address\"\nmetrics = \"127.0.0.1:0\"\n",
        folder.join("kept.sqlite")
    );
    std::fs::write(&file, text).unwrap();
    let mut running = Command::new(env!("CARGO_BIN_EXE_lightround-relay"))
        .env("LIGHTROUND_RELAY_CONFIG", &file)
        .env("LIGHTROUND_RELAY_LISTEN", "127.0.0.1:0")
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .unwrap();
    let mut lines = BufReader::new(running.stdout.take().unwrap()).lines();
    let mut next = |before: &str| {
        let line = lines.next().unwrap().unwrap();
        let address = line
            .strip_prefix(before)
            .unwrap_or_else(|| panic!("{line}"));
        address.split('/').next().unwrap().to_owned()
    };
    let relay = next("Lightround is at http://");
    let metrics = next("Counts are at http://");
    let ask = |host: &str, path: &str| {
        let mut stream = std::net::TcpStream::connect(host).unwrap();
        let request = format!("GET {path} HTTP/1.1\r\nhost: relay\r\nconnection: close\r\n\r\n");
        stream.write_all(request.as_bytes()).unwrap();
        let mut said = String::new();
        stream.read_to_string(&mut said).unwrap();
        said
    };
    assert!(ask(&relay, "/relay/ready").ends_with("ready\n"));
    let counted = ask(&metrics, "/metrics");
    let line = r#"lightround_requests_total{what="ready",status="200"} 1"#;
    assert!(counted.contains(line), "{counted}");
    let asked = Command::new("kill")
        .arg("-TERM")
        .arg(running.id().to_string())
        .status();
    assert!(asked.unwrap().success());
    assert!(running.wait().unwrap().success());
    let mut journal = String::new();
    running
        .stderr
        .take()
        .unwrap()
        .read_to_string(&mut journal)
        .unwrap();
    let lines: Vec<&str> = journal.lines().collect();
    assert_eq!(lines.first(), Some(&r#"{"relay":"serves"}"#), "{journal}");
    assert_eq!(lines.last(), Some(&r#"{"relay":"stops"}"#), "{journal}");
}

/// Asked to stop in the middle of a request, the program lets that finish; one that never comes to an end it does not wait
/// for, and new connections it takes none.
#[cfg(unix)]
#[test]
fn the_program_finishes_what_is_under_way_and_waits_for_nobody_for_ever() {
    use std::io::{BufRead, BufReader, Read, Write};
    use std::net::TcpStream;
    use std::process::Stdio;
    use std::time::{Duration, Instant};
    let app = crate::common::built_app("under-way");
    let file = app.parent().unwrap().join("kept.sqlite");
    let mut running = Command::new(env!("CARGO_BIN_EXE_lightround-relay"))
        .args(["--listen", "127.0.0.1:0", "--app"])
        .arg(&app)
        .arg("--data")
        .arg(&file)
        .stdout(Stdio::piped())
        .stderr(Stdio::null())
        .spawn()
        .unwrap();
    let mut said = String::new();
    BufReader::new(running.stdout.take().unwrap())
        .read_line(&mut said)
        .unwrap();
    let host = said
        .trim()
        .strip_prefix("Lightround is at http://")
        .unwrap();
    let host = host.trim_end_matches('/').to_owned();
    let device = vault::sample::devices(78, 1).remove(0);
    let path = format!("/relay/v1/vaults/{}/heads", device.keys.vault());
    let body = sync::exchange::Request::Heads.to_bytes();
    let asked = vault::request::Asked {
        method: "POST",
        path: &path,
        body: &body,
    };
    let field = device.keys.vouch(asked, lightround_relay::carry::now());
    let head = format!(
        "POST {path} HTTP/1.1\r\nhost: relay\r\nauthorization: {}\r\ncontent-length: {}\r\n\r\n",
        field.unwrap(),
        body.len()
    );
    let [mut slow, mut endless] = [(), ()].map(|()| {
        let mut stream = TcpStream::connect(&host).unwrap();
        stream.write_all(head.as_bytes()).unwrap();
        stream
    });
    std::thread::sleep(Duration::from_millis(300));
    let began = Instant::now();
    let asked = Command::new("kill")
        .arg("-TERM")
        .arg(running.id().to_string())
        .status();
    assert!(asked.unwrap().success());
    std::thread::sleep(Duration::from_millis(500));
    assert!(TcpStream::connect(&host).is_err(), "nobody new is let in");
    slow.write_all(&body).unwrap();
    let mut answer = String::new();
    slow.read_to_string(&mut answer).unwrap();
    assert!(
        answer.starts_with("HTTP/1.1 404 "),
        "it is answered: {answer}"
    );
    assert!(answer.contains("connection: close"), "{answer}");
    assert!(running.wait().unwrap().success());
    let took = began.elapsed();
    assert!(
        took > Duration::from_secs(4) && took < Duration::from_secs(15),
        "{took:?}"
    );
    assert_eq!(endless.read(&mut [0; 1]).unwrap_or(0), 0);
}
