## For how many years records are kept.

heading = How long records are kept
vault = Vault
rounds = Rounds
for-how-many = For how many years
set-to = { $years ->
    [one] Set to 1 year after the last entry; who says so: { $source }.
   *[other] Set to { $years } years after the last entry; who says so: { $source }.
}
nothing-set = Nothing is set: nobody is reminded.
years-after = years after the last entry
which-rule = which local rule says so?
let-hold = let this hold here
remind-nobody = remind nobody
only-reminds = This holds for every tablet of the vault, and only reminds: nothing is ever deleted by itself. Rules differ, some count from a birth or a death: local ones hold.
older = Older than that
nobody-older = Nobody’s record is older.
look-at-each = Look at each: give the record to whoever has to keep it, or erase it. Both are at the end of the person’s page; a lead tablet erases.
more-after-these = and { $count } more, after these
last-entry = last entry { $date }
way-there = { $count ->
    [0] how long records are kept
    [one] how long records are kept: one is older
   *[other] how long records are kept: { $count } are older
}
