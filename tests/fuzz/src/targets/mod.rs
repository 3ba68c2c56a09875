//! The targets, by what they read.

mod carry;
mod codes;
mod enrolment;
mod entries;
mod frames;
mod keyfile;
mod lists;
mod logs;
mod relay;
mod wire;
mod written;

use crate::Target;
use crate::seeds::{frozen, frozen_file, texts};

/// All of them.
pub const TARGETS: &[Target] = &[
    Target {
        name: "frame",
        look: frames::frame,
        seeds: frames::seeds,
    },
    Target {
        name: "statement",
        look: frames::statement,
        seeds: frames::statements,
    },
    Target {
        name: "roll",
        look: frames::roll,
        seeds: frames::rolls,
    },
    Target {
        name: "key-file",
        look: keyfile::key_file,
        seeds: keyfile::seeds,
    },
    Target {
        name: "key-file-inside",
        look: keyfile::inside,
        seeds: keyfile::insides,
    },
    Target {
        name: "enrolment",
        look: enrolment::message,
        seeds: || frozen(&["src/vault/golden/enrolment"]),
    },
    Target {
        name: "enrolment-typed",
        look: enrolment::typed,
        seeds: enrolment::lines,
    },
    Target {
        name: "enrolment-packet-inside",
        look: enrolment::inside,
        seeds: enrolment::insides,
    },
    Target {
        name: "recovery-code",
        look: codes::recovery,
        seeds: || vec![frozen_file("src/vault/golden/slots/code.hex")],
    },
    Target {
        name: "invitation",
        look: codes::invitation,
        seeds: codes::invitations,
    },
    Target {
        name: "signed-request",
        look: codes::vouched,
        seeds: codes::vouchers,
    },
    Target {
        name: "log",
        look: logs::log,
        seeds: logs::seeds,
    },
    Target {
        name: "checkpoint",
        look: logs::checkpoint,
        seeds: || frozen(&["src/vault/golden/checkpoint"]),
    },
    Target {
        name: "checkpoint-inside",
        look: logs::inside,
        seeds: logs::insides,
    },
    Target {
        name: "carry",
        look: carry::file,
        seeds: || frozen(&["src/sync/golden/carry"]),
    },
    Target {
        name: "carry-summed",
        look: carry::summed,
        seeds: carry::seeds,
    },
    Target {
        name: "request",
        look: wire::request,
        seeds: wire::requests,
    },
    Target {
        name: "answer",
        look: wire::answer,
        seeds: wire::answers,
    },
    Target {
        name: "reply",
        look: wire::reply,
        seeds: wire::answers,
    },
    Target {
        name: "remembered",
        look: wire::remembered,
        seeds: wire::memories,
    },
    Target {
        name: "news",
        look: wire::news,
        seeds: || texts(&["event: new\ndata: new\n\n", ": still here\r\n\r\n"]),
    },
    Target {
        name: "entry",
        look: entries::entry,
        seeds: entries::seeds,
    },
    Target {
        name: "draft",
        look: entries::draft,
        seeds: entries::drafts,
    },
    Target {
        name: "home-list",
        look: lists::home,
        seeds: lists::homes,
    },
    Target {
        name: "earlier-list",
        look: lists::earlier,
        seeds: lists::earlier_ones,
    },
    Target {
        name: "fhir",
        look: lists::fhir,
        seeds: lists::bundles,
    },
    Target {
        name: "written",
        look: written::written,
        seeds: written::seeds,
    },
    Target {
        name: "half",
        look: written::half,
        seeds: written::halves,
    },
    Target {
        name: "asked",
        look: written::asked,
        seeds: written::questions,
    },
    Target {
        name: "relay-settings",
        look: relay::settings,
        seeds: relay::written,
    },
    Target {
        name: "relay-command",
        look: relay::command,
        seeds: relay::spoken,
    },
    Target {
        name: "relay-backup",
        look: relay::backup,
        seeds: relay::backups,
    },
];
