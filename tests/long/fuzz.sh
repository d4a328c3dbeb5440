#!/usr/bin/env bash
# libFuzzer with address and undefined-behaviour sanitizers on each fuzz target:
#   tests/long/fuzz.sh SECONDS [TARGET...]
# What it finds stays in build/fuzz/found; exit 1. Needs clang and libclang-rt-dev.
set -euo pipefail
cd "$(dirname "$0")/../.."
seconds=$1
shift
targets=("$@")
[ ${#targets[@]} -gt 0 ] || targets=(weather_csv weather_epw weather_nws weather_arrays outline)
build=${WETOUT_FUZZ_BUILD:-build/fuzz}
cmake -S . -B "$build" -G Ninja -DCMAKE_CXX_COMPILER=clang++ -DCMAKE_BUILD_TYPE=RelWithDebInfo \
  -DCMAKE_CXX_FLAGS=-fsanitize=fuzzer-no-link -DWETOUT_FUZZ=ON -DWETOUT_SANITIZE=ON >/dev/null
cmake --build "$build" --target "${targets[@]/#/fuzz_}"
mkdir -p "$build/found"

# The corpus of earlier runs is kept; new inputs go to the first folder.
fuzz() {
  local target=$1
  mkdir -p "$build/corpus/$target"
  "$build/tests/fuzz/fuzz_$target" -max_total_time="$seconds" -timeout=60 -rss_limit_mb=1024 \
    -max_len=16384 -dict="tests/fuzz/${target%%_*}.dict" -artifact_prefix="$build/found/$target-" \
    -print_final_stats=1 "$build/corpus/$target" "tests/fuzz/seeds/$target" \
    >"$build/$target.log" 2>&1
}

# As many at once as there are processors.
failed=no
for ((i = 0; i < ${#targets[@]}; i += $(nproc))); do
  running=()
  for target in "${targets[@]:i:$(nproc)}"; do
    echo "fuzz: $target for $seconds s"
    fuzz "$target" &
    running+=("$!:$target")
  done
  for one in "${running[@]}"; do
    target=${one#*:}
    wait "${one%%:*}" || { failed=yes; tail -n 40 "$build/$target.log"; }
    echo "$target:"
    grep -E 'number_of_executed_units|new_units_added|cov:' "$build/$target.log" | tail -n 3
  done
done
[ $failed = no ] || { echo "fuzz: inputs that break a rule are in $build/found"; exit 1; }
echo "fuzz: nothing found"
