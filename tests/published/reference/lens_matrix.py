# numpy 2.4.6, Python 3. Command: python lens_matrix.py TABLE, where TABLE is principal, sums, means, thick or spread
# Rows for tables/lens_principal.txt, sums.txt, lens_means.txt, thick_toric.txt and spread.txt. A power matrix is a diagonal
# one turned, R diag(S, S + C) R', not the entries printed in the module; lenses come back by numpy's eigenvectors.
import sys
import numpy as np

SOURCE = "reference | {}, numpy 2.4.6: reference/lens_matrix.py"
LENSES = [
    (2.00, -1.00, 30), (-3.25, -1.75, 65), (4.00, 1.50, 20), (0.00, -0.25, 179), (-0.50, 0.75, 1), (12.50, -4.25, 90),
    (-18.00, -6.00, 180), (-1.25, 2.50, 45), (0.75, -1.50, 135), (20.00, 3.75, 92), (-0.25, -0.25, 89), (6.00, -8.00, 3),
    (-11.75, 5.25, 177), (1.00, -2.00, 134), (-35.00, -10.00, 46), (0.12, -0.12, 91), (38.00, 2.00, 178), (-2.00, 4.00, 7),
    (3.50, -0.50, 120), (-7.25, -3.25, 150),
]


def matrix(lens):
    sphere, cylinder, axis = lens
    angle = np.radians(axis)
    turn = np.array([[np.cos(angle), -np.sin(angle)], [np.sin(angle), np.cos(angle)]])
    return turn @ np.diag([sphere, sphere + cylinder]) @ turn.T


def written(lens):
    sphere, cylinder, axis = lens
    return f"{sphere:+.2f} / {cylinder:+.2f} x {axis}" if sphere else f"0.00 / {cylinder:+.2f} x {axis}"


def principal(power):
    """Least power, most power, and the meridian of the most plus power in degrees, 0 written 180."""
    values, vectors = np.linalg.eigh(power)
    x, y = vectors[:, 1]
    return values[0], values[1], np.degrees(np.arctan2(y, x)) % 180.0 or 180.0


def exact(power):
    """Minus form to nine decimals: the sphere acts along the axis, so the axis is the most plus meridian."""
    least, most, meridian = principal(power)
    return f"{most:+.9f} / {least - most:+.9f} x {meridian:.9f}"


def rows_principal():
    for lens in LENSES:
        power = matrix(lens)
        least, most, meridian = principal(power)
        yield (f"{written(lens)} | {power[0, 0]:.10f} | {power[0, 1]:.10f} | {power[1, 1]:.10f} | {np.trace(power):.10f} | "
               f"{np.linalg.det(power):.8f} | {most:.10f} | {least:.10f} | {meridian:.6f}"), "eigenvalues of a turned matrix"


def rows_sums():
    for one, other in zip(LENSES, LENSES[1:] + LENSES[:1]):
        yield f"{written(one)} | {written(other)} | {exact(matrix(one) + matrix(other))}", "eigenvectors of the sum"
    pairs = [((0.0, -2.0, 180), (0.0, -2.0, 45)), ((0.0, 1.0, 179), (0.0, -1.0, 1)), ((0.0, 3.0, 90), (0.0, 2.0, 60)),
             ((-1.0, -1.0, 10), (-1.0, -1.0, 170)), ((5.0, -2.5, 88), (-5.0, 2.0, 93)), ((0.0, 0.5, 135), (0.0, 0.5, 1))]
    for one, other in pairs:
        yield f"{written(one)} | {written(other)} | {exact(matrix(one) + matrix(other))}", "eigenvectors of the sum"


READINGS = [
    [(-1.00, -0.50, 175), (-1.25, -0.75, 5), (-1.50, -0.50, 10)],
    [(2.00, -1.00, 30), (2.25, -1.25, 35), (1.75, -0.75, 28), (2.00, -1.25, 33)],
    [(-6.50, -2.00, 92), (-6.25, -2.25, 88), (-6.75, -1.75, 90), (-6.50, -2.00, 91), (-6.50, -2.25, 89)],
    [(0.25, -0.25, 180), (0.00, -0.25, 90)],
    [(11.00, -3.00, 179), (11.50, -3.25, 1), (11.25, -2.75, 2)],
    [(-0.50, 0.75, 45), (-0.75, 1.00, 50), (-0.25, 0.50, 40), (-0.50, 1.00, 47), (-0.50, 0.75, 44), (-0.75, 1.25, 46)],
    [(-3.00, -1.00, 134), (-3.25, -1.00, 136), (-2.75, -0.75, 135)],
    [(4.00, -0.50, 90), (4.25, -0.75, 85), (4.50, -0.50, 95), (4.00, -0.25, 80)],
]


def rows_means():
    for readings in READINGS:
        mean = sum(matrix(lens) for lens in readings) / len(readings)
        yield f"{' ; '.join(map(written, readings))} | {exact(mean)}", "eigenvectors of the mean"


def rows_spread():
    for readings in READINGS:
        # M, J0 and J45 read off the matrix: half its trace, half the difference of its diagonal, its other entry.
        powers = [matrix(lens) for lens in readings]
        vectors = [[np.trace(p) / 2, (p[0, 0] - p[1, 1]) / 2, p[0, 1]] for p in powers]
        (mm, m0, m45), (_, oo, o45), (_, _, qq) = np.cov(np.array(vectors).T, ddof=1)
        figures = " | ".join(f"{figure:.12f}" for figure in (mm, m0, m45, oo, o45, qq))
        yield f"{' ; '.join(map(written, readings))} | {figures}", "numpy.cov"


def rows_thick():
    surfaces = [
        ((6.00, 2.00, 90), (-4.00, -1.00, 180), 5.0, 1.523), ((8.00, 1.50, 30), (-3.00, -2.00, 75), 6.0, 1.498),
        ((3.00, 0.50, 179), (-9.00, -3.25, 1), 1.5, 1.586), ((12.00, 2.75, 45), (-1.00, 1.00, 135), 9.0, 1.498),
        ((14.00, -4.00, 120), (-2.00, -0.50, 90), 10.0, 1.74), ((0.00, 1.00, 60), (-12.00, 2.00, 150), 1.0, 1.6),
        ((5.50, -1.25, 90), (-6.25, -1.25, 90), 2.2, 1.67), ((-10.00, -4.00, 17), (-10.00, -4.00, 107), 2.0, 1.9),
        ((40.00, 5.00, 12), (-30.00, -7.00, 100), 8.0, 1.5), ((16.25, 0.75, 134), (-6.00, 3.00, 46), 7.5, 1.523),
    ]
    for front, back, thickness, index in surfaces:
        reduced = thickness / 1000 / index
        through = lambda power: power @ np.linalg.inv(np.eye(2) - reduced * power)
        back_vertex = through(matrix(front)) + matrix(back)
        front_vertex = through(matrix(back)) + matrix(front)
        yield (f"{written(front)} | {written(back)} | {thickness:g} | {index:g} | {exact(back_vertex)} | "
               f"{exact(front_vertex)}"), "F1 (I - t/n F1)^-1 + F2"


for row, how in globals()["rows_" + sys.argv[1]]():
    print(f"{row} | {SOURCE.format(how)}")
