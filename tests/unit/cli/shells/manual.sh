#!/bin/bash
# Every manual page goes through groff without a warning and fits the width it is given.
# manual.sh FOLDER: the folder holds a wetout that offers all commands.
set -u
PATH=$1:$PATH
failed=0
work=$(mktemp -d) || exit 1
trap 'rm -rf "$work"' EXIT
# The first column of the list of commands in the help.
commands=$(wetout help | sed -n '/^Commands/,/^$/s/^  \([a-z][a-z-]*\) .*/\1/p')
[[ $(wc -w <<<"$commands") -ge 8 ]] || { echo "only these commands: $commands"; exit 1; }
for command in '' $commands; do
  # shellcheck disable=SC2086  # no command is no word
  wetout help --man $command >"$work/page" || exit 1
  groff -man -Tascii -P-c -P-b -P-u -P-o -ww -rLL=80n -rHY=0 "$work/page" >"$work/text" 2>"$work/warnings"
  if [[ -s $work/warnings ]]; then
    echo "wetout $command: $(<"$work/warnings")"
    failed=1
  fi
  if grep -qE '^.{81}' "$work/text"; then
    echo "wetout $command: wider than 80 columns"
    failed=1
  fi
  for section in NAME SYNOPSIS DESCRIPTION 'EXIT STATUS' 'SEE ALSO'; do
    [[ $section == DESCRIPTION && -z $(grep DESCRIPTION "$work/page") ]] && continue
    grep -qx "$section" "$work/text" || { echo "wetout $command: no $section"; failed=1; }
  done
done
exit $failed
