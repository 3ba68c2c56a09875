//! One lens in its forms: written, transposed, as two cylinders, as a vector, as a matrix, along a meridian.

use crate::table::{Table, table};
use optics::{CrossedCylinders, PowerMatrix, PowerVector, SphereCyl};

pub const ALONG: Table = table!("lens_along.txt");
pub const TRANSPOSED: Table = table!("lens_transposed.txt");
pub const MEAN_SPHERE: Table = table!("lens_mean_sphere.txt");
pub const CROSSED: Table = table!("lens_crossed.txt");
pub const VECTORS: Table = table!("lens_vectors.txt");
pub const PRINCIPAL: Table = table!("lens_principal.txt");

#[test]
fn powers_along_meridians() {
    for row in ALONG.rows() {
        let (lens, degrees) = (row.lens(0), row.number(1));
        let other = lens.transposed();
        for lens in [lens, other] {
            row.assert_near(lens.power_along(degrees), row.number(2), row.number(3));
        }
    }
}

#[test]
fn the_other_form() {
    for row in TRANSPOSED.rows() {
        let (lens, expected) = (row.lens(0), row.lens(1));
        for (found, expected) in [(lens.transposed(), expected), (expected.transposed(), lens)] {
            // To the letter: the same figures, not only the same lens.
            assert_eq!(found.to_string(), expected.to_string(), "{}", row.place);
        }
    }
}

#[test]
fn mean_spheres() {
    for row in MEAN_SPHERE.rows() {
        row.assert_near(row.lens(0).mean_sphere(), row.number(1), 0.0051);
    }
}

#[test]
fn two_cylinders_at_right_angles() {
    for row in CROSSED.rows() {
        row.assert_lens(&row.lens(0), &row.lens(1), 1e-12);
        let printed = CrossedCylinders::from(row.lens(1)).to_string();
        row.assert_lens(&SphereCyl::parse(&printed).unwrap(), &row.lens(0), 1e-12);
    }
}

#[test]
fn power_vectors() {
    for row in VECTORS.rows() {
        let vector = row.lens(0).vector();
        let parts = [vector.m, vector.j0, vector.j45, vector.blur_strength()];
        for (at, part) in (1..).zip(parts) {
            row.assert_near(part, row.number(at), 1e-12);
        }
    }
}

#[test]
fn the_power_matrix_and_its_eigenvalues() {
    for row in PRINCIPAL.rows() {
        let matrix = PowerMatrix::from(row.lens(0));
        let [most, least] = matrix.principal();
        let parts = [
            matrix.xx,
            matrix.xy,
            matrix.yy,
            matrix.trace(),
            matrix.determinant(),
            most.power,
            least.power,
        ];
        for (at, part) in (1..).zip(parts) {
            row.assert_near(part, row.number(at), 1e-8);
        }
        let off = (most.meridian.degrees() - row.number(8)).rem_euclid(180.0);
        row.assert_near(off.min(180.0 - off), 0.0, 1e-5);
        let back = SphereCyl::from(PowerVector::from(matrix));
        row.assert_lens(&back, &row.lens(0), 1e-12);
    }
}
