#!/usr/bin/env bash
# Builds the benchmarks of the core, runs them, and sets them beside NumPy doing the same work in
# the same run: bash tests/bench/run.sh
set -euo pipefail

cd -- "$(dirname -- "${BASH_SOURCE[0]}")/../.."

cmake -S . -B build/bench -G Ninja -DCMAKE_BUILD_TYPE=Release -DSTROKEWRIGHT_BENCH=ON \
  -DSTROKEWRIGHT_WINDOW=OFF >/dev/null
cmake --build build/bench --target core_bench
build/bench/tests/bench/core_bench --benchmark_repetitions=5 \
  --benchmark_out=build/bench/core.json --benchmark_out_format=json
echo
/usr/bin/python3 tests/bench/numpy_bench.py build/bench/core.json
