## Why an entry, or a pair of lenses that was jotted down, can’t be read.

too-long = { $bytes } bytes are more than an entry may have ({ $limit })
not-cbor = the bytes stop being readable
not-cbor-at = the bytes stop being readable at byte { $at }
too-deep = the bytes are nested too deeply
trailing = { $bytes } bytes follow the end of the entry
envelope = the entry's envelope cannot be read: { $why }
body = the body of this { $kind } entry cannot be read: { $why }
clash = two different entries are both called { $entry }: the first one is kept
jotted-no-eye = it names no eye: write R or L before each lens
jotted-long = it is longer than { $most } characters: that is no pair of lenses
jotted-before = “{ $text }” stands before the first eye: begin with R or L
jotted-twice = the { $eye } eye stands there twice
jotted-lens = { $eye } eye: { $why }
jotted-add = addition: { $why }
jotted-adds = it has more than one addition for an eye
