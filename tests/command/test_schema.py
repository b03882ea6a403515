"""Does the printed JSON Schema agree with the reader, by an independent validator? What is wrong in the wiring is right by the schema;
what is wrong in the format is not; and an editor finds something to say about every key."""
import copy
import datetime
import json
import subprocess
import tomllib
from pathlib import Path

import jsonschema
import pytest

ROOT = Path(__file__).resolve().parent.parent.parent
EXAMPLES = sorted((ROOT / "data/examples").glob("*.toml"))
SECTIONS = ["batteries", "jumpers", "cables", "breakers", "fuses", "switches", "shunts", "relays", "selectors", "busbars", "connectors", "motors", "loads", "chargers", "converters"]


@pytest.fixture(scope="session")
def schema(command):
    return json.loads(subprocess.run([command, "schema"], capture_output=True, timeout=60, check=True).stdout)


@pytest.fixture(scope="session")
def is_valid(schema):
    validator = jsonschema.Draft7Validator(schema, format_checker=jsonschema.FormatChecker())
    return lambda bank: validator.is_valid(as_json(bank))


def as_json(value):
    """TOML as a JSON Schema sees it: a date is a string."""
    if isinstance(value, dict):
        return {key: as_json(inner) for key, inner in value.items()}
    if isinstance(value, list):
        return [as_json(inner) for inner in value]
    return value.isoformat() if isinstance(value, datetime.date) else value


def as_toml(value):
    """A value in inline TOML; JSON's strings are TOML's."""
    if isinstance(value, dict):
        return "{" + ", ".join(f"{json.dumps(key)} = {as_toml(inner)}" for key, inner in value.items()) + "}"
    if isinstance(value, list):
        return "[" + ", ".join(map(as_toml, value)) + "]"
    return value.isoformat() if isinstance(value, datetime.date) else json.dumps(value)


def bank_text(bank):
    return "".join(f"{json.dumps(key)} = {as_toml(value)}\n" for key, value in bank.items())


def is_quantity(value):
    return isinstance(value, str) and value[:1].isdigit() and " " in value


def spoiled(bank):
    """(what was done, a bank that is wrong in its format), for every key that the bank states."""
    for section in [*SECTIONS, "models"]:
        for name, part in bank.get(section, {}).items():
            for key, value in part.items():
                def made(change):
                    other = copy.deepcopy(bank)
                    change(other[section][name])
                    return other

                where = f"{section}.{name}.{key}"
                yield f"{where} misspelled", made(lambda p: p.update({key + "x": p.pop(key)}))
                yield f"{where} of another kind", made(lambda p: p.update({key: [value]}))
                if is_quantity(value) and "AWG" not in value:
                    yield f"{where} without its unit", made(lambda p: p.update({key: value.split()[0]}))
                    yield f"{where} as a number", made(lambda p: p.update({key: float(value.split()[0])}))
                    yield f"{where} in another unit", made(lambda p: p.update({key: value.split()[0] + " lux"}))
                if key in ("chemistry", "state", "control"):
                    yield f"{where} with another word", made(lambda p: p.update({key: value + "s"}))
    yield "another version", bank | {"bankwright": 2}
    yield "a section that there is not", bank | {"engines": {}}
    yield "a part that is no table", bank | {"loads": {"L": 3}}
    yield "parts that are no list", bank | {"parts": "parts.toml"}


@pytest.mark.parametrize("path", EXAMPLES, ids=lambda path: path.stem)
def test_every_example_is_right_by_the_schema_however_it_is_wired(is_valid, path):
    assert is_valid(tomllib.loads(path.read_text(encoding="utf-8")))


def test_what_is_wrong_in_the_format_is_wrong_by_the_schema_and_for_the_reader(command, is_valid, tmp_path):
    cases = {}
    for example in EXAMPLES[::4]:
        for number, (done, bank) in enumerate(spoiled(tomllib.loads(example.read_text(encoding="utf-8")))):
            name = f"{example.stem}-{number:04}.toml"
            (tmp_path / name).write_text(bank_text(bank), encoding="utf-8")
            cases[name] = f"{example.stem}: {done}"
            assert not is_valid(bank), cases[name]
    assert len(cases) > 400
    done = subprocess.run([command, "check", ".", "--only", "file", "--format", "json"], cwd=tmp_path, capture_output=True, timeout=300)
    found = {file["file"]: file["counts"]["error"] for file in json.loads(done.stdout)["files"]}
    assert [cases[name] for name in cases if not found.get(name)] == []


def test_writing_a_bank_anew_spoils_nothing(command, is_valid, tmp_path):
    """Else the test above would prove nothing."""
    for example in EXAMPLES:
        bank = tomllib.loads(example.read_text(encoding="utf-8"))
        (tmp_path / example.name).write_text(bank_text(bank), encoding="utf-8")
    done = subprocess.run([command, "check", ".", "--only", "file", "--fail-on", "note"], cwd=tmp_path, capture_output=True, timeout=60)
    assert done.returncode == 0, done.stdout.decode()


def keys_of(schema):
    """(name, its schema) of every key of every section."""
    for name, section in schema["properties"].items():
        yield name, section
        tables = [section.get("items", {}), *section.get("patternProperties", {}).values()]
        tables += [section["additionalProperties"]] if isinstance(section.get("additionalProperties"), dict) else [section]
        for table in tables:
            for key, inner in table.get("properties", {}).items():
                yield f"{name}.{key}", inner


def test_every_key_is_described_and_shown(schema):
    keys = dict(keys_of(schema))
    assert {f"{section}.model" for section in SECTIONS} <= set(keys) and "models.capacity" in keys and "accept.reason" in keys
    for name, key in keys.items():
        assert len(key.get("description", "")) > 3, name
        if key.get("type") == "object" or "items" in key and "examples" not in key:
            continue  # a section
        for shape in key.get("anyOf", [key]):
            assert shape["examples"], name
            validator = jsonschema.Draft7Validator(shape, format_checker=jsonschema.FormatChecker())
            assert all(validator.is_valid(example) for example in shape["examples"]), name


def test_words_to_choose_from_are_listed(schema):
    keys = dict(keys_of(schema))
    assert keys["batteries.chemistry"]["enum"] == ["flooded", "agm", "gel", "lifepo4", "nmc"]
    assert keys["connectors.state"]["enum"] == ["mated", "apart"]
    assert keys["motors.control"]["enum"] == ["pwm", "direct"]


def test_every_class_with_a_published_band_is_offered(schema):
    """A table of trip points in data/tables/protection.toml, or a part of one, is a class."""
    tables = tomllib.loads((ROOT / "data/tables/protection.toml").read_text(encoding="utf-8"))["table"]
    published = {table["name"].replace("_", "-") for table in tables if "TripPoint" in json.dumps(table)}
    offered = set(dict(keys_of(schema))["fuses.class"]["examples"])
    assert published
    for table in published:  # types of one table have a number each: sae-j553-1
        assert any(name == table or name.startswith(f"{table}-") for name in offered), table


# --- a file of readings
READINGS = sorted((ROOT / "data/examples/readings").glob("*.toml"))
GOOD_SHEET = {"bankwright-readings": 1, "meter": {"accuracy": "0.5 % + 2 digits", "resolution": "10 mV"}, "state": {"rest": True},
              "volts": [{"red": "C+", "black": "A-", "reads": "-12.6 V", "throttle": "60 %"}], "amps": [{"part": "J1", "reads": "-23 A"}]}
BAD_SHEETS = [{"meter": {"resolution": "10"}}, {"volts": [{"red": "C+", "black": "A-"}]}, {"volts": {"red": "C+"}}, {"amps": [{"part": "J1", "reads": "2 V"}]},
              {"metr": {}}, {"bankwright-readings": 2}, {"state": {"rest": "yes"}}]


@pytest.fixture(scope="session")
def is_sheet(command):
    schema = json.loads(subprocess.run([command, "schema", "--readings"], capture_output=True, timeout=60, check=True).stdout)
    jsonschema.Draft7Validator.check_schema(schema)
    return jsonschema.Draft7Validator(schema).is_valid


def traced(command, sheet, tmp_path):
    (tmp_path / "readings.toml").write_text(bank_text(sheet), encoding="utf-8")
    return subprocess.run([command, "trace", ROOT / "data/examples/bow-36v.toml", tmp_path / "readings.toml"], capture_output=True, timeout=60).returncode


@pytest.mark.parametrize("path", READINGS, ids=lambda path: path.stem)
def test_every_example_of_readings_is_right_by_its_schema(is_sheet, path):
    assert is_sheet(tomllib.loads(path.read_text(encoding="utf-8")))


def test_a_sheet_is_right_by_the_schema_and_for_the_reader(command, is_sheet, tmp_path):
    assert is_sheet(GOOD_SHEET) and traced(command, GOOD_SHEET, tmp_path) in (0, 1)


@pytest.mark.parametrize("sheet", BAD_SHEETS, ids=str)
def test_a_wrong_sheet_is_wrong_by_the_schema_and_for_the_reader(command, is_sheet, tmp_path, sheet):
    assert not is_sheet(sheet) and traced(command, sheet, tmp_path) == 2
