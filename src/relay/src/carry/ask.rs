//! Who asks, and is it really this that they ask?

use super::Parts;
use super::refused::Refused;
use axum::body::{Body, Bytes, HttpBody, to_bytes};
use axum::extract::Request as Http;
use axum::http::header::AUTHORIZATION;
use sync::exchange::Request;
use sync::exchange::wire::LONGEST_REQUEST;
use vault::request::{Asked, Vouched};
use vault::{DeviceId, VaultId};

/// How far a device's clock may be from the relay's, in milliseconds. One that is further off is told the time.
pub const TOLERANCE: u64 = 5 * 60 * 1_000;

/// A request that was made by the device that it names, for this vault, now and not before.
pub struct Genuine {
    pub asker: DeviceId,
    pub vault: VaultId,
    pub request: Request,
}

/// Reads a request and believes nothing of it that isn't signed.
pub async fn genuine(
    parts: &Parts,
    vault: &str,
    what: &str,
    http: Http,
) -> Result<Genuine, Refused> {
    let Signed { asker, vault, body } = signed(parts, vault, http).await?;
    let request = Request::from_bytes(&body)?;
    if request.name() != what {
        return Err(Refused::Address);
    }
    Ok(Genuine {
        asker,
        vault,
        request,
    })
}

/// What was asked by the device that it names, for this vault, now and not before; whatever it is.
pub struct Signed {
    pub asker: DeviceId,
    pub vault: VaultId,
    pub body: Bytes,
}

/// Makes sure of who asks.
pub async fn signed(parts: &Parts, vault: &str, http: Http) -> Result<Signed, Refused> {
    let vault = vault_id(vault).ok_or(Refused::Address)?;
    let vouched = vouched(&http).ok_or(Refused::Unsigned)?;
    let method = http.method().as_str().to_owned();
    let path = http
        .uri()
        .path_and_query()
        .map(|path| path.as_str().to_owned());
    let body = body(parts, http.into_body()).await?;
    let asked = Asked {
        method: &method,
        path: path.as_deref().unwrap_or_default(),
        body: &body,
    };
    let now = (parts.clock)();
    if !vouched.is_for(asked) {
        return Err(Refused::Unsigned);
    }
    if now.abs_diff(vouched.time) > TOLERANCE {
        return Err(Refused::Clock { now });
    }
    let device = vouched.key.device();
    parts
        .buckets
        .take(device, now)
        .map_err(|seconds| Refused::TooMany { seconds })?;
    if !parts.nonces.is_new(device, vouched.nonce, now) {
        return Err(Refused::Repeated);
    }
    Ok(Signed {
        asker: device,
        vault,
        body,
    })
}

fn vouched(http: &Http) -> Option<Vouched> {
    let mut fields = http.headers().get_all(AUTHORIZATION).iter();
    let field = fields.next()?.to_str().ok()?;
    // Two of them would leave open which one was meant.
    fields.next().is_none().then(|| field.parse().ok())?
}

async fn body(parts: &Parts, body: Body) -> Result<Bytes, Refused> {
    // One that says beforehand that it is too long is not waited for.
    if body.size_hint().lower() > LONGEST_REQUEST as u64 {
        return Err(Refused::TooLong);
    }
    let read = to_bytes(body, LONGEST_REQUEST);
    match tokio::time::timeout(parts.limits.patience, read).await {
        Ok(Ok(bytes)) => Ok(bytes),
        Ok(Err(_)) => Err(Refused::TooLong),
        Err(_) => Err(Refused::Slow),
    }
}

/// The vault whose id these digits are, as it is shown.
pub fn vault_id(digits: &str) -> Option<VaultId> {
    let number = u128::from_str_radix(digits, 16).ok()?;
    let id = VaultId::from_bytes(number.to_be_bytes());
    // One address a vault: no capitals, no signs, no missing zeros.
    (id.to_string() == digits).then_some(id)
}
