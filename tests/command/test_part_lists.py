"""Part lists: models that banks share. They come from the folder that is checked and from nowhere else, and a mistake in one is
shown where it stands."""
import json
import os
import subprocess
from pathlib import Path

import pytest

EXAMPLE = Path(__file__).resolve().parent.parent.parent / "data/examples/bow-36v.toml"
LIST = """bankwright-parts = 1
name = "what the yard buys"
[models]
deck-agm = { chemistry = "agm", voltage = "12 V", capacity = "100 Ah", reserve = "185 min", resistance = "4.0 mohm" }
no6      = { size = "6 AWG", insulation = "105 degC", tinned = true }
"""


def bank(*lists):
    """The example without its own models."""
    text = EXAMPLE.read_text(encoding="utf-8")
    before, _, rest = text.partition("[models]")
    after = rest[rest.index("[batteries]"):]
    return before.replace("bankwright = 1", f"bankwright = 1\nparts = {json.dumps(lists)}") + after


@pytest.fixture
def check(command, tmp_path):
    """check(*arguments) -> exit status, findings of all files."""
    def call(*arguments, cwd=".", stdin=""):
        done = subprocess.run([command, "check", *arguments, "--format", "json"], cwd=tmp_path / cwd, input=stdin,
                              capture_output=True, text=True, timeout=60)
        assert done.stdout, done.stderr
        return done.returncode, [finding for file in json.loads(done.stdout)["files"] for finding in file["findings"]]

    return call


def test_models_come_from_the_list_and_the_bank_is_the_same(command, tmp_path, write, check):
    write("boats/bow.toml", bank("../parts.toml"))
    write("parts.toml", LIST)
    assert check(".") == (0, [])
    assert check("boats/bow.toml") == (0, [])

    def solved(file):
        done = subprocess.run([command, "solve", file, "--format", "json"], cwd=tmp_path, capture_output=True, text=True,
                              timeout=60, check=True)
        return json.loads(done.stdout)["parts"]

    assert solved("boats/bow.toml") == solved(EXAMPLE)


def test_the_path_is_taken_from_the_bank_file_s_folder_wherever_one_stands(tmp_path, write, check):
    write("boats/bow.toml", bank("lists/parts.toml"))
    write("boats/lists/parts.toml", LIST)
    (tmp_path / "elsewhere").mkdir()
    assert check("boats/bow.toml") == (0, [])
    assert check("../boats", cwd="elsewhere") == (0, [])
    assert check("../boats/bow.toml", cwd="elsewhere") == (0, [])
    assert check("boats/../boats/bow.toml") == (0, [])


OUTSIDE = [("boats", ["../parts.toml"]), ("boats", ["x/../../parts.toml"]), ("boats", ["../../../../../../../../../etc/passwd"])]


@pytest.mark.parametrize("argument, lists", OUTSIDE)
def test_a_list_outside_the_folder_given_is_not_read(write, check, argument, lists):
    write("boats/bow.toml", bank(*lists))
    write("parts.toml", LIST)
    status, findings = check(argument)
    assert status == 1 and [finding["rule"] for finding in findings] == ["file/no-part-list"]
    assert "lies outside `boats`" in findings[0]["message"]
    assert (findings[0]["line"], findings[0]["key"]) == (4, "parts")  # at the path itself, not at the whole list
    assert findings[0]["column"] == len('parts = [') + 1


@pytest.mark.parametrize("path, says", [
    ("/etc/hostname", "absolute path"), ("C:/parts.toml", "absolute path"), ("lists\\parts.toml", "separated by `/`"),
    ("", "has no name"), (".", "is a folder"), ("nowhere.toml", "is not there"), ("a\u0000b", "NUL"), ("lists", "not a regular file"),
    ("lists/", "is a folder"), ("pipe", "not a regular file"), ("bow.toml", "is a bank file"), ("link.toml", "behind a link"),
    ("linked/parts.toml", "behind a link"), ("inside.toml", "behind a link")])
def test_what_is_no_part_list_is_a_finding_at_its_place(tmp_path, write, check, path, says):
    write("boats/bow.toml", bank(path))
    write("boats/lists/parts.toml", LIST)
    write("outside/parts.toml", LIST)
    os.mkfifo(tmp_path / "boats/pipe")
    (tmp_path / "boats/link.toml").symlink_to(tmp_path / "outside/parts.toml")
    (tmp_path / "boats/inside.toml").symlink_to("lists/parts.toml")
    (tmp_path / "boats/linked").symlink_to(tmp_path / "outside")
    status, findings = check("boats")
    assert status == 1 and [(finding["rule"], finding["line"]) for finding in findings] == [("file/no-part-list", 4)]
    assert says in findings[0]["message"]


def test_standard_input_has_no_folder(check):
    status, findings = check("-", stdin=bank("parts.toml"))
    assert status == 1 and "standard input has no folder" in findings[0]["message"]


def test_a_mistake_in_a_list_is_shown_in_the_list(command, tmp_path, write, check):
    write("boats/bow.toml", bank("parts.toml"))
    write("boats/parts.toml", LIST.replace("size =", "sise ="))
    status, findings = check("boats")
    assert status == 1
    wrong, = [finding for finding in findings if "file" in finding]
    assert (wrong["rule"], wrong["file"], wrong["line"], wrong["column"]) == ("file/unknown-key", "boats/parts.toml", 5, 14)
    text = subprocess.run([command, "check", "boats"], cwd=tmp_path, capture_output=True, text=True, timeout=60).stdout
    assert "boats/parts.toml:5:14: error: " in text and " 5 | no6      = { sise = " in text
    sarif = json.loads(subprocess.run([command, "check", "boats", "--format", "sarif"], cwd=tmp_path, capture_output=True,
                                      timeout=60).stdout)
    where = sarif["runs"][0]["results"][findings.index(wrong)]["locations"][0]["physicalLocation"]
    assert where["artifactLocation"]["uri"] == "boats/parts.toml" and where["region"]["startLine"] == 5
    junit = subprocess.run([command, "check", "boats", "--format", "junit"], cwd=tmp_path, capture_output=True, text=True,
                           timeout=60).stdout
    assert "boats/parts.toml:5:14: error: " in junit


@pytest.mark.parametrize("text, rule", [
    ("bankwright-parts = 1\n[models\n", "file/syntax"), ("bankwright-parts = 2\n", "file/bad-value"), ("[models]\n", "file/missing-key"),
    ("bankwright-parts = 1\n[batteries]\n", "file/unknown-key"), ("bankwright-parts = 1\nmodels = 3\n", "file/bad-value"),
    ("bankwright-parts = 1\n[models]\nm = { model = \"n\" }\n", "file/unknown-key"), ("bankwright-parts = 1\n# \xff\n", "file/syntax")])
def test_a_list_is_held_to_its_format(tmp_path, write, check, text, rule):
    write("boats/bow.toml", EXAMPLE.read_text(encoding="utf-8").replace("bankwright = 1", 'bankwright = 1\nparts = ["p.toml"]'))
    (tmp_path / "boats/p.toml").write_bytes(text.encode("latin-1"))
    status, findings = check("boats/bow.toml")
    assert status == 1 and [(finding["rule"], finding.get("file")) for finding in findings] == [(rule, "boats/p.toml")]


def test_a_name_stands_for_one_model(write, check):
    write("boats/bow.toml", bank("p.toml", "q.toml", "p.toml"))
    write("boats/p.toml", LIST)
    write("boats/q.toml", 'bankwright-parts = 1\n[models]\nno6 = { size = "4 AWG" }\n')
    _, findings = check("boats")
    assert [finding["rule"] for finding in findings] == ["file/duplicate-id"] * 2
    assert "`no6` is a model of the part list `q.toml` on line 3, and of the part list `p.toml` on line 5" in findings[0]["message"]
    assert "is named twice" in findings[1]["message"]


@pytest.mark.parametrize("parts", ["3", '"parts.toml"', '["parts.toml", 3]', "[{}]"])
def test_parts_is_a_list_of_texts(write, check, parts):
    write("boats/x.toml", f"bankwright = 1\nparts = {parts}\n")
    write("boats/parts.toml", LIST)
    _, findings = check("boats")
    assert [(finding["rule"], finding["line"]) for finding in findings] == [("file/bad-value", 2)]
