//! The arithmetic against figures that come from outside the project.
//!
//! Every figure is a row of a table in `tables/`, and its last two columns say where it comes from: `published` (a paper, a
//! textbook or a trade journal), `standard`, `reference` (a library from a registry, run once by a script in `reference/`
//! whose first lines give version and command), `worked` (the printed formula worked outside this project), `practice`
//! (common practice, no source) or `memory`. A row that came from what this project printed has no place here.

mod acuity;
mod change;
mod differential;
mod lenses;
mod near;
mod prism;
mod retinoscopy;
mod sums;
mod table;
mod thick;
mod tolerance;
mod vertex;

use table::Table;

/// Every table there is, so that none can lie unread.
const TABLES: &[&Table] = &[
    &acuity::NOTATIONS,
    &acuity::EVEN_LINES,
    &acuity::OPTOTYPES,
    &acuity::LETTERS,
    &acuity::IMPAIRMENT,
    &acuity::NEAR_PRINT,
    &acuity::DISTANCES,
    &acuity::STAND_INS,
    &change::TURNED,
    &change::BETWEEN,
    &near::AMPLITUDE,
    &near::ADDITIONS,
    &near::CLEAR_RANGES,
    &near::LOW_VISION,
    &lenses::ALONG,
    &lenses::TRANSPOSED,
    &lenses::MEAN_SPHERE,
    &lenses::CROSSED,
    &lenses::VECTORS,
    &lenses::PRINCIPAL,
    &prism::DECENTRED,
    &prism::WANTED,
    &prism::COMBINED,
    &prism::RESOLVED,
    &prism::ANGLE,
    &prism::CENTRED,
    &prism::READING,
    &prism::SPLIT,
    &retinoscopy::MERIDIAN_FITS,
    &retinoscopy::CHI_SQUARE,
    &retinoscopy::REFLEX,
    &retinoscopy::REFLEX_LIT,
    &retinoscopy::SLIPS,
    &retinoscopy::OFF_SIGHT,
    &retinoscopy::OVER_LENS,
    &retinoscopy::NETS,
    &retinoscopy::NEAR_TECHNIQUE,
    &sums::SUMS,
    &tolerance::LENS,
    &tolerance::MORE,
    &tolerance::PAIR,
    &tolerance::AXIS_BASIS,
    &sums::RESIDUAL,
    &sums::MEANS,
    &sums::SPREAD,
    &sums::STUDENT,
    &thick::THICK,
    &thick::TORIC,
    &vertex::MOVED,
    &vertex::TORIC,
    &vertex::CELLS,
];

#[test]
fn every_table_is_read() {
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/tables");
    let mut there: Vec<String> = std::fs::read_dir(folder)
        .unwrap()
        .map(|entry| entry.unwrap().file_name().into_string().unwrap())
        .collect();
    let mut read: Vec<String> = TABLES.iter().map(|table| table.name.to_owned()).collect();
    there.sort();
    read.sort();
    assert_eq!(there, read);
}

/// These kinds come from a printed source or another program; the others can be no more than our own understanding.
#[test]
fn at_least_three_hundred_rows_come_outside() {
    let outside: usize = TABLES.iter().map(|table| table.outside()).sum();
    assert!(outside >= 300, "{outside}");
}
