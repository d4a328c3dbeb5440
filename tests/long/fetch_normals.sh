# Sourced: hourly climate normals of Seattle, 1981-2010 (US NOAA), from the npm package vega-datasets.
# shellcheck shell=bash
source .cmake/packages.sh
command -v npm >/dev/null 2>&1 || need_packages npm

# fetch_normals PLACE: leaves PLACE/normals.csv, its columns named as wetout reads them.
fetch_normals() {
  (cd "$1" && npm pack --silent vega-datasets@3.2.1 >/dev/null &&
    tar xzf vega-datasets-3.2.1.tgz package/data/seattle-weather-hourly-normals.csv)
  sed '1s/^date,pressure,temperature,wind/date [-08:00],pressure,temperature [C],wind [m\/s]/' \
    "$1/package/data/seattle-weather-hourly-normals.csv" >"$1/normals.csv"
}
