## Findings from another system’s file: what was found in it, and what to look at.

no-json = this is not a FHIR file in JSON: line { $line }, place { $column }
no-prescription = this file holds no prescription for glasses
taken-from-elsewhere = taken from elsewhere: { $what }
no-day = { $place }: it does not say on which day it was written
fault = { $place }: { $sentence }
prescription = { $who }, written on { $day }: { $holds }
nobody-named = a person whom the file does not name
chart-stands-in = it does not say how far away the chart was: { $far } m stands in
of-prescription = prescription { $number }: { $sentence }
found-beside = { $count ->
    [one] one finding of the same visit is kept in words
   *[other] { $count } findings of the same visit are kept in words
}
not-done = not done: { $why }
left-is = { $place } is { $value }
left-says = { $place } is “{ $words }”
mind-status = mind: its status is “{ $status }”
lenses = { $count ->
    [0] no lens
    [one] one lens
   *[other] { $count } lenses
}
lenses-and-rest = { $lenses }; { $count ->
    [one] one thing has no place here and is kept in words
   *[other] { $count } things have no place here and are kept in words
}
which-eye = { $place }: it does not say which eye it is for
contact-lens = { $place }: a contact lens is not taken for a lens of glasses
second-lens = { $place }: a second lens for the { $eye } eye
no-sphere = it has no sphere
no-axis = its cylinder has no axis
additions-differ = the additions of the eyes differ: neither was taken
addition-of = addition of the { $eye } eye
addition-distance = it does not say for which distance the addition is: { $cm } cm stands in
