## Warum ein Eintrag oder eine notierte Brille nicht gelesen werden kann.

too-long = { $bytes } Byte sind mehr, als ein Eintrag haben darf ({ $limit })
not-cbor = die Bytes sind nicht bis zum Ende lesbar
not-cbor-at = die Bytes sind nur bis Byte { $at } lesbar
too-deep = die Bytes sind zu tief verschachtelt
trailing = { $bytes } Byte folgen auf das Ende des Eintrags
envelope = die Hülle des Eintrags kann nicht gelesen werden: { $why }
body = der Inhalt dieses Eintrags ({ $kind }) kann nicht gelesen werden: { $why }
clash = zwei verschiedene Einträge heißen beide { $entry }: Der erste gilt
jotted-no-eye = es nennt kein Auge: Schreiben Sie R oder L vor jedes Glas
jotted-long = es ist länger als { $most } Zeichen: Das ist keine Brille
jotted-before = „{ $text }“ steht vor dem ersten Auge: Beginnen Sie mit R oder L
jotted-twice = das Auge { $eye } steht zweimal da
jotted-lens = Auge { $eye }: { $why }
jotted-add = Nahzusatz: { $why }
jotted-adds = es hat mehr als einen Nahzusatz für ein Auge
