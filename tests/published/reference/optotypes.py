# mpmath 1.4.1 on Python 3.11: python3 optotypes.py
# Heights and strokes of letters from the definition (5 minutes of arc at acuity 1), to 40 digits, printed as table rows.
from mpmath import mp, mpf, pi, tan

mp.dps = 40
MINUTE = pi / 180 / 60

for distance in ("0.4", "1", "2", "3", "4", "5", "6", "10"):
    for logmar in ("-0.3", "0", "0.5", "1"):
        gap = 1000 * mpf(distance) * tan(5 * MINUTE) * mpf(10) ** mpf(logmar) / 5
        height = 5 * gap
        print(f"{distance} | {logmar} | {mp.nstr(height, 12)} | {mp.nstr(gap, 12)} | 1e-9 | reference | mpmath 1.4.1, optotypes.py")
