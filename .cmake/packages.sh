# Sourced by data-demo/run and tests/run: installs what is missing, or says what is.
# shellcheck shell=bash

product_packages=(g++ cmake ninja-build libsqlitecpp-dev libsqlite3-dev libhowardhinnant-date-dev
  libcli11-dev libfmt-dev libtomlplusplus-dev nlohmann-json3-dev libexpected-dev libboost-dev
  libeigen3-dev libcairo2-dev libpugixml-dev libdxflib-dev pkg-config
  tzdata)

# need_packages PACKAGE...
need_packages() {
  local missing=() package
  if ! command -v dpkg-query >/dev/null 2>&1; then
    echo "This script installs packages on Debian and Ubuntu only. Elsewhere, install what these"
    echo "are called there, then build with: cmake -C .cmake/release.cmake -S . -B build"
    printf '  %s\n' "$@"
    command -v cmake >/dev/null 2>&1 || exit 1
    return 0
  fi
  for package in "$@"; do
    [ "$(dpkg-query -W -f='${db:Status-Status}' "$package" 2>/dev/null)" = installed ] ||
      missing+=("$package")
  done
  [ ${#missing[@]} -eq 0 ] && return 0
  local as_root=()
  if [ "$(id -u)" -ne 0 ]; then
    if ! command -v sudo >/dev/null 2>&1; then
      echo "These packages are missing, and neither root nor sudo is at hand:" >&2
      printf '  %s\n' "${missing[@]}" >&2
      exit 1
    fi
    as_root=(sudo)
  fi
  echo "Installing: ${missing[*]}"
  export DEBIAN_FRONTEND=noninteractive
  if ! { "${as_root[@]}" apt-get update -qq &&
    "${as_root[@]}" apt-get install -y -qq --no-install-recommends "${missing[@]}" >/dev/null; }; then
    echo "apt-get could not install: ${missing[*]}" >&2
    exit 1
  fi
}
