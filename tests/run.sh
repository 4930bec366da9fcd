#!/usr/bin/env bash
# Builds Strokewright and runs all its tests: bash tests/run.sh
set -euo pipefail

cd -- "$(dirname -- "${BASH_SOURCE[0]}")/.."
source app/setup.sh

install_missing "build and test Strokewright" "${program_packages[@]}" "${test_packages[@]}"
build tests
exec ctest --preset tests
