## The whole record of a person, as a paper.

title = Whole record
foot = { $name }, whole record, { $day }
written-on = written on
what-this-is = what this is
exams = { $count ->
    [0] no exam
    [one] one exam
   *[other] { $count } exams
}
about = Everything that is written down of this person: details, rounds and { $exams }, oldest first. Where something was written more than once, every version stands here, with who wrote it and when.
written-by = written by { $author }, { $at }
who-person-is = Who the person is
version-written = version { $number } of { $all }, { $wrote }
said-one-person = two records were said to be one person by { $author }, { $at }{ $why }
lives-at = lives at
room = room
before-knocking = before knocking
right-left = right { $right }, left { $left }
rounds = Rounds
called-off = called off
mark-taken-back = the mark taken back
exam-of = Exam of { $day }{ $place }
elsewhere-of = Findings from elsewhere of { $day }{ $place }
not-all-of-it = not all of it
unread = a newer version of the app wrote something into this exam that could not be read for this paper
signed-by = signed by { $signer }, { $at }
nothing-filled-in = nothing filled in
version-holds = version { $number } of { $all }, holds;{" "}
version-replaced = version { $number } of { $all }, replaced;{" "}
and-signed-by = ; signed by { $signers }
newer-question = a newer question
of-eye = , { $eye } eye
second-look = Asked by the second look, and answered
