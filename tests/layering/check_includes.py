"""The table of allowed includes, tighter than the order of the modules, and the library that lives
in one module only. Prints each violation; exits 1 when there is one.

    check_includes.py ROOT
"""

import pathlib
import re
import sys

ALLOWED = {
    "base": "",
    "units": "base",
    "time": "base units",
    "search": "base",
    "board": "base units",
    "climate": "base units time",
    "resin": "base units time",
    "learn": "base",
    "joblog": "base units time",
    "laminate": "base units board resin",
    "cloth": "base",
    "schedule": "base units time search climate resin laminate",
    "files": "base units time board climate resin laminate schedule",
    "report": "base units time board climate resin laminate schedule",
    "work": "base units time search board climate resin laminate cloth schedule learn joblog files report",
    "cli": "base units time report work",
}

# Library header (a beginning) -> where it may be included.
LIBRARIES = {
    "SQLiteCpp/": ("src/joblog/",),
    "sqlite3.h": ("src/joblog/",),
    "CLI/": ("src/cli/parse.cpp",),
    "toml++/": ("src/files/",),
    "date/": ("src/time/",),
    "nlohmann/": ("src/report/", "src/climate/"),
    "boost/": ("src/",),
    "Eigen/": ("src/learn/",),
    "cairo": ("src/report/",),
    "pugixml": ("src/board/",),
    "dl_": ("src/board/",),
    "fmt/": ("src/",),
}

# Only here may the clock, the environment, the current folder be read, or anything be printed.
SURROUNDINGS = re.compile(
    r"std::getenv|secure_getenv|system_clock::now|\btime\(nullptr\)|current_path\(|std::cout|"
    r"std::cerr|std::printf|fmt::print\(|\bputs\("
)
MAY_SURROUND = ("src/cli/",)

INCLUDE = re.compile(r'^\s*#\s*include\s*[<"]([^>"]+)[>"]')


def module_of(path: pathlib.PurePath) -> str:
    return path.parts[2] if path.parts[0] == "include" else path.parts[1]


def violations(root: pathlib.Path):
    files = sorted([*root.glob("include/wetout/**/*.hpp"), *root.glob("src/**/*.[ch]pp")])
    if not files:
        yield "no files found: wrong root?"
    for file in files:
        path = file.relative_to(root)
        module = module_of(path)
        if module not in ALLOWED:
            yield f"{path}: module {module} is not in the table"
            continue
        allowed = set(ALLOWED[module].split()) | {module}
        for number, line in enumerate(file.read_text(encoding="utf-8").splitlines(), 1):
            if SURROUNDINGS.search(line.split("//")[0]) and not str(path).startswith(MAY_SURROUND):
                yield f"{path}:{number}: reads its surroundings or prints: {line.strip()}"
            match = INCLUDE.match(line)
            if not match:
                continue
            header = match.group(1)
            if header.startswith("wetout/"):
                other = header.split("/")[1]
                if other not in allowed:
                    yield f"{path}:{number}: {module} may not include {other} ({header})"
                elif other != module and path.parts[0] == "include" and not header.endswith(".hpp"):
                    yield f"{path}:{number}: not a public header: {header}"
            for library, home in LIBRARIES.items():
                if header.startswith(library) and not str(path).startswith(home):
                    yield f"{path}:{number}: {header} lives in {' and '.join(home)}"


def main() -> int:
    found = list(violations(pathlib.Path(sys.argv[1])))
    for violation in found:
        print(violation)
    print(f"{len(found)} violations")
    return 1 if found else 0


if __name__ == "__main__":
    sys.exit(main())
