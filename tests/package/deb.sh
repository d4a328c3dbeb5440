#!/usr/bin/env bash
# Makes the packages and looks at what is in them: deb.sh BUILD_DIR WORK_DIR VERSION
set -euo pipefail
build=$1 work=$2 version=$3
rm -rf "$work"
mkdir -p "$work"
cpack --config "$build/CPackConfig.cmake" -B "$work" >"$work/said.txt" 2>&1 || { cat "$work/said.txt"; exit 1; }
program=$(ls "$work"/wetout_"$version"_*.deb)
library=$(ls "$work"/libwetout-dev_"$version"_*.deb)
fail() { echo "$*" >&2; exit 1; }

depends=$(dpkg-deb -f "$program" Depends)
for needed in libc6 libsqlite3-0 libfmt libcairo2 tzdata; do
  [[ $depends == *"$needed"* ]] || fail "wetout does not depend on $needed: $depends"
done
[[ $depends != *-dev* ]] || fail "the program depends on headers: $depends"
[[ $(dpkg-deb -f "$library" Depends) == *libsqlitecpp-dev* ]] || fail "libwetout-dev depends on nothing"

dpkg-deb -x "$program" "$work/root"
[ "$("$work/root/usr/bin/wetout" --version)" = "wetout $version" ] || fail "another version"
for file in share/man/man1/wetout.1 share/man/man1/wetout-plan.1 share/man/man1/wetout-cloth.1 \
  share/bash-completion/completions/wetout share/zsh/site-functions/_wetout \
  share/fish/vendor_completions.d/wetout.fish share/doc/wetout/README.md; do
  [ -s "$work/root/usr/$file" ] || fail "no $file in wetout"
done
[ ! -e "$work/root/usr/include" ] || fail "headers in the program's package"
(cd "$work" && "$work/root/usr/bin/wetout" new boards -q >/dev/null 2>&1 && cd boards &&
  "$work/root/usr/bin/wetout" --log log.db plan board.toml -q >plan.txt && grep -q '^Coats' plan.txt) ||
  fail "the installed program does not plan"

dpkg-deb -x "$library" "$work/dev"
find "$work/dev" -name wetoutConfig.cmake | grep -q . || fail "no CMake package in libwetout-dev"
find "$work/dev" -name hull.hpp | grep -q . || fail "no headers in libwetout-dev"
echo "$(basename "$program") and $(basename "$library"): good"
