## The homes and addresses that are visited.

address = address
units-their-rooms = units and their rooms
units-hint = one unit to a line, in the order in which you walk them: Ground floor: 3, 5, 10a
whom-ask = whom to ask for
know-door = to know at the door
no-longer-visited = no longer visited
kept = kept
keep = Keep
places = places
places-2 = Places
rounds = Rounds
new-place = New place
no-place-yet = No place is written down yet.
named-with-people = Named with people, and not written down as a place yet: { $names }. A round there, or a new place of that name, takes them in.
no-such-place = no place by this address
due = due { $date } · { $what }
written-otherwise = Another tablet wrote this place down otherwise: { $other }. What you keep below holds.
new-round-here = New round here
list-home-sent = A list that the home sent
name = name
live-here = { $count ->
    [0] Nobody lives here yet
    [one] 1 person lives here
   *[other] { $count } people live here
}
