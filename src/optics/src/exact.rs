//! The functions whose last bit the standard library leaves to the machine, from one library instead.
//!
//! Sums, products and square roots come out alike wherever IEEE 754 is kept; sines, logarithms and the like do not. A tablet's
//! browser and a laptop's command must print the same figure, so here they come from `libm` everywhere.

pub fn sin_cos(radians: f64) -> (f64, f64) {
    libm::sincos(radians)
}

pub fn sin(radians: f64) -> f64 {
    libm::sin(radians)
}

pub fn tan(radians: f64) -> f64 {
    libm::tan(radians)
}

pub fn atan(ratio: f64) -> f64 {
    libm::atan(ratio)
}

/// The angle of the point (x, y) in radians.
pub fn atan2(y: f64, x: f64) -> f64 {
    libm::atan2(y, x)
}

pub fn exp(power: f64) -> f64 {
    libm::exp(power)
}

pub fn ln(value: f64) -> f64 {
    libm::log(value)
}

pub fn log2(value: f64) -> f64 {
    libm::log2(value)
}

pub fn log10(value: f64) -> f64 {
    libm::log10(value)
}

/// A value to a power.
pub fn raised(value: f64, power: f64) -> f64 {
    libm::pow(value, power)
}

/// Ten to a power.
pub fn ten_to(power: f64) -> f64 {
    raised(10.0, power)
}

pub fn hypot(one: f64, other: f64) -> f64 {
    libm::hypot(one, other)
}

pub fn squared(value: f64) -> f64 {
    value * value
}
