## Wie viele Jahre Aufzeichnungen aufbewahrt werden.

heading = Wie lange Aufzeichnungen aufbewahrt werden
vault = Tresor
rounds = Runden
for-how-many = Wie viele Jahre
set-to = { $years ->
    [one] Festgelegt ist 1 Jahr nach dem letzten Eintrag; wer das sagt: { $source }.
   *[other] Festgelegt sind { $years } Jahre nach dem letzten Eintrag; wer das sagt: { $source }.
}
nothing-set = Es ist nichts festgelegt: Niemand wird erinnert.
years-after = Jahre nach dem letzten Eintrag
which-rule = welche örtliche Regel sagt das?
let-hold = das hier gelten lassen
remind-nobody = niemanden erinnern
only-reminds = Das gilt für jedes Tablet des Tresors und erinnert nur: Von selbst wird nie etwas gelöscht. Die Regeln sind verschieden, manche zählen ab einer Geburt oder einem Tod: Es gelten die örtlichen.
older = Älter als das
nobody-older = Keine Aufzeichnung ist älter.
look-at-each = Sehen Sie jede an: Geben Sie die Aufzeichnung dem, der sie aufbewahren muss, oder löschen Sie sie. Beides steht am Ende der Seite der Person; ein leitendes Tablet löscht.
more-after-these = und nach diesen noch { $count }
last-entry = letzter Eintrag { $date }
way-there = { $count ->
    [0] wie lange Aufzeichnungen aufbewahrt werden
    [one] wie lange Aufzeichnungen aufbewahrt werden: eine ist älter
   *[other] wie lange Aufzeichnungen aufbewahrt werden: { $count } sind älter
}
