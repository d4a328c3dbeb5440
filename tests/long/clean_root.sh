#!/usr/bin/env bash
# In a root that has nothing but a bare Debian: the package made of build/tests installs with what it
# depends on, and runs; then, that taken away, data-demo/run must install what it needs.
# Needs root and debootstrap; says so and passes by where there is neither.
set -euo pipefail
cd "$(dirname "$0")/../.."
if [ "$(id -u)" -ne 0 ] || ! command -v debootstrap >/dev/null; then
  echo "clean root: skipped, needs root and debootstrap"
  exit 0
fi
root=$(mktemp -d /var/tmp/wetout-root-XXXXXX)
trap 'rm -rf "$root"' EXIT
# The same release and mirror as this machine's.
release=$(. /etc/os-release && echo "$VERSION_CODENAME")
mirror=$(apt-get indextargets --format '$(SITE)' 2>/dev/null | head -n 1)
debootstrap --variant=minbase "$release" "$root" "${mirror:-http://deb.debian.org/debian}" \
  >"$root.log" 2>&1 || { tail -n 20 "$root.log" >&2; exit 1; }
rm -f "$root.log"
for file in /etc/apt/sources.list /etc/apt/sources.list.d /etc/apt/apt.conf.d /etc/resolv.conf \
  /etc/ssl/certs; do
  [ -e "$file" ] && mkdir -p "$root$(dirname "$file")" && cp -aL "$file" "$root$(dirname "$file")/"
done
in_root() { chroot "$root" /usr/bin/env -i PATH=/usr/sbin:/usr/bin:/sbin:/bin HOME=/root "$@"; }
if [ -f build/tests/CPackConfig.cmake ]; then
  cpack --config build/tests/CPackConfig.cmake -B "$root/packages" >"$root/cpack.txt" 2>&1 ||
    { cat "$root/cpack.txt" >&2; exit 1; }
  in_root sh -ec '
    apt-get update -qq
    apt-get install -qq -y --no-install-recommends /packages/wetout_*.deb
    cd /root
    wetout new boards
    cd boards
    wetout --log log.db plan board.toml
    apt-get purge -qq -y --autoremove wetout' >"$root/package.txt" 2>&1 ||
    { tail -n 40 "$root/package.txt" >&2; exit 1; }
  grep -q '^Coats' "$root/package.txt"
  echo "clean root: the package installed and planned a board"
fi
git clone -q . "$root/wetout"
in_root /wetout/data-demo/run >"$root/demo.txt" 2>&1 || { tail -n 40 "$root/demo.txt" >&2; exit 1; }
grep -q 'checked    sound' "$root/demo.txt"
echo "clean root: the demo installed its packages, built and ran"
