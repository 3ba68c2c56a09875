## Carry files: why one is refused, and what came of one.

no-carry-file = this is not a carry file
unknown-format = this carry file is of format { $format }, which this version doesn't know: update this one
damaged = this carry file is damaged or cut short: have it made or copied again
made-wrongly = this carry file was made wrongly, at byte { $at }: have it made again with the current version
of-other-vault = this carry file is from another vault, which this device has no key to
forged = entry { $entry } from tablet { $id } in this carry file isn't genuine: nothing was taken from it
stranger = tablet { $id } in this carry file doesn't belong to this vault: nothing was taken from it
nothing-lacking = there is nothing here that the other side lacks
exported = { $count ->
    [one] 1 entry
   *[other] { $count } entries
}, { $kilobytes } kB
left-out = ; of tablet { $id } nothing from entry { $from } on, because that can’t be read here
entries = { $count ->
    [one] 1 entry
   *[other] { $count } entries
}
of-tablets = { $count ->
    [one] of 1 tablet
   *[other] of { $count } tablets
}
nothing-taken = nothing was taken from this carry file
nothing-new = nothing in this carry file is new: its { $entries } { $tablets } are here already
all-new = { $entries } { $tablets }, all new
so-many-new = { $entries } { $tablets }, { $count ->
    [one] 1 was new
   *[other] { $count } were new
}
gap = from tablet { $id } nothing was taken, because its entries { $from } to { $through } are missing: ask for a file with everything
fork = from tablet { $id } nothing was taken, because its entry { $entry } here is another one: it may have been copied
newer-list = the list of tablets in it is newer, and holds now
other-list = the list of tablets in it is another than the one here, and was not taken
