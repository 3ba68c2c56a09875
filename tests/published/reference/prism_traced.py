# optiland 0.6.3, numpy 2.x, Python 3. Command: python prism_traced.py
# Rows for tables/prism_decentred.txt: real rays, parallel to the axis, through a lens with a biconic front and a flat back,
# 0.01 mm thick, n 1.5, met 0.1 mm to 0.5 mm from its centre; the slope behind it times 100 is the prism. The lens is
# traced in the frame of its principal meridians and turned back. Near the axis the rule and the trace agree; the last
# lines (printed as comments) show how low the rule reads far from it, and are in no table's rows.
import numpy as np
from optiland.materials import IdealMaterial
from optiland.optic import Optic
from optiland.rays import RealRays

INDEX = 1.5


def optic(front_x, front_y, back, thickness):
    radius = lambda power: np.inf if power == 0 else 1000.0 * (INDEX - 1.0) / power
    lens = Optic()
    lens.surfaces.add(index=0, thickness=np.inf)
    glass = IdealMaterial(n=INDEX)
    if front_x == front_y:
        lens.surfaces.add(index=1, radius=radius(front_x), thickness=thickness, material=glass, is_stop=True)
    else:
        lens.surfaces.add(index=1, surface_type="biconic", radius_x=radius(front_x), radius_y=radius(front_y),
                         thickness=thickness, material=glass, is_stop=True)
    lens.surfaces.add(index=2, radius=radius(back) if back == 0 else -radius(back), thickness=10)
    lens.surfaces.add(index=3)
    return lens


def slope(lens, x, y):
    rays = RealRays(x, y, -5.0, 0.0, 0.0, 1.0, 1.0, 0.5876)
    lens.surfaces.trace(rays, skip=1)
    return 100.0 * np.array([rays.L[0] / rays.N[0], rays.M[0] / rays.N[0]])


def prism(sphere, cylinder, axis, x_mm, y_mm):
    angle = np.radians(axis)
    turn = np.array([[np.cos(angle), -np.sin(angle)], [np.sin(angle), np.cos(angle)]])
    met = turn.T @ np.array([-x_mm, -y_mm])
    return turn @ slope(optic(sphere, sphere + cylinder, 0, 0.01), *met)


ROWS = [
    ("right", 5.00, 0.00, 180, 0.5, 0.0), ("left", -7.25, 0.00, 180, 0.3, -0.4), ("right", 3.00, -2.00, 30, 0.4, 0.0),
    ("left", -6.00, -1.50, 60, -0.25, 0.3), ("right", -1.00, -2.00, 45, 0.0, 0.5), ("right", 1.25, -3.75, 17, 0.2, -0.4),
    ("left", -8.50, 4.25, 112, 0.1, 0.4), ("left", 10.75, -0.50, 165, -0.3, 0.4), ("right", 6.50, -4.00, 88, 0.3, 0.3),
    ("left", -2.25, -1.25, 5, 0.5, -0.1),
]
for eye, sphere, cylinder, axis, inward, up in ROWS:
    toward = 1.0 if eye == "right" else -1.0
    h, v = prism(sphere, cylinder, axis, toward * inward, up)
    lens = f"{sphere:+.2f} / {cylinder:+.2f} x {axis}" if cylinder else f"{sphere:+.2f}"
    print(f"{eye} | {lens} | {inward:g} | {up:g} | {h:.5f} | {v:.5f} | 0.0005 | reference | "
          "real ray, optiland 0.6.3: reference/prism_traced.py")
for bvp, front, thickness, height in [(6.0, 10.0, 6.0, 10.0), (6.0, 10.0, 6.0, 15.0), (-6.0, 4.0, 1.5, 10.0), (-6.0, 4.0, 1.5, 20.0)]:
    back = bvp - front / (1.0 - thickness / 1000.0 / INDEX * front)
    lens = optic(front, front, back, thickness)
    # The height counts at the back surface's top plane: look for the ray that leaves there.
    low, high = 0.5 * height, 1.5 * height
    for _ in range(60):
        middle = (low + high) / 2
        rays = RealRays(0.0, middle, -5.0, 0.0, 0.0, 1.0, 1.0, 0.5876)
        lens.surfaces.trace(rays, skip=1)
        at_back = rays.y[0] - 10.0 * rays.M[0] / rays.N[0]
        low, high = (low, middle) if at_back > height else (middle, high)
    print(f"# {bvp:+.2f} front {front:+.2f} t {thickness} mm, {height:g} mm off centre: traced "
          f"{abs(100 * rays.M[0] / rays.N[0]):.3f}, the rule says {abs(bvp) * height / 10:.2f}")
