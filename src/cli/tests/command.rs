//! The command as a person types it.

use std::process::{Command, Output};

fn lightround(words: &[&str]) -> Output {
    Command::new(env!("CARGO_BIN_EXE_lightround"))
        .args(words)
        .output()
        .expect("the command was built with this test")
}

fn printed(words: &[&str]) -> String {
    let output = lightround(words);
    let complaint = String::from_utf8_lossy(&output.stderr);
    assert!(output.status.success(), "{complaint}");
    String::from_utf8_lossy(&output.stdout).into_owned()
}

fn refused(words: &[&str]) -> String {
    let output = lightround(words);
    assert_eq!(output.status.code(), Some(2), "{words:?}");
    assert!(output.stdout.is_empty(), "nothing is answered");
    String::from_utf8_lossy(&output.stderr).trim().to_owned()
}

// Computed from the formula: +4.00 and +2.50 less 1.4925.
#[test]
fn the_net_of_two_meridians_with_its_working() {
    let page = printed(&[
        "net", "--at", "67", "--first", "90=+4.00", "--second", "+2.50",
    ]);
    assert_eq!(
        page,
        "\
neutral in the meridian 90                                   +4.00
neutral in the meridian 180                                  +2.50
together                                                     +4.00 / −1.50 × 90
working lens                                                 none
everything in the light’s path                               +4.00 / −1.50 × 90
take off the distance: 67 cm is 1.49 D, usually called 1.50  −1.49
net                                                          +2.51 / −1.50 × 90
net to the nearest quarter                                   +2.50 / −1.50 × 90

now: change the sphere +4.00 to +2.50
"
    );
}

// A +1.50 goes with 67 cm: common practice, no source.
#[test]
fn a_working_lens_is_taken_out() {
    let page = printed(&[
        "net",
        "--at",
        "67",
        "--working-lens",
        "+1.50",
        "--first",
        "90=+2.50",
        "--second",
        "-1.00",
    ]);
    assert!(page.contains("\nnow: take the +1.50 out\n"), "{page}");
    assert!(!page.contains("mind:"), "{page}");
}

// Computed from the formula: +1.50 where 50 cm wants +2.00.
#[test]
fn a_mismatch_is_said() {
    let page = printed(&[
        "net",
        "--at",
        "50",
        "--working-lens",
        "+1.50",
        "--in-frame",
        "+2.00/-1.00x30",
    ]);
    assert!(
        page.contains("now: take the +1.50 out and change the sphere +2.00 to +1.50"),
        "{page}"
    );
    assert!(
        page.contains("mind: a +1.50 does not match the distance"),
        "{page}"
    );
}

// Computed from the formula: 1.5 / (1 − 0.010 × 1.5) = 1.523.
#[test]
fn a_forward_cell_is_reckoned() {
    let page = printed(&[
        "net",
        "--at",
        "67",
        "--working-lens",
        "+1.50",
        "--cell",
        "front",
        "--spacing",
        "5mm",
        "--in-frame",
        "0.00",
    ]);
    let line = page.lines().find(|line| line.contains("front cell"));
    assert!(line.is_some_and(|line| line.ends_with("+1.52")), "{page}");
}

// Computed from the formula S + C, −C, A + 90.
#[test]
fn transposing() {
    assert_eq!(
        printed(&["transpose", "+2.00/-1.00x30"]),
        "+1.00 / +1.00 × 120\n"
    );
    assert_eq!(
        printed(&["transpose", "-1.00/-0.50x180"]),
        "−1.50 / +0.50 × 90\n"
    );
    assert_eq!(printed(&["transpose", "+0.75"]), "+0.75 DS\n");
}

// Computed from F / (1 − d F): −10 / 1.12.
#[test]
fn a_sum_in_order_and_by_name() {
    let in_order = printed(&["sum", "vertex", "-10.00", "12", "0"]);
    assert!(in_order.contains("the lens there "), "{in_order}");
    assert!(in_order.contains("−8.93 DS\n"), "{in_order}");
    let by_name = printed(&["sum", "vertex", "to=0", "-10.00", "from=12 mm"]);
    assert_eq!(by_name, in_order);
    let left_out = printed(&["sum", "cells", "+1.00", "", "+1.00"]);
    assert!(left_out.contains("the front one alone"), "{left_out}");
    assert!(!left_out.contains("the middle one"), "{left_out}");
}

#[test]
fn sums_are_listed_and_say_what_they_ask() {
    let list = printed(&["sum"]);
    for sum in optics::sums::each() {
        assert!(list.contains(sum.name()), "{list}");
        let asks = printed(&["sum", sum.slug]);
        assert!(asks.contains(sum.asks[0].name()), "{asks}");
    }
}

#[test]
fn help_shows_the_commands() {
    for words in [&[][..], &["help"], &["--help"]] {
        let page = printed(words);
        for command in ["net", "transpose", "sum", "log", "papers", "fhir", "verify"] {
            assert!(
                page.contains(&format!("\n  {command} ")),
                "{command}: {page}"
            );
        }
    }
}

#[test]
fn slips_get_one_sentence_and_no_answer() {
    let net = ["net", "--at", "67"];
    for (words, sentence) in [
        (
            vec!["net", "--in-frame", "+1.00"],
            "lightround: net: --at is missing: how far was the retinoscope, in cm?",
        ),
        (
            vec!["net", "--at", "0", "--in-frame", "+1.00"],
            "lightround: net: the working distance can be 10 to 120 cm, and 0 is outside that",
        ),
        (
            [&net[..], &["--first", "200=+1.00", "--second", "+1.00"]].concat(),
            "lightround: net: the meridian can be 0 to 180 degrees, and 200 is outside that",
        ),
        (
            [&net[..], &["--in-frame", "+90.00"]].concat(),
            "lightround: net: the sphere can be −40.00 to +40.00 D, and +90.00 is outside that",
        ),
        (
            [&net[..], &["--first", "90=4.00", "--second", "+2.50"]].concat(),
            "lightround: net: “4.00” (character 1) has no sign: write +4.00 or −4.00",
        ),
        (
            [&net[..], &["--first", "90=+4.00"]].concat(),
            "lightround: net: --first and --second go together: one lens for each meridian",
        ),
        (
            [&net[..], &["--in-frame", "+1.00", "--cell", "front"]].concat(),
            "lightround: net: --cell and --spacing say where the working lens stood: which lens was it?",
        ),
        (
            vec!["transpose", "+2.00x30"],
            "lightround: transpose: “x30” (character 6) is an axis without a cylinder: which cylinder is it the axis of?",
        ),
        (
            vec!["sum", "envelope"],
            "lightround: sum: there is no “envelope”: `lightround sum` lists them",
        ),
        (
            vec!["sum", "vertex", "-10.00", "12"],
            "lightround: sum: the distance from the cornea to be is missing: write it like 0 mm",
        ),
        (
            vec!["sum", "two", "+1.00", "-1.00/-0.50"],
            "lightround: sum: the second lens: “-0.50” (character 7) is a cylinder without an axis: add it, like × 90",
        ),
        (
            vec!["sum", "angle", "4", "5"],
            "lightround: sum: “5” is one answer too many: this sum takes 1",
        ),
        (
            vec!["sum", "vertex", "to=0", "to=1"],
            "lightround: sum: to is given twice",
        ),
        (
            vec!["transposed"],
            "lightround: there is no “transposed”: `lightround help` names what there is",
        ),
    ] {
        assert_eq!(refused(&words), sentence);
    }
}
