## Was jemand anderes gefunden hat, aus einer Datei übernommen.

heading = Frühere Befunde
from-file = aus einer Datei
vault = Tresor
pick-file = Wählen Sie eine Datei mit anderswo erhobenen Befunden, als CSV gespeichert, eine Zeile je Untersuchung. Die guten Zeilen stehen dann bei ihren Personen als letzte Befunde. Es wird nichts eingetragen, bevor Sie es sagen.
bare-number = ein Visus, der nur eine Zahl ist, wie 0.3, ist
files-like-this = Dateien wie diese
read-as-kept = Gelesen als „{ $name }“, wie es gespeichert war.
read-headings-anew = ihre Überschriften neu lesen
forget-reading = diese Leseart vergessen
keep-as = für die nächste Datei dieser Art speichern als
keep-columns = diese Spalten speichern
being-taken = wird übernommen …
taken = Übernommen
aside-after = Aus diesen Zeilen wurde nichts übernommen. Speichern Sie sie, berichtigen Sie sie und lesen Sie sie noch einmal ein.
take-findings = { $count ->
    [one] die Befunde dieser einen Untersuchung übernehmen
   *[other] die Befunde dieser { $count } Untersuchungen übernehmen
}
findings-of-exams = { $count ->
    [one] Die Befunde einer Untersuchung
   *[other] Die Befunde von { $count } Untersuchungen
}
of-people = { $count ->
    [one] einer Person
   *[other] von { $count } Personen
}
rows-aside = { $count ->
    [0] keine Zeile wurde beiseitegelegt
    [one] eine Zeile wurde beiseitegelegt
   *[other] { $count } Zeilen wurden beiseitegelegt
}
taken-over = { $findings } { $people } stehen dort als nicht hier untersucht; { $aside }.
