//! Weighted least squares for the three parts of a lens.
//!
//! ```text
//! covariance = (AᵀWA)⁻¹        parts = covariance AᵀW F
//! ```
//!
//! A has a row for each finding, W its weight `1 / sd²`, F its power; dioptres. Stands in every text on statistics.

use crate::PowerVector;
use crate::exact;

/// Three rows of three.
type Matrix = [[f64; 3]; 3];

/// One equation: so much of each part makes this power, known to this standard deviation.
pub(super) struct Row {
    pub(super) parts: [f64; 3],
    pub(super) power: f64,
    pub(super) sd: f64,
}

impl Row {
    pub(super) fn weight(&self) -> f64 {
        1.0 / exact::squared(self.sd)
    }

    /// How far its power lies above what a lens has there.
    pub(super) fn off(&self, lens: PowerVector) -> f64 {
        self.power - dot(self.parts, [lens.m, lens.j0, lens.j45])
    }
}

/// `AᵀWA`: which parts the rows speak of, and how much.
pub(super) fn normal(rows: &[Row], weight: impl Fn(&Row) -> f64) -> Matrix {
    let mut sums = Matrix::default();
    for row in rows {
        for (line, one) in sums.iter_mut().zip(row.parts) {
            for (cell, other) in line.iter_mut().zip(row.parts) {
                *cell += weight(row) * one * other;
            }
        }
    }
    sums
}

/// The parts that fit best.
pub(super) fn solve(covariance: Matrix, rows: &[Row]) -> PowerVector {
    let mut sums = [0.0; 3];
    for row in rows {
        for (sum, part) in sums.iter_mut().zip(row.parts) {
            *sum += row.weight() * part * row.power;
        }
    }
    let [m, j0, j45] = covariance.map(|line| dot(line, sums));
    PowerVector { m, j0, j45 }
}

/// The inverse of a symmetric matrix by its cofactors; none where it has none.
pub(super) fn inverse([one, two, three]: Matrix) -> Option<Matrix> {
    let cofactors = [cross(two, three), cross(three, one), cross(one, two)];
    let determinant = dot(one, cofactors[0]);
    let inverse = cofactors.map(|line| line.map(|cell| cell / determinant));
    let good = determinant > 0.0 && inverse.iter().flatten().all(|cell| cell.is_finite());
    good.then_some(inverse)
}

fn dot([x, y, z]: [f64; 3], other: [f64; 3]) -> f64 {
    x * other[0] + y * other[1] + z * other[2]
}

fn cross([x, y, z]: [f64; 3], other: [f64; 3]) -> [f64; 3] {
    [
        y * other[2] - z * other[1],
        z * other[0] - x * other[2],
        x * other[1] - y * other[0],
    ]
}
