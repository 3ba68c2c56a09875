## Why a paper can’t be made.

sign-first = this exam is not signed yet: sign it first
two-versions-of = there are two versions of the { $kind }: settle which one holds first
two-versions-details = there are two versions of this person's details: settle which one holds first
changed-elsewhere = the { $kind } was changed on another tablet before the signature was known there: look at it and sign again
newer-before-printing = part of this exam was written by a newer version of this app: update before printing
not-prescribed = the decision is not to prescribe, so there is no prescription to print
nothing-to-prescribe = neither eye has a final lens, so there is nothing to prescribe
nothing-ordered = nothing is ordered yet: fill in the order
no-glasses-came = no glasses came yet: fill in the fitting
refers-to-nobody = the decision refers to nobody, so there is no letter to write
another-person = this exam is of another person
