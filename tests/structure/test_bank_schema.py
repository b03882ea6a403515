"""Do the example banks say what they are, and does the committed schema take them as a JSON Schema?"""
import datetime
import json
import tomllib

import jsonschema
import pytest
from project import project_files, read

ALL = [path for path in project_files(".toml") if path.is_relative_to("data/examples")]
EXAMPLES = [path for path in ALL if str(path.parent) == "data/examples"]  # folders in it hold what goes with a bank
SCHEMA = json.loads(read("data/schema/bank.schema.json"))


def as_json(value):
    """TOML as a JSON Schema sees it: a date is a string."""
    if isinstance(value, dict):
        return {key: as_json(inner) for key, inner in value.items()}
    if isinstance(value, list):
        return [as_json(inner) for inner in value]
    return value.isoformat() if isinstance(value, (datetime.date, datetime.time)) else value


def complaints(text):
    validator = jsonschema.Draft7Validator(SCHEMA, format_checker=jsonschema.FormatChecker())
    return [f"{'/'.join(map(str, error.absolute_path))}: {error.message}"
            for error in validator.iter_errors(as_json(tomllib.loads(text)))]


def test_the_schema_is_a_schema():
    jsonschema.Draft7Validator.check_schema(SCHEMA)


def test_there_are_examples():
    assert len(EXAMPLES) >= 2


def test_whatever_goes_with_a_bank_is_invented_too():
    assert all(read(path).startswith("# Invented") for path in ALL)


@pytest.mark.parametrize("path", EXAMPLES, ids=lambda path: path.name)
def test_example(path):
    text = read(path)
    assert text.startswith("# Invented"), "the first line says what it shows, and that it is invented"
    assert complaints(text) == []


@pytest.mark.parametrize("wrong", [
    "bankwright = 2", "name = 'x'", "bankwright = 1\nnam = 'x'", "bankwright = 1\n[system]\nvoltage = 36",
    "bankwright = 1\n[system]\nvoltage = '36 A'", "bankwright = 1\n[system]\nvoltage = '-36 V'",
    "bankwright = 1\n[loads]\nL = {}", "bankwright = 1\n[loads]\nL = { power = '1 W', current = '1 A' }",
    "bankwright = 1\n[loads]\nL- = { power = '1 W' }", "bankwright = 1\n[cables]\nc = { from = 'A+', to = 'B-', size = '6 AWG' }",
    "bankwright = 1\n[cables]\nc = { from = 'A+', to = 'B-', size = '6 ga', length = '1 m' }",
    "bankwright = 1\n[batteries]\nA = { chemistry = 'agn', voltage = '12 V', capacity = '9 Ah' }",
    "bankwright = 1\n[models]\nm = { model = 'm' }", "bankwright = 1\n[[accept]]\nreason = 'x'"])
def test_the_schema_refuses(wrong):
    assert complaints(wrong)


@pytest.mark.parametrize("right", [
    "bankwright = 1", "bankwright = 1\n[system]\nruntime = '1 h 30 min'\nambient = '-4 °C'\njoint = '100 µΩ'",
    "bankwright = 1\n[cables]\nc = { from = 'A+', to = 'B-', size = '2/0 AWG', length = '5 ft 6 in' }",
    "bankwright = 1\n[cables]\nc = { from = 'A+', to = 'B-', size = '16 mm²', length = '.5 m' }",
    "bankwright = 1\n[cables]\nc = { model = 'm', from = 'A+', to = 'B-' }",
    "bankwright = 1\n[models]\nm = { state = 'mated' }\nn = { state = 'open' }",
    "bankwright = 1\n[batteries]\nA = { emf = '12 V', resistance = '1e1 mohm', voltage = '12 V', made = 2024-03-01 }"])
def test_the_schema_takes(right):
    assert complaints(right) == []
