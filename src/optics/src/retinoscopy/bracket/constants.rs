//! Every constant of the bracket, with where it comes from.
//!
//! No published table says how wide the neutral zone is, how far judgements of it scatter, or how often a motion is called
//! wrongly (none was found). So most of these are this project's own choice, and marked so. The interval that comes of them
//! speaks of one eye as one examiner sees it at one sitting. Examiners differ among themselves by more than that: retinoscopy
//! less subjective refraction has a standard deviation of 0.33 D in M (Jorge et al. 2005, Optom Vis Sci 82:64-68), and forty
//! examiners on one man one of 0.28 D (`MacKenzie` 2008, Ophthalmic Physiol Opt 28:143-150).

use super::super::{Media, Reflex};

/// Half the zone that looks neutral, in dioptres, for the pupil and distance below. Own choice.
pub const HALF_ZONE: f64 = 0.20;
/// The pupil that [`HALF_ZONE`] is for, in millimetres. Own choice.
pub const ZONE_PUPIL_MM: f64 = 4.0;
/// The distance that [`HALF_ZONE`] is for, in dioptres: 67 cm.
pub const ZONE_DISTANCE_D: f64 = 1.5;
/// The zone goes with 1/(pupil × distance), derived from the geometry of sight hole and pupil; it is kept between these.
/// The ends are own choice.
pub const HALF_ZONE_ENDS: [f64; 2] = [0.10, 0.75];
/// How wide the zone may be against what is reckoned, and how likely each is. Own choice: nobody's zone is measured.
pub const ZONE_FACTORS: [(f64, f64); 3] = [(0.6, 0.25), (1.0, 0.5), (1.6, 0.25)];

/// How far a judgement of the zone's edge scatters, as a standard deviation in dioptres. Own choice.
pub const SPREAD: f64 = 0.12;
/// No judgement scatters more than this, in dioptres. Own choice.
pub const SPREAD_MOST: f64 = 0.50;

/// The share of motions that are called wrongly. Own choice.
pub const MISCALL: f64 = 0.10;

/// From how many dioptres a reflex that ought to go against can pass for neutral (common practice, no source; the figure is
/// own choice).
pub const PASSES_FROM: f64 = 3.0;
/// Over how many dioptres that comes on. Own choice.
pub const PASSES_OVER: f64 = 0.4;
/// How often it then passes, in an ordinary eye. Own choice.
pub const PASSES: f64 = 0.05;

/// How many times as fast as the streak a reflex runs that is called fast, and how far judgements of that scatter, as a
/// standard deviation of the logarithm. Own choice.
pub const FAST: f64 = 3.0;
/// See [`FAST`].
pub const FAST_SCATTER: f64 = 0.7;
/// The share of speeds that are called wrongly. Own choice.
pub const SPEED_MISCALL: f64 = 0.20;

/// How one circumstance changes the seeing.
pub struct Effect {
    /// The spread is that many times as large.
    pub spread: f64,
    /// The share of miscalls is at least this.
    pub miscall: f64,
    /// A large against passes for neutral at least this often.
    pub passes: f64,
}

/// What the media do. Own choice.
pub const fn of_media(media: Media) -> Effect {
    match media {
        Media::Clear => effect(1.0, MISCALL, PASSES),
        Media::Slight => effect(1.2, MISCALL, 0.10),
        Media::Moderate => effect(1.5, 0.13, 0.20),
        Media::Dense => effect(2.0, 0.18, 0.30),
    }
}

/// What the look of the reflex does. Own choice.
pub const fn of_reflex(reflex: Reflex) -> Effect {
    match reflex {
        Reflex::Bright => effect(1.0, MISCALL, PASSES),
        Reflex::Dull => effect(1.2, MISCALL, 0.15),
        Reflex::Patchy => effect(1.4, 0.13, 0.10),
        Reflex::Scissoring => effect(1.6, 0.15, PASSES),
        Reflex::None => effect(3.0, 0.35, 0.30),
    }
}

const fn effect(spread: f64, miscall: f64, passes: f64) -> Effect {
    Effect {
        spread,
        miscall,
        passes,
    }
}

/// Where nothing is known of an eye, every power to this many dioptres either side is as likely as another. The design's
/// range.
pub const KNOWN_NOTHING: f64 = 12.0;
/// Beyond it, likelihood falls to a third with each so many dioptres. Own choice.
pub const TAIL: f64 = 2.0;

/// How far an eye is usually from last time's finding: standard deviation in dioptres. Own choice, wider than the 0.28 D in
/// which examiners differ on one day.
pub const LAST_TIME: f64 = 0.50;
/// The same from the glasses worn. Own choice.
pub const WORN: f64 = 0.60;
/// The same from a machine's reading: 0.54 D in Jorge et al. 2005, Optom Vis Sci 82:64-68.
pub const MACHINE: f64 = 0.54;
/// The same from the fellow eye. Own choice.
pub const FELLOW: f64 = 0.75;
/// The share of eyes that are anywhere at all, whatever they start from. Own choice.
pub const ANYWHERE: f64 = 0.10;

/// An interval this narrow in dioptres is as good as trial lenses can tell: a step either side of the middle.
pub const NARROW: f64 = 0.50;
/// Sweeping is done when no more than this share of the likelihood lies half a dioptre beyond a narrow interval. Own choice,
/// for at most one confident wrong answer in a hundred.
pub const FAR_OFF: f64 = 0.01;
/// A sweep that would tell fewer bits than this is not worth the time. Own choice.
pub const WORTH_BITS: f64 = 0.10;
/// After so many sweeps of one meridian more are not worth the person's patience. Own choice.
pub const PATIENCE: usize = 12;
/// Of lenses that would tell about as much, the nearer to the one in place is taken: a dioptre's change counts as this share
/// of what a sweep tells. Own choice.
pub const CHANGE_COSTS: f64 = 0.003;

/// Below this chance that no sweep was a miscall, the sweeps contradict one another. Own choice.
pub const ALL_RIGHT: f64 = 0.5;
/// With so many dioptres more plus in place than is expected, a sweep called neutral or unsure is worth repeating with the
/// beam reversed. Own choice.
pub const PLENTY_OF_PLUS: f64 = 2.0;
/// It is not, where the other sweeps leave less than this chance of so large an against. Own choice.
pub const WORTH_REVERSING: f64 = 0.10;

/// A sweep without changing the lens is preferred where it tells at least this share of what the best lens would. Own choice.
pub const AS_IT_IS: f64 = 0.6;
/// Lenses are proposed once every meridian's interval is no wider than this, in dioptres. Own choice.
pub const PROPOSE_WITHIN: f64 = 1.5;
