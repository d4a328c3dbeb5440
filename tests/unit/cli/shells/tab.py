"""Presses TAB in a real shell on a pseudo-terminal and looks at what the line has become.

tab.py SHELL FOLDER: bash or zsh; the folder holds the wetout whose completion is tried.
"""
import os
import pathlib
import pty
import select
import sys
import tempfile
import time

SETUP = {
    "bash": (
        ["bash", "--noprofile", "--norc", "-i"],
        "bind 'set bell-style none'; eval \"$(wetout completion bash)\"\n"
        "bind -x '\"\\C-x\\C-d\": printf %s \"$READLINE_LINE\" > line'\n",
    ),
    "zsh": (
        ["zsh", "-f", "-i"],
        "autoload -Uz compinit; compinit -u -D; unsetopt beep list_beep\n"
        'eval "$(wetout completion zsh)"\n'
        'dump() { print -rn -- "$BUFFER" > line }; zle -N dump; bindkey "^X^D" dump\n',
    ),
}

# What is typed before TAB, and the line after it. What can go on in several ways goes as far as
# they agree.
CASES = [
    ("wetout pl", "wetout plan "),
    ("wetout ", "wetout "),
    ("wetout jobs sh", "wetout jobs show "),
    ("wetout --json jobs sh", "wetout --json jobs show "),
    ("wetout plan a", "wetout plan a.toml "),
    ("wetout plan a.toml b", "wetout plan a.toml b\\ c.toml "),
    ("wetout log restore d", "wetout log restore d.txt "),
    ("wetout new f", "wetout new folder/"),
    ("wetout jobs show sa", "wetout jobs show sandpiper "),
    ("wetout --log x.db jobs show f", "wetout --log x.db jobs show from-x.db "),
    ("wetout jobs show --log x.db f", "wetout jobs show --log x.db from-x.db "),
    ("wetout mix sandpiper s", "wetout mix sandpiper sandpiper-"),
    ("wetout mix sandpiper sandpiper-d", "wetout mix sandpiper sandpiper-deck-lam "),
    ("wetout mix --batch 2 step-up st", "wetout mix --batch 2 step-up step-up-"),
    ("wetout record u", "wetout record undo "),
    ("wetout record sa", "wetout record sandpiper "),
    ("wetout record undo 12 --quie", "wetout record undo 12 --quiet "),
    ("wetout record sandpiper w", "wetout record sandpiper weigh "),
    ("wetout record --done sandpiper bo", "wetout record --done sandpiper bottom-lam/trim "),
    ("wetout record sandpiper weigh --don", "wetout record sandpiper weigh --done "),
    ("wetout mix --resin sl", "wetout mix --resin slow "),
    ("wetout --shop s.toml plan a.toml --cup f", "wetout --shop s.toml plan a.toml --cup from-s.toml "),
    ("wetout plan a.toml --cup q", "wetout plan a.toml --cup quart "),
    ("wetout --units m", "wetout --units metric "),
    ("wetout --units=m", "wetout --units=metric "),
    ("wetout plan --no", "wetout plan --no"),  # --no-learned, --now
    ("wetout plan --no-", "wetout plan --no-learned "),
    ("wetout jobs show --dry", "wetout jobs show --dry-run "),
    ("wetout completion fi", "wetout completion fish "),
    ("wetout help jo", "wetout help jobs "),
]
# Only bash: zsh falls back to all files when none fits.
BASH_CASES = [("wetout plan d", "wetout plan d")]


def main():
    shell, folder = sys.argv[1], sys.argv[2]
    command, setup = SETUP[shell]
    with tempfile.TemporaryDirectory() as work:
        os.chdir(work)
        for name in ("a.toml", "b c.toml", "d.txt"):
            pathlib.Path(name).touch()
        os.mkdir("folder")
        child, terminal = pty.fork()
        if child == 0:
            environment = {
                "PATH": folder + ":/usr/bin:/bin",
                "HOME": work,
                "TERM": "dumb",
                "PS1": "",
                "ZDOTDIR": work,
            }
            os.execvpe(command[0], command, environment)
        line = pathlib.Path("line")

        def drain():
            while select.select([terminal], [], [], 0)[0]:
                try:
                    os.read(terminal, 65536)
                except OSError:
                    return

        def ask(keys, seconds=20.0):
            """Types `keys`, has the shell write its line down, and clears it."""
            line.unlink(missing_ok=True)
            os.write(terminal, keys.encode() + b"\x18\x04")
            until = time.monotonic() + seconds
            while time.monotonic() < until:
                drain()
                if line.exists() and line.stat().st_size > 0:
                    time.sleep(0.02)
                    break
                time.sleep(0.02)
            os.write(terminal, b"\x15")  # to the start of the line
            return line.read_text() if line.exists() else None

        # Until the shell reads keys itself, the terminal keeps some of them.
        os.write(terminal, (setup + "touch started\n").encode())
        until = time.monotonic() + 20
        while not os.path.exists("started") and time.monotonic() < until:
            drain()
            time.sleep(0.05)
        time.sleep(0.5)
        drain()
        if ask("ready") != "ready":
            sys.exit(f"{shell} does not answer")
        failed = 0
        cases = CASES + (BASH_CASES if shell == "bash" else [])
        for typed, wanted in cases:
            got = ask(typed + "\t")
            if got is None or got.rstrip() != wanted.rstrip():
                print(f"typed:  {typed}<TAB>\nwanted: {wanted}\ngot:    {got}")
                failed += 1
        os.close(terminal)
        os.waitpid(child, 0)
    print(f"{len(cases) - failed} of {len(cases)} lines as wanted in {shell}")
    sys.exit(1 if failed else 0)


main()
