## Was die Helfer neben der Seite sagen.

score-0 = das ist sofort erraten
score-1 = das ist schnell erraten
score-2 = das hält eine Weile, aber nicht lange genug
score-3 = das ist ordentlich; ein Wort mehr macht es gut
score-4 = das ist nicht zu erraten
side-by-side = nebeneinanderliegende Tasten werden zuerst versucht
same-letters = dieselben Buchstaben noch einmal bringen fast nichts
many-use = viele verwenden das oder etwas Ähnliches
in-a-row = Buchstaben oder Ziffern in Folge werden zuerst versucht
years = Jahre und Daten werden zuerst versucht
one-word = ein Wort allein steht in jeder Liste: Fügen Sie andere hinzu
names = Namen werden zuerst versucht
because = { $how_good }: { $weakness }
add-words = { $how_good }: Fügen Sie Wörter hinzu, die nichts miteinander zu tun haben
log-not-written = dieses Protokoll konnte nicht geschrieben werden: { $error }
job-in-part = was gemacht werden sollte, kam nicht vollständig an: Versuchen Sie es noch einmal
phrase-in-part = die Passphrase kam nicht vollständig an: Versuchen Sie es noch einmal
no-such-person = diese Person ist hier nicht erfasst
