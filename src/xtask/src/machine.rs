//! What stands on this machine: looked at, never changed.

use crate::compiler::Compiler;
use crate::place::Place;
use crate::process::Program;
use crate::want::{NpmTool, Want};
use std::collections::{BTreeMap, BTreeSet};

/// Whether system packages can be installed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Rooted {
    /// This runs as root.
    Yes,
    /// `sudo` is there.
    Sudo,
    /// Neither.
    No,
}

/// What was found.
#[derive(Clone, Debug)]
pub struct Facts {
    /// Programs, and npm packages without a program, that are there.
    pub present: BTreeSet<&'static str>,
    /// The first line that a program says about its version.
    pub versions: BTreeMap<&'static str, String>,
    /// A compiler for the browser.
    pub compiler: Option<Compiler>,
    /// Whether system packages can be installed.
    pub rooted: Rooted,
}

impl Facts {
    /// Looks for all that these wants speak of.
    pub fn gather(place: &Place, wants: &[Want], compiler: Option<Compiler>) -> Self {
        let mut facts = Self {
            present: BTreeSet::new(),
            versions: BTreeMap::new(),
            compiler,
            rooted: rooted(place),
        };
        for program in ["apt-get", "npm", "rustup"] {
            facts.look_for(place, program);
        }
        for want in wants {
            match want {
                Want::WasmCompiler => {}
                Want::Component(program, _) => facts.look_for(place, program),
                Want::System(program) => program
                    .programs
                    .iter()
                    .for_each(|name| facts.look_for(place, name)),
                Want::Cargo(tool) => facts.ask_version(place, tool.program),
                Want::Npm(NpmTool {
                    program: Some((program, _)),
                    ..
                }) => facts.ask_version(place, program),
                Want::Npm(NpmTool {
                    package,
                    program: None,
                    ..
                }) => {
                    if place.tools().join("node_modules").join(package).is_dir() {
                        facts.present.insert(package);
                    }
                }
            }
        }
        facts
    }

    /// Whether a program is there.
    pub fn has(&self, name: &str) -> bool {
        self.present.contains(name)
    }

    /// Whether a program is there and says exactly this version.
    pub fn says_version(&self, program: &str, version: &str) -> bool {
        self.versions
            .get(program)
            .is_some_and(|said| said.split_whitespace().any(|word| word == version))
    }

    fn look_for(&mut self, place: &Place, program: &'static str) {
        if place.program(program).is_some() {
            self.present.insert(program);
        }
    }

    fn ask_version(&mut self, place: &Place, program: &'static str) {
        if place.program(program).is_none() {
            return;
        }
        if let Ok(said) = Program::new(place, program).args(["--version"]).read() {
            self.versions
                .insert(program, said.lines().next().unwrap_or_default().to_owned());
        }
    }
}

fn rooted(place: &Place) -> Rooted {
    let me = Program::new(place, "id")
        .args(["-u"])
        .read()
        .unwrap_or_default();
    if me.trim() == "0" {
        Rooted::Yes
    } else if place.program("sudo").is_some() {
        Rooted::Sudo
    } else {
        Rooted::No
    }
}
