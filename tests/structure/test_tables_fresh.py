"""The generated headers say exactly what data/tables says, and a table that does not add up is refused."""
import pathlib
import subprocess
import sys

import pytest

HERE = pathlib.Path(__file__).resolve().parent
sys.path.insert(0, str(HERE))
import make_tables  # noqa: E402

GOOD = """
title = "Anything?"
[source.book]
document = "a book"
clause = "a page"
edition = "first"
confidence = "read"
[[table]]
name = "things"
about = "One row a thing."
source = "book"
columns = ["number", "volts"]
units = ["", "V"]
row_count = 2
rows = [[1, 1.5], [2, 2.5]]
"""


def made(tmp_path, text):
    path = tmp_path / "things.toml"
    path.write_text(text, encoding="utf-8")
    return make_tables.header(path)


def test_headers_are_fresh():
    run = subprocess.run([sys.executable, HERE / "make_tables.py", "--check"], capture_output=True, text=True)
    assert run.returncode == 0, run.stderr


def test_source_and_values_reach_the_header(tmp_path):
    text = made(tmp_path, GOOD)
    assert '"a book"' in text and "{2, 2.5}," in text and "do not edit" in text


@pytest.mark.parametrize("old, new", [
    ("row_count = 2", "row_count = 3"),
    ("[2, 2.5]", "[2]"),
    ('units = ["", "V"]', 'units = [""]'),
    ('confidence = "read"', 'confidence = ""'),
    ('edition = "first"\n', ""),
    ('source = "book"', 'source = "another"'),
    ('"volts"]', '"number"]'),
    ("[2, 2.5]", '[2, "two"]'),
])
def test_a_table_that_does_not_add_up_is_refused(tmp_path, old, new):
    assert old in GOOD
    with pytest.raises((make_tables.BadTable, KeyError)):
        made(tmp_path, GOOD.replace(old, new))
