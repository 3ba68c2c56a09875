## Warum ein Tablet nicht hereinkommt und warum die Liste der Tablets bleibt, wie sie ist.

other-code-due = das ist nicht der Code, der jetzt kommt: Sehen Sie auf dem anderen Gerät nach dem richtigen
versions-differ = die beiden Geräte haben verschiedene Versionen dieses Programms: Aktualisieren Sie beide
code-damaged = dieser Code ist beschädigt: Zeigen Sie ihn noch einmal
name-needed = ein Tablet braucht einen Namen, mit höchstens 60 Zeichen
answer-of-another = diese Antwort gehört nicht zu dem Gerät, das gefragt hat: Beginnen Sie von vorn, und achten Sie auf jeden zwischen den beiden
packet-of-another = dieses Paket ist nicht für dieses Gerät oder nicht von dem, mit dem es sprach: Beginnen Sie von vorn
packet-senseless = das Paket des leitenden Tablets ergibt keinen Sinn: Beginnen Sie von vorn
no-sign-here = „{ $sign }“ ist keiner der Buchstaben und keine der Ziffern, die hier stehen können
line-mistyped = Zeile { $line } wurde nicht so getippt, wie sie gezeigt ist: Vergleichen Sie Zeichen für Zeichen
end-missing = am Ende fehlt etwas
device-of-other-vault = hier geht es um ein Gerät eines anderen Tresors
list-changed = die Liste der Geräte hat sich inzwischen geändert: Das sollte Änderung { $expected } sein
only-lead-changes = nur ein leitendes Gerät darf Geräte hinzufügen oder entfernen
change-unsigned = eine Änderung der Geräteliste ist nicht von dem Gerät signiert, das sie nennt
was-removed = dieses Gerät wurde entfernt und kann nur als neues zurückkommen
becomes-viewer = ein Gerät, das geschrieben hat, kann nicht lesend werden: Entfernen Sie es und nehmen Sie es neu auf
none-to-remove = es gibt kein solches Gerät zu entfernen
last-lead = das ist das letzte leitende Gerät: Machen Sie zuerst ein anderes leitend
