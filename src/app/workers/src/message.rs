//! Plain objects, made and read.

use js_sys::{Object, Reflect, Uint8Array};
use wasm_bindgen::{JsCast, JsValue};

/// A plain object with these fields.
pub fn object(fields: &[(&str, JsValue)]) -> JsValue {
    let object = Object::new();
    for (name, value) in fields {
        // Setting a field of a fresh plain object can't fail; there is no setter and it isn't frozen.
        let _ = Reflect::set(&object, &(*name).into(), value);
    }
    object.into()
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
