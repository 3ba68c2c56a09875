## Was bei einem Besuch herauskam.

glasses-prescribed = Brille verordnet
glasses-left-alone = Brille unverändert
advice-only = nur Beratung oder Überweisung
not-finished = nicht beendet
state-open = offen
state-signed = unterschrieben
state-amended = geändert
column-date = Datum
column-place = Ort
column-room = Zimmer
column-person = Person
column-age = Alter
column-number = Nummer
column-clinician = untersucht von
column-outcome = Ergebnis
column-referred = überwiesen
column-pairs = bestellte Brillen
column-drops = Tropfen
column-again = wiedersehen
column-minutes = Minuten
column-state = Stand
visits-a-week = { $count ->
    [one] ein Besuch
   *[other] { $count } Besuche, höchstens { $most } in einer Woche
}
