## Was der offene Tresor und die Ränder des Browsers sagen, meist wenn etwas misslingt.

camera-refused = die Kamera kann hier nicht benutzt werden: Erlauben Sie sie, oder tippen Sie die Buchstaben
camera-dark = die Kamera gibt kein Bild: Tippen Sie die Buchstaben
file-unreadable = { $name } kann nicht gelesen werden: Wählen Sie die Datei noch einmal
file-not-made = dieser Browser wollte { $name } nicht anlegen
file-not-saved = dieser Browser wollte { $name } nicht speichern
no-helper = dieser Browser lässt neben der Seite keine Arbeit zu
too-little-memory = dieses Tablet hat dafür zu wenig freien Speicher: Schließen Sie andere Seiten und versuchen Sie es noch einmal
work-not-handed-over = die Arbeit konnte nicht übergeben werden
work-without-answer = die Arbeit endete ohne Antwort
nobody-made-up = es konnte niemand ausgedacht werden: Schließen Sie andere Seiten und versuchen Sie es noch einmal
offline-impossible = dieser Browser kann die App nicht für den Gebrauch ohne Netz aufheben
offline-failed = die App konnte nicht für den Gebrauch ohne Netz aufgehoben werden ({ $why })
made-in-part = was gemacht wurde, kam nicht vollständig an: Versuchen Sie es noch einmal
no-answer = keine Antwort
log-of-no-device = ein Protokoll liegt unter keinem Gerätenamen
browser-kept-nothing = der Browser hat es nicht gespeichert
no-storage = der Browser gibt keinen Speicher frei ({ $why }); ein privates Fenster kann der Grund sein
passphrase-not-worked-on = die Passphrase konnte nicht verarbeitet werden: Schließen Sie andere Seiten und versuchen Sie es noch einmal
passphrase-not-judged = die Passphrase konnte nicht beurteilt werden
not-kept-yet = noch nicht gespeichert: { $sentence }
another-tab = ein anderer Tab hat den Tresor inzwischen übernommen
entry-unreadable = Eintrag { $entry } kann nicht gelesen werden: { $sentence }
no-list-of-tablets = es gibt keine Liste von Tablets, mit der begonnen werden könnte
clocks-disagree = die Uhren des Relais und dieses Tablets kommen nicht überein
vault-locked = der Tresor ist gesperrt
tablet-needs-name = Ein Tablet braucht einen Namen.
begin-anew = beginnen Sie von vorn: Es wurde nichts angefragt
no-name-to-sign = hier ist kein Name bekannt, mit dem unterschrieben werden könnte
no-such-exam = dieses Tablet hat keine solche Untersuchung
made-something-else = es wurde etwas anderes gemacht als verlangt: Versuchen Sie es noch einmal
unfinished-unreadable = { $count ->
    [one] 1 unfertiger Abschnitt kann nicht gelesen werden: Er ist beschädigt
   *[other] { $count } unfertige Abschnitte können nicht gelesen werden: Sie sind beschädigt
}
clock-is-slow = { $minutes ->
    [one] die Uhr dieses Tablets geht 1 Minute nach: Stellen Sie sie, sonst stimmen die Zeiten in den Aufzeichnungen nicht
   *[other] die Uhr dieses Tablets geht { $minutes } Minuten nach: Stellen Sie sie, sonst stimmen die Zeiten in den Aufzeichnungen nicht
}
clock-is-fast = { $minutes ->
    [one] die Uhr dieses Tablets geht 1 Minute vor: Stellen Sie sie, sonst stimmen die Zeiten in den Aufzeichnungen nicht
   *[other] die Uhr dieses Tablets geht { $minutes } Minuten vor: Stellen Sie sie, sonst stimmen die Zeiten in den Aufzeichnungen nicht
}
tablet-did-not-unlock = das Tablet hat ihn nicht entsperrt: Nehmen Sie die Passphrase
tablet-keeps-no-key = dieses Tablet oder dieser Browser kann keinen Schlüssel hinter der eigenen Entsperrung aufbewahren: Die Passphrase bleibt der Weg hinein
no-single-writer = dieser Browser kann nicht sicherstellen, dass nur ein Tab schreibt; ein neuerer kann es
writer-refused = der Browser ließ diesen Tab nicht schreiben ({ $why })
only-tablets-newer = kein Eintrag in dieser Mitnahmedatei ist neu, aber ihre Liste der Tablets ist neuer und gilt jetzt
