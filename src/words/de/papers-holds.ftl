## Was eine Datei verrät.

holds-whole-record = Die Datei enthält die ganze Akte von { $name }: Name, Geburt, Kontakte und Angaben aus { $exams }. Als Papier hat sie jede Fassung von allem, mit wer es schrieb, wann, und warum es geändert wurde; für ein anderes System hat sie, was jetzt gilt und in jenem Format einen Platz hat, mit wer unterschrieb und änderte. { $clear }
holds-page = Die Datei enthält, was auf dieser Seite steht, dazu von der Person: { $told }. { $clear }
holds-log-bare = Die Datei enthält { $visits } ohne Namen, Alter, Nummern oder Zimmer; wenige Personen in einem Heim sind daraus vielleicht noch zu erkennen. { $clear }
holds-log = Die Datei enthält { $visits } mit dem, was sagt, wer jemand ist: { $personal }. { $clear }
holds-exams = Die Datei enthält alles, was in { $exams } notiert wurde, mit Namen, Geburtsdaten und Nummern. { $clear }
and-last = { $first } und { $last }
in-the-clear = Sie ist nicht mehr verschlüsselt: wer die Datei bekommt, kann sie lesen.
visits = { $count ->
    [one] einen Besuch
   *[other] { $count } Besuche
}
exams = { $count ->
    [one] einer Untersuchung
   *[other] { $count } Untersuchungen
}
