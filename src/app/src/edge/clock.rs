//! What time it is, and new identifiers.

use chrono::{DateTime, Local, NaiveDate, NaiveDateTime, NaiveTime, Timelike};
use record::Stamp;
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

/// The day and the time that the clock shows where the tablet is, to the minute.
pub fn now_here() -> NaiveDateTime {
    today().and_time(now())
}

/// What a clock showed where the tablet is.
pub fn local(stamp: Stamp) -> NaiveDateTime {
    at(stamp.wall_ms)
}

/// What a clock showed where the tablet is, so many milliseconds after 1970 began. A moment beyond all time, which only a broken
/// clock makes, shows as the first.
pub fn at(wall_ms: u64) -> NaiveDateTime {
    let moment = i64::try_from(wall_ms)
        .ok()
        .and_then(DateTime::from_timestamp_millis)
        .unwrap_or_default();
    moment.with_timezone(&Local).naive_local()
}

/// The time of a moment where the tablet is: "09:40".
pub fn time_said(wall_ms: u64) -> String {
    at(wall_ms).format("%H:%M").to_string()
}
