#!/usr/bin/env python3
"""Puts what the command prints now into the console blocks of every document, draws their pictures, and puts what
test_standards measures into the table of tests/standards/README.md. Read the difference before committing.

    tests/structure/refresh_docs.py [COMMAND]
"""
import re
import subprocess
import sys

from console import DOCUMENTS, PICTURES, printed, shown
from project import ROOT, read


def refreshed(block, command):
    return "\n".join(f"$ {typed}\n{printed(command, typed)}\n" for typed, _ in shown(block))


if __name__ == "__main__":
    command = sys.argv[1] if len(sys.argv) > 1 else ROOT / "build/release/bin/bankwright"
    for document in DOCUMENTS:
        text = re.sub(r"(?<=^```console\n)(.*?)(?=^```$)", lambda found: refreshed(found.group(1), command), read(document),
                      flags=re.M | re.S)
        (ROOT / document).write_text(text, encoding="utf-8")
    for picture, typed in PICTURES.items():
        (ROOT / picture).write_text(printed(command, typed) + "\n", encoding="utf-8")
    subprocess.run([sys.executable, ROOT / "tests/standards/table.py", "--write"], check=True)
