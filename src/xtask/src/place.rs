//! Where things are.

use anyhow::{Context, Result};
use std::env;
use std::ffi::OsString;
use std::path::{Path, PathBuf};

/// The project's folder and the one for everything made from it.
#[derive(Clone, Debug)]
pub struct Place {
    /// The workspace's root.
    pub root: PathBuf,
    /// Cargo's target folder: all that is made, fetched or measured is under it, but for `dist/`.
    pub target: PathBuf,
}

impl Place {
    /// Finds the workspace from where cargo runs this task.
    ///
    /// # Errors
    /// Where cargo didn't run it and the current folder is not the workspace.
    pub fn find() -> Result<Self> {
        let root = match env::var_os("CARGO_MANIFEST_DIR") {
            Some(package) => Path::new(&package).join("../.."),
            None => env::current_dir()?,
        };
        let root = root
            .canonicalize()
            .context("the project's folder can't be found: run this as `cargo xtask`")?;
        let target = env::var_os("CARGO_TARGET_DIR")
            .map_or_else(|| root.join("target"), |folder| root.join(folder));
        Ok(Self { root, target })
    }

    /// The built app.
    pub fn dist(&self) -> PathBuf {
        self.root.join("dist")
    }

    /// The built page of what is tested inside a browser.
    pub fn inside(&self) -> PathBuf {
        self.target.join("inside")
    }

    /// What cargo makes for the browser. A folder of its own: it may be another compiler that fills it.
    pub fn web_target(&self) -> PathBuf {
        self.target.join("web")
    }

    /// Programs brought for this project alone.
    pub fn tools(&self) -> PathBuf {
        self.target.join("tools")
    }

    /// The script that looks for what a screen reader would stumble over.
    pub fn axe(&self) -> PathBuf {
        self.tools().join("node_modules/axe-core/axe.min.js")
    }

    /// The full output of whatever ran.
    pub fn log(&self, name: &str) -> PathBuf {
        self.target.join("logs").join(format!("{name}.log"))
    }

    /// `PATH` with this project's own programs first.
    pub fn path(&self) -> OsString {
        let own = [
            self.tools().join("bin"),
            self.tools().join("node_modules/.bin"),
        ];
        let usual = env::var_os("PATH").unwrap_or_default();
        let all = own.into_iter().chain(env::split_paths(&usual));
        env::join_paths(all).unwrap_or(usual)
    }

    /// The first program of this name on [`Place::path`].
    pub fn program(&self, name: &str) -> Option<PathBuf> {
        env::split_paths(&self.path())
            .map(|folder| folder.join(name))
            .find(|path| path.is_file())
    }
}
