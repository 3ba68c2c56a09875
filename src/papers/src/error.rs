//! Why a paper can't be made, one sentence each.

use ::words::papers::errors as say;
use record::SectionKind;
use thiserror::Error;

/// Why a paper can't be made from an exam.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
pub enum PaperError {
    /// Nobody has signed the exam.
    #[error("{}", say::sign_first())]
    NotSigned,
    /// Two versions of a section stand side by side.
    #[error("{}", say::two_versions_of(&.0.named()))]
    TwoVersions(SectionKind),
    /// Two versions of the person's details stand side by side.
    #[error("{}", say::two_versions_details())]
    TwoPersons,
    /// A version of a section that its signer never saw.
    #[error("{}", say::changed_elsewhere(&.0.named()))]
    ChangedUnsigned(SectionKind),
    /// Part of the exam can't be read by this version.
    #[error("{}", say::newer_before_printing())]
    WrittenByNewer,
    /// The decision was something else.
    #[error("{}", say::not_prescribed())]
    NotPrescribed,
    /// Neither eye has a lens.
    #[error("{}", say::nothing_to_prescribe())]
    NoLens,
    /// Nothing is ordered.
    #[error("{}", say::nothing_ordered())]
    NoOrder,
    /// No glasses came.
    #[error("{}", say::no_glasses_came())]
    NoFitting,
    /// Nobody is referred to.
    #[error("{}", say::refers_to_nobody())]
    NotReferred,
    /// The exam is somebody else's.
    #[error("{}", say::another_person())]
    OtherPerson,
}
