//! Makes the machine ready for a task, or says in one sentence each what a person must install.

use crate::bring;
use crate::compiler::Compiler;
use crate::lock;
use crate::machine::Facts;
use crate::place::Place;
use crate::plan::plan;
use crate::step::step;
use crate::want::{CargoTool, NpmTool, SystemProgram, Want, clippy_apart};
use anyhow::{Context, Result, bail};

/// A machine on which the task can start.
#[derive(Debug)]
pub struct Ready {
    /// Where things are.
    pub place: Place,
    /// What builds for the browser.
    pub compiler: Compiler,
}

/// What a task does beyond building the app.
#[derive(Clone, Copy, Debug, Default)]
pub struct Beyond {
    /// It formats, lints, runs the tests and looks at licences.
    pub lints: bool,
    /// It drives browsers.
    pub browsers: bool,
}

/// Brings what is missing.
///
/// # Errors
/// Names all that only a person can install; or says what could not be brought, and why.
pub fn ready(beyond: Beyond) -> Result<Ready> {
    let place = Place::find()?;
    step("looking at what is here", || bring_missing(&place, beyond))?;
    let compiler = Compiler::find(&place)
        .context("There is still no Rust compiler that can build for the browser.")?;
    Ok(Ready { place, compiler })
}

fn bring_missing(place: &Place, beyond: Beyond) -> Result<()> {
    let compiler = Compiler::find(place);
    let wants = wants(
        beyond,
        compiler,
        lock::version(&place.root.join("Cargo.lock"), "wasm-bindgen")?,
    );
    bring_all(place, &wants, compiler)
}

/// Brings what of these is missing.
///
/// # Errors
/// As [`ready`].
pub fn bring_all(place: &Place, wants: &[Want], compiler: Option<Compiler>) -> Result<()> {
    let facts = Facts::gather(place, wants, compiler);
    let plan = plan(wants, &facts);
    if !plan.by_hand.is_empty() {
        bail!("Before this can go on:\n{}", plan.by_hand.join("\n"));
    }
    plan.actions
        .iter()
        .try_for_each(|action| bring::bring(place, facts.rooted, action))
}

/// All that a task needs. The versions are one set that is known to work together.
pub fn wants(beyond: Beyond, compiler: Option<Compiler>, wasm_bindgen: String) -> Vec<Want> {
    let mut wants = vec![
        Want::WasmCompiler,
        cargo(
            "trunk",
            "trunk",
            "0.21.14".into(),
            &["--locked", "--no-default-features", "--features", "rustls"],
            3,
        ),
        // Without --locked: the lock file that this crate ships names a version that is no longer served.
        cargo(
            "wasm-bindgen-cli",
            "wasm-bindgen",
            wasm_bindgen,
            &["--no-default-features"],
            3,
        ),
        Want::Npm(NpmTool {
            package: "binaryen",
            version: "132.0.0",
            program: Some(("wasm-opt", "132")),
        }),
    ];
    if beyond.lints {
        // The server's own programs are not on the path; this one is, and comes with them.
        wants.push(system(
            &["pg_ctlcluster", "initdb"],
            "postgresql",
            "PostgreSQL (the relay's store is tested on it)",
        ));
        wants.push(Want::Component("rustfmt", "rustfmt"));
        wants.push(Want::Component("cargo-clippy", "clippy"));
        wants.push(cargo(
            "cargo-deny",
            "cargo-deny",
            "0.20.2".into(),
            &["--locked"],
            5,
        ));
        if clippy_apart(compiler) {
            wants.push(system(
                &["/usr/bin/cargo-clippy"],
                "rust-web-clippy",
                "the linter of the distribution's Rust",
            ));
        }
    }
    if beyond.browsers {
        wants.extend([
            system(
                &["chromium", "chromium-browser", "google-chrome"],
                "chromium",
                "Chromium",
            ),
            system(&["chromedriver"], "chromium-driver", "Chromium's WebDriver"),
            system(&["firefox-esr", "firefox"], "firefox-esr", "Firefox"),
            system(
                &["WebKitWebDriver"],
                "webkit2gtk-driver",
                "WebKit with its WebDriver",
            ),
            system(&["Xvfb"], "xvfb", "a display without a screen"),
            cargo(
                "geckodriver",
                "geckodriver",
                "0.36.0".into(),
                &["--locked"],
                2,
            ),
            Want::Npm(NpmTool {
                package: "axe-core",
                version: "4.14.1",
                program: None,
            }),
        ]);
    }
    wants
}

fn cargo(
    package: &'static str,
    program: &'static str,
    version: String,
    flags: &'static [&'static str],
    minutes: u8,
) -> Want {
    Want::Cargo(CargoTool {
        package,
        program,
        version,
        flags,
        minutes,
    })
}

/// A program of the system.
pub fn system(
    programs: &'static [&'static str],
    package: &'static str,
    what: &'static str,
) -> Want {
    Want::System(SystemProgram {
        programs,
        package,
        what,
    })
}
