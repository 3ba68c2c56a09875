//! What sketches are drawn over, each in a square of ten thousand, as the examiner faces the person.

use leptos::prelude::*;
use record::{Eye, Outline};

/// Where the nose lies: 1 for the right of the picture, which is so of a right eye, −1 for the left.
fn noseward(eye: Option<Eye>) -> f64 {
    match eye {
        Some(Eye::Left) => -1.0,
        Some(Eye::Right) | None => 1.0,
    }
}

fn circle(x: f64, radius: f64) -> AnyView {
    view! { <circle cx=x.to_string() cy="5000" r=radius.to_string()/> }.into_any()
}

/// The outline of an eye, or of a face.
pub fn outline(outline: Outline, eye: Option<Eye>) -> AnyView {
    let nose = noseward(eye);
    match outline {
        Outline::Front => view! {
            <path d="M300 5200 Q5000 600 9700 5200 Q5000 8800 300 5200 Z"/>
            {circle(5000.0, 1900.0)}
            {circle(5000.0, 700.0)}
        }
        .into_any(),
        Outline::Lens => view! {
            {circle(5000.0, 4500.0)}
            {circle(5000.0, 2200.0)}
        }
        .into_any(),
        // The disc lies toward the nose, the macula toward the temple.
        Outline::Back => view! {
            {circle(5000.0, 4700.0)}
            {circle(5000.0 + nose * 1500.0, 700.0)}
            {circle(5000.0 - nose * 500.0, 150.0)}
        }
        .into_any(),
        Outline::Disc => circle(5000.0, 4000.0),
        Outline::Field => view! {
            {circle(5000.0, 4700.0)}
            <path d="M5000 300 V9700 M300 5000 H9700"/>
        }
        .into_any(),
        Outline::Face => view! {
            <ellipse cx="5000" cy="5000" rx="3600" ry="4700"/>
            <ellipse cx="3500" cy="4200" rx="750" ry="380"/>
            <ellipse cx="6500" cy="4200" rx="750" ry="380"/>
            <path d="M5000 4400 L4600 6000 H5200 M3900 7400 Q5000 7900 6100 7400"/>
        }
        .into_any(),
    }
}
