//! A newer version arrives: it waits, it is said, it takes over whole, and half a version is never taken.

use crate::Stage;
use anyhow::{Context, Result, ensure};
use lightround_tests::bedside::{kept_for_offline, make_vault};
use lightround_tests::{Hand, Place, Relay};
use sha2::{Digest, Sha256};
use std::fmt::Write as _;
use std::fs;
use std::path::{Path, PathBuf};

/// The file that the newer version changes: harmless, and not part of the page.
const CHANGED: &str = "manifest.webmanifest";

/// Looks for a newer version, and waits until what was found is installed or refused.
const LOOK: &str = r"
const done = arguments[arguments.length - 1];
(async () => {
  const registration = await navigator.serviceWorker.ready;
  await registration.update().catch(() => undefined);
  const worker = registration.installing;
  if (worker) await new Promise((settled) => {
    const look = () => { if (worker.state !== 'installing') settled(); };
    worker.addEventListener('statechange', look);
    look();
  });
  done(registration.waiting ? 'waiting' : 'none');
})();";

const CACHES: &str = "const done = arguments[arguments.length - 1]; caches.keys().then(done);";

/// Plays it.
pub async fn newer_version(stage: &mut Stage) -> Result<()> {
    let (hand, place) = (stage.hand.clone(), stage.place.clone());
    make_vault(&hand, stage.relay()?).await?;
    kept_for_offline(&hand).await?;
    let host = stage.relay()?.host().to_owned();
    let address = stage.lose_the_server()?;
    let old = versions(&hand).await?;
    ensure!(old.len() == 1, "one version is kept: {old:?}");

    // Half a version: the list promises a file that the server does not have.
    let half = copy_of(&place, "half", |_| "not what is sealed".into())?;
    let relay = serve(&place, &host, &half)?;
    hand.go(&address).await?;
    ensure!(
        hand.ask_later(LOOK).await? == "none",
        "half a version is refused"
    );
    ensure!(versions(&hand).await? == old, "and leaves nothing behind");

    let newer = copy_of(&place, "newer", |manifest| format!("{manifest}\n"))?;
    reseal(&newer)?;
    relay.stop()?;
    let relay = serve(&place, &host, &newer)?;
    hand.go(&address).await?;
    hand.see("#unlock")
        .await
        .context("the old version goes on while the newer one comes")?;
    hand.ask_later(LOOK).await?;
    hand.see("#newer-version").await?;
    hand.shot("newer-version").await?;
    hand.click("#use-newer").await?;
    hand.see_gone("#newer-version").await?;
    hand.see("#unlock").await?;
    let now = versions(&hand).await?;
    ensure!(
        now.len() == 1 && now != old,
        "only the newer version is kept: {now:?}"
    );
    relay.stop()?;
    hand.go(&address).await?;
    hand.see("#unlock")
        .await
        .context("the newer version works without a server too")?;
    let _ = fs::remove_dir_all(half);
    let _ = fs::remove_dir_all(newer);
    Ok(())
}

async fn versions(hand: &Hand) -> Result<Vec<String>> {
    let names = hand.ask_later(CACHES).await?;
    let names = names.as_array().context("the caches have names")?;
    Ok(names
        .iter()
        .filter_map(|name| name.as_str().map(str::to_owned))
        .collect())
}

fn serve(place: &Place, host: &str, dist: &Path) -> Result<Relay> {
    Relay::listen(
        &Place {
            dist: dist.to_owned(),
            ..place.clone()
        },
        host,
    )
}

/// A copy of the build with one file changed and the service worker's own text touched, so that browsers see another.
fn copy_of(place: &Place, name: &str, change: impl Fn(String) -> String) -> Result<PathBuf> {
    let copy = std::env::temp_dir().join(format!(
        "lightround-{name}-{}-{:?}",
        std::process::id(),
        std::thread::current().id()
    ));
    copy_folder(&place.dist, &copy)?;
    let changed = copy.join(CHANGED);
    fs::write(&changed, change(fs::read_to_string(&changed)?))?;
    let worker = copy.join("sw.js");
    fs::write(&worker, fs::read_to_string(&worker)? + "// another build\n")?;
    Ok(copy)
}

/// Copies all but the compressed copies, which would be of the old files.
fn copy_folder(from: &Path, to: &Path) -> Result<()> {
    fs::create_dir_all(to)?;
    for entry in fs::read_dir(from)? {
        let path = entry?.path();
        let target = to.join(path.file_name().context("an entry has a name")?);
        if path.is_dir() {
            copy_folder(&path, &target)?;
        } else if path.extension().is_none_or(|ending| ending != "br") {
            fs::copy(&path, &target)?;
        }
    }
    Ok(())
}

/// Puts the changed file's hash, and a version of its own, into the service worker's list.
fn reseal(dist: &Path) -> Result<()> {
    let worker = dist.join("sw.js");
    let text = fs::read_to_string(&worker)?;
    let hash = Sha256::digest(fs::read(dist.join(CHANGED))?).iter().fold(
        String::new(),
        |mut text, byte| {
            let _ = write!(text, "{byte:02x}");
            text
        },
    );
    let entry = format!("\"/{CHANGED}\"");
    let at = text.find(&entry).context("the list names the manifest")? + entry.len();
    let old = text[at..]
        .split('"')
        .nth(1)
        .context("the list gives its hash")?
        .to_owned();
    let sealed = text
        .split("SEAL = ")
        .nth(1)
        .context("the worker is sealed")?;
    let version = sealed.split("version").nth(1);
    let version = version.and_then(|rest| rest.split('"').find(|part| part.len() >= 16));
    let version = version.context("the seal has a version")?.to_owned();
    fs::write(
        &worker,
        text.replace(&old, &hash)
            .replace(&version, &version.chars().rev().collect::<String>()),
    )?;
    Ok(())
}
