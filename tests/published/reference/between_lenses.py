# mpmath 1.4.1 on Python 3.11: python3 between_lenses.py
# What lies between two lenses, as the length of the difference of their power matrices over the square root of 2, to 40
# digits. A power matrix is the curvature of the lens in x and y: another road to the figure than mean sphere and crossed
# cylinders. The rows are: old | new | whole difference in dioptres.
from mpmath import mp, mpf, pi, sin, cos, sqrt

mp.dps = 40

PAIRS = [
    ("+1.00/-1.50x80", "+1.75/-1.50x90"),
    ("-3.25/-1.75x65", "-3.00/-2.25x70"),
    ("+2.00/-0.75x175", "+2.00/-0.75x5"),
    ("+0.50/-0.50x45", "+0.25/-0.50x135"),
    ("-1.00/-2.00x30", "+0.50/-1.00x20"),
    ("+4.00/-0.25x10", "+4.00/-3.00x100"),
    ("-6.00/-3.00x15", "-6.50/-2.50x12"),
    ("+1.25/-1.00x90", "+1.25/-1.25x85"),
]


def matrix(text):
    sphere, rest = text.split("/")
    cylinder, axis = rest.split("x")
    s, c, a = mpf(sphere), mpf(cylinder), mpf(axis) * pi / 180
    return (s + c * sin(a) ** 2, -c * sin(a) * cos(a), s + c * cos(a) ** 2)


for old, new in PAIRS:
    xx, xy, yy = (n - o for n, o in zip(matrix(new), matrix(old)))
    whole = sqrt((xx**2 + 2 * xy**2 + yy**2) / 2)
    print(f"{old} | {new} | {mp.nstr(whole, 12)} | reference | mpmath 1.4.1, between_lenses.py")
