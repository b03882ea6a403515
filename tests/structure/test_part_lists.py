"""The part lists that `plan` carries with it are those of data/examples/parts, and say that they are invented."""
import subprocess
import sys
import tomllib

from project import ROOT

LISTS = sorted((ROOT / "data/examples/parts").glob("*.toml"))


def test_the_library_holds_the_lists_as_they_are():
    run = subprocess.run([sys.executable, ROOT / "tests/structure/make_part_lists.py", "--check"],
                         capture_output=True, text=True)
    assert run.returncode == 0, run.stderr + "run tests/structure/make_part_lists.py"


def test_each_list_says_that_it_is_invented():
    assert len(LISTS) >= 3
    for path in LISTS:
        assert path.read_text(encoding="utf-8").startswith("# Invented. "), path


def test_no_list_makes_up_a_price():
    """A price that nobody asks would be taken for one."""
    for path in LISTS:
        models = tomllib.loads(path.read_text(encoding="utf-8"))["models"]
        assert not [name for name, keys in models.items() if "price" in keys], path
