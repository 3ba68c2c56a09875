# numpy 2.x, Python 3. Command: python prism_matrix.py
# Rows for tables/prism_decentred.txt and tables/prism_wanted.txt. The power matrix is built by turning a diagonal one,
# F = R diag(S, S + C) R', which is another way than the entries printed in the module, and is inverted by numpy.
import numpy as np

LENSES = [
    ("right", -1.00, -2.00, 45, 0.0, 10.0), ("right", 3.00, -2.00, 30, 4.0, 0.0), ("left", 3.00, -2.00, 30, 4.0, 8.0),
    ("left", -6.00, -1.50, 60, -2.5, 0.0), ("right", 1.25, -3.75, 17, 2.0, -9.0), ("left", -8.50, 4.25, 112, 1.0, 10.0),
    ("right", 0.00, -2.50, 135, 5.0, 0.0), ("left", 10.75, -0.50, 165, -3.0, 4.0), ("right", -2.50, 5.00, 135, 0.0, 12.0),
    ("left", -4.00, -2.00, 140, 6.0, 0.0), ("right", 2.00, -4.00, 135, 0.0, -5.0),
]


def matrix(sphere, cylinder, axis):
    angle = np.radians(axis)
    turn = np.array([[np.cos(angle), -np.sin(angle)], [np.sin(angle), np.cos(angle)]])
    return turn @ np.diag([sphere, sphere + cylinder]) @ turn.T


def lens(sphere, cylinder, axis):
    return f"{sphere:+.2f} / {cylinder:+.2f} x {axis}"


for eye, sphere, cylinder, axis, inward, up in LENSES:
    toward = 1.0 if eye == "right" else -1.0
    h, v = matrix(sphere, cylinder, axis) @ np.array([toward * inward, up]) / 10.0
    print(f"{eye} | {lens(sphere, cylinder, axis)} | {inward:g} | {up:g} | {h:.4f} | {v:.4f} | 0.0001 | reference | "
          "turned diagonal matrix, numpy: reference/prism_matrix.py")

print()
for eye, sphere, cylinder, axis, h, v in [
    ("right", 3.00, -2.00, 30, 1.0, 0.5), ("left", -6.00, -1.50, 60, -2.0, 0.0), ("right", 2.00, -4.00, 135, 1.0, 0.0),
    ("left", 8.00, 1.25, 88, 0.75, -1.5), ("right", -4.50, -3.00, 150, 0.0, 2.0),
]:
    toward = 1.0 if eye == "right" else -1.0
    x, y = 10.0 * np.linalg.solve(matrix(sphere, cylinder, axis), [h, v])
    print(f"{eye} | {lens(sphere, cylinder, axis)} | {h:g} | {v:g} | {toward * x:.4f} | {y:.4f} | 0.0001 | reference | "
          "inverse of the turned matrix, numpy: reference/prism_matrix.py")
