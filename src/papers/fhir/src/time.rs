//! Days and instants as FHIR writes them.

use chrono::{DateTime, NaiveDate, SecondsFormat};
use record::Stamp;

/// `2026-03-04`.
pub(crate) fn day(date: NaiveDate) -> String {
    date.format("%Y-%m-%d").to_string()
}

/// `2026-03-04T08:00:00Z`; nothing for a stamp beyond the calendar.
pub(crate) fn instant(stamp: Stamp) -> Option<String> {
    let ms = i64::try_from(stamp.wall_ms).ok()?;
    let time = DateTime::from_timestamp_millis(ms)?;
    Some(time.to_rfc3339_opts(SecondsFormat::Secs, true))
}
