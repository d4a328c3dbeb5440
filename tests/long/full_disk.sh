#!/usr/bin/env bash
# A log on a disk that is full: the error is said, exit 3, and what was saved before is still there.
# Needs root to mount a small memory file system; says so and passes by without.
set -euo pipefail
cd "$(dirname "$0")/../.."
program=$(cd "$(dirname "$1")" && pwd)/$(basename "$1")
place=$(mktemp -d /var/tmp/wetout-full-XXXXXX)
if ! mount -t tmpfs -o size=300k tmpfs "$place" 2>/dev/null; then
  rmdir "$place"
  echo "full disk: skipped, a memory file system cannot be mounted here"
  exit 0
fi
trap 'umount "$place"; rmdir "$place"' EXIT
saved=0
for air in $(seq 15 0.2 34); do
  code=0
  "$program" --log "$place/log.db" plan data-demo/pico.toml --air "${air}C" -q >/dev/null \
    2>"/tmp/wetout-full-$$.txt" || code=$?
  [ $code -eq 0 ] || break
  saved=$((saved + 1))
done
said=$(cat "/tmp/wetout-full-$$.txt"); rm -f "/tmp/wetout-full-$$.txt"
[ $code -eq 3 ] || { echo "full disk: exit $code after $saved plans"; exit 1; }
grep -q 'size limit is full' <<<"$(tr -s ' \n' ' ' <<<"$said")" || { echo "$said"; exit 1; }
cp "$place/log.db"* "/dev/shm/" && trap 'umount "$place"; rmdir "$place"; rm -f /dev/shm/log.db*' EXIT
kept=$(sqlite3 /dev/shm/log.db 'select count(*) from plan')
whole=$(sqlite3 /dev/shm/log.db 'pragma integrity_check')
[ "$kept" -eq "$saved" ] && [ "$whole" = ok ] || { echo "full disk: $kept of $saved kept, $whole"; exit 1; }
echo "full disk: said after $saved plans, all of them kept"
