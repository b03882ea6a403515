"""Are the documents for programs what their contracts say: our JSON, SARIF 2.1.0, JUnit, the JSON Schema?"""
import json
import math
import os
import re
import shutil
import subprocess
from pathlib import Path

import jsonschema
import pytest

HERE = Path(__file__).resolve().parent
FILES = ["banks/sound.toml", "../../data/examples/bow-36v-miswired.toml", "banks/warned.toml",
         "banks/accepted.toml", "banks/misspelled_and_miswired.toml", "banks/left_out.toml", "banks/no_toml.toml"]


@pytest.fixture(scope="session")
def printed(command):
    def call(*arguments):
        return subprocess.run([command, *arguments], cwd=HERE, capture_output=True, timeout=60).stdout

    return call


def refuse(word):
    raise ValueError(f"{word} is no JSON")


def load(text):
    return json.loads(text, parse_constant=refuse)


NUMBER = {"type": ["number", "null"]}
PLACE = {"type": ["integer", "null"], "minimum": 1}
FINDING = {
    "type": "object",
    "required": ["rule", "level", "message", "help", "parts", "line", "column", "end_line", "end_column", "found", "allowed",
                 "unit", "accepted"],
    "properties": {"rule": {"type": "string", "pattern": "^[a-z]+/[a-z-]+$"}, "level": {"enum": ["error", "warning", "note"]},
                   "message": {"type": "string", "minLength": 1}, "help": {"type": "string", "minLength": 1},
                   "parts": {"type": "array", "items": {"type": "string"}},
                   "line": PLACE, "column": PLACE, "end_line": PLACE, "end_column": PLACE,
                   "found": NUMBER, "allowed": NUMBER, "unit": {"type": ["string", "null"]}, "accepted": {"type": "boolean"}}}
FINDINGS = {
    "type": "object", "required": ["bankwright", "version", "files"],
    "properties": {
        "bankwright": {"const": "findings"}, "version": {"const": 1},
        "files": {"type": "array", "items": {
            "type": "object", "required": ["file", "arrangement", "counts", "left_out", "findings"],
            "properties": {"file": {"type": "string"},
                           "arrangement": {"type": ["string", "null"], "pattern": "^[0-9]+S[0-9]+P$"},
                           "counts": {"type": "object", "required": ["error", "warning", "note"],
                                      "additionalProperties": {"type": "integer", "minimum": 0}},
                           "findings": {"type": "array", "items": FINDING}}}}}}
SOLUTION = {
    "type": "object",
    "required": ["bankwright", "version", "file", "status", "arrangement", "reference", "terminals", "parts"],
    "properties": {
        "bankwright": {"const": "solution"}, "version": {"const": 1}, "file": {"type": "string"},
        "status": {"type": "string", "pattern": "^[a-z-]+$"}, "arrangement": {"type": ["string", "null"]},
        "reference": {"type": "string"},
        "terminals": {"type": "object", "additionalProperties": NUMBER},
        "parts": {"type": "object", "additionalProperties": {
            "type": "object", "required": ["kind", "current", "voltage", "power"],
            "properties": {"kind": {"enum": ["battery", "jumper", "cable", "breaker", "fuse", "switch", "busbar", "connector",
                                             "motor", "load", "charger"]},
                           "current": NUMBER, "voltage": NUMBER, "power": NUMBER}}}}}


def test_findings_have_the_shape_of_version_1(printed):
    document = load(printed("check", *FILES, "--format", "json"))
    jsonschema.validate(document, FINDINGS)
    assert [file["file"] for file in document["files"]] == FILES
    for file in document["files"]:
        for level, count in file["counts"].items():
            assert count == sum(f["level"] == level and not f["accepted"] for f in file["findings"])


def test_a_finding_is_where_the_part_is_written(printed):
    finding = load(printed("check", FILES[1], "--format", "json"))["files"][0]["findings"][0]
    line = (HERE / FILES[1]).read_text(encoding="utf-8").splitlines()[finding["line"] - 1]
    assert finding["parts"][0] == "B"
    assert line[finding["column"] - 1:finding["end_column"] - 1].startswith("B = {")


@pytest.mark.parametrize("more", [[], ["--rest"], ["--current", "40 A"], ["--throttle", "60 %"]])
@pytest.mark.parametrize("file", FILES[:4])
def test_solutions_have_the_shape_of_version_1(printed, file, more):
    document = load(printed("solve", file, "--format", "json", *more))
    jsonschema.validate(document, SOLUTION)
    assert document["status"] == "solved"
    assert document["terminals"][document["reference"]] == 0.0


def test_a_solution_obeys_ohm_and_kirchhoff(printed):
    """A 2 ohm lamp behind two 4 mohm batteries: what the document says must agree with itself, to the last digits printed."""
    document = load(printed("solve", "banks/warned.toml", "--format", "json"))
    parts, volts = document["parts"], document["terminals"]
    lamp = parts["lamp"]
    assert math.isclose(lamp["voltage"], volts["lamp+"] - volts["lamp-"], rel_tol=1e-12)
    assert math.isclose(lamp["current"], lamp["voltage"] / 2.0, rel_tol=1e-12)
    for series in ("one", "two", "link", "feed", "out", "back", "CB"):
        assert math.isclose(parts[series]["current"], lamp["current"], rel_tol=1e-9)
    given = parts["one"]["power"] + parts["two"]["power"]
    taken = sum(part["power"] for part in parts.values() if part["kind"] != "battery")
    assert math.isclose(given, taken, rel_tol=1e-9)


def test_rules_say_everything_about_themselves(printed):
    document = load(printed("rules", "--format", "json"))
    assert document["bankwright"] == "rules" and document["version"] == 1
    ids = [rule["id"] for rule in document["rules"]]
    assert len(ids) == len(set(ids)) and "wiring/shorted-loop" in ids
    for rule in document["rules"]:
        assert all(rule[key] for key in ("id", "level", "since", "what", "why", "fix", "source")), rule["id"]


def test_the_schema_is_a_json_schema(printed):
    schema = load(printed("schema"))
    jsonschema.validators.validator_for(schema).check_schema(schema)


def test_junit_is_what_build_servers_read(printed, tmp_path):
    if not shutil.which("xmllint"):
        pytest.skip("xmllint is not installed")
    report = tmp_path / "report.xml"
    report.write_bytes(printed("check", *FILES, "--format", "junit"))
    done = subprocess.run(["xmllint", "--noout", "--nonet", "--schema", HERE / "junit.xsd", report], capture_output=True, text=True)
    assert done.returncode == 0, done.stderr


@pytest.fixture(scope="session")
def sarif_tools(root):
    """The folder of an npm package with SARIF's own schema and a validator; installed under build/ once."""
    home = root / "build/sarif"
    package = home / "node_modules/@microsoft/sarif-multitool-linux"
    if not (package / "sarif-2.1.0.json").exists():
        npm = shutil.which("npm")
        if not npm:
            pytest.skip("npm is not installed; it brings the schema")
        home.mkdir(parents=True, exist_ok=True)
        done = subprocess.run([npm, "install", "--prefix", home, "--no-audit", "--no-fund", "--ignore-scripts",
                               "@microsoft/sarif-multitool-linux@5.7.0"], capture_output=True, text=True, timeout=600)
        if not (package / "sarif-2.1.0.json").exists():
            pytest.skip("the schema cannot be had: " + (done.stderr.strip().splitlines() or ["npm failed"])[-1])
    return package


@pytest.fixture(scope="session")
def sarif_schema(sarif_tools):
    return load((sarif_tools / "sarif-2.1.0.json").read_text(encoding="utf-8-sig"))


@pytest.fixture
def complaints(sarif_tools, tmp_path):
    """What the validator says of a log: it knows the standard's text, not only its schema. (exit status, ids of its rules)"""
    validator = sarif_tools / "Sarif.Multitool"
    validator.chmod(0o755)  # npm's install scripts would do that

    def call(log):
        (tmp_path / "log.sarif").write_text(json.dumps(log), encoding="utf-8")
        try:
            done = subprocess.run([validator, "validate", tmp_path / "log.sarif"], capture_output=True, text=True, timeout=120,
                                  env=os.environ | {"DOTNET_SYSTEM_GLOBALIZATION_INVARIANT": "1", "HOME": str(tmp_path)})
        except OSError as error:  # made for other processors
            pytest.skip(f"the validator does not run here: {error}")
        assert "Done. 1 files scanned." in done.stdout, done.stdout + done.stderr
        return done.returncode, re.findall(r": (?:error|warning|note) (\w+):", done.stdout)

    return call


def test_sarif_is_valid_by_its_own_schema(printed, sarif_schema):
    log = load(printed("check", *FILES, "--format", "sarif"))
    jsonschema.validators.validator_for(sarif_schema)(sarif_schema).validate(log)
    run = log["runs"][0]
    rules = run["tool"]["driver"]["rules"]
    assert len(run["results"]) >= 5
    for result in run["results"]:
        assert rules[result["ruleIndex"]]["id"] == result["ruleId"]


def test_the_sarif_schema_would_notice(printed, sarif_schema):
    log = load(printed("check", FILES[1], "--format", "sarif"))
    log["runs"][0]["results"][0]["level"] = "fatal"
    with pytest.raises(jsonschema.ValidationError):
        jsonschema.validators.validator_for(sarif_schema)(sarif_schema).validate(log)


def test_sarif_is_valid_by_an_independent_validator(printed, complaints):
    """It may ask for a page on the web that explains the tool; there is none."""
    status, said = complaints(load(printed("check", *FILES, "../../data/examples", "--format", "sarif")))
    assert status == 0 and set(said) <= {"SARIF2005"}


def test_the_validator_would_notice(printed, complaints):
    log = load(printed("check", FILES[1], "--format", "sarif"))
    result = log["runs"][0]["results"][0]
    result["ruleIndex"] = 9999
    result["locations"][0]["physicalLocation"]["region"]["endLine"] = 1  # before it starts
    status, said = complaints(log)
    assert status != 0 or set(said) - {"SARIF2005"}
