//! Codes of findings, each with where it is known from. A code goes beside the words and never in their place, so that whoever
//! does not know it still reads what was found.
//!
//! | finding | code | known from |
//! | --- | --- | --- |
//! | pressure, right eye | LOINC 79892-6 | several open data sets and profiles of eye care that agree; from memory |
//! | pressure, left eye | LOINC 79893-4 | the same |
//!
//! Left in words, and why:
//! - acuity: LOINC tells apart chart, correction and distance, and several of its codes are of a ratio, where this writes logMAR;
//! - refraction: the codes tell apart with and without drops, and by the person or by an instrument; no release was at hand to
//!   check them against;
//! - sides and methods in SNOMED CT: some countries ask for a licence.
//!
//! This material contains content from LOINC (<http://loinc.org>). LOINC is copyright © Regenstrief Institute, Inc. and the
//! Logical Observation Identifiers Names and Codes (LOINC) Committee and is available at no cost under the license at
//! <http://loinc.org/license>. LOINC® is a registered United States trademark of Regenstrief Institute, Inc.

use record::Eye;

use crate::resources::Coding;

/// The pressure in an eye.
pub(crate) const fn pressure(eye: Eye) -> Coding {
    let (code, display) = match eye {
        Eye::Right => ("79892-6", "Right eye Intraocular pressure"),
        Eye::Left => ("79893-4", "Left eye Intraocular pressure"),
    };
    Coding {
        system: "http://loinc.org",
        code,
        display,
    }
}
