//! What a thumb touches and an eye reads.
//!
//! Every widget takes plain values and gives plain values back: `value` is a signal that the page owns, `on_change` a
//! callback. A widget holds only what its own gesture needs (a half-typed number, a drag), never a rule of the trade:
//! what may be entered comes in as `check`, and the sentence that refuses it is shown beside the control.
//!
//! Every control can be reached by thumb, by keyboard and by screen reader, and carries the `id` that it was given, so
//! that a test finds it. A control's parts add a word to that id: the minus button of `sphere` is `sphere-less`.
//!
//! ```
//! use widgets::number::{Rules, Unit};
//!
//! let lens = Rules::lens(40.0, 0.25);
//! assert_eq!(lens.show(-1.5), "\u{2212}1.50");
//! assert_eq!(lens.say(3.25), "plus 3.25 dioptres");
//! assert_eq!(lens.stepped(3.12, 1), 3.25);
//! assert_eq!(lens.unit, Unit::Dioptres);
//! ```

// Steps, axes and typed numbers are exact by contract, and are compared as such.
#![cfg_attr(test, allow(clippy::float_cmp))]

pub mod acuity;
pub mod arc;
pub mod eye_picture;
pub mod half;
pub mod number;
pub mod plane;
pub mod power_cross;
pub mod repeat;
pub mod scale;
pub mod scrub;
pub mod strip;

mod acuity_picker;
mod axis_dial;
mod choice;
mod dial;
mod disclosure;
mod event_sign;
mod field;
mod hold_button;
mod icons;
mod lens_field;
mod lines;
mod mark;
mod notice;
mod number_box;
mod pill;
mod plane_view;
mod reflex;
mod room;
mod ruler;
mod sheet;
mod sketch;
mod stepper;
mod strip_view;
mod text_field;
mod toast;

pub use acuity::ReadLine;
pub use acuity_picker::AcuityPicker;
pub use axis_dial::AxisDial;
pub use choice::{Choice, ChoiceLook, Label, Pick};
pub use dial::Dial;
pub use disclosure::Disclosure;
pub use event_sign::{EventMark, EventSign};
pub use field::{Field, FieldError};
pub use hold_button::HoldButton;
pub use icons::{AskIcon, StreakIcon};
pub use lens_field::LensField;
pub use lines::Lines;
pub use mark::{InManner, marked};
pub use notice::Notice;
pub use number::{Rules, Unit};
pub use pill::Pill;
pub use plane_view::Plane;
pub use power_cross::PowerCross;
pub use reflex::{Glow, Reflex};
pub use ruler::Ruler;
pub use scale::{Mark, Motion};
pub use sheet::Sheet;
pub use sketch::{Dot, SketchPad};
pub use stepper::Stepper;
pub use strip_view::{Column, EyeKey, Flag, Shown, Strip};
pub use text_field::{TextField, TextKind};
pub use toast::Toast;
