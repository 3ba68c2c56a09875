## Der Überweisungsbrief.

opening = Vielen Dank, dass Sie { $name } untersuchen; ich habe die Person in { $place }, wo sie lebt, untersucht.
opening-where-they-live = Vielen Dank, dass Sie { $name } untersuchen; ich habe die Person dort, wo sie lebt, untersucht.
closing = Bitte teilen Sie mir mit, was Sie finden und was Sie entscheiden.
to = an
what-was-found = Befunde
title = Überweisung
right = rechts
left = links
chart = Tafel
reads-with = liest { $label }
lens-for-far = Glas für die Ferne
reads-with-that = liest damit
pressure = Augeninnendruck, { $label }
drops = Tropfen, { $label }
urgency = Dringlichkeit: { $word }
in-turn = der Reihe nach zu untersuchen
ahead-of-turn = vorrangig zu untersuchen
within-days = binnen Tagen zu untersuchen, nach den örtlichen Regeln
today = heute zu untersuchen
allergies = Allergien: { $words }
medicines = Medikamente: { $words }
please-mind = bitte beachten
drops-given = gegebene Tropfen: { $given }
air-alone = der Druck wurde nur mit Luftstoß gemessen, nicht mit Applanation
