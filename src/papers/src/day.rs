//! Days as they are printed.

use ::words::papers::documents as say;
use chrono::{DateTime, NaiveDate};
use record::{Manner, Stamp};

/// `4 March 2026`.
pub(crate) fn day(date: NaiveDate) -> String {
    Manner::default().date(date)
}

/// The day of a stamp, in universal time, since a stamp does not say where the tablet was.
pub(crate) fn day_of(stamp: Stamp) -> String {
    let ms = i64::try_from(stamp.wall_ms).ok();
    let time = ms.and_then(DateTime::from_timestamp_millis);
    time.map_or_else(
        || say::unknown_day().to_owned(),
        |time| day(time.date_naive()),
    )
}
