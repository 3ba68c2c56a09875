## What the open vault and the browser's edges say, mostly when something fails.

camera-refused = the camera can’t be used here: allow it, or type the letters
camera-dark = the camera gives no picture: type the letters
file-unreadable = { $name } can’t be read: pick it once more
file-not-made = this browser would not make { $name }
file-not-saved = this browser would not save { $name }
no-helper = this browser lets no work run beside the page
too-little-memory = this tablet has too little free memory for it: close other pages and try again
work-not-handed-over = the work could not be handed over
work-without-answer = the work ended without an answer
nobody-made-up = nobody could be made up: close other pages and try again
offline-impossible = this browser can't keep the app for use offline
offline-failed = the app could not be kept for use offline ({ $why })
made-in-part = what was made did not arrive whole: try again
no-answer = no answer
log-of-no-device = a log is kept under no device's name
browser-kept-nothing = the browser did not keep it
no-storage = the browser gives no storage ({ $why }); a private window may be why
passphrase-not-worked-on = the passphrase could not be worked on: close other pages and try again
passphrase-not-judged = the passphrase could not be judged
not-kept-yet = not kept yet: { $sentence }
another-tab = another tab has taken the vault in the meantime
entry-unreadable = entry { $entry } can’t be read: { $sentence }
no-list-of-tablets = there is no list of tablets to begin with
clocks-disagree = the relay’s clock and this tablet’s can’t agree
vault-locked = the vault is locked
tablet-needs-name = A tablet needs a name.
begin-anew = begin anew: nothing was asked
no-name-to-sign = nobody’s name is known here to sign with
no-such-exam = this tablet holds no such exam
made-something-else = something else was made than was asked for: try again
unfinished-unreadable = { $count ->
    [one] 1 unfinished section can’t be read: it is damaged
   *[other] { $count } unfinished sections can’t be read: they are damaged
}
clock-is-slow = { $minutes ->
    [one] this tablet’s clock is 1 minute slow: put it right, or times in the records will be wrong
   *[other] this tablet’s clock is { $minutes } minutes slow: put it right, or times in the records will be wrong
}
clock-is-fast = { $minutes ->
    [one] this tablet’s clock is 1 minute fast: put it right, or times in the records will be wrong
   *[other] this tablet’s clock is { $minutes } minutes fast: put it right, or times in the records will be wrong
}
tablet-did-not-unlock = the tablet didn’t unlock it: use the passphrase
tablet-keeps-no-key = this tablet or this browser can’t keep a key behind its own unlocking: the passphrase stays the way in
no-single-writer = this browser can't make sure that only one tab writes; a newer one can
writer-refused = the browser did not let this tab become the writer ({ $why })
only-tablets-newer = no entry in this carry file is new, but its list of tablets is newer, and holds now
