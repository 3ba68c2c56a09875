## Visus: was gelesen wird, und was an Geschriebenem falsch ist.

label-of-line = Bezeichnung der Zeile
counts-fingers = zählt Finger in { $cm } cm
hand-movements = sieht Handbewegungen
sees-light = sieht Licht
no-light = sieht kein Licht
no-such-line = die Tafel hat keine Zeile 6/{ $line }: ihre Zeilen sind 6/60, 36, 24, 18, 12, 9, 6, 5 und 4
print-at = { $print } in { $cm } cm
angle-resolved = aufgelöster Winkel
decimal-acuity = Visus dezimal
distance = Abstand
size-of-letter = Buchstabengröße
nothing-written = hier steht kein Visus
stops-short = „{ $text }“ bricht ab: { $wanted } fehlt
cannot-be-read = „{ $text }“ ist ab „{ $rest }“ nicht zu lesen: dort gehört hin: { $wanted }
fingers-where = „{ $text }“ sagt nicht, wie weit entfernt: schreiben Sie es wie CF 50 cm
wanted-acuity = eine Zeile wie 6/9, eine Dezimalzahl wie 0.5 oder CF, HM, PL oder NPL
wanted-denominator = die Zahl unter dem Strich
wanted-letters = eine Buchstabenzahl wie −2 oder +1
nothing-more = nichts mehr
wanted-how-far = wie weit entfernt
wanted-unit = cm oder m
wanted-centimetres = ganze Zentimeter
wanted-number = eine Zahl
wanted-logmar = logMAR, denn nur das hat ein Vorzeichen,
