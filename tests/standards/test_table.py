"""Does the README.md beside this show the table of published values as it is now?"""
import table


def test_the_table_in_the_readme_is_what_the_library_does_now():
    now = table.for_readme(table.measured(table.newest()))
    shown = table.IN_README.search(table.README.read_text(encoding="utf-8"))
    assert shown, "README.md has no table of published values"
    assert shown.group() == now, "run tests/standards/table.py --write and read the difference"


def test_every_source_with_a_case_is_in_the_table():
    shown = table.IN_README.search(table.README.read_text(encoding="utf-8")).group()
    for case in (table.ROOT / "tests/standards").glob("*/cases.toml"):
        assert f"({case.parent.name})" in shown


def test_a_deviation_in_the_table_has_a_reason():
    for line in table.for_readme(table.measured(table.newest())).splitlines()[2:]:
        _, _, deviation, why = (cell.strip() for cell in line.strip("|").split("|"))
        assert deviation == "none" or why, line
