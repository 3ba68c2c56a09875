# numpy 2.4.6, Python 3. Command: python meridian_fits.py
# Rows for tables/meridian_fits.txt: numpy.linalg.lstsq on [1, cos 2t, sin 2t], each line divided by its standard deviation;
# the covariance is that of numpy.linalg.pinv of the same matrix, the ellipse comes from numpy.linalg.eigh and the 90 % point
# of chi-square with two degrees of freedom, 4.605170185988092. The powers are made of a lens with noise from a fixed seed,
# and rounded to the eighth of a dioptre as trial lenses are. In the last rows all meridians are on one cross, and the line that says so (0
# at 45 degrees to it, with the standard deviation printed in the module) is added here by hand.
import numpy as np

rng = np.random.default_rng(20_040_817)
SETS = [
    (180, 60, 120), (30, 90, 150), (10, 70, 130), (180, 45, 90, 135), (180, 45, 90), (5, 50, 95, 140), (20, 65, 110, 155),
    (180, 90, 135), (180, 30, 60, 90, 120, 150), (15, 40, 100, 160), (175, 85, 40), (1, 46, 91, 136, 1, 91), (30, 30, 75, 120, 120),
    (88, 178, 44), (12, 34, 56, 78, 100, 122, 144, 166), (180, 25, 50), (170, 20, 60, 110), (180, 45, 90, 135, 22.5, 67.5, 112.5, 157.5),
]
CROSSED = [((180, 90), (3.50, 2.00)), ((30, 120), (-1.25, -3.75)), ((45, 137), (0.5, 0.5)), ((88, 1), (6.0, 2.5)),
           ((10, 100, 10), (2.00, 1.00, 2.50)), ((92, 178, 90, 180), (-4.0, -4.75, -4.25, -4.5))]


def row(meridians, powers, deviations, assumed=None):
    turn = np.radians(2 * np.array(meridians, float))
    design = np.column_stack([np.ones_like(turn), np.cos(turn), np.sin(turn)])
    values, weights = np.array(powers, float), 1 / np.array(deviations, float)
    if assumed:
        middle, sd = assumed
        design = np.vstack([design, [0, -np.sin(np.radians(2 * middle)), np.cos(np.radians(2 * middle))]])
        values, weights = np.append(values, 0.0), np.append(weights, 1 / sd)
    parts = np.linalg.lstsq(design * weights[:, None], values * weights, rcond=None)[0]
    pinv = np.linalg.pinv(design * weights[:, None])
    covariance = pinv @ pinv.T
    off = values - design @ parts
    spare = len(values) - 3
    rms = f"{np.sqrt(np.mean(off[:len(powers)] ** 2)):.9f}" if spare else "-"
    chi = float(np.sum((off * weights) ** 2))
    bounds = {1: 3.841, 2: 5.991, 3: 7.815, 4: 9.488, 5: 11.070}
    says = "yes" if spare and chi > bounds[spare] else "no"
    (least, most), vectors = np.linalg.eigh(covariance[1:, 1:])
    angle = np.degrees(np.arctan2(vectors[1, 1], vectors[0, 1])) % 180
    found = " ; ".join(f"{m:g} {p:g} {s:g}" for m, p, s in zip(meridians, powers, deviations))
    entries = [covariance[i, j] for i, j in ((0, 0), (0, 1), (0, 2), (1, 1), (1, 2), (2, 2))]
    ellipse = [np.sqrt(4.605170185988092 * most), np.sqrt(4.605170185988092 * least), angle]
    numbers = [f"{v:.9f}" for v in [*parts, *entries]] + [rms, says] + [f"{v:.6f}" for v in ellipse]
    if (most - least) < 1e-9:
        numbers[-1] = "-"
    print(" | ".join([found, *numbers, "reference", "numpy.linalg.lstsq, numpy 2.4.6: reference/meridian_fits.py"]))


print("# Findings (meridian power sd) parted by semicolons | M | J0 | J45 | covariance M M | M J0 | M J45 | J0 J0 | J0 J45 | J45 J45 | root mean square | disagree | 90 % ellipse: major | minor | angle | kind | source")
for meridians in SETS:
    sphere, cylinder, axis = rng.uniform(-6, 6), rng.uniform(-4, 0), rng.uniform(0, 180)
    exact = sphere + cylinder * np.sin(np.radians(np.array(meridians) - axis)) ** 2
    deviations = rng.choice([0.12, 0.18, 0.25, 0.35, 0.5], len(meridians))
    scale = 4.0 if len(meridians) == 5 or len(meridians) == 4 and rng.random() < 0.4 else 1.0
    powers = np.round((exact + scale * rng.normal(0, deviations)) * 8) / 8
    row(meridians, powers, deviations)
for meridians, powers in CROSSED:
    first = meridians[0]
    off = [(m - first + 45) % 90 - 45 for m in meridians]
    second = next(p for m, p in zip(meridians, powers) if 45 < abs(m - first) % 180 < 135)
    middle = first + (min(off) + max(off)) / 2
    sd = np.hypot(0.08, (powers[0] - second) * np.sin(np.radians(2.5)))
    row(meridians, powers, [0.25] * len(powers), (middle, sd))
