//! Names of people, homes and islands. None of them is anybody's or anywhere's.

/// A home: what it is called, and on which island it stands.
pub const HOMES: [&str; 3] = [
    "Tern House, Isle of Skerrow",
    "The Capstan, Port Lunnock",
    "Wrackholm Lodge, Isle of Wrack",
];

pub const GIVEN: [&str; 24] = [
    "Orla",
    "Piers",
    "Linnet",
    "Corvin",
    "Tamsin",
    "Ivo",
    "Ottoline",
    "Jasper",
    "Philippa",
    "Evander",
    "Marigold",
    "Cosmo",
    "Isolde",
    "Barnaby",
    "Clementine",
    "Lucian",
    "Rosalind",
    "Quentin",
    "Åse",
    "Thaddeus",
    "Winifred",
    "Leopold",
    "Beatrix",
    "Ambrose",
];

pub const FAMILY: [&str; 30] = [
    "Pennyquick",
    "Oakhollow",
    "Garrowby-Quay",
    "Saltgarth",
    "Driftwell",
    "Ternmarrow",
    "Kelpwright",
    "Brinecote",
    "Lanternby",
    "Wrackstone",
    "Foxglove",
    "Anchorfold",
    "Tidewick",
    "Gullhaven-Moss",
    "Cockleshaw",
    "Strømvik",
    "O\u{2019}Marrow",
    "Seaholt",
    "Mistlebank",
    "Sandwath",
    "Harbourlow",
    "Puffinstow",
    "Limpetson",
    "Skerrygate",
    "Samphire",
    "Barnacleby",
    "Oysterlee",
    "Marramgrass",
    "Windrow",
    "Buoyton",
];

pub const NOTES: [&str; 6] = [
    "",
    "",
    "knock loudly: the aid is often out",
    "best after ten in the morning",
    "the dog is friendly",
    "likes to be told who comes in",
];

pub const LANGUAGES: [&str; 8] = [
    "",
    "",
    "",
    "",
    "",
    "",
    "Skerrish, some English",
    "Lunnock dialect",
];

pub const HEARING: [&str; 5] = [
    "",
    "",
    "aid in the left ear",
    "speak to the right side",
    "hears with both aids in, reads lips",
];

pub const RELATIONS: [&str; 4] = ["daughter", "son", "niece", "key worker"];

pub const DOCTORS: [(&str, &str); 3] = [
    ("Dr Elverby", "Skerrow Surgery"),
    ("Dr Quayle-Marsh", "Lunnock Health Centre"),
    ("Dr Tangwrack", "Wrack Practice"),
];
