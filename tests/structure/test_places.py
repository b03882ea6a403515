"""Is a command one pair of files, and an analysis in few places? DEVELOPERS.md lists the places; what names an analysis lies in them."""
import re

import pytest
from project import ROOT, project_files, read

COMMANDS = sorted(path.stem for path in (ROOT / "apps/bankwright/commands").glob("*.cpp"))
# Commands that answer no question about the bank: what they print is another room's.
OF_NO_ANALYSIS = {"check", "draw", "report", "rules", "schema"}
# The word of its reports, where it is not that of the command.
REPORTS = {"solve": "solution", "size": "sizing"}


def places():
    """The files that DEVELOPERS.md lists for an analysis X, as patterns."""
    entry = re.search(r"^\* \*\*An analysis\.\*\*.*?(?=^\* \*\*)", read("DEVELOPERS.md"), re.M | re.S)[0]
    listed = re.findall(r"^ +\d+\. (.*)$", entry, re.M)
    return [path for line in listed for path in re.findall(r"`((?:lib|apps|tests)/[^`]+\.\w+)`", line)]


def sources(folder):
    return [str(path) for path in (*project_files(".cpp"), *project_files(".hpp")) if str(path).startswith(folder)]


def test_an_analysis_is_at_most_ten_files():
    assert 5 <= len(places()) <= 10, places()


@pytest.mark.parametrize("command", COMMANDS)
def test_a_command_is_one_pair_of_files_and_one_line_of_the_table(command):
    table = read("apps/bankwright/commands.cpp")
    header = read(f"apps/bankwright/commands/{command}.hpp")
    request = re.search(r"^struct (\w+Command) {$", header, re.M)[1]
    assert f'#include "commands/{command}.hpp"' in table and f"command<{request}>()" in table
    assert re.search(rf'name\[\] = "{command.replace("_", "-")}";', header)
    elsewhere = [path for path in sources("apps/") if path not in (f"apps/bankwright/commands/{command}.hpp",
                                                                  f"apps/bankwright/commands/{command}.cpp",
                                                                  "apps/bankwright/commands.cpp")]
    assert [path for path in elsewhere if request in read(path) or f'commands/{command}.hpp"' in read(path)] == []


@pytest.mark.parametrize("command", [command for command in COMMANDS if command not in OF_NO_ANALYSIS])
def test_what_names_an_analysis_lies_in_the_listed_places(command):
    """Its command and its reports are known to nobody else, so nobody else has to be told of a new one."""
    report = REPORTS.get(command, command)
    names = re.compile(rf'"(?:commands/{command}|bankwright/reports/{report}_(?:text|json))\.hpp"')
    listed = [place.replace("{X}", word) for place in places() for word in {command, report}]
    others = ("lib/src/", "lib/include/bankwright/bankwright.hpp", "bindings/", "tests/")  # generated, Python's, proofs
    users = [str(path) for path in project_files(".hpp", ".cpp") if names.search(read(path))]
    assert [path for path in users if path not in listed and not path.startswith(others)] == []
    assert f"apps/bankwright/commands/{command}.cpp" in users


def test_the_shared_parts_of_the_command_are_short():
    for path in sources("apps/"):
        assert len(read(path).splitlines()) <= 250, path
