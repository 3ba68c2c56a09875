## The letter of referral.

opening = Thank you for seeing { $name }, whom I examined at { $place }, where they live.
opening-where-they-live = Thank you for seeing { $name }, whom I examined where they live.
closing = Please let me know what you find and what you decide.
to = to
what-was-found = What was found
title = Referral
right = right
left = left
chart = chart
reads-with = reads { $label }
lens-for-far = lens for far
reads-with-that = reads with that
pressure = pressure, { $label }
drops = drops, { $label }
urgency = urgency: { $word }
in-turn = to be seen in turn
ahead-of-turn = to be seen ahead of their turn
within-days = to be seen within days, as the local rules say
today = to be seen today
allergies = allergies: { $words }
medicines = medicines: { $words }
please-mind = please mind
drops-given = drops given: { $given }
air-alone = the pressure was taken with a puff of air only, not by applanation
