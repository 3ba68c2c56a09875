## Ein Besuchstag: wer, in welcher Reihenfolge, was mitzunehmen ist, und die Liste vom Heim.

begun-on = begonnen am { $date } ·{" "}
whole-round = Die ganze Runde
called-off = abgesagt
new-round = Neue Runde
places = Orte
bag = Die Tasche
bag-ticked = Die Tasche: { $ticked } von { $all }
another-thing-bag = noch etwas für die Tasche
put-list = auf die Liste
take-item-off = { $item } von der Liste nehmen
take-off = abnehmen
what-columns-hold = Was enthält jede Spalte?
older-encoding = einer älteren Kodierung (Windows-1252): Achten Sie auf Umlaute und Akzente
rows-read = { $count ->
    [one] Eine Zeile, Zellen getrennt durch { $separator }, gelesen als { $encoding }.
   *[other] { $count } Zeilen, Zellen getrennt durch { $separator }, gelesen als { $encoding }.
}
left-alone = weggelassen
dates-written = Daten stehen da
dates-open = Diese Daten könnten auf zwei Arten gelesen werden, und nichts in der Datei sagt, auf welche: { $ask }, oder sehen Sie bei einer Person nach, die Sie kennen.
list-home = Eine Liste vom Heim
back = Zurück
list-needs-place = Eine Liste gehört zu einem Ort: Diese Adresse nennt keinen.
list-pick = Wählen Sie die Datei der Bewohner, die das Heim geschickt hat, gespeichert als CSV. Sie bleibt auf diesem Tablet; es wird nichts eingetragen, bevor Sie es sagen.
file = Datei
nothing-taken = es wurde nichts übernommen: { $sentence }
new-and-known = { $new } neu, { $known } schon bekannt
and-more = und { $count } mehr
can-be-taken = { $count } können übernommen werden
kept-aside = { $count } beiseitegelegt
aside-why = Aus diesen Zeilen wird nichts übernommen. Speichern Sie sie, berichtigen Sie sie, und lesen Sie sie noch einmal; oder tragen Sie die Personen von Hand ein.
born = geboren { $date }
known = bekannt
new = neu
save-aside = die beiseitegelegten Zeilen speichern
several-addresses = Mehrere Adressen
started = {" "}· begonnen { $moment }
not-in-bag = noch nicht in der Tasche: { $things }
no-such-round = keine Runde unter dieser Adresse
rounds = Runden
order-room = nach Zimmern ordnen
order-done = fertig geordnet
order-by-hand = von Hand ordnen oder streichen
who-visited = Wer besucht wird
round-called-off = Diese Runde ist abgesagt.
needs-day = eine Runde braucht ihren Tag
at-which-place = wo
several-addresses-2 = mehrere Adressen
new-place = oder ein Ort, der noch nicht eingetragen ist
day = Tag
make-round = Runde anlegen
next = als Nächstes
order-how = Ziehen Sie den Griff, tippen Sie auf oder ab, oder nehmen Sie die Pfeiltasten auf dem Griff.
move-name = { $name } verschieben
name-up = { $name } nach oben
up = auf
name-down = { $name } nach unten
down = ab
take-name-off = { $name } streichen
plan-told = Tag, Ankündigung und Wissenswertes: { $told }
plan = Tag, Ankündigung und Wissenswertes
notice-given = angekündigt am { $date }
notice-not-given = noch nicht angekündigt
know-day = an dem Tag zu wissen
notice-heading = Ankündigung, wo örtliche Regeln eine wollen
whom = bei wem
notice-words = was gesagt wurde, oder ihre Nummer
remind-me = erinnern ab
given = angekündigt am
takes-place-after-all = sie findet doch statt
call-round-off = Runde absagen
kept = gespeichert
keep = Speichern
last-time = zuletzt
two-versions = Zwei Tablets haben diese Runde geändert, ohne voneinander zu wissen. Welche gilt?
everybody-both = alle aus beiden
nobody-on-it = Auf dieser Runde ist noch niemand.
other-rooms = andere Zimmer
signed = Unterschrieben
take-back = { $said }: zurücknehmen
word = ein Wort dazu
not-examined-because = nicht untersucht, weil
due = fällig { $date } · { $what }
never-examined-here = hier nie untersucht
no-day-named = es wurde kein Tag für das nächste Mal genannt
due-by-then = die bis dahin fällig sind: { $count }
everybody-here = alle, die hier wohnen: { $count }
from-home-list = aus einer Liste, die das Heim geschickt hat
somebody-else-name = jemand anders nach Namen
put-name-on = { $name } auf die Runde setzen
put = aufnehmen
rounds-to-come = { $count ->
    [one] 1 Runde steht bevor
   *[other] { $count } Runden stehen bevor
}
rounds-over = { $count ->
    [one] 1 Runde vorbei
   *[other] { $count } Runden vorbei
}
take-people = { $count ->
    [one] diese eine Person übernehmen
   *[other] diese { $count } Personen übernehmen
}
put-people-on = { $count ->
    [0] Personen auf die Runde setzen
   *[other] Personen auf die Runde setzen: { $count } weitere wohnen hier
}
version-of = { $author }, { $moment }: { $count ->
    [one] 1 Person
   *[other] { $count } Personen
}
ask-home = fragen Sie im Heim
ask-sender = fragen Sie, wer sie geschickt hat
aside-why-findings = Von diesen Zeilen wird nichts übernommen. Speichern Sie sie, berichtigen Sie sie und lesen Sie sie noch einmal ein; oder schreiben Sie die Befunde von Hand auf.
