## Die Wahl der Sprache, in den Einstellungen und vor dem Öffnen des Tresors.

heading = Sprache
choose = die Sprache dieses Tablets
only-here = Nur dieses Tablet. Das Dezimalzeichen folgt der Sprache, solange Sie keines gewählt haben.
