## Die ganze Aufzeichnung einer Person, als Papier.

title = Ganze Aufzeichnung
foot = { $name }, ganze Aufzeichnung, { $day }
written-on = geschrieben am
what-this-is = was das ist
exams = { $count ->
    [0] keine Untersuchung
    [one] eine Untersuchung
   *[other] { $count } Untersuchungen
}
about = Alles, was über diese Person aufgeschrieben ist: Angaben, Runden und { $exams }, das Älteste zuerst. Wo etwas mehr als einmal geschrieben wurde, steht hier jede Fassung, mit dem, der sie schrieb, und wann.
written-by = geschrieben von { $author }, { $at }
who-person-is = Wer die Person ist
version-written = Fassung { $number } von { $all }, { $wrote }
said-one-person = zwei Aufzeichnungen wurden für eine Person erklärt von { $author }, { $at }{ $why }
lives-at = wohnt in
room = Zimmer
before-knocking = vor dem Anklopfen
right-left = rechts { $right }, links { $left }
rounds = Runden
called-off = abgesagt
mark-taken-back = die Markierung zurückgenommen
exam-of = Untersuchung vom { $day }{ $place }
elsewhere-of = Befunde von anderswo vom { $day }{ $place }
not-all-of-it = nicht alles
unread = eine neuere Version der App hat in diese Untersuchung etwas geschrieben, das für dieses Papier nicht gelesen werden konnte
signed-by = unterschrieben von { $signer }, { $at }
nothing-filled-in = nichts ausgefüllt
version-holds = Fassung { $number } von { $all }, gilt;{" "}
version-replaced = Fassung { $number } von { $all }, ersetzt;{" "}
and-signed-by = ; unterschrieben von { $signers }
newer-question = eine neuere Frage
of-eye = , Auge { $eye }
second-look = Vom zweiten Blick gefragt und beantwortet
