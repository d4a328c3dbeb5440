"""Every key of a source used in code is in docs/references.bib, and every entry there is used.

    check_references.py ROOT

A key is used as the first text of a Source (`{"codata2018", "R, exact", Standing::standard}`) or as
[key] in a comment or page; an entry counts as used when its key stands in code, tests or docs.
"""

import pathlib
import re
import sys

root = pathlib.Path(sys.argv[1])
bib = root / "docs" / "references.bib"
entries = re.findall(r"^@\w+\{\s*([^,\s]+)", bib.read_text(encoding="utf-8"), re.M)
sources = re.compile(r'\{"([a-z0-9_-]*)",\s*"[^"]*"\s*(?:"[^"]*"\s*)*,\s*(?:\w+::)*(?:S|Standing)::\w+')
texts = {}
for pattern in ("include/**/*.hpp", "src/**/*.[ch]pp", "tests/**/*.[ch]pp", "tests/**/*.csv",
                "docs/**/*.md"):
    for path in root.glob(pattern):
        texts[path] = path.read_text(encoding="utf-8", errors="replace")
bad = [f"{key}: twice in references.bib" for key in set(entries) if entries.count(key) > 1]
for path, text in texts.items():
    for key in sources.findall(text):
        if key and key not in entries:
            bad.append(f"{path.relative_to(root)}: {key} is not in references.bib")
everything = "\n".join(texts.values())
for key in entries:
    if not re.search(r"(?<![\w-])" + re.escape(key) + r"(?![\w-])", everything):
        bad.append(f"references.bib: {key} is used nowhere")
found = sum(len(sources.findall(text)) for text in texts.values())
if not entries or found < 20:
    bad.append(f"{len(entries)} entries and {found} sources: this check has lost its subject")
print("\n".join(bad))
print(f"{len(entries)} entries, {found} sources in code, {len(bad)} wrong")
sys.exit(1 if bad else 0)
