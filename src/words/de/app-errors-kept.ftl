## Was mit dem nicht stimmt, was auf diesem Gerät gespeichert ist.

log-moved = etwas anderes hat inzwischen in das Protokoll dieses Tablets geschrieben: Öffnen Sie den Tresor noch einmal
no-room = auf diesem Gerät ist kein Platz mehr: Schaffen Sie welchen, und speichern Sie noch einmal
vault-here-already = auf diesem Gerät gibt es schon einen Tresor: Er blieb, wie er ist
storage-closed = der Browser hat seinen Speicher geschlossen: Öffnen Sie den Tresor noch einmal
damaged-at = was auf diesem Gerät gespeichert ist, ist bei Eintrag { $entry } beschädigt
storage-failed = der Speicher dieses Geräts hat versagt: { $why }
of-other-vault = was auf diesem Gerät gespeichert ist, gehört zu einem anderen Tresor: Es wurde nichts geändert
own-entries-gone = die eigenen Einträge dieses Tablets sind weg, darum kann nach ihnen nichts geschrieben werden: Richten Sie das Tablet neu ein
newest-damaged = der neueste Eintrag auf diesem Tablet ist beschädigt, darum kann nach ihm nichts geschrieben werden: Richten Sie das Tablet neu ein
put-back-from-copy = dieses Tablet wurde aus einer Kopie zurückgesetzt, darum wird unter seinem alten Namen nichts geschrieben: Richten Sie es neu ein, es geht nichts verloren
only-reads = dieses Tablet liest nur: Ein leitendes kann ein anderes schreiben lassen
keys-do-not-fit = die Schlüssel auf diesem Tablet öffnen nicht, was es zuvor geschrieben hat, darum wird mit ihnen nichts geschrieben
only-a-lead = das darf nur ein leitendes Tablet
nothing-about-person = über diese Person ist nichts gespeichert
unfinished = es ist auf diesem Gerät noch nicht fertig und geht weiter, wenn der Tresor das nächste Mal geöffnet wird: { $why }
vault-cleared = auf diesem Tablet ist kein Tresor mehr: Der Browser hat ihn gelöscht
draft-unopened = ein Entwurf auf diesem Gerät kann nicht geöffnet werden
tablet-key-is-none = der Schlüssel eines Tablets ist keiner, darum kann für es nichts verschlossen werden
too-long-for-one-piece = das ist zu lang, um in einem Stück gespeichert zu werden: { $length } Byte, höchstens { $most } sind möglich
snapshot-damaged = der Auszug, der das Öffnen beschleunigt, war beschädigt: Alles wurde neu gelesen
snapshot-of-other-version = der Auszug, der das Öffnen beschleunigt, wurde von einer anderen Version gemacht: Alles wurde neu gelesen
snapshot-of-other-keys = der Auszug, der das Öffnen beschleunigt, wurde mit anderen Schlüsseln gemacht: Alles wurde neu gelesen
snapshot-does-not-fit = der Auszug, der das Öffnen beschleunigt, passt nicht zu dem, was gespeichert ist: Alles wurde neu gelesen
list-of-tablets-changed = die Liste der Tablets hat sich geändert: Alles wurde neu gelesen
from-named = von „{ $name }“
from-tablet = von Tablet { $id }
entries-missing = die Einträge { $from } bis { $through } { $whose } fehlen
entry-is = Eintrag { $entry } { $whose } { $amiss }
is-missing = fehlt
cut-or-altered = kann nicht gelesen werden: Er ist abgeschnitten oder verändert
something-else-there = kann nicht gelesen werden: An seiner Stelle steht etwas anderes
altered-after = kann nicht gelesen werden: Er wurde verändert, nachdem er geschrieben war
writer-unknown = kann nicht gelesen werden: Nichts hier zeigt, wer ihn geschrieben hat
follows-nothing = wurde gelesen, folgt aber nicht auf den vor ihm: Das Tablet wurde vielleicht kopiert
key-not-here = kann nicht gelesen werden: Der Schlüssel, unter dem er geschrieben wurde, ist nicht hier
key-does-not-fit = kann nicht gelesen werden: Sein Schlüssel passt nicht
dropped-unerased = kann nicht gelesen werden: Sein Inhalt fehlt, und kein leitendes Tablet hat ihn gelöscht
held-for-removed = Eintrag { $entry } { $whose } wird zurückgehalten: Das Tablet war aus dem Tresor entfernt, bevor er geschrieben wurde
held-for-not-allowed = Eintrag { $entry } { $whose } wird zurückgehalten: Das Tablet gehört nicht zu denen, die in diesem Tresor schreiben dürfen
and-more-of-it = { $first }; ebenso { $count ->
    [one] ein weiterer von ihm
   *[other] { $count } weitere von ihm
}
