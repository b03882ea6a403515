"""Is the Python of the project free of what a linter finds, and no wider than a page?"""
import subprocess
import sys

from project import ROOT, project_files, read

WIDEST = 120  # columns, in the package; what only tests hold may be as wide as their tables
OLD_WORDS = ("Dict", "List", "Optional", "Set", "Tuple", "Union")  # of typing: the language has its own since 3.10


def test_the_linter_finds_nothing():
    """But for lines that say `noqa` and why: a module that is imported for what it does."""
    said = subprocess.run([sys.executable, "-m", "pyflakes", *project_files(".py")], cwd=ROOT, capture_output=True, text=True)
    found = [line for line in said.stdout.splitlines() if "noqa" not in read(line.split(":")[0]).splitlines()[int(line.split(":")[1]) - 1]]
    assert not found and not said.stderr, "\n".join(found) + said.stderr


def package():
    return [path for suffix in (".py", ".pyi") for path in project_files(suffix) if path.is_relative_to("bindings")]


def test_no_line_of_the_package_is_wider_than_a_page():
    wide = [f"{path}:{number}" for path in package() for number, line in enumerate(read(path).splitlines(), 1)
            if len(line) > WIDEST]
    assert package() and not wide


def test_types_are_the_language_s_own():
    old = [f"{path}: {line}" for path in package() for line in read(path).splitlines()
           if line.startswith("from typing import") and set(line.replace(",", " ").split()) & set(OLD_WORDS)]
    assert not old
