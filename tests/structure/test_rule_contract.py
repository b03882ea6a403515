"""Is every rule what was promised of it, and proved by banks of its own in tests/rules?"""
import json
import re
import subprocess

import pytest
from project import project_files, read

# Ids and levels are a contract: some may be added, none renamed, reused or taken out.
PROMISED = {
    "error": """
        file/syntax file/unknown-key file/missing-key file/bad-value file/bad-unit file/unknown-terminal file/duplicate-id
        file/too-large file/not-a-bank file/no-part-list
        wiring/shorted-loop wiring/shorted-battery wiring/reversed-battery wiring/reversed-load wiring/open-circuit
        wiring/unused-battery wiring/system-voltage wiring/unequal-strings
        matching/mixed-chemistry matching/mixed-voltage matching/series-limit matching/parallel-limit
        sharing/over-current sharing/reverse-charge
        conductor/over-ampacity
        protection/missing protection/too-far protection/rating-high protection/voltage protection/interrupting
        protection/negative-side protection/short-circuit-heat
        connection/rating
        charging/voltage charging/polarity charging/not-isolated charging/cold
        load/over-voltage load/nameplate-voltage
        solve/no-solution""",
    "warning": """
        file/accept-without-reason file/accept-unused
        matching/weak-cell wiring/loose-end wiring/past-shunt wiring/mid-string-tap wiring/uneven-cross-links wiring/missing-link
        matching/mixed-capacity matching/mixed-age matching/mixed-charge
        sharing/uneven sharing/circulating connection/too-thick
        conductor/voltage-drop conductor/undersized-jumper conductor/too-small conductor/color
        protection/rating-low protection/parallel-string
        connection/crowded-stud connection/hot-connection
        charging/partial charging/rate charging/voltage-drop
        load/under-voltage load/flat-battery load/runtime""",
    "note": "conductor/unequal-links file/no-version",
}
LEVELS = {rule: level for level, rules in PROMISED.items() for rule in rules.split()}

# A family is one word, so a folder's name gives the rule back.
BANKS = [path for path in project_files(".toml") if path.match("tests/rules/*/*.toml")]
FOLDERS = {path.parent.name.replace("-", "/", 1) for path in BANKS}


@pytest.fixture(scope="module")
def rules(command):
    done = subprocess.run([command, "rules", "--format", "json"], capture_output=True, check=True, timeout=60)
    return {rule["id"]: rule for rule in json.loads(done.stdout)["rules"]}


def test_no_promised_rule_is_gone_or_of_another_level(rules):
    assert {rule: rules.get(rule, {}).get("level") for rule in LEVELS} == LEVELS


def test_a_new_rule_is_added_to_the_promise(rules):
    assert set(rules) <= set(LEVELS)


def test_ids_are_kebab_case_and_say_their_family(rules):
    odd = [rule for rule in rules if not re.fullmatch(r"[a-z]+/[a-z]+(-[a-z]+)*", rule)]
    assert not odd


def test_no_rule_leaves_anything_unsaid(rules):
    unsaid = [f"{rule}: {key}" for rule, info in rules.items() for key in ("level", "since", "what", "why", "fix", "source")
              if not info[key].strip()]
    assert not unsaid


def test_every_rule_has_a_bank_that_fires_and_one_that_is_silent(rules):
    proved = {(path.parent.name.replace("-", "/", 1), path.stem) for path in BANKS}
    missing = [f"{rule}: {stem}.toml" for rule in rules for stem in ("fires", "silent") if (rule, stem) not in proved]
    assert not missing


def test_every_folder_names_a_rule(rules):
    assert FOLDERS <= set(rules)


@pytest.mark.parametrize("path", BANKS, ids=lambda path: f"{path.parent.name}/{path.stem}")
def test_a_bank_of_a_rule_is_what_its_name_says(path):
    text = read(path)
    rule = path.parent.name.replace("-", "/", 1)
    assert text.startswith("# Invented. "), "the first line says what it shows, and that it is invented"
    assert path.stem.split("-")[0] in ("fires", "silent", "limit")
    assert path.stem.startswith("fires") == (f"# expect: {rule}" in text)
    if path.stem.startswith("silent"):
        assert "# expect:" not in text
