"""The jobs of spread_bench.cpp in NumPy, for numpy_bench.py."""
import numpy as np

AREA, WANTED, SAMPLES = 4536e-6, 0.85e-3, 10_000_000
NOMINAL = 0.9e-3, 336e-6, 34e-6  # gap, swept, clearance
PERCENTILES = np.array([0.001, 0.01, 0.025, 0.16, 0.5, 0.84, 0.975, 0.99, 0.999])
ENDS = np.array([0.0005, 0.9995])


def of_length(limit):
    return limit, 0.0, limit * AREA


# Shape, and how far gap, swept and clearance move at the limit.
SOURCES = [
    ("rectangular", of_length(0.02e-3)),
    ("normal", of_length(0.02e-3)),
    ("triangular", of_length(0.03e-3)),
    ("triangular", of_length(0.02e-3)),
    ("normal", (-0.02e-3, 0.04e-3 * AREA, -0.02e-3 * AREA)),
    ("normal", of_length(-0.03e-3)),
    ("rectangular", of_length(-0.02e-3)),
    ("normal", (0.0, 0.0, 0.3e-6)),
    ("rectangular", (0.0, 0.0, 0.2e-6)),
    ("normal", (0.0, 0.09e-6, 0.01e-6)),
]


def check(found):
    gap, ratio, below = found
    return gap[1] * 1e3 + ratio[7] + below


class Sampled:
    """Ten million engines: moments, percentiles, histograms, and the chance of too small a gap."""

    name = "spreadSampled"
    title = "gap and ratio of 10 million engines"
    tolerance = 1e-4
    check = staticmethod(check)

    @staticmethod
    def idiomatic():
        rng = np.random.default_rng(1)
        draw = {
            "normal": lambda: rng.normal(0.0, 0.5, SAMPLES),
            "rectangular": lambda: rng.uniform(-1.0, 1.0, SAMPLES),
            "triangular": lambda: rng.triangular(-1.0, 0.0, 1.0, SAMPLES),
        }
        gap, swept, clearance = (np.full(SAMPLES, value) for value in NOMINAL)
        for shape, shares in SOURCES:
            errors = draw[shape]()
            for share, total in zip(shares, (gap, swept, clearance)):
                if share:
                    total += share * errors
        ratio = 1.0 + swept / clearance
        found = []
        for values in (gap, ratio):
            found.append(np.quantile(values, PERCENTILES))
            values.mean(), values.std()
            np.histogram(values, 60, (found[-1][0], found[-1][-1]))
        return *found, np.mean(gap < WANTED)

    def best(self):
        """Single precision, blocks that stay in the cache, samples counted instead of kept."""
        block, bins = 1 << 15, 4096
        rng = np.random.Generator(np.random.SFC64(1))
        errors, second, gap, swept, clearance, work = np.empty((6, block), np.float32)
        places = np.empty(block, np.intp)
        ranges = (0.9e-3 - 0.25e-3, 0.5e-3 / bins), (10.2, 1.4 / bins)
        counts = np.zeros((2, bins), np.int64)
        sums = np.zeros((2, 2))
        blocks = -(-SAMPLES // block)
        for _ in range(blocks):
            for total, value in zip((gap, swept, clearance), NOMINAL):
                total.fill(value)
            for shape, shares in SOURCES:
                if shape == "normal":
                    rng.standard_normal(out=errors, dtype=np.float32)
                    scale, shift = 0.5, 0.0
                else:
                    rng.random(out=errors, dtype=np.float32)
                    scale, shift = 2.0, 1.0
                    if shape == "triangular":
                        rng.random(out=second, dtype=np.float32)
                        errors += second
                        scale = 1.0
                for share, total in zip(shares, (gap, swept, clearance)):
                    if share:
                        np.multiply(errors, np.float32(share * scale), out=work)
                        total += work
                        if shift:
                            total -= np.float32(share * shift)
            np.divide(swept, clearance, out=swept)
            swept += np.float32(1)
            for i, (values, middle) in enumerate(((gap, NOMINAL[0]), (swept, 10.88))):
                np.subtract(values, np.float32(middle), out=work)
                sums[i] += work.sum(dtype=np.float64), np.dot(work, work)
                np.subtract(values, np.float32(ranges[i][0]), out=work)
                work *= np.float32(1 / ranges[i][1])
                np.clip(work, 0, bins - 1, out=work)
                np.copyto(places, work, casting="unsafe")
                counts[i] += np.bincount(places, minlength=bins)
        found = []
        for (low, width), below in zip(ranges, np.cumsum(counts, axis=1) / (blocks * block)):
            edges = low + width * np.arange(1, bins + 1)
            found.append(np.interp(PERCENTILES, below, edges))
            ends = np.interp(ENDS, below, edges)
            np.diff(np.interp(np.linspace(*ends, 61), edges, below))
            if len(found) == 1:
                chance = np.interp(WANTED, edges, below)
        return *found, chance


class Exact(Sampled):
    """The same without sampling; the best form does without it in NumPy, too."""

    name = "spreadExact"
    title = "the same without sampling"
    terms, grid = 30, 128

    def __init__(self):
        shapes = np.array([shape for shape, _ in SOURCES])
        self.shares = np.array([shares for _, shares in SOURCES])
        self.normal = shapes == "normal"
        self.rectangular = shapes == "rectangular"
        self.triangular = shapes == "triangular"

    def chance_below(self, x, middle, shares):
        """Chances of sums of errors, one for each row of shares or for each x of a single row."""
        squares = shares**2
        variance = (squares[:, self.normal].sum(1) / 4 + squares[:, self.rectangular].sum(1) / 3
                    + squares[:, self.triangular].sum(1) / 6)
        width = 7.0 * np.sqrt(variance)
        k = np.arange(1, self.terms + 1)
        t = k * np.pi / width[:, None]
        terms = np.exp(-t**2 * (squares[:, self.normal].sum(1) / 8)[:, None]) / (k * np.pi)
        t = t[:, :, None] / np.pi  # as np.sinc has it
        terms *= np.sinc(t * shares[:, None, self.rectangular]).prod(2)
        terms *= (np.sinc(t * shares[:, None, self.triangular] / 2)**2).prod(2)
        u = (x - middle) / width
        return 0.5 + u / 2 + (terms * np.sin(np.pi * u[:, None] * k)).sum(1)

    def best(self):
        grid = np.linspace(NOMINAL[0] - 0.2e-3, NOMINAL[0] + 0.2e-3, self.grid)
        below = self.chance_below(grid, NOMINAL[0], self.shares[None, :, 0])
        gap = np.interp(PERCENTILES, below, grid)
        chance = np.interp(WANTED, grid, below)
        np.diff(np.interp(np.linspace(*np.interp(ENDS, below, grid), 61), grid, below))

        grid = np.linspace(10.5, 11.3, self.grid)
        shares = self.shares[:, 1] - (grid[:, None] - 1) * self.shares[:, 2]
        below = self.chance_below(0.0, NOMINAL[1] - (grid - 1) * NOMINAL[2], shares)
        ratio = np.interp(PERCENTILES, below, grid)
        np.diff(np.interp(np.linspace(*np.interp(ENDS, below, grid), 61), grid, below))
        return gap, ratio, chance
