# raytracing 1.4.7, Python 3. Command: python reflex_paraxial.py run, or python reflex_paraxial.py lit
# Rows for tables/reflex.txt and reflex_lit.txt from single rays through matrices: a thin trial lens, a cornea of radius 5.55 mm into an
# index of 4/3, and an eye as long as its refraction asks for. The beam is turned by a small angle about the
# retinoscope. The ray of it that meets the middle of the pupil lands on the retina; the ray from the retinoscope's hole that
# lands on the same spot says where in the pupil the hole sees it. That place over the patch's is the speed. No formula
# of the module is used.
import sys
from raytracing import DielectricInterface, Lens, Matrix, Ray, Space

INDEX, RADIUS = 4 / 3, 5.55
TURN = 1e-4  # radians


def eye(refraction, lens):
    cornea = DielectricInterface(n1=1.0, n2=INDEX, R=RADIUS)
    power = 1000 * (INDEX - 1) / RADIUS
    long = 1000 * INDEX / (power + refraction)
    trial = Lens(f=1000 / lens) if lens else Matrix()
    return Space(d=long, n=INDEX) * cornea * trial


def retina(system, height, angle):
    return (system * Ray(y=height, theta=angle)).y


def sees(system, distance, spot):
    """Where in the pupil an eye at the hole sees a spot of the retina: the rays from the hole land in proportion."""
    step = 1e-3
    return step * spot / retina(system, step, step / distance)


def middle(source, distance, turn):
    """The angle of the turned beam's ray that meets the middle of the pupil. The beam turns about the hole."""
    if source is None:
        return turn
    aside = -(source - distance) * turn
    return -aside / source


RUNS = [
    (None, 66.7, 0, 0), (None, 67, -1, 0), (None, 67, 2.5, 3), (None, 50, -4, 0), (None, 40, 1.25, 2), (None, 67, 0, 3), (None, 33, -6.5, -2),
    (None, 20, 12, 10), (100, 67, 0, 0), (200, 67, -1, 0.5), (85, 50, -3.25, -2), (75, 67, 1, 1), (1000, 100, -0.5, 1.25),
    (33.3, 66.7, 0, 0), (40, 67, -1, 0), (25, 50, 2, 3), (10, 40, -3, 1), (60, 67, 1.5, 2), (5, 67, 0, 2.5), (45, 50, -2.5, 0), (30, 80, 4, 6),
    (-50, 66.7, 0, 0), (-20, 67, -1, 1.5), (-100, 50, 3, 2.25), (-10, 40, 0, 4), (-5, 33, -8, -3), (-300, 67, 1, 3),
    (67, 67, 0, 0), (50, 50, 1, -2), (None, 120, -0.25, 0.125), (None, 10, 5, 0), (150, 25, -12, -10),
]
LIT = [
    (None, 67, 0, 0, 0.5, 4), (None, 67, 0, 3, 1, 5), (None, 50, -1.25, 0, -0.4, 3), (40, 67, 1, 0, 0.3, 4), (-50, 67, -4, -1, 0.8, 6),
    (200, 50, 3, 1.5, -1, 4), (None, 33, 0, 5.5, 0.6, 3.5), (50, 50, 2, 1, 2, 4), (None, 40, -6, -1, 1.2, 7), (20, 67, 0.5, -1, 0.1, 5),
]
HALF = 1e-3  # radians in the eye's object space: 1 mm times 1 D


def name(source):
    return "parallel" if source is None else f"{source:g}"


def rays(source, distance, refraction, lens, turn):
    mm = 10.0
    system = eye(refraction, lens)
    source = None if source is None else source * mm
    return system, distance * mm, retina(system, 0.0, middle(source, distance * mm, turn))


SOURCE = "reference | rays through ABCD matrices, raytracing 1.4.7: reference/reflex_paraxial.py"
if sys.argv[1] == "run":
    for source, cm, refraction, lens in RUNS:
        system, distance, spot = rays(source, cm, refraction, lens, TURN)
        speed = sees(system, distance, spot) / (TURN * distance)
        print(f"{name(source)} | {cm:g} | {refraction:g} | {lens:g} | {speed + 0:.9f} | 2e-8 | {SOURCE}")
else:
    for source, cm, refraction, lens, streak, pupil in LIT:
        turn = streak / (cm * 10)
        system, distance, spot = rays(source, cm, refraction, lens, turn)
        half = retina(system, 0.0, HALF)
        edges = sorted(sees(system, distance, spot + side * half) / (pupil / 2) for side in (-1, 1))
        edges = [min(1.0, max(-1.0, edge)) for edge in edges]
        print(f"{name(source)} | {cm:g} | {refraction:g} | {lens:g} | {streak:g} | {pupil:g} | {edges[0]:.9f} | {edges[1]:.9f} | {SOURCE}")
