## Rounds, places and visits.

to-see = to see
under-way = under way
done = done
nobody-yet = nobody yet
notice-not-given = notice to { $to } is not given yet
ask-place-name = a place needs a name to be found by
ask-unit-name = a unit needs a name, such as a floor
two-units = two units are called { $name }
ask-notice-to = say to whom the notice goes
asleep = asleep
out = out
declined = declined
put-off = put off
