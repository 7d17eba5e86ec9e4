# shellcheck shell=bash
# SPDX-License-Identifier: GPL-3.0-or-later
# What Debian 12 and Ubuntu 24.04 need to build, test and run Outyard; sourced by app/run and
# tests/run. Recommended packages are named too, since they may be switched off.

outyard_packages=(
  build-essential cmake ninja-build pkg-config ccache python3
  qt6-base-dev libqt6sql6-sqlite libqt6svg6 libqt6opengl6-dev libgl-dev
  qt6-l10n-tools qt6-tools-dev qt6-tools-dev-tools
  libgtest-dev libgmock-dev libglpk-dev libfmt-dev libboost-dev libutf8proc-dev
  libqrcodegencpp-dev libical-dev
  fonts-dejavu-core poppler-utils
)
# These go by either name, depending on the release.
outyard_either=("qt6-charts-dev libqt6charts6-dev" "qt6-svg-dev libqt6svg6-dev")

outyard_has() {
  dpkg-query -W -f='${Status}\n' "$1" 2>/dev/null | grep -q '^install ok installed$'
}

outyard_known() {
  LC_ALL=C apt-cache policy "$1" 2>/dev/null | grep -q 'Candidate: [^(]'
}

# Prints the packages that are not installed, one a line; for a pair that is missing, the name that
# this release knows (the first one before its package lists are there).
outyard_missing() {
  local package pair first second
  for package in "${outyard_packages[@]}"; do
    outyard_has "$package" || echo "$package"
  done
  for pair in "${outyard_either[@]}"; do
    read -r first second <<<"$pair"
    if outyard_has "$first" || outyard_has "$second"; then continue; fi
    if ! outyard_known "$first" && outyard_known "$second"; then echo "$second"; else echo "$first"; fi
  done
}

# Installs what is missing, or says what it is and gives 1.
outyard_install() {
  if ! command -v apt-get >/dev/null || ! command -v dpkg-query >/dev/null; then
    echo "No apt-get here: this needs the counterparts of these packages:" >&2
    echo "  ${outyard_packages[*]} qt6-charts-dev qt6-svg-dev" >&2
    if ! command -v cmake >/dev/null || ! command -v ninja >/dev/null; then
      echo "cmake and ninja at least are missing. Install them, then run this again." >&2
      return 1
    fi
    return 0
  fi
  local missing as_root=()
  mapfile -t missing < <(outyard_missing)
  [ "${#missing[@]}" -gt 0 ] || return 0
  if [ "$(id -u)" -ne 0 ]; then
    if ! command -v sudo >/dev/null; then
      echo "These packages are missing; install them as root, then run this again:" >&2
      echo "  apt-get install ${missing[*]}" >&2
      return 1
    fi
    as_root=(sudo)
  fi
  echo "Installing: ${missing[*]}" >&2
  "${as_root[@]}" apt-get update -q >&2 || echo "The package lists could not be renewed." >&2
  mapfile -t missing < <(outyard_missing)  # now the names of this release are known
  if ! "${as_root[@]}" env DEBIAN_FRONTEND=noninteractive apt-get install -qy "${missing[@]}" >&2
  then
    echo "apt-get could not install these; see its message above: ${missing[*]}" >&2
    return 1
  fi
}

# outyard_configure FOLDER OPTIONS...: an optimised build with Ninja, ccache where there is one.
outyard_configure() {
  local folder=$1 launcher=()
  shift
  if command -v ccache >/dev/null; then
    launcher=("-DCMAKE_CXX_COMPILER_LAUNCHER=env;CCACHE_SLOPPINESS=pch_defines,time_macros;ccache")
  fi
  cmake -S . -B "$folder" -G Ninja -DCMAKE_BUILD_TYPE=Release -DOUTYARD_PCH=ON "${launcher[@]}" "$@"
}
