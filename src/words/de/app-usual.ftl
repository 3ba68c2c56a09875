## Wörter, die viele Seiten haben.

people = { $count ->
    [one] 1 Person
   *[other] { $count } Personen
}
