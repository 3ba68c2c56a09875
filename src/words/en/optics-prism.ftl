## Prism.

horizontal = horizontal prism
vertical = vertical prism
more-base = at the reading point the right eye has { $amount } more base { $base } than the left
unreadable = “{ $text }” cannot be read as prism: write it like 1.50 up & 2.00 in, or 2.50 @ 37
no-base = “{ $text }” has no base: in, out, up or down?
two-bases = “{ $text }” has two bases along one line: which one is meant?
base-in = in
base-out = out
base-up = up
base-down = down
doubtful-initials = “{ $text }” has initials that mean another base in another language: write in, out, up or down
