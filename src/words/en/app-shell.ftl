## The frame around every page, and how what is on record reads.

locked-untouched = locked after a while untouched
reading-only = Reading only
rounds = Rounds
reads-only-why = This tablet reads and exports. Another one has to write this.
reads-only = reads only
nothing-here = nothing here
there-no-page-address = There is no page at this address.{" "}
go-rounds = Go to the rounds.
locked-for-newer = locked to take the newer version
newer-version = A newer version of the app is on this tablet. Use it between people: the vault locks first.
use-now = use it now
lock = Lock
made-up-people = Made-up people
night = Night
day = Day
room = Room { $number }
dioptres = { $size } D
