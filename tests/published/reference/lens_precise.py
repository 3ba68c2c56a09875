# mpmath 1.4.1, Python 3. Command: python lens_precise.py TABLE, where TABLE is vectors, residual, along or student
# Rows for tables/lens_vectors.txt, residual.txt, lens_along.txt and student.txt, at 40 digits. The residual is not by
# vectors: it is Thompson's construction for two cylinders crossed at an angle, tan 2b = C2 sin 2a / (C1 + C2 cos 2a).
import sys
from mpmath import atan2, betainc, cos, findroot, mp, mpf, nstr, radians, degrees, sin, sqrt

mp.dps = 40
SOURCE = "reference | {}, mpmath 1.4.1 at 40 digits: reference/lens_precise.py"
LENSES = [
    ("2.00", "-1.00", 30), ("-3.25", "-1.75", 65), ("4.00", "1.50", 20), ("0.00", "-0.25", 179), ("-0.50", "0.75", 1),
    ("12.50", "-4.25", 90), ("-18.00", "-6.00", 180), ("-1.25", "2.50", 45), ("0.75", "-1.50", 135), ("20.00", "3.75", 92),
    ("-0.25", "-0.25", 89), ("6.00", "-8.00", 3), ("-11.75", "5.25", 177), ("-40.00", "-15.00", 134), ("40.00", "15.00", 46),
    ("1.00", "-2.00", 91),
]


def signed(text):
    return text if text.startswith("-") or mpf(text) == 0 else "+" + text


def written(lens):
    sphere, cylinder, axis = lens
    return f"{signed(sphere)} / {signed(cylinder)} x {axis}"


def figure(value):
    return nstr(value, 17, strip_zeros=False) if abs(value) > mpf(10) ** -30 else "0"


def rows_vectors():
    for lens in LENSES:
        sphere, cylinder, axis = mpf(lens[0]), mpf(lens[1]), radians(mpf(lens[2]))
        m, j0, j45 = sphere + cylinder / 2, -cylinder / 2 * cos(2 * axis), -cylinder / 2 * sin(2 * axis)
        blur = sqrt(m * m + j0 * j0 + j45 * j45)
        yield f"{written(lens)} | {figure(m)} | {figure(j0)} | {figure(j45)} | {figure(blur)}", "the printed formula"


def rows_along():
    for lens, meridian in zip(LENSES, (90, 180, 45, 135, 179, 1, 30, 60, 120, 150, 89, 91, 177, 44, 136, 2)):
        power = mpf(lens[0]) + mpf(lens[1]) * sin(radians(mpf(meridian - lens[2]))) ** 2
        yield f"{written(lens)} | {meridian} | {figure(power)}", "the printed formula"


def rows_residual():
    """C x A with -C x A', A' = A + r, both plano: the sphere that the construction leaves is added, minus form."""
    for cylinder, axis, turn in (("-1.00", 90, 5), ("-2.50", 180, -3), ("-0.75", 45, 30), ("-4.00", 179, 4), ("-6.00", 135, 90),
                                 ("-3.25", 1, -2), ("-10.00", 60, 1), ("-1.75", 12, 45), ("-0.50", 120, -60), ("-2.00", 89, 2)):
        first, second, angle = mpf(cylinder), -mpf(cylinder), radians(mpf(turn))
        whole = sqrt((first + second * cos(2 * angle)) ** 2 + (second * sin(2 * angle)) ** 2)
        from_first = atan2(second * sin(2 * angle), first + second * cos(2 * angle)) / 2
        # The construction gives the resultant in plus form; the minus axis is 90 degrees from it.
        sphere = (first + second - whole) / 2 + whole
        minus_axis = (axis + degrees(from_first) + 90) % 180
        minus_axis = mpf(180) if minus_axis == 0 else minus_axis
        yield (f"pl / {cylinder} x {axis} | {turn} | +{nstr(sphere, 12)} / {nstr(-whole, 12)} x {nstr(minus_axis, 12)}",
               "Thompson's construction")


def rows_student():
    for freedom in (1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 15, 20, 25, 30, 40, 60, 120, 1000, 100000):
        inside = lambda t: 1 - betainc(mpf(freedom) / 2, mpf(1) / 2, 0, freedom / (freedom + t * t), regularized=True)
        guess = {1: 12.7, 2: 4.3, 3: 3.2}.get(freedom, 2.2)
        yield f"{freedom} | {nstr(findroot(lambda t: inside(t) - mpf('0.95'), guess), 10)}", "incomplete beta function"


for row, how in globals()["rows_" + sys.argv[1]]():
    print(f"{row} | {SOURCE.format(how)}")
