# numpy 2.4.6, Python 3. Command: python over_lens.py
# Rows for tables/over_lens.txt by 2 x 2 power matrices alone: the over-lens's own net N becomes N (1 - d N)^-1 at the worn lens,
# with numpy.linalg.inv, and is added to the worn lens's matrix; sphere, cylinder and axis come from numpy.linalg.eigh.
import numpy as np


def matrix(sphere, cylinder, axis):
    angle = np.radians(axis)
    across = np.array([-np.sin(angle), np.cos(angle)])
    return sphere * np.eye(2) + cylinder * np.outer(across, across)


def written(lens):
    (least, most), vectors = np.linalg.eigh(lens)
    axis = np.degrees(np.arctan2(vectors[1, 1], vectors[0, 1])) % 180
    return f"{most:+.9f} / {least - most:+.9f} x {axis if axis > 1e-7 else 180:.7f}"


def text(sphere, cylinder, axis):
    return f"{sphere:+.2f} / {cylinder:+.2f} x {axis:g}" if cylinder else f"{sphere:+.2f}"


ROWS = [
    ((2.50, -1.00, 90), (0.50, 0.0, 180), 1.50, 67, 10), ((-3.25, -1.75, 65), (1.25, -0.50, 20), 0.0, 50, 12),
    ((-8.50, -2.00, 175), (2.00, -0.75, 40), 0.0, 67, 15), ((11.75, -0.50, 10), (-1.00, -1.25, 100), 2.00, 50, 8),
    ((0.00, -1.50, 45), (3.50, -1.50, 135), 0.0, 40, 5), ((1.00, 2.00, 30), (0.75, 1.00, 60), 1.50, 66, 14),
    ((-14.00, -4.00, 90), (4.00, -3.00, 92), 0.0, 33, 20), ((-0.75, -0.25, 5), (5.50, -0.25, 120), 0.0, 20, 3),
    ((4.25, -3.75, 150), (1.75, -2.25, 80), 0.0, 80, 0), ((-2.00, 0.0, 180), (-4.00, -1.00, 15), 1.25, 80, 25),
]
print("# Over a worn lens: worn | neutral over it | working lens in the back cell, 0 for none | cm | mm between | refraction at the worn lens | kind | source")
for worn, over, working, cm, gap in ROWS:
    net = matrix(*over) + (working - 100 / cm) * np.eye(2)
    moved = net @ np.linalg.inv(np.eye(2) - gap / 1000 * net)
    print(f"{text(*worn)} | {text(*over)} | {working:g} | {cm} | {gap} | {written(matrix(*worn) + moved)} | reference | "
          "power matrices, numpy 2.4.6: reference/over_lens.py")
