"""Runs a transcript of a terminal and compares what it shows.

    transcript.py [--update] PROGRAM FILE [INPUT_DIR ...]

FILE is a .test file, or a .md file whose ```console blocks are read. A line "$ COMMAND" is run by
bash; the lines after it, up to the next command, are what it shows (stdout and stderr as a terminal
would mix them). A line "..." stands for any lines, one or more. A command that does not end with 0
shows "[exit N]" last.

Everything runs in one empty folder with a copy of the INPUT_DIRs, an empty home, a fixed time zone
database and a fixed clock (`--now`, unless the command says its own), so that the same is shown
every day. --update writes what is shown into FILE where it has no "...".
"""

import os
import pathlib
import shutil
import subprocess
import sys
import tempfile

NOW = "2026-06-13T16:15:00Z"

SHIM = """#!/bin/bash
for a in "$@"; do case $a in --now|--now=*) exec "{program}" "$@";; esac; done
exec "{program}" --now {now} "$@"
"""


def commands(text: str, fenced: bool):
    """Yields (first line, last line + 1, command, expected lines) in terms of lines of `text`."""
    lines = text.split("\n")
    inside = not fenced
    current = None
    for number, line in enumerate(lines + ["```" if fenced else "$ "]):
        if fenced and line.startswith("```"):
            if current:
                yield current[0], number, current[1], lines[current[0] + 1 : number]
                current = None
            inside = line.strip() == "```console"
            continue
        if not inside:
            continue
        if line.startswith("$ "):
            if current:
                yield current[0], number, current[1], lines[current[0] + 1 : number]
            current = (number, line[2:])


def trim(lines):
    lines = list(lines)
    while lines and not lines[-1].strip():
        lines.pop()
    return lines


def matches(expected, shown) -> bool:
    if not expected:
        return not shown
    if expected[0] == "...":
        return any(matches(expected[1:], shown[skip:]) for skip in range(1, len(shown) + 1))
    return bool(shown) and expected[0] == shown[0] and matches(expected[1:], shown[1:])


def run(command, folder, env):
    done = subprocess.run(
        ["bash", "-c", command], cwd=folder, env=env, stdin=subprocess.DEVNULL, timeout=120,
        stdout=subprocess.PIPE, stderr=subprocess.STDOUT, check=False)
    text = done.stdout.decode("utf-8", "backslashreplace").replace(str(folder), "/home/you")
    shown = trim(text.split("\n"))
    if done.returncode != 0:
        shown.append(f"[exit {done.returncode}]")
    return shown


def main() -> int:
    sys.setrecursionlimit(20000)
    args = sys.argv[1:]
    update = args[0] == "--update"
    if update:
        args = args[1:]
    program, file = pathlib.Path(args[0]).resolve(), pathlib.Path(args[1])
    text = file.read_text(encoding="utf-8")
    failed = 0
    count = 0
    with tempfile.TemporaryDirectory(prefix="wetout-test-") as temp:
        folder = pathlib.Path(temp).resolve()
        for source in args[2:]:
            shutil.copytree(source, folder, dirs_exist_ok=True)
        tools = folder / ".tools"
        tools.mkdir()
        shim = tools / "wetout"
        shim.write_text(SHIM.format(program=program, now=NOW))
        shim.chmod(0o755)
        env = {"PATH": f"{tools}:{os.environ['PATH']}", "HOME": str(folder), "LC_ALL": "C.UTF-8",
               "TERM": "dumb"}
        for name in ("ASAN_OPTIONS", "UBSAN_OPTIONS"):
            if name in os.environ:
                env[name] = os.environ[name]
        lines = text.split("\n")
        shift = 0
        for first, last, command, expected in commands(text, file.suffix == ".md"):
            count += 1
            shown = run(command, folder, env)
            if matches(trim(expected), shown):
                continue
            if update and "..." not in expected:
                new = shown + [""] * (len(expected) - len(trim(expected)))
                lines[first + 1 + shift : last + shift] = new
                shift += len(new) - (last - first - 1)
                continue
            failed += 1
            print(f"{file}:{first + 1}: $ {command}\n--- expected")
            print("\n".join(trim(expected)))
            print("--- shown")
            print("\n".join(shown))
    if update:
        file.write_text("\n".join(lines), encoding="utf-8")
    print(f"{count} commands, {failed} differ")
    return 1 if failed or count == 0 else 0


if __name__ == "__main__":
    sys.exit(main())
