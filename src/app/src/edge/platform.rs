//! What the tablet unlocks itself with (a fingerprint, a face, its own code), where the browser lets it keep a key: WebAuthn
//! with its PRF extension (W3C, Web Authentication Level 3, section 10.1.4). Nobody is signed in anywhere by it: what is asked
//! for is the one secret that the authenticator gives for a salt.

use ::words::app::session as say;
use js_sys::{Array, Function, Object, Promise, Reflect, Uint8Array};
use vault::PlatformSecret;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use workers::{field, object};

/// Milliseconds that somebody has to put a finger down.
const PATIENCE_MS: f64 = 60_000.0;
/// Signatures that an authenticator may make (COSE): `ES256`, `EdDSA`, `RS256`. None is ever checked, but one has to be agreed.
const SIGNATURES: [i32; 3] = [-7, -8, -257];

/// A credential, and what it is to be asked with.
pub struct Ask {
    /// The credential.
    pub id: Vec<u8>,
    /// The salt.
    pub salt: [u8; 32],
}

/// Whether this tablet may have such an authenticator. Whether that can keep a key shows only when one is made.
pub async fn is_there() -> bool {
    let class = field(&js_sys::global(), "PublicKeyCredential");
    let asks = field(&class, "isUserVerifyingPlatformAuthenticatorAvailable");
    let Some(asks) = asks.dyn_ref::<Function>() else {
        return false;
    };
    let Ok(Ok(said)) = asks.call0(&class).map(JsCast::dyn_into::<Promise>) else {
        return false;
    };
    JsFuture::from(said)
        .await
        .is_ok_and(|there| there.is_truthy())
}

/// Makes a credential that answers this salt; gives its id with the answer.
///
/// # Errors
/// One sentence; nothing was kept here then.
pub async fn make(salt: &[u8; 32]) -> Result<(Vec<u8>, PlatformSecret), String> {
    let kinds = SIGNATURES
        .map(|kind| object(&[("type", "public-key".into()), ("alg", JsValue::from(kind))]));
    let who = object(&[
        ("id", random(16)?),
        ("name", "Lightround".into()),
        ("displayName", "Lightround".into()),
    ]);
    let chosen = object(&[
        ("authenticatorAttachment", "platform".into()),
        ("residentKey", "preferred".into()),
        ("userVerification", "required".into()),
    ]);
    let asked = object(&[
        ("challenge", random(32)?),
        ("rp", object(&[("name", "Lightround".into())])),
        ("user", who),
        (
            "pubKeyCredParams",
            kinds.into_iter().collect::<Array>().into(),
        ),
        ("authenticatorSelection", chosen),
        ("timeout", PATIENCE_MS.into()),
        ("extensions", prf(&[("eval", first(salt))])),
    ]);
    let made = credentials("create", asked)
        .await
        .ok_or(say::tablet_keeps_no_key())?;
    let id = Uint8Array::new(&field(&made, "rawId")).to_vec();
    if let Some(secret) = secret(&made) {
        return Ok((id, secret));
    }
    // Some only say that they can, and answer when they are asked.
    if !field(&results(&made), "enabled").is_truthy() {
        return Err(say::tablet_keeps_no_key().to_owned());
    }
    let ask = Ask {
        id: id.clone(),
        salt: *salt,
    };
    Ok((id, self::ask(&[ask]).await?))
}

/// Asks for the secret of any of these credentials.
///
/// # Errors
/// One sentence: it was declined, or it can't be had.
pub async fn ask(known: &[Ask]) -> Result<PlatformSecret, String> {
    let allowed = known.iter().map(|ask| {
        object(&[
            ("type", "public-key".into()),
            ("id", Uint8Array::from(ask.id.as_slice()).into()),
        ])
    });
    let salts = Object::new();
    for ask in known {
        // Setting a field of a fresh plain object can't fail.
        let _ = Reflect::set(&salts, &base64url(&ask.id).into(), &first(&ask.salt));
    }
    let asked = object(&[
        ("challenge", random(32)?),
        ("allowCredentials", allowed.collect::<Array>().into()),
        ("userVerification", "required".into()),
        ("timeout", PATIENCE_MS.into()),
        ("extensions", prf(&[("evalByCredential", salts.into())])),
    ]);
    let given = credentials("get", asked)
        .await
        .ok_or(say::tablet_did_not_unlock())?;
    secret(&given).ok_or_else(|| say::tablet_did_not_unlock().to_owned())
}

/// Asks the browser; none where it refuses, for whatever reason.
async fn credentials(what: &str, asked: JsValue) -> Option<JsValue> {
    let keeper = field(&field(&js_sys::global(), "navigator"), "credentials");
    let call: Function = field(&keeper, what).dyn_into().ok()?;
    let said = call.call1(&keeper, &object(&[("publicKey", asked)])).ok()?;
    let said = JsFuture::from(said.dyn_into::<Promise>().ok()?)
        .await
        .ok()?;
    (!said.is_null()).then_some(said)
}

fn prf(asked: &[(&str, JsValue)]) -> JsValue {
    object(&[("prf", object(asked))])
}

fn first(salt: &[u8; 32]) -> JsValue {
    object(&[("first", Uint8Array::from(salt.as_slice()).into())])
}

/// What the extension said of a credential.
fn results(credential: &JsValue) -> JsValue {
    let call = field(credential, "getClientExtensionResults");
    let said = call
        .dyn_ref::<Function>()
        .map(|call| call.call0(credential));
    let said = said.and_then(Result::ok).unwrap_or_default();
    field(&said, "prf")
}

fn secret(credential: &JsValue) -> Option<PlatformSecret> {
    let first = field(&field(&results(credential), "results"), "first");
    if first.is_undefined() {
        return None;
    }
    let bytes = Uint8Array::new(&first).to_vec();
    Some(PlatformSecret::from_bytes(bytes.try_into().ok()?))
}

/// No secret: a challenge that nobody checks, and a name that nobody sees.
fn random(bytes: u32) -> Result<JsValue, String> {
    let crypto = field(&js_sys::global(), "crypto");
    let array = Uint8Array::new_with_length(bytes);
    let call = field(&crypto, "getRandomValues");
    let filled = call
        .dyn_ref::<Function>()
        .map(|call| call.call1(&crypto, &array));
    match filled {
        Some(Ok(_)) => Ok(array.into()),
        _ => Err(say::tablet_keeps_no_key().to_owned()),
    }
}

/// RFC 4648, section 5, without padding: as the extension names credentials.
fn base64url(bytes: &[u8]) -> String {
    const SIGNS: &[u8; 64] = b"ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_";
    let mut text = String::new();
    for three in bytes.chunks(3) {
        let number = (0..3).fold(0_u32, |number, at| {
            number << 8 | u32::from(three.get(at).copied().unwrap_or(0))
        });
        for sign in 0..=three.len() {
            let at = number >> (18 - 6 * sign) & 63;
            text.push(char::from(SIGNS[at as usize]));
        }
    }
    text
}
