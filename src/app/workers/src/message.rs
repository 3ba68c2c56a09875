//! Plain objects, made and read.

use js_sys::{Object, Reflect, Uint8Array};
use serde::Serialize;
use serde::de::DeserializeOwned;
use wasm_bindgen::{JsCast, JsValue};
use words::Language;

const LANGUAGE: &str = "language";

/// A plain object with these fields.
pub fn object(fields: &[(&str, JsValue)]) -> JsValue {
    let object = Object::new();
    for (name, value) in fields {
        // Setting a field of a fresh plain object can't fail; there is no setter and it isn't frozen.
        let _ = Reflect::set(&object, &(*name).into(), value);
    }
    object.into()
}

/// A plain object with these fields that asks for something, in the language that is spoken.
pub fn question(fields: &[(&str, JsValue)]) -> JsValue {
    let question = object(fields);
    let _ = Reflect::set(&question, &LANGUAGE.into(), &words::spoken().tag().into());
    question
}

/// From now on a worker speaks as it was asked.
pub fn speak_as_asked(question: &JsValue) {
    let tag = text(question, LANGUAGE);
    if let Some(language) = tag.and_then(|tag| Language::of_tag(&tag)) {
        words::speak(language);
    }
}

/// A field; `undefined` where there is none.
pub fn field(message: &JsValue, name: &str) -> JsValue {
    Reflect::get(message, &name.into()).unwrap_or_default()
}

/// A field that is text.
pub fn text(message: &JsValue, name: &str) -> Option<String> {
    field(message, name).as_string()
}

/// A field that is a whole number.
pub fn whole(message: &JsValue, name: &str) -> Option<u32> {
    let number = field(message, name).as_f64()?;
    let is_whole = (0.0..=f64::from(u32::MAX)).contains(&number) && number.fract() == 0.0;
    is_whole.then_some(number as u32)
}

/// A field that is `N` bytes.
pub fn bytes<const N: usize>(message: &JsValue, name: &str) -> Option<[u8; N]> {
    let value = field(message, name);
    if !value.is_instance_of::<Uint8Array>() {
        return None;
    }
    let array = Uint8Array::new(&value);
    (array.length() as usize == N).then(|| {
        let mut bytes = [0; N];
        array.copy_to(&mut bytes);
        bytes
    })
}

/// A value as bytes of CBOR.
pub fn packed<T: Serialize>(value: &T) -> JsValue {
    let mut bytes = Vec::new();
    ciborium::into_writer(value, &mut bytes).expect("a Vec takes whatever is written to it");
    Uint8Array::from(bytes.as_slice()).into()
}

/// A field that is a value as bytes of CBOR. By way of a plain value, as entries are read: one way of reading, not two, keeps the
/// app small.
pub fn unpacked<T: DeserializeOwned>(message: &JsValue, name: &str) -> Option<T> {
    let bytes = field(message, name);
    if !bytes.is_instance_of::<Uint8Array>() {
        return None;
    }
    let bytes = Uint8Array::new(&bytes).to_vec();
    let value: ciborium::Value = ciborium::from_reader(bytes.as_slice()).ok()?;
    value.deserialized().ok()
}
