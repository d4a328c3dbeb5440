#!/usr/bin/env bash
# Hourly climate normals of Seattle, fetched from npm: weather without humidity is read and says so.
#   tests/long/normals.sh BUILD_DIR
set -euo pipefail
cd "$(dirname "$0")/../.."
program=$(cd "$1" && pwd)/tests/unit/climate/climate_normals
source tests/long/fetch_normals.sh
place=$(mktemp -d)
trap 'rm -rf "$place"' EXIT
fetch_normals "$place"
WETOUT_NORMALS=$place/normals.csv "$program" --gtest_brief=1
