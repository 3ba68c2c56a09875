## Acuity: what is read, and what is wrong with what was written.

label-of-line = label of the line
counts-fingers = counts fingers at { $cm } cm
hand-movements = sees hand movements
sees-light = sees light
no-light = sees no light
no-such-line = the chart has no 6/{ $line } line: its lines are 6/60, 36, 24, 18, 12, 9, 6, 5 and 4
print-at = { $print } at { $cm } cm
angle-resolved = angle resolved
decimal-acuity = decimal acuity
distance = distance
size-of-letter = size of the letter
nothing-written = no acuity is written here
stops-short = “{ $text }” stops short: { $wanted } is missing
cannot-be-read = “{ $text }” cannot be read from “{ $rest }” on: { $wanted } goes there
fingers-where = “{ $text }” says not how far away: write it like CF 50 cm
wanted-acuity = a line like 6/9, a decimal like 0.5, or CF, HM, PL or NPL
wanted-denominator = the number under the stroke
wanted-letters = a count of letters like −2 or +1
nothing-more = nothing more
wanted-how-far = how far away
wanted-unit = cm or m
wanted-centimetres = a whole number of centimetres
wanted-number = a number
wanted-logmar = logMAR, for only that has a sign,
