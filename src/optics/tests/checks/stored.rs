//! What is stored comes back as it was, and stored rubbish is refused.

use crate::lens;
use ciborium::{Value, cbor};
use optics::acuity::ChartLine;
use optics::retinoscopy::{HeldOver, Neutral, Setup, WorkingDistance, WorkingLens};
use optics::{Axis, Cell, SphereCyl};
use serde::Serialize;
use serde::de::DeserializeOwned;
use std::fmt::Debug;

fn read<T: DeserializeOwned>(value: &Value) -> Option<T> {
    let mut bytes = Vec::new();
    ciborium::into_writer(value, &mut bytes).unwrap();
    ciborium::from_reader(bytes.as_slice()).ok()
}

#[track_caller]
fn assert_comes_back<T: Serialize + DeserializeOwned + PartialEq + Debug>(value: T) {
    let mut bytes = Vec::new();
    ciborium::into_writer(&value, &mut bytes).unwrap();
    let back: T = ciborium::from_reader(bytes.as_slice()).unwrap();
    assert_eq!(back, value);
}

#[test]
fn everything_comes_back() {
    assert_comes_back(lens(2.25, -1.1, 33.3));
    assert_comes_back(SphereCyl::sphere(-0.5));
    assert_comes_back(Axis::new(0.0).unwrap());
    assert_comes_back(ChartLine::new(36).unwrap());
    assert_comes_back(Neutral::two_meridians(30.0, -1.0, 2.5).unwrap());
    assert_comes_back(Neutral::InFrame(lens(0.0, 1.0, 90.0)));
    let held = HeldOver::new(lens(2.5, -1.0, 90.0), lens(0.5, 0.0, 90.0), 10.0).unwrap();
    assert_comes_back(Neutral::OverLens(held));
    let distance = WorkingDistance::from_cm(66.5).unwrap();
    assert_comes_back(Setup::new(distance, None));
    let working = WorkingLens::new(1.5, Cell::Front).unwrap();
    assert_comes_back(Setup::new(distance, Some(working)));
}

// The names are frozen: a record written today is read for ever.
#[test]
fn the_fields_are_named() {
    let written = Value::serialized(&lens(2.0, -1.0, 30.0)).unwrap();
    let expected =
        cbor!({ "sphere" => 2.0, "cylinder" => { "power" => -1.0, "axis" => 30.0 } }).unwrap();
    assert_eq!(written, expected);

    let distance = WorkingDistance::from_cm(67.0).unwrap();
    let working = WorkingLens::new(1.5, Cell::Front).unwrap();
    let written = Value::serialized(&Setup::new(distance, Some(working))).unwrap();
    let expected = cbor!({
        "distance" => 67.0,
        "working_lens" => { "power" => 1.5, "cell" => "front" },
        "cell_spacing_mm" => 4.0,
    });
    assert_eq!(written, expected.unwrap());

    let neutral = Neutral::two_meridians(90.0, 4.0, 2.5).unwrap();
    let expected = cbor!({ "two_meridians" => { "first" => { "meridian" => 90.0, "power" => 4.0 }, "second" => 2.5 } });
    assert_eq!(Value::serialized(&neutral).unwrap(), expected.unwrap());
}

#[test]
fn stored_rubbish_is_refused() {
    let rubbish = [
        cbor!({ "sphere" => f64::NAN }),
        cbor!({ "sphere" => 1.0, "cylinder" => { "power" => 0.0, "axis" => 30.0 } }),
        cbor!({ "sphere" => 1.0, "cylinder" => { "power" => f64::INFINITY, "axis" => 30.0 } }),
        cbor!({ "sphere" => 1.0, "cylinder" => { "power" => -1.0, "axis" => 200.0 } }),
        cbor!({ "sphere" => 1.0, "cylinder" => { "power" => -1.0 } }),
        cbor!({ "cylinder" => { "power" => -1.0, "axis" => 20.0 } }),
    ];
    for value in rubbish {
        let value = value.unwrap();
        assert_eq!(read::<SphereCyl>(&value), None, "{value:?}");
    }
    let endless = cbor!({ "two_meridians" => { "first" => { "meridian" => 90.0, "power" => f64::NAN }, "second" => 2.5 } });
    assert_eq!(read::<Neutral>(&endless.unwrap()), None);
    let wide = cbor!({ "distance" => 67.0, "cell_spacing_mm" => 60.0 });
    assert_eq!(read::<Setup>(&wide.unwrap()), None);
    let nowhere = cbor!({ "distance" => 0.0, "cell_spacing_mm" => 4.0 });
    assert_eq!(read::<Setup>(&nowhere.unwrap()), None);
    assert_eq!(read::<ChartLine>(&Value::from(7)), None);
}

#[test]
fn a_lens_beyond_what_a_field_takes_is_still_read() {
    // +38.00 / +5.00 may be entered; written in the other form its sphere is +43.00 and must not be lost.
    assert_comes_back(lens(38.0, 5.0, 90.0).minus_form());
}
