#!/usr/bin/env bash
# A board each week of a year of real weather (schedule_year.py): Chicago's typical year, which stands
# beside the checkout with the other test data, and Seattle's hourly normals, fetched from npm.
#   tests/long/schedule_year.sh BUILD_DIR [--update]
set -euo pipefail
cd "$(dirname "$0")/../.."
program=$(cd "$1" && pwd)/src/cli/wetout
data=$(sed -n 's/^WETOUT_TEST_DATA:[A-Z]*=//p' "$1/CMakeCache.txt")
shift
source tests/long/fetch_normals.sh
place=$(mktemp -d)
trap 'rm -rf "$place"' EXIT
fetch_normals "$place"
years=(seattle="$place/normals.csv")
if [ -f "$data/weather/chicago.epw" ]; then
  years=(chicago="$data/weather/chicago.epw" "${years[@]}")
else
  echo "no chicago.epw in '$data': Seattle alone"
fi
python3 tests/long/schedule_year.py "$program" "${years[@]}" "$@"
