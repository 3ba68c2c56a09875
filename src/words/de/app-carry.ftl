## Mitnahmedateien: warum eine abgelehnt wird und was aus einer kam.

no-carry-file = das ist keine Mitnahmedatei
unknown-format = diese Mitnahmedatei hat das Format { $format }, das diese Version nicht kennt: Aktualisieren Sie diese
damaged = diese Mitnahmedatei ist beschädigt oder abgeschnitten: Lassen Sie sie noch einmal machen oder kopieren
made-wrongly = diese Mitnahmedatei wurde falsch gemacht, bei Byte { $at }: Lassen Sie sie mit der jetzigen Version noch einmal machen
of-other-vault = diese Mitnahmedatei ist aus einem anderen Tresor, zu dem dieses Gerät keinen Schlüssel hat
forged = Eintrag { $entry } von Tablet { $id } in dieser Mitnahmedatei ist nicht echt: Es wurde nichts daraus übernommen
stranger = Tablet { $id } in dieser Mitnahmedatei gehört nicht zu diesem Tresor: Es wurde nichts daraus übernommen
nothing-lacking = es gibt hier nichts, was der anderen Seite fehlt
exported = { $count ->
    [one] 1 Eintrag
   *[other] { $count } Einträge
}, { $kilobytes } kB
left-out = ; von Tablet { $id } nichts ab Eintrag { $from }, weil das hier nicht gelesen werden kann
entries = { $count ->
    [one] 1 Eintrag
   *[other] { $count } Einträge
}
of-tablets = { $count ->
    [one] von 1 Tablet
   *[other] von { $count } Tablets
}
nothing-taken = aus dieser Mitnahmedatei wurde nichts übernommen
nothing-new = nichts in dieser Mitnahmedatei ist neu, es ist schon hier: { $entries } { $tablets }
all-new = { $entries } { $tablets }, alle neu
so-many-new = { $entries } { $tablets }, { $count ->
    [one] 1 war neu
   *[other] { $count } waren neu
}
gap = von Tablet { $id } wurde nichts übernommen, weil seine Einträge { $from } bis { $through } fehlen: Bitten Sie um eine Datei mit allem
fork = von Tablet { $id } wurde nichts übernommen, weil sein Eintrag { $entry } hier ein anderer ist: Es wurde vielleicht kopiert
newer-list = die Liste der Tablets darin ist neuer und gilt jetzt
other-list = die Liste der Tablets darin ist eine andere als die hier und wurde nicht übernommen
