"""Is everything finished, named for what it is, and free of the machine it was written on?"""
import re
from pathlib import Path

from project import project_files, read

UNFINISHED = re.compile(r"\b(TODO|FIXME|XXX|HACK|WIP|not (yet )?implemented|unimplemented|lorem ipsum|coming soon)\b", re.I)
SOMEBODYS_FOLDER = re.compile(r"(?<![\w.])/(?:home|work|Users|root)/\w")
VAGUE = {"utils", "util", "misc", "impl", "detail", "details", "common", "helpers", "auxiliary"}
TEXT = (".hpp", ".cpp", ".py", ".sh", ".txt", ".md", ".toml", ".ipynb", ".json", ".cmake", ".in", ".mjs", ".js", ".html")
THIS = Path("tests/structure/test_wording.py")


def lines_that_match(pattern):
    return [f"{path}:{number}: {line.strip()[:120]}" for path in project_files(*TEXT) if path != THIS
            for number, line in enumerate(read(path).splitlines(), 1) if pattern.search(line)]


def test_nothing_is_left_unfinished():
    assert not (found := lines_that_match(UNFINISHED)), "\n".join(found)


def test_no_file_knows_the_machine_it_was_written_on():
    assert not (found := lines_that_match(SOMEBODYS_FOLDER)), "\n".join(found)


def test_names_say_what_is_inside():
    vague = [str(path) for path in project_files() if VAGUE & {*path.parent.parts, path.stem}]
    assert not vague, "\n".join(vague)


def test_file_names_are_snake_case():
    odd = [str(path) for path in project_files(".hpp", ".cpp", ".py") if not re.fullmatch(r"[a-z_][a-z0-9_]*", path.stem)]
    assert not odd, "\n".join(odd)


def test_doctest_names_hide_no_test():
    """CTest takes `;` in a name for a separator, and a skip needs a reason that is printed when it is met."""
    breaches = []
    for path in project_files(".cpp"):
        for number, line in enumerate(read(path).splitlines(), 1):
            if (name := re.search(r'(?:TEST_CASE|SUBCASE)\("([^"]*)"', line)) and ";" in name.group(1):
                breaches.append(f"{path}:{number}: `;` in a name")
            if re.search(r"doctest::(skip|may_fail|should_fail|expected_failures)\b", line):
                breaches.append(f"{path}:{number}: a test that may fail or be skipped reads green")
    assert not breaches, "\n".join(breaches)
