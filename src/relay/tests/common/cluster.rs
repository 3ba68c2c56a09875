//! A PostgreSQL of these tests' own: a new cluster in a temporary folder, gone when the tests are, however they end.
#![allow(clippy::unwrap_used, reason = "a failure here is the test's finding")]
#![allow(dead_code, reason = "each test file uses its own part of this")]

use std::fs;
use std::io::{BufRead, BufReader};
use std::net::TcpListener;
use std::os::unix::fs::{MetadataExt, PermissionsExt, chown};
use std::os::unix::process::CommandExt;
use std::path::{Path, PathBuf};
use std::process::{Child, Command, Stdio};
use std::sync::OnceLock;

/// Starts a cluster and waits until its input ends, which it does with the process that holds it. Then it clears up.
const KEEPER: &str = r#"
set -u
initdb -D "$1/data" -U relay -A trust -E UTF8 --no-locale --no-sync > "$1/log" 2>&1 &&
pg_ctl -D "$1/data" -l "$1/log" -w -t 60 start \
    -o "-p $2 -c listen_addresses=127.0.0.1 -c unix_socket_directories='' -c log_line_prefix=%d:" >> "$1/log" 2>&1 &&
echo ready
cat > /dev/null
pg_ctl -D "$1/data" -m immediate stop > /dev/null 2>&1
rm -rf "$1"
"#;

struct Cluster {
    port: u16,
    /// Holds the keeper's input open.
    _keeper: Child,
}

/// Whether PostgreSQL's programs are on this machine.
pub fn is_there() -> bool {
    path_with_servers()
        .split(':')
        .any(|folder| Path::new(folder).join("initdb").exists())
}

/// The address of a new, or already made, database of this name.
pub fn address(name: &str) -> String {
    static CLUSTER: OnceLock<Cluster> = OnceLock::new();
    let port = CLUSTER.get_or_init(start).port;
    let base = format!("postgres://relay@127.0.0.1:{port}");
    let mut client =
        postgres::Client::connect(&format!("{base}/postgres"), postgres::NoTls).unwrap();
    // Another test may have made it meanwhile.
    let _ = client.batch_execute(&format!("CREATE DATABASE {name}"));
    format!("{base}/{name}")
}

/// What the server wrote down about a database, an item each, without the line breaks within.
pub fn log_of(name: &str) -> Vec<String> {
    let (log, before) = (
        fs::read(folder().join("log")).unwrap(),
        format!("{name}:LOG:"),
    );
    let mut items: Vec<String> = Vec::new();
    let mut ours = false;
    for line in String::from_utf8_lossy(&log).lines() {
        if let Some(begun) = line.strip_prefix(&before) {
            items.push(begun.trim().to_owned());
            ours = true;
        } else if ours && line.starts_with('\t') {
            let item = items.last_mut().unwrap();
            item.push(' ');
            item.push_str(line.trim());
        } else {
            ours = false;
        }
    }
    items
}

/// A file in the cluster's folder that only the server's user reads.
pub fn file(name: &str, text: &str) -> PathBuf {
    let (folder, file) = (folder(), folder().join(name));
    fs::write(&file, text).unwrap();
    fs::set_permissions(&file, fs::Permissions::from_mode(0o600)).unwrap();
    let owner = fs::metadata(folder).unwrap();
    chown(&file, Some(owner.uid()), Some(owner.gid())).unwrap();
    file
}

fn folder() -> PathBuf {
    std::env::temp_dir().join(format!("lightround-cluster-{}", std::process::id()))
}

fn start() -> Cluster {
    let folder = folder();
    fs::create_dir_all(&folder).unwrap();
    let port = TcpListener::bind("127.0.0.1:0")
        .unwrap()
        .local_addr()
        .unwrap()
        .port();
    let mut command = Command::new("sh");
    command
        .args(["-c", KEEPER, "keeper"])
        .arg(&folder)
        .arg(port.to_string())
        .env("PATH", path_with_servers())
        .current_dir(&folder)
        .stdin(Stdio::piped())
        .stdout(Stdio::piped());
    if let Some((user, group)) = instead_of_root(&folder) {
        chown(&folder, Some(user), Some(group)).unwrap();
        command.uid(user).gid(group);
    }
    let mut keeper = command.spawn().unwrap();
    let mut said = String::new();
    BufReader::new(keeper.stdout.take().unwrap())
        .read_line(&mut said)
        .unwrap();
    if said != "ready\n" {
        let log = fs::read_to_string(folder.join("log")).unwrap_or_default();
        panic!("PostgreSQL doesn't start; is it installed (apt-get install postgresql)?\n{log}");
    }
    Cluster {
        port,
        _keeper: keeper,
    }
}

/// Distributions keep the server's programs in a folder per version, outside the path.
fn path_with_servers() -> String {
    let mut path = std::env::var("PATH").unwrap_or_default();
    for version in fs::read_dir("/usr/lib/postgresql")
        .into_iter()
        .flatten()
        .flatten()
    {
        path = format!("{path}:{}", version.path().join("bin").display());
    }
    path
}

/// PostgreSQL refuses to run as root, so root lends it another user: its own, or nobody.
fn instead_of_root(folder: &PathBuf) -> Option<(u32, u32)> {
    (fs::metadata(folder).unwrap().uid() == 0).then(|| {
        let users = fs::read_to_string(Path::new("/etc/passwd")).unwrap();
        ["postgres", "nobody"]
            .iter()
            .find_map(|name| user(&users, name))
            .unwrap()
    })
}

fn user(users: &str, name: &str) -> Option<(u32, u32)> {
    let line = users
        .lines()
        .find(|line| line.split(':').next() == Some(name))?;
    let mut fields = line.split(':').skip(2);
    Some((fields.next()?.parse().ok()?, fields.next()?.parse().ok()?))
}
