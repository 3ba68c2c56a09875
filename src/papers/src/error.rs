//! Why a paper can't be made, one sentence each.

use record::SectionKind;
use thiserror::Error;

/// Why a paper can't be made from an exam.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
pub enum PaperError {
    /// Nobody has signed the exam.
    #[error("this exam is not signed yet: sign it first")]
    NotSigned,
    /// Two versions of a section stand side by side.
    #[error("there are two versions of the {}: settle which one holds first", .0.slug())]
    TwoVersions(SectionKind),
    /// Two versions of the person's details stand side by side.
    #[error("there are two versions of this person's details: settle which one holds first")]
    TwoPersons,
    /// A version of a section that its signer never saw.
    #[error("the {} was changed on another tablet before the signature was known there: look at it and sign again", .0.slug())]
    ChangedUnsigned(SectionKind),
    /// Part of the exam can't be read by this version.
    #[error("part of this exam was written by a newer version of this app: update before printing")]
    WrittenByNewer,
    /// The decision was something else.
    #[error("the decision is not to prescribe, so there is no prescription to print")]
    NotPrescribed,
    /// Neither eye has a lens.
    #[error("neither eye has a final lens, so there is nothing to prescribe")]
    NoLens,
    /// The exam is somebody else's.
    #[error("this exam is of another person")]
    OtherPerson,
}
