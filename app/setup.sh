# shellcheck shell=bash disable=SC2034
# Shared by app/run.sh, tests/run.sh and .ci/run, which source it from the root of the project.

# What builds the program, and what Qt loads only when it runs (drawn icons, a font).
program_packages=(
  g++ cmake ninja-build
  qt6-base-dev qt6-svg-dev libqcustomplot-dev libeigen3-dev nlohmann-json3-dev libboost-dev
  libqt6svg6 fonts-dejavu-core
)

# What the tests need besides.
test_packages=(
  libgtest-dev libgmock-dev libbenchmark-dev
  python3-ezdxf python3-numpy python3-scipy python3-jsonschema poppler-utils locales-all
  desktop-file-utils shared-mime-info libxml2-utils
)

# What the checks need besides.
check_packages=(appstream clang clang-format clang-tidy groff-base libclang-rt-14-dev)

# fail SENTENCE: says why, and ends the script.
fail() {
  printf '%s\n' "$1" >&2
  exit 1
}

# install_missing PURPOSE PACKAGE...: installs those Debian packages that are not there yet.
install_missing() {
  local purpose=$1 package installed
  local missing=() as_root=()
  shift
  if ! command -v apt-get >/dev/null; then
    echo "This is not Debian, so nothing is installed. To $purpose, have what Debian calls: $*"
    return
  fi

  installed=$(dpkg-query --show --showformat '${Package} ${db:Status-Status}\n' "$@" 2>/dev/null) ||
    true  # it also fails where one of them is unknown
  for package in "$@"; do
    grep --quiet --line-regexp --fixed-strings "$package installed" <<<"$installed" ||
      missing+=("$package")
  done
  ((${#missing[@]})) || return 0

  echo "To $purpose, these Debian packages are needed and not there yet: ${missing[*]}"
  if ((EUID != 0)); then
    command -v sudo >/dev/null ||
      fail "Only the administrator can install them, and there is no sudo here. Let the administrator run: apt-get install ${missing[*]}"
    echo "Installing them takes the administrator's rights, so sudo may ask for your password."
    as_root=(sudo)
  fi
  "${as_root[@]}" apt-get --quiet update ||
    fail "The list of Debian packages could not be fetched. Is there a network?"
  "${as_root[@]}" env DEBIAN_FRONTEND=noninteractive \
    apt-get --quiet --yes --no-install-recommends install "${missing[@]}" ||
    fail "The packages could not be installed; the lines above say why. Once they are there, start again."
}

# build PRESET: configures and builds what changed.
build() {
  local log
  [[ -d build/$1 ]] || echo "Building in build/$1. The first time takes a few minutes."
  log=$(cmake --preset "$1" 2>&1) || {
    printf '%s\n' "$log" >&2
    fail "The build could not be set up; the lines above say why. Removing the folder build/$1 and starting again may help."
  }
  cmake --build --preset "$1" || fail "The build failed; the lines above say where."
}
