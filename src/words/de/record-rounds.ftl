## Runden, Orte und Besuche.

to-see = zu untersuchen
under-way = in Arbeit
done = fertig
nobody-yet = noch niemand
notice-not-given = die Ankündigung an { $to } steht noch aus
ask-place-name = ein Ort braucht einen Namen, um gefunden zu werden
ask-unit-name = ein Bereich braucht einen Namen, etwa ein Stockwerk
two-units = zwei Bereiche heißen { $name }
ask-notice-to = sagen Sie, an wen die Ankündigung geht
asleep = schläft
out = außer Haus
declined = abgelehnt
put-off = verschoben
