#!/usr/bin/env bash
# Builds the benchmarks, runs them, and sets the core's beside NumPy doing the same work in the same
# run: bash tests/bench/run.sh
# Needs what app/run.sh and tests/run.sh install; the first screen also xdotool and xvfb.
set -euo pipefail

cd -- "$(dirname -- "${BASH_SOURCE[0]}")/../.."

cmake -S . -B build/bench -G Ninja -DCMAKE_BUILD_TYPE=Release -DSTROKEWRIGHT_BENCH=ON \
  -DSTROKEWRIGHT_TESTS=ON >/dev/null
cmake --build build/bench --target core_bench window_bench bare_window strokewright
build/bench/tests/bench/core_bench --benchmark_repetitions=5 \
  --benchmark_out=build/bench/core.json --benchmark_out_format=json
echo
/usr/bin/python3 tests/bench/numpy_bench.py build/bench/core.json
for scale in 1 1.5; do
  echo
  echo "An edit, everything visible recomputed and painted, at scale $scale (a frame is 16 ms)"
  QT_SCALE_FACTOR=$scale build/bench/tests/bench/window_bench 2>/dev/null
done
if command -v xdotool >/dev/null && command -v xvfb-run >/dev/null; then
  echo
  xvfb-run -a -s '-screen 0 1366x768x24 -noreset' /usr/bin/python3 tests/bench/first_screen.py \
    build/bench/app/strokewright build/bench/tests/bench/bare_window
fi
