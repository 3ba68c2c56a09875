# raytracing 1.4.7, Python 3. Command: python lens_paraxial.py TABLE, where TABLE is moved, toric, cells or thick
# Rows for tables/vertex_moved.txt, vertex_toric.txt, cells.txt and thick.txt. Every power is traced with ABCD matrices:
# a parallel ray goes through the lens and its gap, and the power at the end is -slope/height there.
import sys
from raytracing import DielectricInterface, DielectricSlab, Lens, MatrixGroup, Space

SOURCE = "reference | ray through ABCD matrices, raytracing 1.4.7: reference/lens_paraxial.py"


def power_at_end(elements):
    """Of parallel light: vergence in dioptres where the elements end, all lengths in metres."""
    system = MatrixGroup(elements)
    return -system.C / system.A


def lens(power):
    return [Lens(f=1.0 / power)] if power else []


def moved(power, by_mm):
    return power_at_end(lens(power) + [Space(d=by_mm / 1000)])


def rows_moved():
    for power in (-35.0, -18.25, -9.75, -4.0, -0.5, 0.25, 3.75, 7.5, 13.0, 21.5, 34.0):
        for start, end in ((12, 0), (14.5, 9.0), (0, 13), (8, 16)):
            yield f"{power:+.2f} | {start:g} | {end:g} | {moved(power, start - end):.10f}"


def rows_toric():
    lenses = [(-8.0, -3.0, 20, 14, 0), (10.0, -2.5, 170, 12, 0), (-16.0, 4.5, 179, 13, 10), (12.75, 3.25, 90, 14, 10.5),
              (4.0, -8.0, 135, 12, 0), (-0.5, 1.0, 1, 15, 0), (18.0, -6.0, 45, 0, 12), (-22.0, -5.0, 180, 0, 14),
              (6.25, -12.5, 91, 11, 16), (-30.0, 10.0, 62, 12.5, 0), (30.0, 2.0, 118, 12, 7), (0.25, -0.5, 134, 25, 5)]
    for sphere, cylinder, axis, start, end in lenses:
        along, across = moved(sphere, start - end), moved(sphere + cylinder, start - end)
        yield (f"{sphere:+.2f} / {cylinder:+.2f} x {axis} | {start:g} | {end:g} | "
               f"{along:+.10f} / {across - along:+.10f} x {axis}")


def rows_cells():
    frames = [(10.0, 0.0, 0.0, 5.0), (-10.0, 0.0, 2.0, 4.0), (1.5, -12.0, 0.5, 3.5), (6.0, 6.0, 6.0, 4.0),
              (-0.5, 3.0, 18.0, 5.0), (20.0, -4.0, -8.0, 3.0), (-25.0, 1.0, -3.75, 10.0), (0.25, -0.25, 12.0, 6.5),
              (4.0, -4.0, 0.0, 4.5), (-15.0, -5.0, 20.0, 2.5)]
    for front, middle, back, spacing in frames:
        gap = [Space(d=spacing / 1000)]
        together = power_at_end(lens(front) + gap + lens(middle) + gap + lens(back))
        yield f"{front:+.2f} | {middle:+.2f} | {back:+.2f} | {spacing:g} | {together:.10f}"


def rows_thick():
    lenses = [(10.25, -3.0, 4.0, 1.586), (15.0, -6.0, 6.5, 1.523), (3.0, -8.5, 2.2, 1.498), (9.5, -3.25, 5.7, 1.498),
              (2.0, -18.0, 1.0, 1.74), (18.5, -2.0, 11.0, 1.498), (0.0, 6.0, 4.0, 1.523), (6.0, 0.0, 4.0, 1.523),
              (-12.0, -12.0, 0.8, 1.6), (25.0, 25.0, 12.0, 1.523), (45.0, -44.0, 0.2, 1.43), (4.0, -4.0, 20.0, 1.9),
              (60.0, -60.0, 5.0, 1.336), (-20.0, 30.0, 3.3, 1.67), (8.75, -4.75, 4.1, 1.586), (10.5, -4.75, 5.2, 1.586)]
    for front, back, thickness, index in lenses:
        def seen(first, second):
            surface = lambda power, one, two: [DielectricInterface(n1=one, n2=two, R=(two - one) / power)] if power else [
                DielectricInterface(n1=one, n2=two)]
            return power_at_end(surface(first, 1.0, index) + [Space(d=thickness / 1000, n=index)] + surface(second, index, 1.0))

        yield f"{front:+.2f} | {back:+.2f} | {thickness:g} | {index:g} | {seen(front, back):.10f} | {seen(back, front):.10f}"


for row in globals()["rows_" + sys.argv[1]]():
    print(f"{row} | {SOURCE}")
