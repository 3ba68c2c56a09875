## Prisma.

horizontal = horizontales Prisma
vertical = vertikales Prisma
more-base = im Lesepunkt hat das rechte Auge { $amount } mehr Basis { $base } als das linke
unreadable = „{ $text }“ ist nicht als Prisma zu lesen: schreiben Sie es wie 1.50 oben & 2.00 innen oder 2.50 @ 37
no-base = „{ $text }“ hat keine Basis: innen, außen, oben oder unten?
two-bases = „{ $text }“ hat zwei Basen auf einer Linie: welche ist gemeint?
base-in = innen
base-out = außen
base-up = oben
base-down = unten
doubtful-initials = „{ $text }“: die Buchstaben bedeuten in einer anderen Sprache eine andere Basis, schreiben Sie innen, außen, oben oder unten
