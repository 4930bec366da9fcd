#!/usr/bin/python3
"""The core's jobs on arrays in NumPy, and how many times faster the core is.

Usage: numpy_bench.py BENCHMARK.json, the output of core_bench. Each job is written twice: as one
writes NumPy, and in the best form found (nothing computed twice, arrays written in place; single
precision for the maps, as the core has). Both must find the number that the core found. Times are
processor time, the best of several runs, so that a busy machine does not choose the winner.
"""
import json
import sys
import time
import timeit

import numpy as np

import choice_numpy
import spread_numpy

R, L, E, SPEED = 0.037, 0.1265, 0.0005, 890.0


class Curves:
    """Travel, velocity and acceleration over two turns in half degrees."""

    name = "motionCurves"
    title = "motion of one piston, 1441 angles"
    tolerance = 1e-12

    def __init__(self):
        self.angles = np.linspace(0.0, 4.0 * np.pi, 1441)
        self.top = np.sqrt((L + R) ** 2 - E**2)
        # What the best form keeps from edit to edit, as the core does.
        self.sine, self.cosine = np.sin(self.angles), np.cos(self.angles)
        self.out = [np.empty(1441) for _ in range(9)]

    def idiomatic(self):
        s, c = R * np.sin(self.angles), R * np.cos(self.angles)
        q = s - E
        w = np.sqrt(L**2 - q**2)
        travel = self.top - c - w
        velocity = SPEED * (-s - q * c / w)
        acceleration = SPEED**2 * (-c - (c**2 - q * s) / w - (q * c) ** 2 / w**3)
        return travel, velocity, acceleration

    def best(self):
        s, c, q, w, slope, work, travel, velocity, acceleration = self.out
        np.multiply(self.sine, R, out=s)
        np.multiply(self.cosine, R, out=c)
        np.subtract(s, E, out=q)
        np.multiply(q, q, out=w)
        np.subtract(L * L, w, out=w)
        np.sqrt(w, out=w)
        np.subtract(self.top, c, out=travel)
        np.subtract(travel, w, out=travel)
        np.multiply(q, c, out=slope)
        np.divide(slope, w, out=slope)
        np.add(s, slope, out=velocity)
        np.multiply(velocity, -SPEED, out=velocity)
        np.multiply(slope, slope, out=acceleration)
        np.multiply(q, s, out=work)
        np.subtract(acceleration, work, out=acceleration)
        np.multiply(c, c, out=work)
        np.add(acceleration, work, out=acceleration)
        np.divide(acceleration, w, out=acceleration)
        np.add(acceleration, c, out=acceleration)
        np.multiply(acceleration, -SPEED * SPEED, out=acceleration)
        return travel, velocity, acceleration

    @staticmethod
    def check(arrays):
        travel, velocity, acceleration = arrays
        return travel.sum() + np.abs(velocity).sum() + np.abs(acceleration).sum()


def hardest_pull(r):
    """Peak downward acceleration per squared speed, for an array of throws: Newton from 0."""
    angle = np.zeros_like(r)
    for _ in range(5):
        s, c = r * np.sin(angle), r * np.cos(angle)
        q = s - E
        w = np.sqrt(L**2 - q**2)
        w1 = -q * c / w
        w2 = -(c**2 - q * s + w1**2) / w
        w3 = -(-3 * c * s - q * c + 3 * w1 * w2) / w
        w4 = -(3 * s**2 - 4 * c**2 + q * s + 3 * w2**2 + 4 * w1 * w3) / w
        angle = angle - (s + w3) / (c + w4)
    return c - w2


class Maps:
    """Displacement, compression ratio, mean piston speed and rev ceiling, 1000 by 1000."""

    name = "tradeoffMaps"
    title = "bore and stroke, four maps of 1000 x 1000"
    tolerance = 1e-6

    def __init__(self):
        self.bores = np.linspace(0.060, 0.090, 1000)
        self.strokes = np.linspace(0.050, 0.090, 1000)
        self.out = [np.empty((1000, 1000), np.float32) for _ in range(4)]

    def per_stroke(self, strokes):
        r = strokes / 2
        stroke = np.sqrt((L + r) ** 2 - E**2) - np.sqrt((L - r) ** 2 - E**2)
        speed = SPEED * stroke / np.pi
        by_acceleration = np.sqrt(32250.0 / hardest_pull(r))
        ceiling = np.minimum(np.minimum(np.pi * 22.0 / stroke, by_acceleration), 1100.0)
        return stroke, speed, ceiling

    def per_bore(self, bores):
        area = np.pi / 4 * bores**2
        clearance = 30.1e-6 + np.pi / 4 * (bores + 1.5e-3) ** 2 * 0.65e-3 + area * 0.25e-3
        return area, clearance

    def idiomatic(self):
        stroke, speed, ceiling = self.per_stroke(self.strokes[:, None])
        area, clearance = self.per_bore(self.bores[None, :])
        displacement = 2 * area * stroke
        ratio = 1 + area * stroke / clearance
        shape = displacement.shape
        return displacement, ratio, np.full(shape, speed), np.full(shape, ceiling)

    def best(self):
        displacement, ratio, speed_map, ceiling_map = self.out
        stroke, speed, ceiling = (a.astype(np.float32)[:, None]
                                  for a in self.per_stroke(self.strokes))
        area, clearance = self.per_bore(self.bores)
        np.multiply(stroke, (2 * area).astype(np.float32), out=displacement)
        np.multiply(stroke, (area / clearance).astype(np.float32), out=ratio)
        ratio += np.float32(1)
        speed_map[:] = speed
        ceiling_map[:] = ceiling
        return displacement, ratio, speed_map, ceiling_map

    @staticmethod
    def check(arrays):
        displacement, ratio, speed, ceiling = (a.mean(dtype=np.float64) for a in arrays)
        return displacement * 1e6 + ratio + speed + ceiling


def microseconds(job):
    timer = timeit.Timer(job, timer=time.process_time)
    count, took = timer.autorange()
    return min(timer.repeat(7 if took < 1 else 2, count)) / count * 1e6


def main():
    with open(sys.argv[1]) as file:
        runs = [b for b in json.load(file)["benchmarks"] if b["run_type"] == "iteration"]
    print(f"{'':44}{'core':>11}{'NumPy':>11}{'ratio':>9}{'best NumPy':>12}{'ratio':>7}")
    for job in (Curves(), Maps(), choice_numpy.Choice(), spread_numpy.Sampled(),
                spread_numpy.Exact()):
        mine = [run for run in runs if run["name"].split("/")[0] == job.name]
        unit = {"ns": 1e-3, "us": 1.0}[mine[0]["time_unit"]]
        core = min(run["cpu_time"] for run in mine) * unit
        for form in (job.idiomatic, job.best):
            found = job.check(form())
            if abs(found - mine[0]["check"]) > job.tolerance * abs(found):
                sys.exit(f"{job.title}: NumPy finds {found}, the core {mine[0]['check']}.")
        idiomatic, best = microseconds(job.idiomatic), microseconds(job.best)
        print(f"{job.title:44}{core:8.1f} us{idiomatic:8.0f} us{idiomatic / core:9.1f}"
              f"{best:9.0f} us{best / core:7.1f}")


main()
