//! What must be brought before a task can start: decided here, from facts alone, and carried out in [`crate::bring`].

use crate::machine::{Facts, Rooted};
use crate::want::{CargoTool, NpmTool, SystemProgram, Want};

/// One thing to do.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Action {
    /// Install Debian packages, all at once.
    Debian(Vec<&'static str>),
    /// Get a compiler for the browser, by the first of these ways that works.
    WasmCompiler(Vec<WasmWay>),
    /// Add a part to the Rust toolchain.
    Component(&'static str),
    /// Build a program.
    Cargo(CargoTool),
    /// Fetch npm packages, all at once.
    Npm(Vec<NpmTool>),
}

/// A way to a compiler for the browser.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum WasmWay {
    /// `rustup target add`.
    Rustup,
    /// Debian's own compiler, its standard library built here once.
    Debian,
}

/// What to do, and what only a person can do, each in one sentence.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Plan {
    /// In this order.
    pub actions: Vec<Action>,
    /// Where this isn't empty, the actions would not be enough.
    pub by_hand: Vec<String>,
}

/// Plans what brings all that is wanted and missing.
pub fn plan(wants: &[Want], facts: &Facts) -> Plan {
    let missing: Vec<&Want> = wants.iter().filter(|want| !is_met(want, facts)).collect();
    let needs_npm = !facts.has("npm") && missing.iter().any(|want| matches!(want, Want::Npm(_)));
    let mut plan = Plan::default();
    let (mut packages, mut from_npm) = (Vec::new(), Vec::new());
    for want in missing.into_iter().chain(needs_npm.then_some(&NPM)) {
        match way(want, facts) {
            Way::Package(package) => packages.push(package),
            Way::Npm(tool) => from_npm.push(tool),
            Way::Action(action) => plan.actions.push(action),
            Way::ByHand(sentence) => plan.by_hand.push(sentence),
        }
    }
    if !packages.is_empty() {
        plan.actions.insert(0, Action::Debian(packages));
    }
    if !from_npm.is_empty() {
        plan.actions.push(Action::Npm(from_npm));
    }
    plan
}

const NPM: Want = Want::System(SystemProgram {
    programs: &["npm"],
    package: "npm",
    what: "Node.js with npm",
});

/// How one missing thing comes.
enum Way {
    /// With the other Debian packages.
    Package(&'static str),
    /// With the other npm packages.
    Npm(NpmTool),
    /// By itself.
    Action(Action),
    /// Only by a person.
    ByHand(String),
}

fn way(want: &Want, facts: &Facts) -> Way {
    match want {
        Want::System(program) if facts.can_apt() => Way::Package(program.package),
        Want::System(program) => Way::ByHand(system_by_hand(program, facts)),
        Want::Component(_, component) if facts.has("rustup") => {
            Way::Action(Action::Component(component))
        }
        Want::Component(program, _) => Way::ByHand(format!(
            "Install {program}, which comes with the Rust toolchain."
        )),
        Want::Cargo(tool) => Way::Action(Action::Cargo(tool.clone())),
        Want::Npm(tool) => Way::Npm(*tool),
        Want::WasmCompiler => match wasm_ways(facts) {
            ways if ways.is_empty() => Way::ByHand(WASM_BY_HAND.to_owned()),
            ways => Way::Action(Action::WasmCompiler(ways)),
        },
    }
}

const WASM_BY_HAND: &str = "Install a Rust compiler that can build for wasm32-unknown-unknown: with rustup from rustup.rs, or your \
    system's own package for it.";

fn is_met(want: &Want, facts: &Facts) -> bool {
    match want {
        Want::WasmCompiler => facts.compiler.is_some(),
        Want::Component(program, _) => facts.has(program),
        Want::System(program) => program.programs.iter().any(|name| facts.has(name)),
        Want::Cargo(tool) => facts.says_version(tool.program, &tool.version),
        Want::Npm(NpmTool {
            program: Some((program, version)),
            ..
        }) => facts.says_version(program, version),
        Want::Npm(NpmTool {
            package,
            program: None,
            ..
        }) => facts.has(package),
    }
}

fn wasm_ways(facts: &Facts) -> Vec<WasmWay> {
    let rustup = facts.has("rustup").then_some(WasmWay::Rustup);
    let debian = facts.can_apt().then_some(WasmWay::Debian);
    rustup.into_iter().chain(debian).collect()
}

fn system_by_hand(program: &SystemProgram, facts: &Facts) -> String {
    let SystemProgram {
        programs,
        package,
        what,
    } = program;
    if facts.has("apt-get") && facts.rooted == Rooted::No {
        format!("Install {what}: as root, `apt-get install {package}`.")
    } else {
        format!(
            "Install {what} so that `{}` is found (Debian's package is {package}).",
            programs.join("` or `")
        )
    }
}

impl Facts {
    fn can_apt(&self) -> bool {
        self.has("apt-get") && self.rooted != Rooted::No
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::compiler::Compiler;
    use crate::ready::{Beyond, wants};
    use std::collections::{BTreeMap, BTreeSet};

    fn machine(present: &[&'static str], rooted: Rooted) -> Facts {
        Facts {
            present: present.iter().copied().collect(),
            versions: BTreeMap::new(),
            compiler: None,
            rooted,
        }
    }

    fn everything() -> Vec<Want> {
        wants(
            Beyond {
                lints: true,
                browsers: true,
            },
            None,
            "0.2.130".into(),
        )
    }

    #[test]
    fn a_bare_debian_machine_gets_system_packages_first_and_in_one_go() {
        let facts = machine(
            &["apt-get", "npm", "rustup", "rustfmt", "cargo-clippy"],
            Rooted::Yes,
        );
        let plan = plan(&everything(), &facts);
        assert_eq!(plan.by_hand, Vec::<String>::new());
        let packages = vec![
            "postgresql",
            "chromium",
            "chromium-driver",
            "firefox-esr",
            "webkit2gtk-driver",
            "xvfb",
        ];
        assert_eq!(plan.actions[0], Action::Debian(packages));
        assert_eq!(
            plan.actions[1],
            Action::WasmCompiler(vec![WasmWay::Rustup, WasmWay::Debian])
        );
        let built: Vec<&str> = plan
            .actions
            .iter()
            .filter_map(|action| {
                if let Action::Cargo(tool) = action {
                    Some(tool.package)
                } else {
                    None
                }
            })
            .collect();
        assert_eq!(
            built,
            ["trunk", "wasm-bindgen-cli", "cargo-deny", "geckodriver"]
        );
        assert!(matches!(plan.actions.last(), Some(Action::Npm(tools)) if tools.len() == 2));
    }

    #[test]
    fn a_machine_with_everything_gets_nothing() {
        let all = everything();
        let mut facts = machine(&["rustup"], Rooted::No);
        facts.compiler = Some(Compiler::Usual);
        for want in &all {
            match want {
                Want::WasmCompiler => {}
                Want::Component(program, _) => drop(facts.present.insert(program)),
                Want::System(program) => drop(facts.present.insert(program.programs[0])),
                Want::Cargo(tool) => drop(
                    facts
                        .versions
                        .insert(tool.program, format!("{} {}", tool.program, tool.version)),
                ),
                Want::Npm(NpmTool {
                    program: Some((program, version)),
                    ..
                }) => {
                    facts.versions.insert(
                        program,
                        format!("{program} version {version} (version_{version})"),
                    );
                }
                Want::Npm(tool) => drop(facts.present.insert(tool.package)),
            }
        }
        assert_eq!(plan(&all, &facts), Plan::default());

        facts
            .versions
            .insert("wasm-bindgen", "wasm-bindgen 0.2.129".into());
        let plan = plan(&all, &facts);
        assert!(
            matches!(plan.actions.as_slice(), [Action::Cargo(tool)] if tool.version == "0.2.130"),
            "another version is not the one"
        );
    }

    #[test]
    fn elsewhere_each_missing_thing_is_one_sentence() {
        let nobody = machine(&["apt-get", "npm", "rustup"], Rooted::No);
        let xvfb = Want::System(SystemProgram {
            programs: &["Xvfb"],
            package: "xvfb",
            what: "a display without a screen",
        });
        assert_eq!(
            plan(std::slice::from_ref(&xvfb), &nobody).by_hand,
            ["Install a display without a screen: as root, `apt-get install xvfb`."]
        );

        let other_system = machine(&[], Rooted::Yes);
        let plan = plan(
            &[
                xvfb,
                Want::WasmCompiler,
                Want::Component("rustfmt", "rustfmt"),
            ],
            &other_system,
        );
        assert_eq!(plan.actions, []);
        assert_eq!(
            plan.by_hand,
            [
                "Install a display without a screen so that `Xvfb` is found (Debian's package is xvfb).",
                WASM_BY_HAND,
                "Install rustfmt, which comes with the Rust toolchain.",
            ]
        );
    }

    #[test]
    fn a_database_to_test_on_is_installed_or_asked_for_in_one_sentence() {
        let postgres = everything()
            .into_iter()
            .find(|want| matches!(want, Want::System(program) if program.package == "postgresql"))
            .unwrap();
        let planned = |programs: &[&'static str], rooted| {
            plan(std::slice::from_ref(&postgres), &machine(programs, rooted))
        };
        let installed = Plan {
            actions: vec![Action::Debian(vec!["postgresql"])],
            by_hand: vec![],
        };
        assert_eq!(planned(&["apt-get"], Rooted::Yes), installed);
        assert_eq!(planned(&["apt-get"], Rooted::Sudo), installed);
        assert_eq!(planned(&["initdb"], Rooted::No), Plan::default());
        assert_eq!(
            planned(&["apt-get"], Rooted::No).by_hand,
            [
                "Install PostgreSQL (the relay's store is tested on it): as root, `apt-get install postgresql`."
            ]
        );
        assert_eq!(
            planned(&[], Rooted::Yes).by_hand,
            [
                "Install PostgreSQL (the relay's store is tested on it) so that `pg_ctlcluster` or `initdb` is found \
              (Debian's package is postgresql)."
            ]
        );
    }

    #[test]
    fn another_name_for_the_same_browser_is_enough() {
        let facts = machine(&["firefox"], Rooted::No);
        let firefox = everything()
            .into_iter()
            .find(|want| matches!(want, Want::System(program) if program.package == "firefox-esr"))
            .unwrap();
        assert_eq!(plan(&[firefox], &facts), Plan::default());
    }

    #[test]
    fn the_distribution_s_own_linter_goes_with_its_compiler() {
        let lints = Beyond {
            lints: true,
            browsers: false,
        };
        let packages = |compiler| -> BTreeSet<&str> {
            let wants = wants(lints, compiler, "0.2.130".into());
            wants
                .iter()
                .filter_map(|want| {
                    if let Want::System(program) = want {
                        Some(program.package)
                    } else {
                        None
                    }
                })
                .collect()
        };
        assert!(packages(Some(Compiler::Distribution)).contains("rust-web-clippy"));
        assert_eq!(
            packages(Some(Compiler::Usual)),
            BTreeSet::from(["postgresql"])
        );
    }
}
