"""Does the Python module give what the command prints, and refuse what it must?"""
import json
import subprocess

import bankwright
import pytest


def printed_by(command, *words, cwd):
    return json.loads(subprocess.run([command, *words, "--format", "json"], cwd=cwd, capture_output=True, text=True).stdout)


@pytest.fixture(params=["bow-36v.toml", "bow-36v-miswired.toml"])
def example(request, root):
    return root / "data/examples" / request.param


def test_check_is_the_command_s_document(command, example, root):
    assert bankwright.check(example) == printed_by(command, "check", str(example), cwd=root)


def test_solve_is_the_command_s_document(command, example, root):
    assert bankwright.solve(str(example)) == printed_by(command, "solve", str(example), cwd=root)


def test_text_needs_no_file(example):
    from_text = bankwright.solve_text(example.read_text(encoding="utf-8"), str(example))
    assert from_text == bankwright.solve(example)


def test_current_is_the_same_all_along_one_string(root):
    """Kirchhoff: in a single loop every part carries the motor's current."""
    parts = bankwright.solve(root / "data/examples/bow-36v.toml")["parts"]
    assert parts["troll"]["current"] > 0
    for name, part in parts.items():
        assert part["current"] == pytest.approx(parts["troll"]["current"], rel=1e-9), name


def test_a_bank_that_cannot_be_read_is_refused_with_every_reason():
    text = 'bankwright = 1\n[batteries]\nA = { voltage = "12 V", capacity = "100 parsecs", chemistry = "agm" }\n'
    with pytest.raises(bankwright.Unreadable, match="file/bad-unit") as refused:
        bankwright.solve_text(text, "boat.toml")
    assert refused.value.findings == bankwright.check_text(text, "boat.toml")
    assert refused.value.findings["files"][0]["findings"][0]["line"] == 3


@pytest.mark.parametrize("text", ["", "[", "\0", "=" * 10000, b"\xff\xfe", "bankwright = 1\n"])
def test_no_text_is_too_broken_to_be_judged(text):
    assert bankwright.check_text(text)["bankwright"] == "findings"


def test_a_file_that_is_not_there_is_the_caller_s_mistake(tmp_path):
    with pytest.raises(FileNotFoundError):
        bankwright.check(tmp_path / "none.toml")


def test_the_version_is_the_library_s(root):
    assert f'BANKWRIGHT_VERSION "{bankwright.__version__}"' in (root / "lib/include/bankwright/version.hpp").read_text()


def test_a_bank_is_a_voltage_behind_a_resistance(root):
    """Thevenin: what is drawn at two terminals takes the voltage there down in a straight line, as far as a short."""
    bank = bankwright.read(root / "data/examples/bow-36v.toml")
    seen = bank.seen_from("troll+", "troll-")
    for amperes in (1.0, 40.0, 200.0):
        volts = bank.solve(current=amperes * bankwright.units.A)["parts"]["troll"]["voltage"]
        assert volts == pytest.approx(seen.voltage - amperes * seen.resistance, rel=1e-12)
    assert seen.short_current * seen.resistance == pytest.approx(seen.voltage, rel=1e-12)
    assert bank.seen_from("troll-", "troll+").voltage == -seen.voltage
    assert bank.seen_from("A+", "A+") == (0.0, 0.0, None)
    with pytest.raises(bankwright.UnknownName):
        bank.seen_from("troll+", "nowhere")


def test_between_what_hangs_together_nowhere_there_is_no_source(root):
    bank = bankwright.Bank(voltage="12 V").battery("A", chemistry="agm", voltage="12 V", capacity="100 Ah")
    bank.battery("B", chemistry="agm", voltage="12 V", capacity="100 Ah")
    assert bank.seen_from("A+", "B-") is None


def test_a_word_that_chooses_no_rule_is_refused(root):
    """A check that looks for nothing would find nothing wrong."""
    bank = bankwright.read(root / "data/examples/bow-36v-miswired.toml")
    assert not bank.check().ok
    for words in ({"only": ["wireing"]}, {"only": "wireing"}, {"skip": ["wireing"]}, {"only": ["matching", "wireing"]}):
        with pytest.raises(ValueError, match="did you mean `wiring`"):
            bank.check(**words)
    for word in ("", "w", "wiring,matching", "all the rules"):
        with pytest.raises(bankwright.Unsuitable, match="no rule or family"):
            bank.check(only=word)
    with pytest.raises(ValueError, match="no rule or family"):
        bankwright.Bank.from_text("this is no bank").check(only="wireing")


def test_a_lone_text_is_one_name(root):
    bank = bankwright.read(root / "data/examples/bow-36v-miswired.toml")
    assert bank.check(only="wiring") == bank.check(only=["wiring"])
    assert not bank.check(only="wiring").ok
    assert bank.check(skip="wiring") == bank.check(skip=["wiring"])
    assert all(row["rule"].startswith("matching/") for row in bank.check(only="matching").list)


def test_the_rules_are_the_command_s(command, root):
    assert bankwright.rules() == printed_by(command, "rules", cwd=root)["rules"]


def test_what_an_answer_prints_is_short(root):
    bank = bankwright.read(root / "data/examples/bow-36v.toml")
    for answer in (bank, bank.solve(), bank.discharge(), bank.hookup(), bank.short_circuit(), bank.tolerance(samples=10),
                   bank.sweep({"A.resistance": [0.004, 0.005]})):
        assert len(str(answer).splitlines()) == 1 and len(str(answer)) < 160 + len(bank.file), type(answer)
