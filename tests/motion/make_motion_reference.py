#!/usr/bin/python3
"""Makes motion_peaks.inc and motion_points.inc: slider-crank motion to 40 digits, by another road.

Nothing here is a formula of velocity or acceleration: the pin height is differentiated numerically
by mpmath, dead centres and peaks are found as roots from a dense scan. Run it in this directory.
"""
import mpmath as mp
import numpy as np

mp.mp.dps = 40

# throw, rod, offset in mm: round numbers, workshop engines, both signs of the offset, hostile ones.
MECHANISMS = [
    (45, 145, 0), (37, "126.5", 0), (37, "126.5", 4), (37, "126.5", -4), (34, 133, "-0.5"),
    (34, 133, "0.5"), (40, 140, 10), (60, 220, 0), (27, 110, 1), (300, 1500, 0), (50, 65, 0),
    (50, 100, 20), (50, 100, -45), (20, 200, 100), ("0.25", 1, "0.01"),
]
ANGLES = [-200, -90, 0, "0.5", 40, 75, 90, "123.4", 180, 271, 359, 719]


def height(r, l, e):
    """Gudgeon pin height: the crankpin, and the rod's length from it, on the line x = e."""
    return lambda t: r * mp.cos(t) + mp.sqrt(l**2 - (r * mp.sin(t) - e) ** 2)


def extreme(y, order, low, high, sign):
    """Angle between low and high where sign times the derivative of this order is largest."""
    scan = np.linspace(float(low), float(high), 721)
    values = [sign * mp.diff(y, mp.mpf(t), order) for t in scan]
    start = scan[int(np.argmax([float(v) for v in values]))]
    return mp.findroot(lambda t: mp.diff(y, t, order + 1), mp.mpf(start))


def text(*numbers):
    return "{" + ", ".join(mp.nstr(mp.mpf(n), 20, strip_zeros=False) for n in numbers) + "},\n"


def main():
    with open("motion_peaks.inc", "w") as peaks, open("motion_points.inc", "w") as points:
        for out in (peaks, points):
            out.write("// Made by make_motion_reference.py; SI units and radians.\n")
        for mechanism in MECHANISMS:
            r, l, e = (mp.mpf(n) / 1000 for n in mechanism)
            y = height(r, l, e)
            top = extreme(y, 0, -mp.pi / 2, mp.pi / 2, 1)
            bottom = extreme(y, 0, mp.pi / 2, 3 * mp.pi / 2, -1)
            fast = extreme(y, 1, top, bottom, -1)
            hard = extreme(y, 2, -mp.pi / 2, mp.pi / 2, -1)
            peaks.write(text(r, l, e, top, bottom, y(top) - y(bottom), fast, -mp.diff(y, fast),
                             hard, -mp.diff(y, hard, 2)))
            for angle in ANGLES:
                t = mp.mpf(angle) * mp.pi / 180
                points.write(text(r, l, e, t, y(t), mp.diff(y, t), mp.diff(y, t, 2)))


main()
