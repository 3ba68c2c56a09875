## Why bytes are no entry, and why an entry was not taken.

too-long = { $bytes } bytes are more than an entry may have ({ $limit })
not-readable = the bytes stop being readable
not-readable-at = the bytes stop being readable at byte { $at }
too-deep = the bytes are nested too deeply
trailing = { $bytes } bytes follow the end of the entry
envelope = the entry's envelope cannot be read: { $why }
body = the body of this { $kind } entry cannot be read: { $why }
layouts-from-one = layouts are numbered from 1
clash = two different entries are both called { $entry }: the first one is kept
