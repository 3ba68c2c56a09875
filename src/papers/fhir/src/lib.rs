//! Exams as bundles of HL7 FHIR R4 (4.0.1), and findings from them.
//!
//! [`bundle`] writes what it is sure of as coded values, with UCUM units, and everything else that stands in the exam as text
//! under its own words. A pressure carries its LOINC code beside them; acuity and refraction carry none, and `codes.rs` says
//! why. [`import`] takes a prescription or a bundle as last time's findings, with a report, and keeps
//! what it does not know.
//!
//! ```
//! # let desk = papers::sample::Desk::full();
//! let bundle = fhir::bundle([(desk.person(), desk.exam())]);
//! let text = bundle.to_json();
//! assert!(text.contains(r#""resourceType":"VisionPrescription""#));
//! assert!(text.contains(r#""sphere":4.25,"cylinder":-1.50,"axis":90"#));
//!
//! let taken = fhir::import(&text)?;
//! let right = taken.earlier[0].subjective.eyes.right.done().map(|eye| eye.lens.to_string());
//! assert_eq!(right.as_deref(), Some("+4.25 / −1.50 × 90"));
//! # Ok::<(), fhir::ImportError>(())
//! ```

mod bundle;
mod codes;
mod decimal;
mod exam;
mod import;
mod names;
mod observations;
mod patient;
mod prescription;
mod provenance;
mod referral;
pub mod resources;
mod time;

pub use bundle::{BundleFile, bundle, bundle_text, whole, whole_text};
pub use decimal::Decimal;
pub use import::{Earlier, ImportError, Imported, LeftOver, import};
