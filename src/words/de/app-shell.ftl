## Der Rahmen um jede Seite, und wie sich liest, was aufgezeichnet ist.

locked-untouched = gesperrt, weil eine Weile nichts berührt wurde
reading-only = Nur lesen
rounds = Runden
reads-only-why = Dieses Tablet liest und gibt aus. Schreiben muss das ein anderes.
reads-only = nur lesen
nothing-here = nichts hier
there-no-page-address = Unter dieser Adresse gibt es keine Seite.{" "}
go-rounds = Zu den Runden.
locked-for-newer = gesperrt, um die neuere Fassung zu nehmen
newer-version = Eine neuere Fassung der App liegt auf diesem Tablet. Nehmen Sie sie zwischen zwei Personen: Der Tresor wird vorher gesperrt.
use-now = jetzt nehmen
lock = Sperren
made-up-people = Ausgedachte Personen
night = Nacht
day = Tag
room = Zimmer { $number }
dioptres = { $size } dpt
