## Was bei einem Besuch herauskam.

glasses-prescribed = Brille verordnet
glasses-left-alone = Brille unverändert
advice-only = nur Beratung oder Überweisung
not-finished = nicht beendet
state-open = offen
state-signed = unterschrieben
state-amended = geändert
