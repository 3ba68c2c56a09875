## Die Heime und Adressen, die besucht werden.

address = Anschrift
units-their-rooms = Bereiche und ihre Zimmer
units-hint = ein Bereich je Zeile, in der Reihenfolge, in der Sie gehen: Erdgeschoss: 3, 5, 10a
whom-ask = wen verlangen
know-door = an der Tür zu wissen
no-longer-visited = nicht mehr besucht
kept = gespeichert
keep = Speichern
places = Orte
places-2 = Orte
rounds = Runden
new-place = Neuer Ort
no-place-yet = Es ist noch kein Ort eingetragen.
named-with-people = Bei Personen genannt und noch nicht als Ort eingetragen: { $names }. Eine Runde dort oder ein neuer Ort dieses Namens nimmt sie auf.
no-such-place = kein Ort unter dieser Adresse
due = fällig { $date } · { $what }
written-otherwise = Ein anderes Tablet hat diesen Ort anders eingetragen: { $other }. Es gilt, was Sie unten speichern.
new-round-here = Neue Runde hier
list-home-sent = Eine Liste vom Heim
name = Name
live-here = { $count ->
    [0] Hier wohnt noch niemand
    [one] 1 Person wohnt hier
   *[other] { $count } Personen wohnen hier
}
