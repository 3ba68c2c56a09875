## What came of a visit.

glasses-prescribed = glasses prescribed
glasses-left-alone = glasses left alone
advice-only = advice or referral only
not-finished = not finished
state-open = open
state-signed = signed
state-amended = amended
column-date = date
column-place = place
column-room = room
column-person = person
column-age = age
column-number = number
column-clinician = clinician
column-outcome = outcome
column-referred = referred
column-pairs = pairs ordered
column-drops = drops
column-again = see again
column-minutes = minutes
column-state = state
visits-a-week = { $count ->
    [one] one visit
   *[other] { $count } visits, at most { $most } a week
}
