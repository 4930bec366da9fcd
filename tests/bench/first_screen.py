#!/usr/bin/python3
"""Time from the start of the process until its first window is mapped, ours beside a bare one.

Usage: first_screen.py STROKEWRIGHT BARE_WINDOW, with an X server in DISPLAY that outlives its
clients (xvfb-run -s -noreset). Both are started in turn, several times, after one start each that
warms the caches; the medians and their ratio are printed. Needs xdotool.
"""
import os
import statistics
import subprocess
import sys
import tempfile
import time

RUNS = 15


def first_window(program, title):
    with tempfile.TemporaryDirectory() as home:
        env = dict(os.environ, HOME=home, XDG_RUNTIME_DIR=home, QT_QPA_PLATFORM="xcb")
        start = time.perf_counter()
        process = subprocess.Popen([program], env=env, stderr=subprocess.DEVNULL)
        search = ["xdotool", "search", "--onlyvisible", "--name", title]  # its --sync waits long
        while subprocess.run(search, capture_output=True, check=False).returncode != 0:
            if process.poll() is not None:
                sys.exit(f"{program} ended before it showed a window")
        took = time.perf_counter() - start
        process.kill()
        process.wait()
        return took


def main():
    programs = {"ours": (sys.argv[1], "Strokewright"), "bare": (sys.argv[2], "^bare$")}
    for arguments in programs.values():
        first_window(*arguments)
    times = {name: [] for name in programs}
    for _ in range(RUNS):
        for name, arguments in programs.items():
            times[name].append(first_window(*arguments))
    medians = {name: statistics.median(runs) for name, runs in times.items()}
    for name, median in medians.items():
        print(f"first window, {name}: {1000 * median:6.1f} ms")
    print(f"ratio: {medians['ours'] / medians['bare']:.2f}")


main()
