//! Which papers an exam can make, and which not and why. The reasons follow from what each paper is for; no outside source.

use papers::sample::{Desk, day, orla};
use papers::{PaperError, PaperKind, Standing, Wording};

fn made(desk: &Desk, kind: PaperKind) -> Result<papers::Document, PaperError> {
    kind.document(
        desk.person(),
        desk.exam(),
        &Wording::default(),
        day(2026, 3, 7),
    )
}

#[test]
fn a_full_visit_makes_all_seven() {
    let desk = Desk::full();
    for kind in PaperKind::ALL {
        let document = made(&desk, kind).unwrap();
        assert_eq!(document.standing, Standing::Signed, "{}", kind.title());
    }
}

#[test]
fn before_it_is_signed_only_the_prescription_waits_for_the_signature() {
    let desk = Desk::unsigned(orla());
    assert_eq!(
        made(&desk, PaperKind::Prescription),
        Err(PaperError::NotSigned)
    );
    for kind in [
        PaperKind::Referral,
        PaperKind::CareStaff,
        PaperKind::Person,
        PaperKind::Summary,
    ] {
        assert_eq!(made(&desk, kind).unwrap().standing, Standing::Unsigned);
    }
}

#[test]
fn an_exam_with_nothing_in_it_says_what_each_paper_lacks() {
    let desk = Desk::with_exam(orla());
    assert_eq!(made(&desk, PaperKind::Order), Err(PaperError::NoOrder));
    assert_eq!(
        made(&desk, PaperKind::Referral),
        Err(PaperError::NotReferred)
    );
    assert_eq!(made(&desk, PaperKind::Fitting), Err(PaperError::NoFitting));
}

#[test]
fn a_paper_is_found_by_its_word() {
    for kind in PaperKind::ALL {
        assert_eq!(PaperKind::from_slug(kind.slug()), Some(kind));
    }
    assert_eq!(PaperKind::from_slug("sign"), None);
}
