//! Words that are often written, at hand for a thumb. Common practice, no source; every one can be written over.

/// Why the person is seen.
pub const SEEN_BECAUSE: &[&str] = &[
    "sight test due",
    "sees worse",
    "glasses lost or broken",
    "asked by the staff",
];
/// Why the person can't come.
pub const CANNOT_TRAVEL: &[&str] = &[
    "frail, does not go out unaided",
    "stays in bed",
    "dementia, upset by strange places",
];
/// Who told it.
pub const TOLD_BY: &[&str] = &["staff", "family", "care plan"];
/// The eyes' past.
pub const EYES_BEFORE: &[&str] = &[
    "none known",
    "cataract operation, right",
    "cataract operation, left",
    "glaucoma",
    "macular degeneration",
    "squint",
];
/// Health.
pub const HEALTH: &[&str] = &[
    "diabetes",
    "high blood pressure",
    "stroke",
    "dementia",
    "Parkinson\u{2019}s disease",
    "arthritis",
];
/// Medicines.
pub const MEDICINES: &[&str] = &["none", "as on the home\u{2019}s list", "eye drops"];
/// Allergies.
pub const ALLERGIES: &[&str] = &["none known"];
/// The family.
pub const FAMILY: &[&str] = &["none known", "glaucoma", "macular degeneration"];
/// What the eyes are used for.
pub const USES: &[&str] = &[
    "television at 3 m",
    "newspaper on the lap",
    "large print",
    "meals",
    "knitting",
];
/// Who asked for the visit.
pub const ASKED_FOR_BY: &[&str] = &["the person", "the home", "the family"];
/// Who it is.
pub const IDENTIFIED_BY: &[&str] = &["said name and date of birth", "known to the staff"];
/// Who was there.
pub const PRESENT: &[&str] = &["nobody else", "a carer", "family"];
/// What helps.
pub const COMMUNICATION: &[&str] = &[
    "hearing aid",
    "speak slowly",
    "best in the morning",
    "pointing",
];
/// What was declined.
pub const DECLINED: &[&str] = &["nothing", "drops", "bright light"];
/// Pupils and media.
pub const PUPIL: &[&str] = &["round", "irregular after operation", "floaters in the way"];
/// With what the front was looked at.
pub const LOOKED_WITH: &[&str] = &["hand-held slit lamp", "loupe and torch"];
/// How fields were tested.
pub const FIELDS_HOW: &[&str] = &["counting fingers", "with a red target"];
/// How the eyes work together.
pub const BINOCULAR: &[&str] = &["no double vision", "double when tired", "head tilted"];
/// Near tasks.
pub const TASK: &[&str] = &[
    "book on the lap",
    "newspaper at the table",
    "meal on the tray",
];
/// What magnifies.
pub const MAGNIFIED_BY: &[&str] = &["hand magnifier", "stand magnifier", "screen"];
/// The state of lenses.
pub const LENS_STATE: &[&str] = &["good", "dirty", "scratched"];
/// The state of a frame.
pub const FRAME_STATE: &[&str] = &["good", "bent", "a pad is missing", "broken"];
/// The name on a pair.
pub const NAME_ON_IT: &[&str] = &["none"];
/// When a pair is worn.
pub const WORN: &[&str] = &["all day", "to read", "hardly ever"];
/// How pressure was borne.
pub const PRESSURE_NOTE: &[&str] = &["well", "lids squeezed", "held the breath", "lying down"];
/// What is told after drops.
pub const TOLD_PERSON: &[&str] = &[
    "blurred and dazzled for some hours",
    "call at once for pain, redness or haloes",
];
/// The same to the staff.
pub const TOLD_STAFF: &[&str] = &[
    "walks less safely until the drops wear off",
    "call at once for pain, redness or sickness",
];
/// How drops were borne.
pub const REACTION: &[&str] = &["well", "stung for a moment"];
/// Material and surface of ordered lenses.
pub const LENS_NOTE: &[&str] = &["plastic", "hard coating", "anti-reflection", "light tint"];
/// What was adjusted.
pub const ADJUSTED: &[&str] = &["sides", "pads", "nothing needed"];
/// How new glasses were taken.
pub const TAKEN: &[&str] = &["sees well with them", "walks steadily", "reads with them"];
