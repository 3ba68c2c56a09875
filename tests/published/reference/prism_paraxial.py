# raytracing 1.4.7, numpy 2.x, Python 3. Command: python prism_paraxial.py
# Rows for tables/prism_decentred.txt: a ray parallel to the axis through a thin lens, traced by its ray matrix. The lens
# stands with its centre moved toward the nose by `in` and up by `up` (mm), so the ray meets it at minus that.
from raytracing import Lens, Ray

ROWS = [
    ("right", 5.00, 3.0, 0.0), ("right", 5.00, 0.0, -6.5), ("right", -7.25, 2.5, 0.0), ("left", -7.25, 2.5, 0.0),
    ("left", 12.50, -4.0, 0.0), ("left", -0.75, 0.0, 11.0), ("right", 9.00, -1.5, 8.0), ("left", -14.00, 3.0, -2.0),
]


def slope(power, height_mm):
    # 100 times the slope behind the lens: the ray turns toward the base.
    lens = Lens(f=1000.0 / power)
    return 100.0 * (lens * Ray(y=height_mm, theta=0.0)).theta


for eye, power, inward, up in ROWS:
    toward = 1.0 if eye == "right" else -1.0
    h, v = slope(power, -toward * inward), slope(power, -up)
    print(f"{eye} | {power:+.2f} | {inward:g} | {up:g} | {h:.4f} | {v:.4f} | 0.0001 | reference | "
          "ray matrix of a thin lens, raytracing 1.4.7: reference/prism_paraxial.py")
