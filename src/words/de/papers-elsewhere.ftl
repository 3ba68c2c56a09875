## Befunde aus der Datei eines anderen Systems: was darin gefunden wurde und was anzusehen ist.

no-json = das ist keine FHIR-Datei in JSON: Zeile { $line }, Stelle { $column }
no-prescription = diese Datei enthält keine Brillenverordnung
taken-from-elsewhere = von anderswo übernommen: { $what }
no-day = { $place }: es sagt nicht, an welchem Tag es geschrieben wurde
fault = { $place }: { $sentence }
prescription = { $who }, geschrieben am { $day }: { $holds }
nobody-named = eine Person, die die Datei nicht nennt
chart-stands-in = es sagt nicht, wie weit entfernt die Tafel war: eingesetzt sind { $far } m
of-prescription = Verordnung { $number }: { $sentence }
found-beside = { $count ->
    [one] ein Befund desselben Besuchs wird in Worten gespeichert
   *[other] { $count } Befunde desselben Besuchs werden in Worten gespeichert
}
not-done = nicht gemacht: { $why }
left-is = { $place } ist { $value }
left-says = { $place } ist „{ $words }“
mind-status = Achtung: der Status ist „{ $status }“
lenses = { $count ->
    [0] kein Glas
    [one] ein Glas
   *[other] { $count } Gläser
}
lenses-and-rest = { $lenses }; { $count ->
    [one] eines hat hier keinen Platz und wird in Worten gespeichert
   *[other] { $count } haben hier keinen Platz und werden in Worten gespeichert
}
which-eye = { $place }: es sagt nicht, für welches Auge es ist
contact-lens = { $place }: eine Kontaktlinse wird nicht für ein Brillenglas genommen
second-lens = { $place }: ein zweites Glas { $eye }
no-sphere = es hat keine Sphäre
no-axis = sein Zylinder hat keine Achse
additions-differ = die Nahzusätze der Augen sind verschieden: Keiner wurde übernommen
addition-of = Nahzusatz { $eye }
addition-distance = es sagt nicht, für welchen Abstand der Nahzusatz gilt: eingesetzt sind { $cm } cm
