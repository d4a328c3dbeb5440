#!/usr/bin/env bash
# The demo in a root that has nothing but a bare Debian: data-demo/run must install what it needs.
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
git clone -q . "$root/wetout"
chroot "$root" /usr/bin/env -i PATH=/usr/sbin:/usr/bin:/sbin:/bin HOME=/root \
  /wetout/data-demo/run >"$root/demo.txt" 2>&1 || { tail -n 40 "$root/demo.txt" >&2; exit 1; }
grep -q 'checked    sound' "$root/demo.txt"
echo "clean root: the demo installed its packages, built and ran"
