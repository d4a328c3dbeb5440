#!/bin/bash
# What the process does that no test inside it can see. process.sh WETOUT
set -u
wetout=$1
failed=0
work=$(mktemp -d) || exit 1
trap 'rm -rf "$work"' EXIT

expect() { # WHAT WANTED GOT
  if [[ $2 != "$3" ]]; then
    echo "$1: wanted '$2', got '$3'"
    failed=1
  fi
}

"$wetout" help >/dev/full 2>"$work/err"
expect 'a full disk' 3 $?
expect 'is told' \
  'wetout: error: the result could not be written: No space left on device' "$(<"$work/err")"

"$wetout" help >&- 2>"$work/err"
expect 'a closed stdout' 3 $?
expect 'is told' 'wetout: error: the result could not be written: Bad file descriptor' \
  "$(<"$work/err")"

"$wetout" plna 2>&-
expect 'a closed stderr changes nothing' 2 $?
"$wetout" help <&- >/dev/null
expect 'a closed stdin changes nothing' 0 $?

# The reader is gone before anything is written: its end of the pipe is closed first.
mkfifo "$work/pipe"
(
  exec 3<>"$work/pipe" 4>"$work/pipe" 3<&-
  "$wetout" help >&4 2>"$work/err"
  echo $? >"$work/code"
)
expect 'a broken pipe' 0 "$(<"$work/code")"
expect 'is quiet' '' "$(<"$work/err")"

# A pipe that is full and not read keeps it waiting; in an own process, because a script's
# background jobs are told to ignore interrupts.
/usr/bin/env python3 - "$wetout" <<'P'
import fcntl, os, signal, subprocess, sys, time
read_end, write_end = os.pipe()
fcntl.fcntl(write_end, fcntl.F_SETPIPE_SZ, 4096)
child = subprocess.Popen([sys.argv[1], "completion", "zsh"], stdout=write_end,
                         preexec_fn=lambda: signal.signal(signal.SIGINT, signal.SIG_DFL))
time.sleep(0.5)
child.send_signal(signal.SIGINT)
sys.exit(0 if child.wait(10) == 130 else 1)
P
expect 'an interrupt' 0 $?

exit $failed
