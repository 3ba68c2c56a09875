//! What time it is, and new identifiers.

use chrono::{Local, NaiveDate, NaiveTime, Timelike};
use uuid::{NoContext, Timestamp, Uuid};

/// Milliseconds since 1970 by this tablet's clock.
pub fn now_ms() -> u64 {
    js_sys::Date::now() as u64
}

/// Today's date where the tablet is.
pub fn today() -> NaiveDate {
    Local::now().date_naive()
}

/// What the clock shows where the tablet is, to the minute.
pub fn now() -> NaiveTime {
    let now = Local::now().time();
    NaiveTime::from_hms_opt(now.hour(), now.minute(), 0).unwrap_or(now)
}

/// A new time-ordered identifier (`UUIDv7`).
pub fn new_id() -> Uuid {
    let now = now_ms();
    let nanos = ((now % 1000) * 1_000_000) as u32;
    Uuid::new_v7(Timestamp::from_unix(NoContext, now / 1000, nanos))
}

/// A moment as a person says it, where the tablet is: "25 November 2026, 14:05".
pub fn said(wall_ms: u64) -> String {
    let moment = i64::try_from(wall_ms)
        .ok()
        .and_then(chrono::DateTime::from_timestamp_millis);
    moment
        .map(|moment| {
            moment
                .with_timezone(&Local)
                .format("%-d %B %Y, %H:%M")
                .to_string()
        })
        .unwrap_or_default()
}
