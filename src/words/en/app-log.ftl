## The log of visits.

columns-shown = columns: { $shown } of { $all }
leave-out-who = leave out what says who somebody is: person, age, number, room
from = from
up = up to and with
home = home
every-home = every home
clinician = clinician
every-clinician = every clinician
outcome = outcome
every-outcome = every outcome
not-written-down = not written down
visit-log = Visit log
rounds = Rounds
no-visit-goes = No visit goes with what is asked.
visits-home-week = Visits by home and week
waiting-seen-again = Waiting to be seen again
time-visit-took = Time a visit took
show-every-home = show every home
no-home-written-down = no home written down
nobody-waits = Nobody of these waits to be seen again.
overdue = should have been seen
later = later
no-time-known = Of none of these is the time known: it runs from the first thing written to the signature.
minutes-to = { $from } to { $below } min
minutes-more = { $from } min and more
visits = visits
csv = CSV
workbook-xlsx = Workbook (XLSX)
file = As a file
these-exams-fhir = These exams as FHIR
fhir-names = Exams as FHIR name everybody: they are not offered while that is left out.
pairs-ordered = pairs ordered
referred = referred
minutes-visit = minutes a visit
outcome-2 = by outcome
clinician-2 = by clinician
visits-count = { $count ->
    [one] one visit
   *[other] { $count } visits
}
show-more = { $count ->
    [one] show one more
   *[other] show more: { $count } are not shown
}
