## Was über eine Person bekannt ist.

born-in-future = das Geburtsdatum liegt in der Zukunft
stated-in-future = das Alter wurde in einem Jahr angegeben, das noch nicht gekommen ist
too-old = damit wäre die Person mehr als { $most } Jahre alt
hearing = Gehör
language = Sprache
looks-at = schaut auf
family-doctor = Hausarzt
ask-or-tell = fragen oder benachrichtigen
known-as = bekannt als
ask-name = eine Person braucht mindestens einen Namen
ask-number = nennen Sie die Nummer oder nehmen Sie die Zeile heraus
ask-issuer = sagen Sie, wer die Nummer { $number } vergeben hat
ask-contact = sagen Sie, wer der Kontakt ist, oder nehmen Sie die Zeile heraus
no-distance = „{ $text }“ ist kein Abstand: schreiben Sie 2.8 m oder 35 cm
ask-looked-at = sagen Sie, worauf geschaut wird, oder nehmen Sie die Zeile heraus
looked-at-range = worauf geschaut wird, steht zwischen 5 cm und 20 m entfernt
at-distance = {" "}in { $distance }
television = Fernseher
reading = Lesen
knitting-there = Stricken
puzzles = Rätsel oder Karten
screen-in-hand = ein Bildschirm in der Hand
window = das Fenster
