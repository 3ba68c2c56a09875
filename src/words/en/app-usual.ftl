## Words that many pages have.

people = { $count ->
    [one] 1 person
   *[other] { $count } people
}
