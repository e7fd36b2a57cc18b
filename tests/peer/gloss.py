"""Facets that mirror into a gloss meter's window at 60°: the table of tests/print/gloss.rs.

Each facet of a surface with normal slopes mirrors a ray by the law of reflection, in full; what falls into the window of
4.4° by 11.7° is summed by the midpoint rule, a facet counting as large as it looks from the source. No small angles, no
error function. `python3 tests/peer/gloss.py` prints slope and share. Needs Python alone.
"""

from math import cos, exp, pi, radians, sin, sqrt, tan

INCIDENCE = radians(60)
RAY = (sin(INCIDENCE), 0.0, -cos(INCIDENCE))
MIRRORED = (sin(INCIDENCE), 0.0, cos(INCIDENCE))
IN_PLANE = (cos(INCIDENCE), 0.0, -sin(INCIDENCE))


def share(slope, steps=1200):
    far, aside = min(7 * slope, 0.06), min(7 * slope, 0.25)
    dp, dq = 2 * far / steps, 8 * aside / steps
    total = 0.0
    for i in range(steps):
        p = -far + (i + 0.5) * dp
        for j in range(steps // 4):
            q = -aside + (j + 0.5) * dq
            length = sqrt(1 + p * p + q * q)
            nx, ny, nz = -p / length, -q / length, 1 / length
            facing = RAY[0] * nx + RAY[2] * nz
            if facing >= 0:
                continue
            x, y, z = RAY[0] - 2 * facing * nx, -2 * facing * ny, RAY[2] - 2 * facing * nz
            ahead = x * MIRRORED[0] + z * MIRRORED[2]
            if ahead <= 0:
                continue
            along = (x * IN_PLANE[0] + z * IN_PLANE[2]) / ahead
            if abs(along) <= tan(radians(2.2)) and abs(y / ahead) <= tan(radians(5.85)):
                total += exp(-(p * p + q * q) / (2 * slope * slope)) * -facing / nz / cos(INCIDENCE)
    return total * dp * dq / (2 * pi * slope * slope)


for slope in (0.02, 0.05, 0.1, 0.2):
    print(slope, round(share(slope), 6))
