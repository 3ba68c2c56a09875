## Warum Bytes kein Eintrag sind, und warum ein Eintrag nicht angenommen wurde.

too-long = { $bytes } Bytes sind mehr, als ein Eintrag haben darf ({ $limit })
not-readable = die Bytes sind nicht bis zum Ende lesbar
not-readable-at = die Bytes sind ab Byte { $at } nicht mehr lesbar
too-deep = die Bytes sind zu tief verschachtelt
trailing = nach dem Ende des Eintrags folgen { $bytes } Bytes
envelope = die Hülle des Eintrags ist nicht zu lesen: { $why }
body = der Inhalt dieses Eintrags ({ $kind }) ist nicht zu lesen: { $why }
layouts-from-one = die Fassungen sind ab 1 gezählt
clash = zwei verschiedene Einträge heißen { $entry }: der erste bleibt
