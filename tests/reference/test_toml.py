"""Is TOML what others take for TOML? Python's own reader and ours, asked about random documents; and the files by which readers of
TOML are held, where the machine has them. TOML_DOCUMENTS=200000 asks about more.
"""
import json
import os
import random
import re
import subprocess
import tomllib
from pathlib import Path

import pytest
from toml_documents import Writer

COUNT = int(os.environ.get("TOML_DOCUMENTS", 3000))
SUITE = Path("/usr/share/gocode/src/github.com/BurntSushi/toml/internal/toml-test/tests")

# Where the two differ, and which of them TOML 1.0 is with.
DIFFERENCES = {
    "an integer of more than 64 bits, or a float that is none: TOML asks for 64 bits, Python takes any": rb"[0-9](?:_?[0-9]){17,}|[0-9]e\+?[0-9]{3}",
    "a byte order mark: UTF-8 files may have one, and TOML 1.1 says that it is passed over; Python takes none": rb"^\xef\xbb\xbf",
}


def python_takes(data):
    try:
        tomllib.loads(data.decode("utf-8"))
        return True
    except (UnicodeDecodeError, tomllib.TOMLDecodeError, RecursionError, ValueError):
        return False


def we_take(command, folder, names):
    """By file: the first complaint of the syntax, or nothing."""
    done = subprocess.run([command, "check", "--format", "json", *names], cwd=folder, capture_output=True, timeout=300)
    assert done.returncode in (0, 1, 2), done.stderr
    files = json.loads(done.stdout)["files"]
    assert [file["file"] for file in files] == [str(name) for name in names]
    syntax = ("file/syntax", "file/duplicate-id")
    return [next((finding["message"] for finding in file["findings"] if finding["rule"] in syntax), "") for file in files]


@pytest.mark.parametrize("kind, least", [("document", 0.3), ("with_a_mistake", 0.15)])
def test_random_documents(command, tmp_path, kind, least):
    dice = random.Random(3)
    texts = [getattr(Writer(dice), kind)().encode("utf-8", "surrogatepass") for _ in range(COUNT // 2)]
    wrong, taken = [], 0
    for at in range(0, len(texts), 1000):
        names = [f"{number}.toml" for number in range(at, min(at + 1000, len(texts)))]
        for name, text in zip(names, texts[at:]):
            (tmp_path / name).write_bytes(text)
        for text, complaint in zip(texts[at:], we_take(command, tmp_path, names)):
            theirs = python_takes(text)
            taken += theirs
            if theirs == bool(complaint) and not any(re.search(pattern, text) for pattern in DIFFERENCES.values()):
                wrong.append((text, complaint or "taken"))
    assert not wrong, f"{len(wrong)} of {len(texts)}: " + "\n".join(map(str, sorted(wrong, key=lambda one: len(one[0]))[:20]))
    assert least * len(texts) < taken < 0.99 * len(texts)


# Files of the suite that a bank file's reader answers otherwise, and why.
OTHERWISE = {"valid/string/escape-esc.toml": "`\\e` came with TOML 1.1; a bank file is TOML 1.0"}


@pytest.mark.parametrize("kind", ["valid", "invalid"])
def test_the_files_by_which_readers_of_toml_are_held(command, kind):
    """Debian's golang-github-burntsushi-toml-dev brings them."""
    files = sorted((SUITE / kind).rglob("*.toml"))
    if not files:
        pytest.skip("golang-github-burntsushi-toml-dev is not installed; it brings the files")
    taken = {str(file.relative_to(SUITE)): not complaint for file, complaint in zip(files, we_take(command, SUITE, files))}
    assert len(taken) >= 90
    assert {file for file, is_taken in taken.items() if is_taken != (kind == "valid")} == {file for file in OTHERWISE if file.startswith(kind)}
