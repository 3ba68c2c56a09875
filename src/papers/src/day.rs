//! Days as they are printed.

use chrono::{DateTime, NaiveDate};
use record::Stamp;

/// `4 March 2026`.
pub(crate) fn day(date: NaiveDate) -> String {
    date.format("%-d %B %Y").to_string()
}

/// The day of a stamp, in universal time, since a stamp does not say where the tablet was.
pub(crate) fn day_of(stamp: Stamp) -> String {
    let ms = i64::try_from(stamp.wall_ms).ok();
    let time = ms.and_then(DateTime::from_timestamp_millis);
    time.map_or_else(
        || "an unknown day".to_owned(),
        |time| day(time.date_naive()),
    )
}
