//! `lightround verify`: whether a carry file is whole and genuine, and with the keys whether all of it can be read. It holds one
//! page of entries at a time, so a file of any size needs the same memory.

use super::open::{amiss, carry, entry, keys, walk};
use super::options::VerifyAsked;
use super::write;
use crate::ended::{Ended, Failure};
use std::collections::BTreeMap;
use std::fmt::Write as _;
use sync::carry::{Span, read_through};
use vault::DeviceId;

pub fn answer(asked: &VerifyAsked) -> Result<Ended, Failure> {
    let mut walk = walk(&asked.carry)?;
    let logs = walk.check().map_err(|error| carry(&asked.carry, error))?;
    if asked.opens.keys.is_none() && !asked.opens.recovery {
        write::out(None, page(&logs, &BTreeMap::new()).as_bytes())?;
        return Ok(Ended::Well);
    }
    let keys = keys(&asked.opens, &asked.carry, &mut walk)?;
    let mut damage = Vec::new();
    let through = read_through(&mut walk, &keys, |read| damage.extend(entry(&read).err()));
    let through = through.map_err(|error| carry(&asked.carry, error))?;
    let mut page = page(&logs, &through.names);
    let unread = damage.len() as u64;
    // Writing to a string can't fail.
    let _ = writeln!(
        page,
        "{} entries deciphered and read",
        through.entries - unread
    );
    damage.extend(amiss(&through));
    if through.unread > 0 {
        damage.push(format!(
            "{} entries are of a kind that only a newer version reads",
            through.unread
        ));
    }
    write::out(None, page.as_bytes())?;
    Ok(write::tell(&damage))
}

/// What there is of each tablet.
fn page(logs: &[Span], names: &BTreeMap<DeviceId, String>) -> String {
    let mut page = String::new();
    for log in logs {
        let device = log.key.device();
        let name = names.get(&device).map(|name| format!(" “{name}”"));
        let _ = writeln!(
            page,
            "tablet {}{}: entries {} to {}, chained and signed",
            &device.to_string()[..8],
            name.unwrap_or_default(),
            log.first,
            log.head.sequence
        );
    }
    page
}
