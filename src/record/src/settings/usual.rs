//! Words that are often written, at hand for a thumb: those that everybody starts with, and those that were taught.
//!
//! The first are common practice, no source; every one can be written over.

use ::words::record::phrases as say;
use thiserror::Error;

use super::Settings;

macro_rules! usual {
    ($($(#[$doc:meta])* $name:ident = $slug:literal, $title:path: [$($phrase:path),* $(,)?];)*) => {
        /// A field with phrases of its own.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub enum Usual {
            $($(#[$doc])* $name,)*
        }

        impl Usual {
            /// Every such field, in the order in which an exam goes.
            pub const ALL: &[Self] = &[$(Self::$name,)*];

            /// The word by which settings know it. Never used again for another field.
            pub const fn slug(self) -> &'static str {
                match self {
                    $(Self::$name => $slug,)*
                }
            }

            /// What the field is called.
            pub fn title(self) -> &'static str {
                match self {
                    $(Self::$name => $title(),)*
                }
            }

            /// The phrases that everybody starts with, each in the language spoken.
            pub const fn given(self) -> &'static [fn() -> &'static str] {
                match self {
                    $(Self::$name => &[$($phrase),*],)*
                }
            }
        }
    };
}

usual! {
    /// Why the person is seen.
    SeenBecause = "seen-because", say::seen_because: [say::sight_test_due, say::sees_worse, say::glasses_lost, say::asked_by_staff];
    /// Why the person can't come.
    CannotTravel = "cannot-travel", say::cannot_travel: [say::frail, say::stays_in_bed, say::dementia_upset];
    /// Who told it.
    ToldBy = "told-by", say::told_by: [say::staff, say::family, say::care_plan];
    /// The eyes' past.
    EyesBefore = "eyes-before", say::eyes_before: [say::none_known, say::cataract_operation_right, say::cataract_operation_left, say::glaucoma, say::macular_degeneration, say::squint];
    /// Health.
    Health = "health", say::health: [say::diabetes, say::high_blood_pressure, say::stroke, say::dementia, say::parkinson, say::arthritis];
    /// Medicines.
    Medicines = "medicines", say::medicines: [say::none, say::as_on_list, say::eye_drops];
    /// Allergies.
    Allergies = "allergies", say::allergies: [say::none_known];
    /// The family.
    Family = "family", say::eye_diseases_family: [say::none_known, say::glaucoma, say::macular_degeneration];
    /// What the eyes are used for.
    Uses = "uses", say::uses: [say::television_at, say::newspaper_lap, say::large_print, say::meals, say::knitting];
    /// Who asked for the visit.
    AskedForBy = "asked-for-by", say::asked_for_by: [say::the_person, say::the_home, say::the_family];
    /// Who it is.
    IdentifiedBy = "identified-by", say::identified_by: [say::said_name, say::known_to_staff];
    /// Who was there.
    Present = "present", say::present: [say::nobody_else, say::carer, say::family];
    /// What helps.
    Communication = "communication", say::communication: [say::hearing_aid, say::speak_slowly, say::best_mornings, say::pointing];
    /// What was declined.
    Declined = "declined", say::declined: [say::nothing, say::drops, say::bright_light];
    /// Pupils and media.
    Pupil = "pupil", say::pupils_and_media: [say::round, say::irregular, say::floaters];
    /// With what the front was looked at.
    LookedWith = "looked-with", say::front_looked_at: [say::slit_lamp, say::loupe_and_torch];
    /// How fields were tested.
    FieldsHow = "fields-how", say::fields_how: [say::counting_fingers, say::red_target];
    /// How the eyes work together.
    Binocular = "binocular", say::binocular: [say::no_double_vision, say::double_when_tired, say::head_tilted];
    /// Near tasks.
    Task = "task", say::near_tasks: [say::book_lap, say::newspaper_table, say::meal_tray];
    /// What magnifies.
    MagnifiedBy = "magnified-by", say::magnified_by: [say::hand_magnifier, say::stand_magnifier, say::screen];
    /// The state of lenses.
    LensState = "lens-state", say::lenses_are: [say::good, say::dirty, say::scratched];
    /// The state of a frame.
    FrameState = "frame-state", say::frame_is: [say::good, say::bent, say::pad_missing, say::broken];
    /// The name on a pair.
    NameOnIt = "name-on-it", say::name_on_glasses: [say::name_none];
    /// When a pair is worn.
    Worn = "worn", say::when_worn: [say::all_day, say::to_read, say::hardly_ever];
    /// How pressure was borne.
    PressureNote = "pressure-note", say::pressure_borne: [say::well, say::lids_squeezed, say::held_breath, say::lying_down];
    /// What is told after drops.
    ToldPerson = "told-person", say::told_person: [say::blurred_and_dazzled, say::call_person];
    /// The same to the staff.
    ToldStaff = "told-staff", say::told_staff: [say::walks_less_safely, say::call_staff];
    /// How drops were borne.
    Reaction = "reaction", say::drops_borne: [say::well, say::stung];
    /// Material and surface of ordered lenses.
    LensNote = "lens-note", say::lens_note: [say::plastic, say::hard_coating, say::anti_reflection, say::light_tint];
    /// What was adjusted.
    Adjusted = "adjusted", say::adjusted: [say::sides, say::pads, say::nothing_needed];
    /// How new glasses were taken.
    Taken = "taken", say::new_glasses_taken: [say::sees_well, say::walks_steadily, say::reads_with_them];
    /// Who makes glasses.
    MadeBy = "made-by", say::makes_glasses: [];
    /// Who else gives drops.
    GivenBy = "given-by", say::gives_drops: [];
    /// A note on consent.
    ConsentNote = "consent-note", say::note_consent: [];
    /// A note on fields.
    FieldsNote = "fields-note", say::note_fields: [];
}

/// One phrase at hand.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Phrase {
    /// Its words.
    pub words: String,
    /// Whether it was taught, and can be forgotten again.
    pub taught: bool,
}

/// Why a phrase was not taken.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Error)]
pub enum PhraseError {
    /// There is nothing to keep.
    #[error("{}", say::phrase_blank())]
    Blank,
    /// It is at hand already.
    #[error("{}", say::phrase_known())]
    Known,
    /// It is too long to be tapped.
    #[error("{}", say::phrase_too_long(&LONGEST))]
    TooLong,
    /// As many are at hand as a thumb can find.
    #[error("{}", say::phrases_too_many(&MOST))]
    TooMany,
}

/// Letters of a phrase at most. Own choice: more than a line of a phone.
const LONGEST: usize = 80;
/// Phrases taught for one field at most. Own choice.
const MOST: usize = 20;

impl Settings {
    /// The phrases at hand for a field: those given, then those taught.
    pub fn phrases(&self, field: Usual) -> Vec<Phrase> {
        let phrase = |words: &str, taught| Phrase {
            words: words.to_owned(),
            taught,
        };
        let given = field.given().iter().map(|words| phrase(words(), false));
        let taught = self.phrases.get(field.slug()).into_iter().flatten();
        given
            .chain(taught.map(|words| phrase(words, true)))
            .collect()
    }

    /// Takes a phrase for a field.
    ///
    /// # Errors
    /// [`PhraseError`], one sentence; nothing is changed then.
    pub fn teach(&mut self, field: Usual, words: &str) -> Result<(), PhraseError> {
        let words = words.trim();
        if words.is_empty() {
            return Err(PhraseError::Blank);
        }
        if words.chars().count() > LONGEST {
            return Err(PhraseError::TooLong);
        }
        if self.phrases(field).iter().any(|known| known.words == words) {
            return Err(PhraseError::Known);
        }
        let taught = self.phrases.entry(field.slug().to_owned()).or_default();
        if taught.len() >= MOST {
            return Err(PhraseError::TooMany);
        }
        taught.push(words.to_owned());
        Ok(())
    }

    /// Forgets a phrase that was taught. What was written with it stays written.
    pub fn forget(&mut self, field: Usual, words: &str) {
        if let Some(taught) = self.phrases.get_mut(field.slug()) {
            taught.retain(|known| known != words);
            if taught.is_empty() {
                self.phrases.remove(field.slug());
            }
        }
    }
}

/// Between two phrases.
const BETWEEN: &str = ", ";

/// Where a phrase stands in a text: as a whole, from the start or after a comma, to the end or a comma. Phrases may have
/// commas of their own.
fn place(text: &str, phrase: &str) -> Option<usize> {
    let from_start = |at: usize| at == 0 || text[..at].ends_with(BETWEEN);
    let to_end = |at: usize| {
        let rest = &text[at + phrase.len()..];
        rest.trim().is_empty() || rest.starts_with(BETWEEN)
    };
    if phrase.is_empty() {
        return None;
    }
    let mut places = text.match_indices(phrase).map(|(at, _)| at);
    places.find(|at| from_start(*at) && to_end(*at))
}

/// Whether a phrase stands in a text.
pub fn holds_phrase(text: &str, phrase: &str) -> bool {
    place(text, phrase).is_some()
}

/// A text with a phrase added behind it, or taken out again.
///
/// ```
/// use record::turned_phrase;
/// let frail = turned_phrase("", "frail, does not go out unaided");
/// let both = turned_phrase(&frail, "stays in bed");
/// assert_eq!(both, "frail, does not go out unaided, stays in bed");
/// assert_eq!(turned_phrase(&both, "frail, does not go out unaided"), "stays in bed");
/// ```
pub fn turned_phrase(text: &str, phrase: &str) -> String {
    match place(text, phrase) {
        None if text.trim().is_empty() => phrase.to_owned(),
        None => format!("{}{BETWEEN}{phrase}", text.trim()),
        Some(at) => without(text, at, phrase.len()),
    }
}

/// A text without one stretch of it and without the comma that joined it.
fn without(text: &str, at: usize, long: usize) -> String {
    let before = text[..at].strip_suffix(BETWEEN).unwrap_or(&text[..at]);
    let after = &text[at + long..];
    let after = after.strip_prefix(BETWEEN).unwrap_or(after);
    let parts = [before.trim(), after.trim()];
    let parts: Vec<&str> = parts.into_iter().filter(|part| !part.is_empty()).collect();
    parts.join(BETWEEN)
}

/// What of a text is the writer's own: all but the phrases at hand. That is what can be taught.
///
/// ```
/// use record::{Settings, Usual, own_words};
/// let known = Settings::default().phrases(Usual::Health);
/// assert_eq!(own_words("diabetes, gout since spring", &known), "gout since spring");
/// assert_eq!(own_words("diabetes, stroke", &known), "");
/// ```
pub fn own_words(text: &str, known: &[Phrase]) -> String {
    // The longest first, for a short one may be a part of it.
    let mut known: Vec<&str> = known.iter().map(|phrase| phrase.words.as_str()).collect();
    known.sort_by_key(|words| std::cmp::Reverse(words.len()));
    let mut rest = text.trim().to_owned();
    // What is left when one is taken out may join to another.
    while let Some((at, long)) = known
        .iter()
        .find_map(|phrase| Some((place(&rest, phrase)?, phrase.len())))
    {
        rest = without(&rest, at, long);
    }
    rest
}
