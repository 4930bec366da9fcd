#!/usr/bin/env bash
# Builds Strokewright and opens it, on a project if one is named:
#   bash app/run.sh [PROJECT]
# Without a display it writes the spec sheet of the project, or of the first sample, and prints the
# results.
set -euo pipefail

project=${1:+$(realpath --canonicalize-missing -- "$1")}
cd -- "$(dirname -- "${BASH_SOURCE[0]}")/.."
source app/setup.sh

[[ -z $project || -f $project ]] || fail "There is no project file at $project."
has_display=${DISPLAY:-}${WAYLAND_DISPLAY:-}
if [[ -n $has_display && -z ${DISPLAY:-} ]]; then
  program_packages+=(qt6-wayland)
fi
install_missing "build and run Strokewright" "${program_packages[@]}"
build release
strokewright=build/release/app/strokewright

if [[ -n $has_display ]]; then
  exec "$strokewright" ${project:+"$project"}
fi

project=${project:-$PWD/samples/burdock-719.strokewright}
sheet=$PWD/build/$(basename -- "$project" .strokewright).pdf
status=0
"$strokewright" results "$project" || status=$?
((status < 2)) || fail "The project $project could not be read."
"$strokewright" sheet "$project" -o "$sheet" || status=$?
((status < 2)) || fail "The spec sheet could not be written to $sheet."
echo "There is no display here for the window. The spec sheet is in $sheet"
exit "$status"
