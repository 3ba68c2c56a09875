## What somebody else found, taken from a file.

heading = Earlier findings
from-file = from a file
vault = Vault
pick-file = Pick a file of what was found elsewhere, saved as CSV, one row an examination. The good rows stand with their people as last time’s findings. Nothing is written down before you say so.
bare-number = an acuity that is a number alone, as 0.3, is
files-like-this = files like this one
read-as-kept = Read as “{ $name }”, as it was kept.
read-headings-anew = read its headings anew
forget-reading = forget this way of reading
keep-as = keep this for the next file of its kind, as
keep-columns = keep these columns
being-taken = being taken …
taken = Taken
aside-after = Nothing of these rows was taken. Save them, put them right, and read them again.
take-findings = { $count ->
    [one] take this one exam’s findings
   *[other] take the findings of these { $count } exams
}
findings-of-exams = { $count ->
    [one] One exam’s findings
   *[other] The findings of { $count } exams
}
of-people = { $count ->
    [one] of one person
   *[other] of { $count } people
}
rows-aside = { $count ->
    [0] no row was kept aside
    [one] one row was kept aside
   *[other] { $count } rows were kept aside
}
taken-over = { $findings } { $people } stand with them as not examined here; { $aside }.
