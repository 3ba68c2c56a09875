## Warum ein Papier nicht entstehen kann.

sign-first = diese Untersuchung ist noch nicht unterschrieben: unterschreiben Sie zuerst
two-versions-of = es gibt zwei Fassungen ({ $kind }): legen Sie zuerst fest, welche gilt
two-versions-details = es gibt zwei Fassungen der Angaben zu dieser Person: legen Sie zuerst fest, welche gilt
changed-elsewhere = auf einem anderen Tablet wurde etwas geändert ({ $kind }), bevor die Unterschrift dort bekannt war: sehen Sie es an und unterschreiben Sie noch einmal
newer-before-printing = ein Teil dieser Untersuchung wurde mit einer neueren Version dieser App geschrieben: aktualisieren Sie vor dem Drucken
not-prescribed = es wurde entschieden, nichts zu verordnen, es gibt also keine Verordnung zu drucken
nothing-to-prescribe = keines der Augen hat ein endgültiges Glas, es gibt also nichts zu verordnen
nothing-ordered = es ist noch nichts bestellt: füllen Sie die Bestellung aus
no-glasses-came = es ist noch keine Brille eingetroffen: füllen Sie die Anpassung aus
refers-to-nobody = die Entscheidung überweist an niemanden, es gibt also keinen Brief zu schreiben
another-person = diese Untersuchung gehört zu einer anderen Person
