## What a file tells whoever gets it.

holds-whole-record = The file holds the whole record of { $name }: name, birth, contacts and { $exams }. As a paper it has every version of everything, with who wrote it, when, and why it was changed; for another system it has what holds now and has a place in that format, with who signed and changed it. { $clear }
holds-page = The file holds what stands on this page, with the person’s { $told }. { $clear }
holds-log-bare = The file holds { $visits } without names, ages, numbers or rooms; few people at one home may still be told from it. { $clear }
holds-log = The file holds { $visits } with what says who somebody is: { $personal }. { $clear }
holds-exams = The file holds everything that was written down in { $exams }, with names, dates of birth and numbers. { $clear }
and-last = { $first } and { $last }
in-the-clear = It is not encrypted any more: whoever gets the file can read it.
visits = { $count ->
    [one] one visit
   *[other] { $count } visits
}
exams = { $count ->
    [one] one exam
   *[other] { $count } exams
}
