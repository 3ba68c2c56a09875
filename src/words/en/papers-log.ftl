## What came of a visit.

glasses-prescribed = glasses prescribed
glasses-left-alone = glasses left alone
advice-only = advice or referral only
not-finished = not finished
state-open = open
state-signed = signed
state-amended = amended
