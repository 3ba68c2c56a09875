## What changed between two lenses, and what of it wants a reason.

ask-sphere = the sphere changes by { $by } D: what is the reason? ({ $source })
stronger = stronger
weaker = weaker
ask-cylinder = the cylinder is { $size } D { $way }: what is the reason? ({ $source })
ask-new-cylinder = a cylinder of { $cylinder } D is new: what is the reason? ({ $source })
ask-axis = an oblique axis goes { $degrees } degrees round, which is { $blur } D: what is the reason? ({ $source })
ask-apart = the eyes are set { $by } D farther apart than before: what is the reason? ({ $source })
of-eye = { $eye } eye: { $sentence }
threshold-no-number = a threshold is a number from 0 up, and { $value } is none
threshold-no-source = say where the threshold comes from
no-change = no change
blur-in-all = { $blur } D of blur in all
toward-plus = plus
toward-minus = minus
sphere-toward = { $size } D toward { $way }, from { $from } to { $to }
more-plus = more plus
less-plus = less plus
less-minus = less minus
more-minus = more minus
sphere-by = { $size } D { $way }
cylinder-new = new cylinder { $cylinder }
cylinder-out = cylinder { $cylinder } taken out
cylinder-by = cylinder { $size } D { $way }
degree = degree
degrees = degrees
axis-round = axis { $degrees } { $unit } round, which is { $blur } D at this cylinder
