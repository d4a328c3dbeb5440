#!/usr/bin/env bash
# Hourly climate normals of Seattle, fetched from npm: weather without humidity is read and says so.
#   tests/long/normals.sh BUILD_DIR
set -euo pipefail
cd "$(dirname "$0")/../.."
program=$(cd "$1" && pwd)/tests/unit/climate/climate_normals
source .cmake/packages.sh
command -v npm >/dev/null 2>&1 || need_packages npm
place=$(mktemp -d)
trap 'rm -rf "$place"' EXIT
(cd "$place" && npm pack --silent vega-datasets@3.2.1 >/dev/null &&
  tar xzf vega-datasets-3.2.1.tgz package/data/seattle-weather-hourly-normals.csv)
csv=$place/normals.csv
sed '1s/^date,pressure,temperature,wind/date [-08:00],pressure,temperature [C],wind [m\/s]/' \
  "$place/package/data/seattle-weather-hourly-normals.csv" >"$csv"
WETOUT_NORMALS=$csv "$program" --gtest_brief=1
