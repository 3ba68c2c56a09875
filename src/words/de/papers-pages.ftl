## Was ein Papier sagt, wie es auf Seiten gesetzt ist.

page-of = Seite { $page } von { $pages }
signature-of = Unterschrift: { $whom }
no-pdf = dieses Papier konnte nicht als PDF gemacht werden: { $why }
no-workbook = dieses Protokoll konnte nicht als Arbeitsmappe gemacht werden: { $why }
