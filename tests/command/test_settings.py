"""bankwright-settings.toml: what a folder asks of `check`, how far up it is looked for, and that the command line wins."""
import json
import subprocess
from pathlib import Path
from xml.etree import ElementTree

import pytest

HERE = Path(__file__).resolve().parent
WARNED = (HERE / "banks/warned.toml").read_text(encoding="utf-8")  # one warning: matching/mixed-capacity
NAME = "bankwright-settings.toml"


@pytest.fixture
def check(command, tmp_path, write):
    """check(*arguments) -> exit status, {file: rules found}."""
    write("boats/old/a.toml", WARNED)
    write("boats/new/b.toml", WARNED)

    def call(*arguments):
        done = subprocess.run([command, "check", *arguments, "--format", "json"], cwd=tmp_path, capture_output=True, text=True,
                              timeout=60)
        files = json.loads(done.stdout)["files"] if done.stdout else []
        return done.returncode, {file["file"]: [finding["rule"] for finding in file["findings"]] for file in files}

    return call


CAPACITY = ["matching/mixed-capacity"]
BOTH = {"boats/new/b.toml": CAPACITY, "boats/old/a.toml": CAPACITY}


def test_without_settings_a_warning_passes(check):
    assert check("boats") == (0, BOTH)


@pytest.mark.parametrize("arguments", [["boats"], ["."], ["boats/old/a.toml"], ["boats/*/*.toml"]])
def test_settings_are_found_above_the_file(check, write, arguments):
    write(f"boats/{NAME}", 'fail-on = "warning"\n')
    assert check(*arguments)[0] == 1


def test_the_nearest_settings_count_each_for_its_own_files(check, write):
    write(f"boats/{NAME}", 'fail-on = "warning"\n')
    write(f"boats/old/{NAME}", 'skip = ["matching"]\n')
    assert check("boats") == (1, {"boats/new/b.toml": CAPACITY, "boats/old/a.toml": []})
    assert check("boats/old") == (0, {"boats/old/a.toml": []})


def test_nothing_above_the_folder_given_counts(check, write):
    write(f"boats/{NAME}", 'fail-on = "warning"\n')
    write(NAME, 'skip = ["matching"]\n')
    assert check("boats/old") == (0, {"boats/old/a.toml": CAPACITY})


def test_a_link_is_no_settings_file(check, tmp_path, write):
    write("elsewhere.toml", 'fail-on = "warning"\n')
    (tmp_path / f"boats/{NAME}").symlink_to(tmp_path / "elsewhere.toml")
    assert check("boats")[0] == 2


@pytest.mark.parametrize("settings, arguments, status, rules", [
    ('fail-on = "warning"', ["--fail-on", "error"], 0, CAPACITY),
    ('fail-on = "error"', ["--fail-on", "note"], 1, CAPACITY),
    ('skip = ["matching"]', ["--skip", "wiring"], 0, CAPACITY),
    ('skip = ["matching"]', ["--fail-on", "warning"], 0, []),
    ('only = ["wiring"]', [], 0, []),
    ('only = ["wiring"]', ["--only", "matching"], 0, CAPACITY),
    ('only = ["matching", "wiring"]\nskip = ["matching/mixed-capacity"]', [], 0, []),
])
def test_the_command_line_wins_key_by_key(check, write, settings, arguments, status, rules):
    write(f"boats/{NAME}", settings + "\n")
    assert check("boats/old/a.toml", *arguments) == (status, {"boats/old/a.toml": rules})


@pytest.mark.parametrize("text, rule, place", [
    ('fail-on = "warnings"', "file/bad-value", "1:1"),
    ('fail-on = 3', "file/bad-value", "1:1"),
    ('fail_on = "warning"', "file/unknown-key", "1:1"),
    ('\nskip = ["wiring", "matchin"]', "file/bad-value", "2:19"),
    ('only = "wiring"', "file/bad-value", "1:1"),
    ('only = ["wiring"', "file/syntax", "1:18"),
    ('skip = ["wiring"]\nskip = ["load"]', "file/duplicate-id", "2:1"),
])
def test_a_mistake_in_the_settings_is_a_finding_once_and_the_banks_are_checked(command, tmp_path, check, write, text, rule, place):
    write(f"boats/{NAME}", text + "\n")
    status, found = check("boats")
    assert status == (2 if rule == "file/syntax" else 1)
    assert found == BOTH | {f"boats/{NAME}": [rule]}
    printed = subprocess.run([command, "check", "boats"], cwd=tmp_path, capture_output=True, text=True, timeout=60).stdout
    assert printed.count(f"boats/{NAME}:{place}: error: ") == 1 and "3 files: 1 error, 2 warnings" in printed


def test_junit_fails_what_the_folder_s_settings_fail(command, tmp_path, check, write):
    write(f"boats/old/{NAME}", 'fail-on = "warning"\n')
    done = subprocess.run([command, "check", "boats", "--format", "junit"], cwd=tmp_path, capture_output=True, text=True, timeout=60)
    assert done.returncode == 1 and 'tests="2" failures="1"' in done.stdout


# --- what is left out is told, and hides no effect -------------------------------------------------------------------

MISWIRED = "data/examples/bow-36v-miswired.toml"  # a turned battery: the motor sees 12 V of 36 V


def run(command, *arguments):
    return subprocess.run([command, "check", *map(str, arguments)], cwd=HERE.parents[1], capture_output=True, text=True, timeout=60)


def test_the_effect_of_a_cause_that_is_left_out_is_shown_itself(command):
    done = run(command, MISWIRED, "--skip", "wiring/reversed-battery")
    assert done.returncode == 1 and "`troll` sees 12 V with nothing switched on [wiring/system-voltage]" in done.stdout
    assert done.stdout.endswith(f"{MISWIRED}: 3S1P, 1 error; left out: wiring/reversed-battery; it finds 1 error\n")


def test_who_accepts_a_cause_has_not_accepted_what_it_does(command, tmp_path):
    bank = tmp_path / "accepted.toml"
    text = (HERE.parents[1] / MISWIRED).read_text(encoding="utf-8")
    bank.write_text(f'{text}\n[[accept]]\nrule = "wiring/reversed-battery"\nreason = "it was always so"\n', encoding="utf-8")
    done = run(command, bank)
    assert done.returncode == 1 and "[wiring/system-voltage]" in done.stdout and "1 error, 1 accepted" in done.stdout
    bank.write_text(bank.read_text(encoding="utf-8") + '[[accept]]\nrule = "wiring/system-voltage"\nreason = "so is this"\n', encoding="utf-8")
    done = run(command, bank)
    assert done.returncode == 0 and "nothing else wrong, 2 accepted" in done.stdout


@pytest.mark.parametrize("how", [["--only", "charging"], ["--skip", "wiring"]])
def test_nothing_wrong_is_said_of_the_rules_chosen_alone(command, how):
    done = run(command, MISWIRED, *how)
    assert done.returncode == 0 and "nothing wrong by the rules chosen; left out: wiring" in done.stdout
    assert done.stdout.endswith(" find 1 error\n") or done.stdout.endswith(" finds 1 error\n")


LEFT_OUT = ["wiring", "load/runtime"]


@pytest.mark.parametrize("by", ["options", "settings"])
def test_every_format_says_which_rules_were_left_out(command, tmp_path, by):
    bank = tmp_path / "boat.toml"
    bank.write_text((HERE.parents[1] / MISWIRED).read_text(encoding="utf-8"), encoding="utf-8")
    options = [word for rule in LEFT_OUT for word in ("--skip", rule)] if by == "options" else []
    if by == "settings": (tmp_path / NAME).write_text(f"skip = {json.dumps(LEFT_OUT)}\n", encoding="utf-8")
    asked = [bank if by == "options" else tmp_path, *options, "--format"]
    assert "left out: wiring, load/runtime; they find 1 error" in run(command, *asked, "text").stdout
    file = json.loads(run(command, *asked, "json").stdout)["files"][0]
    assert file["left_out"] == {"rules": LEFT_OUT, "counts": {"error": 1, "warning": 0, "note": 0}}
    [notice] = json.loads(run(command, *asked, "sarif").stdout)["runs"][0]["invocations"][0]["toolConfigurationNotifications"]
    assert notice["properties"]["leftOut"] == LEFT_OUT and notice["message"]["text"].startswith("left out: wiring, load/runtime")
    assert notice["locations"][0]["physicalLocation"]["artifactLocation"]["uri"].endswith("boat.toml")
    cases = {case.get("name"): [child.tag for child in case]
             for case in ElementTree.fromstring(run(command, *asked, "junit").stdout).iter("testcase")}
    assert cases == {"nothing wrong by the rules chosen": [], "wiring": ["skipped"], "load/runtime": ["skipped"]}
