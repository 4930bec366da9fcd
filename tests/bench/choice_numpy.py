"""The job of choice_bench.cpp in NumPy, for numpy_bench.py.

Lengths in whole micrometres: the shelf of the benchmark has no others.
"""
import numpy as np

AREA, SWEPT, OTHER = np.pi / 4 * 68e-3**2, 239.69e-6, 20.1e-6
DECKS = (-2130, -2050, -1960)
WORST = 70
WANTED, LEAST, MOST, LEAST_AT_WORST = 900, 800, 1200, 650
RATIO_LEAST, RATIO_MOST, RATIO_SPREAD = 10.3, 11.5, 0.26
BEST = 20

TOO_CLOSE, AT_WORST, TOO_WIDE, RATIO_OVER, RATIO_UNDER, _, _, SPREAD, BEATEN = range(9)


class Choice:
    """The twenty best of 192 000 stacks for three cylinders, and what the others lost for."""

    name = "stackChoice"
    title = "choice of a stack from 192 000"
    tolerance = 1e-9

    def __init__(self):
        gaskets = 100 + 50 * np.arange(14)
        errors = np.where(np.arange(14) % 2 == 0, 10, 30)
        one, two = np.triu_indices(14)
        self.sets = np.concatenate([[0], gaskets, gaskets[one] + gaskets[two]])
        self.set_errors = np.concatenate([[0], errors, errors[one] + errors[two]])
        self.plates = 500 + 20 * np.arange(100)
        self.heads = 500 + 50 * np.arange(16)
        self.bores = 69.5e-3 + 0.5e-3 * (np.arange(16) % 3)
        # What the best form keeps from edit to edit. Sixteen bits hold all these micrometres.
        self.shape = (16, 100, 120)
        self.small = [np.empty(self.shape, np.int16) for _ in range(2)]
        self.flags = [np.empty(self.shape, bool) for _ in range(2)]

    def ratios(self, under, head_volumes):
        for deck in DECKS:
            yield 1 + SWEPT / (OTHER + head_volumes + AREA * 1e-6 * (deck + under))

    def idiomatic(self):
        under = self.plates[:, None] + self.sets
        heads = self.heads[:, None, None]
        volumes = (np.pi / 4 * self.bores**2 * self.heads * 1e-6)[:, None, None]
        squish = np.stack([deck + under + heads for deck in DECKS])
        at_worst = squish - WORST - 30 - 10 - self.set_errors
        ratios = np.stack(list(self.ratios(under, volumes)))
        spread = ratios.max(axis=0) - ratios.min(axis=0)
        reasons = np.select(
            [(squish < LEAST).any(axis=0), (at_worst < LEAST_AT_WORST).any(axis=0),
             (squish > MOST).any(axis=0), (ratios > RATIO_MOST).any(axis=0),
             (ratios < RATIO_LEAST).any(axis=0), spread > RATIO_SPREAD],
            [TOO_CLOSE, AT_WORST, TOO_WIDE, RATIO_OVER, RATIO_UNDER, SPREAD], BEATEN)
        key = ((squish - WANTED) ** 2).sum(axis=0)[reasons == BEATEN]
        return np.bincount(reasons.ravel(), minlength=9), np.sort(np.partition(key, BEST)[:BEST])

    def thresholds(self):
        """For each head gasket, what may lie under the barrels."""
        volumes = np.pi / 4 * self.bores**2 * self.heads * 1e-6

        def under_for(ratio):
            return (SWEPT / (ratio - 1) - OTHER - volumes) / AREA * 1e6

        close = LEAST - DECKS[0] - self.heads
        at_worst = LEAST_AT_WORST + WORST + 40 - DECKS[0] - self.heads
        wide = MOST - DECKS[2] - self.heads
        over = np.ceil(under_for(RATIO_MOST) - DECKS[0])
        low = np.floor(under_for(RATIO_LEAST) - DECKS[2])
        return [limit.astype(np.int16)[:, None, None]
                for limit in (close, at_worst, wide, over, low)], volumes

    def best(self):
        (close, at_worst, wide, over, low), volumes = self.thresholds()
        under, safe_under = self.small
        met, more = self.flags
        sets = self.sets.astype(np.int16)
        rows = self.plates.astype(np.int16)[:, None] + sets
        safe_rows = rows - self.set_errors.astype(np.int16)
        left = [self.shape[0] * rows.size]
        np.greater_equal(rows, close, out=met)
        left.append(np.count_nonzero(met))
        for values, compare, limit in ((safe_rows, np.greater_equal, at_worst),
                                       (rows, np.less_equal, wide),
                                       (rows, np.greater_equal, over),
                                       (rows, np.less_equal, low)):
            compare(values, limit, out=more)
            np.logical_and(met, more, out=met)
            left.append(np.count_nonzero(met))
        found = np.flatnonzero(met)
        head, place = np.divmod(found, rows.size)
        under = rows.ravel()[place]
        # Ratios once for each thickness that can occur under each head gasket.
        first, last = int(under.min()), int(under.max())
        table = np.arange(first, last + 1)
        ratios = list(self.ratios(table, volumes[:, None]))
        spreads = (np.maximum.reduce(ratios) - np.minimum.reduce(ratios) > RATIO_SPREAD).ravel()
        kept = ~spreads[head * table.size + (under - first)]
        left.append(np.count_nonzero(kept))
        squish = (under + self.heads.astype(np.int16)[head])[kept]
        # Three parabolas are one, and three times the distance from its middle is whole.
        middle = 3 * WANTED - sum(DECKS)
        nearest = np.partition(np.abs(3 * squish.astype(np.int32) - middle), BEST)[:BEST]
        rest = sum((deck + middle / 3 - WANTED) ** 2 for deck in DECKS)
        key = np.sort(nearest.astype(float) ** 2 / 3 + rest)
        lost = -np.diff(left)
        counts = np.concatenate([lost[:5], [0, 0], lost[5:], left[-1:]])
        return counts, key

    @staticmethod
    def check(found):
        counts, key = found
        counts = np.array(counts)
        counts[BEATEN] -= BEST
        return np.sqrt(key / 3).sum() + (counts * np.arange(1, 10)).sum()
