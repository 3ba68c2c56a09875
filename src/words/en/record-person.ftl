## What is known of a person.

born-in-future = the date of birth lies in the future
stated-in-future = the age was stated in a year that has not come yet
too-old = that makes the person more than { $most } years old
hearing = hearing
language = language
looks-at = looks at
family-doctor = family doctor
ask-or-tell = ask or tell
known-as = known as
ask-name = a person needs at least one name
ask-number = say the number, or take the line out
ask-issuer = say who gave the number { $number }
ask-contact = say who the contact is, or take the line out
no-distance = “{ $text }” is no distance: write 2.8 m or 35 cm
ask-looked-at = say what is looked at, or take the line out
looked-at-range = what is looked at stands between 5 cm and 20 m away
at-distance = {" "}at { $distance }
television = television
reading = reading
knitting-there = knitting
puzzles = puzzles or cards
screen-in-hand = a screen in the hand
window = the window
