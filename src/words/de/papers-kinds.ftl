## Die Papiere, und für wen sie sind.

prescription = Verordnung
order = Bestellung für die Werkstatt
referral = Überweisungsbrief
care-staff = Notiz für das Pflegepersonal
person = Notiz für die Person
summary = Besuchsbericht
fitting = Anpass- und Toleranzblatt
whom-prescription = für die Person und für alle, die ihre Brille fertigen
whom-order = für alle, die die Gläser schleifen und in die Fassung einsetzen
whom-referral = für die Arztpraxis oder Augenklinik, die als Nächstes nachsieht
whom-care-staff = für alle, die sie Tag und Nacht betreuen
whom-person = für die Person und die Angehörigen, in großer Schrift und einfachen Worten
whom-summary = für die Hausarztpraxis oder für die nächste Untersuchung
whom-fitting = für die Akte, wenn die Brille eingetroffen ist
