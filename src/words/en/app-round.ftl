## A day of visits: who, in which order, what to take along, and the list that a home sends.

begun-on = begun on { $date } ·{" "}
whole-round = The whole round
called-off = called off
new-round = New round
places = Places
bag = The bag
bag-ticked = The bag: { $ticked } of { $all }
another-thing-bag = another thing for the bag
put-list = put on the list
take-item-off = take { $item } off the list
take-off = take off
what-columns-hold = What does each column hold?
older-encoding = an older encoding (Windows-1252): look at letters with accents
rows-read = { $count ->
    [one] One row, cells between { $separator }, read as { $encoding }.
   *[other] { $count } rows, cells between { $separator }, read as { $encoding }.
}
left-alone = left alone
dates-written = dates are written
dates-open = These dates could be read either way, and nothing in the file tells which: { $ask }, or look at one person whom you know.
list-home = A list from the home
back = Back
list-needs-place = A list belongs to a place: this address names none.
list-pick = Pick the file of residents that the home sent, saved as CSV. It stays on this tablet; nothing is written down before you say so.
file = file
nothing-taken = nothing was taken: { $sentence }
new-and-known = { $new } new, { $known } known already
and-more = and { $count } more
can-be-taken = { $count } can be taken
kept-aside = { $count } kept aside
aside-why = Nothing of these rows is taken. Save them, put them right, and read them again; or put the people down by hand.
born = born { $date }
known = known
new = new
save-aside = save the rows kept aside
several-addresses = Several addresses
started = {" "}· started { $moment }
not-in-bag = not in the bag yet: { $things }
no-such-round = no round by this address
rounds = Rounds
order-room = order by room
order-done = done with the order
order-by-hand = order by hand, or take off
who-visited = Who is visited
round-called-off = This round is called off.
needs-day = a round needs its day
at-which-place = where
several-addresses-2 = several addresses
new-place = or a place that is not written down yet
day = day
make-round = Make the round
next = next
order-how = Drag the grip, tap up or down, or use the arrow keys on the grip.
move-name = move { $name }
name-up = { $name } up
up = up
name-down = { $name } down
down = down
take-name-off = take { $name } off
plan-told = Day, notice and what to know: { $told }
plan = Day, notice and what to know
notice-given = notice given on { $date }
notice-not-given = notice not given yet
know-day = to know on the day
notice-heading = Notice, where local rules want one
whom = to whom
notice-words = what was said, or its number
remind-me = remind me from
given = given on
takes-place-after-all = it takes place after all
call-round-off = call the round off
kept = kept
keep = Keep
last-time = last time
two-versions = Two tablets changed this round without hearing of each other. Which one holds?
everybody-both = everybody of both
nobody-on-it = Nobody is on this round yet.
other-rooms = other rooms
signed = Signed
take-back = { $said }: take back
word = a word on it
not-examined-because = not examined, because
due = due { $date } · { $what }
never-examined-here = never examined here
no-day-named = no day to be seen again was named
due-by-then = those who are due by then: { $count }
everybody-here = everybody who lives here: { $count }
from-home-list = from a list that the home sent
somebody-else-name = somebody else by name
put-name-on = put { $name } on the round
put = put on
rounds-to-come = { $count ->
    [one] 1 round to come
   *[other] { $count } rounds to come
}
rounds-over = { $count ->
    [one] 1 round over
   *[other] { $count } rounds over
}
take-people = { $count ->
    [one] take this one person
   *[other] take these { $count } people
}
put-people-on = { $count ->
    [0] Put people on the round
   *[other] Put people on the round: { $count } more live here
}
version-of = { $author }, { $moment }: { $count ->
    [one] 1 person
   *[other] { $count } people
}
ask-home = ask the home
ask-sender = ask whoever sent them
aside-why-findings = Nothing of these rows is taken. Save them, put them right, and read them again; or write the findings down by hand.
