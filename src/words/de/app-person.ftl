## Die Seite einer Person: was bekannt ist, die Jahre, die Gläser, Befunde von anderswo.

fhir-summary = Befunde aus einem anderen System (eine FHIR-Datei)
nothing-read = Es wurde nichts gelesen: { $sentence }.
fhir-intro = Eine Brillenverordnung oder ein Bündel von Untersuchungen, als FHIR R4 in JSON. Es wird nichts eingetragen, bevor Sie es sagen.
file = Datei
fhir-not-utf-8 = die Datei ist nicht in UTF-8 geschrieben, wie es jede FHIR-Datei ist
what-file-holds = Was die Datei enthält
right = rechts
left = links
fhir-here = Steht unten bei den Befunden, als nicht hier untersucht.
fhir-take = als früheren Befund übernehmen
know-before-door = Vor der Tür zu wissen
change = Ändern
only-name-known = Außer dem Namen ist noch nichts eingetragen.
last-two = die letzten beiden Untersuchungen nebeneinander
eye-plane = Auge { $eye }: Zylinder der letzten Untersuchungen
last-lenses = Die letzten Gläser
lenses-rings = Befunde, die nahe beieinander liegen, unterscheiden sich wenig, was immer ihre Achsen sagen. Jeder Ring ist eine viertel Dioptrie.
nobody-address = niemand unter dieser Adresse
sums = Rechnungen
rounds = Runden
no-exam-yet = Es ist noch keine Untersuchung eingetragen.
go-exam = Untersuchung fortsetzen
on-record-too = Auch als { $name } geführt, wie { $author } am { $moment } gesagt hat.
they-two-after-all = es sind doch zwei
same-person = ist dieselbe Person
same-shown-here = Von da an stehen die Untersuchungen beider hier, und die Angaben dieser Seite gelten. Es kann zurückgenommen werden.
find-other = die andere suchen nach Name, Zimmer, Ort oder Geburtstag
not-examined-here = nicht hier untersucht
not-signed = nicht unterschrieben
signed = unterschrieben
amended = mit Nachtrag
lens = Glas
acuity = Visus
prescription = Verordnung
papers = Papiere
over-years = Über die Jahre
strip = über die Jahre, von Untersuchung zu Untersuchung
same-tables = dasselbe als Tabellen
better-is-up = , besser ist oben
not-taken = { $count ->
    [one] eines nicht übernommen, weil es zu keiner Verordnung gehört
   *[other] { $count } nicht übernommen, weil sie zu keiner Verordnung gehören
}
no-place-of-its-own = { $count ->
    [one] eines ohne eigenen Platz: in Worten bei der Entscheidung gespeichert
   *[other] { $count } ohne eigenen Platz: in Worten bei der Entscheidung gespeichert
}
lines-differ = { $count ->
    [0] kein Unterschied
    [one] 1 Zeile verschieden
   *[other] { $count } Zeilen verschieden
}
same-twice = { $count ->
    [0] zweimal dieselbe Person?
    [one] zweimal dieselbe Person? Eine andere heißt gleich und ist am selben Tag geboren
   *[other] zweimal dieselbe Person? { $count } andere heißen gleich und sind am selben Tag geboren
}
whole-record = die ganze Aufzeichnung dieser Person, als Datei
readable-pdf = Zum Lesen (PDF)
other-system-fhir = Für ein anderes System (FHIR)
no-such-person = dieses Tablet hat keine solche Person
