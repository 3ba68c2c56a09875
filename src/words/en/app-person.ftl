## A person's page: what is known, the years, the lenses, findings from elsewhere.

fhir-summary = findings from another system (a FHIR file)
nothing-read = Nothing was read: { $sentence }.
fhir-intro = A prescription for glasses, or a bundle of exams, as FHIR R4 in JSON. Nothing is written down before you say so.
file = file
fhir-not-utf-8 = the file is not written in UTF-8, as every FHIR file is
what-file-holds = What the file holds
right = right
left = left
fhir-here = Stands among the findings below, as not examined here.
fhir-take = take it as an earlier finding
know-before-door = To know before the door
change = Change
only-name-known = Nothing beside the name is written down yet.
last-two = the last two exams beside one another
eye-plane = { $eye } eye, cylinders of the last exams
last-lenses = The last lenses
lenses-rings = Findings that lie close together differ by little, whatever their axes say. Each ring is a quarter of a dioptre.
nobody-address = nobody by this address
sums = Sums
rounds = Rounds
no-exam-yet = No exam is written down yet.
go-exam = Go on with the exam
on-record-too = On record as { $name } too, as { $author } said on { $moment }.
they-two-after-all = they are two after all
same-person = is the same person
same-shown-here = Both exams are shown here from then on, and this page’s details hold. It can be taken back.
find-other = find the other by name, room, place or birth
not-examined-here = not examined here
not-signed = not signed
signed = signed
amended = amended
lens = lens
acuity = acuity
prescription = Prescription
papers = Papers
over-years = Over the years
strip = over the years, from exam to exam
same-tables = the same as tables
better-is-up = , better is up
not-taken = { $count ->
    [one] one thing not taken, because it belongs to no prescription
   *[other] { $count } things not taken, because it belongs to no prescription
}
no-place-of-its-own = { $count ->
    [one] one thing with no place of its own: kept in words with the decision
   *[other] { $count } things with no place of its own: kept in words with the decision
}
lines-differ = { $count ->
    [0] nothing differs
    [one] 1 line differs
   *[other] { $count } lines differ
}
same-twice = { $count ->
    [0] the same person twice?
    [one] the same person twice? one other is called alike and born on the same day
   *[other] the same person twice? { $count } others are called alike and born on the same day
}
whole-record = the whole record of this person, as a file
readable-pdf = Readable (PDF)
other-system-fhir = For another system (FHIR)
no-such-person = this tablet holds no such person
