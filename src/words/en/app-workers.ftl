## What the workers beside the page say.

score-0 = this is guessed at once
score-1 = this is guessed quickly
score-2 = this holds out for a while, and not long enough
score-3 = this is fair; one more word makes it good
score-4 = this is out of reach of guessing
side-by-side = keys that lie side by side are tried first
same-letters = the same letters again add next to nothing
many-use = many people use it or something like it
in-a-row = letters or digits in a row are tried first
years = years and dates are tried first
one-word = one word alone is in every list: add others
names = names are tried first
because = { $how_good }: { $weakness }
add-words = { $how_good }: add words that have nothing to do with one another
log-not-written = this log could not be written: { $error }
job-in-part = what was to be made did not arrive whole: try again
phrase-in-part = the passphrase did not arrive whole: try again
no-such-person = this person is not on record here
