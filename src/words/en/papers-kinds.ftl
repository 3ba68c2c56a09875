## The papers, and whom each is for.

prescription = prescription
order = order for the lens laboratory
referral = referral letter
care-staff = note for the care staff
person = note for the person
summary = visit summary
fitting = fitting and tolerance sheet
whom-prescription = for the person, and for whoever makes their glasses
whom-order = for whoever grinds the lenses and fits them into the frame
whom-referral = for the doctor or the eye clinic that is to see them next
whom-care-staff = for those who look after them day and night
whom-person = for the person and the family, in large print and plain words
whom-summary = for the family doctor, or for whoever examines next
whom-fitting = for the clinic’s file, when the glasses have come
