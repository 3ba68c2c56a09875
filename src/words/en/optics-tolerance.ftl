## Finished glasses beside their order.

power-along = { $eye } power along { $along }
cylinder-of = { $eye } cylinder
axis-of = { $eye } axis
addition-of = { $eye } addition
segment-of = { $eye } segment height
horizontal-prism = horizontal prism of the pair
vertical-prism = vertical prism of the pair
within = within
within-borderline = within, but borderline
outside-by = outside by { $by }
limit-remembered = {" "}(the limit is from memory, not checked against the standard)
compared = { $what }: ordered { $ordered }, measured { $measured }, { $off } off where { $limit } is allowed: { $stands }{ $basis }
not-measured = ordered, but not measured
not-ordered = measured, but not ordered
no-limit = the table has no limit for it
all-within = within tolerance
all-borderline = within tolerance, but borderline
all-outside = outside tolerance
limits-remembered = ; limits from memory, to be checked against the standard
by-standard = { $stands } by { $standard }{ $basis }{ $left-out }
left-out = { $count ->
    [0] {""}
    [one] ; 1 thing not judged
   *[other] ; { $count } things not judged
}
single-vision-and-multifocal = single vision and multifocal
progressive = progressive
seen-in-reproductions = two trade reproductions: a one-page quick reference guide and an opticianry study page
seen-in-memory = memory; the standard itself has not been opened
