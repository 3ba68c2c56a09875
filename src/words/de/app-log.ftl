## Das Besuchsprotokoll.

columns-shown = Spalten: { $shown } von { $all }
leave-out-who = weglassen, was sagt, wer jemand ist: Person, Alter, Nummer, Zimmer
from = von
up = bis einschließlich
home = Heim
every-home = alle Heime
clinician = wer untersuchte
every-clinician = alle, die untersuchten
outcome = Ergebnis
every-outcome = alle Ergebnisse
not-written-down = nicht aufgeschrieben
visit-log = Besuchsprotokoll
rounds = Runden
no-visit-goes = Kein Besuch passt zu dem, was gefragt ist.
visits-home-week = Besuche nach Heim und Woche
waiting-seen-again = Warten darauf, wiedergesehen zu werden
time-visit-took = Dauer eines Besuchs
show-every-home = alle Heime zeigen
no-home-written-down = kein Heim aufgeschrieben
nobody-waits = Niemand von diesen wartet darauf, wiedergesehen zu werden.
overdue = hätten gesehen werden sollen
later = später
no-time-known = Von keinem dieser Besuche ist die Dauer bekannt: Sie läuft vom ersten Geschriebenen bis zur Unterschrift.
minutes-to = { $from } bis { $below } min
minutes-more = { $from } min und mehr
visits = Besuche
csv = CSV
workbook-xlsx = Arbeitsmappe (XLSX)
file = Als Datei
these-exams-fhir = Diese Untersuchungen als FHIR
fhir-names = Untersuchungen als FHIR nennen alle mit Namen: Sie werden nicht angeboten, solange das weggelassen ist.
pairs-ordered = bestellte Brillen
referred = überwiesen
minutes-visit = Minuten je Besuch
outcome-2 = nach Ergebnis
clinician-2 = nach dem, der untersuchte
visits-count = { $count ->
    [one] ein Besuch
   *[other] { $count } Besuche
}
show-more = { $count ->
    [one] einen mehr zeigen
   *[other] mehr zeigen: { $count } sind nicht zu sehen
}
