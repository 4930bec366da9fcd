"""Seats at random and the plane through them by numpy.linalg.lstsq: make_plane_reference.py > plane_points.inc"""

import numpy as np

random = np.random.default_rng(12)
print("// Made by make_plane_reference.py.")
for count, across in [(2, False), (3, False), (4, False), (6, False), (3, True), (12, True)]:
    along = np.arange(count) * random.uniform(0.06, 0.11) + random.uniform(-0.01, 0.01, count)
    x = np.zeros(count)
    if across:
        along, x = np.repeat(along, 2), np.tile([0.05, -0.05], count)
    height = 0.1 + 1e-3 * along + 5e-4 * x + random.normal(0, 5e-5, along.size)
    columns = [np.ones_like(along), along] + ([x] if across else [])
    fitted, *_ = np.linalg.lstsq(np.column_stack(columns), height, rcond=None)
    level, slope_along, slope_across = [*fitted, 0.0][:3]
    points = ", ".join(f"{{{a!r}, {b!r}, {c!r}}}" for a, b, c in
                       zip(along.tolist(), x.tolist(), height.tolist()))
    print(f"{{{{{points}}}, {float(level)!r}, {float(slope_along)!r}, {float(slope_across)!r}}},")
