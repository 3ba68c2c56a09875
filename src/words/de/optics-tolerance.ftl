## Fertige Brillen neben ihrer Bestellung.

power-along = Wirkung { $eye } längs { $along }
cylinder-of = Zylinder { $eye }
axis-of = Achse { $eye }
addition-of = Nahzusatz { $eye }
segment-of = Nahteilhöhe { $eye }
horizontal-prism = horizontales Prisma des Paars
vertical-prism = vertikales Prisma des Paars
within = innerhalb
within-borderline = innerhalb, aber grenzwertig
outside-by = um { $by } außerhalb
limit-remembered = {" "}(die Grenze ist aus dem Gedächtnis, nicht an der Norm geprüft)
compared = { $what }: bestellt { $ordered }, gemessen { $measured }, { $off } daneben, wo { $limit } erlaubt sind: { $stands }{ $basis }
not-measured = bestellt, aber nicht gemessen
not-ordered = gemessen, aber nicht bestellt
no-limit = die Tabelle hat dafür keine Grenze
all-within = innerhalb der Toleranz
all-borderline = innerhalb der Toleranz, aber grenzwertig
all-outside = außerhalb der Toleranz
limits-remembered = ; Grenzen aus dem Gedächtnis, an der Norm zu prüfen
by-standard = { $stands } nach { $standard }{ $basis }{ $left-out }
left-out = { $count ->
    [0] {""}
    [one] ; 1 Angabe nicht beurteilt
   *[other] ; { $count } Angaben nicht beurteilt
}
single-vision-and-multifocal = Einstärken- und Mehrstärkengläser
progressive = Gleitsichtgläser
seen-in-reproductions = zwei Wiedergaben aus der Praxis: eine einseitige Kurzübersicht und eine Lernseite der Augenoptik
seen-in-memory = dem Gedächtnis; die Norm selbst wurde nicht aufgeschlagen
