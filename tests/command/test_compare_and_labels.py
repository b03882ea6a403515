"""`compare` puts layouts side by side, what differs first; `labels` prints what belongs on the ends of the conductors."""
import csv
import io
import json
import re
import subprocess
import xml.etree.ElementTree as ET
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]
EXAMPLES = ROOT / "data/examples"


@pytest.fixture
def call(command):
    def run(*arguments, **more):
        done = subprocess.run([command, *map(str, arguments)], cwd=ROOT, capture_output=True, text=True, timeout=60, **more)
        return done.returncode, done.stdout, done.stderr

    return run


def test_what_differs_comes_first(call):
    status, out, _ = call("compare", "data/examples/launch-36v-diagonal.toml", "data/examples/bow-36v.toml")
    assert status == 0
    differs, same = out.split("what is the same:")
    assert "3S2P" in differs and "3S1P" in differs and "copper, 2 AWG" in differs
    status, out, _ = call("compare", "data/examples/bow-36v.toml", "data/examples/bow-36v.toml")
    assert "nothing that is looked at" in out and "3S1P" in out.split("what is the same:")[1]


def test_figures_are_those_of_the_other_commands(call):
    files = ["data/examples/launch-36v-diagonal.toml", "data/examples/ferry-48v-lithium.toml", "data/examples/bow-36v-miswired.toml"]
    comparison = json.loads(call("compare", *files, "--format", "json")[1])
    assert comparison["bankwright"] == "comparison" and comparison["version"] == 1
    for file, bank in zip(files, comparison["banks"]):
        found = json.loads(call("check", file, "--format", "json")[1])["files"][0]
        assert bank["counts"] == found["counts"] and bank["arrangement"] == found["arrangement"]
        if bank["counts"]["error"]:
            assert bank["voltages"] == {} and bank["runtime"] is None
            continue
        solved = json.loads(call("solve", file, "--format", "json")[1])
        for load, volts in bank["voltages"].items():
            assert volts == pytest.approx(solved["parts"][load]["voltage"])
        assert bank["hardest_current"] == pytest.approx(max(part["current"] for part in solved["parts"].values() if part["kind"] == "battery"))
        run = json.loads(call("discharge", file, "--format", "json")[1])
        assert bank["runtime"] == pytest.approx(run["runtime"], rel=1e-5)  # its rows make `discharge` step elsewhere
        shorts = json.loads(call("short-circuit", file, "--format", "json")[1])
        assert bank["largest_short"] == pytest.approx(max(place["current"] for place in shorts["places"]))
    for row in comparison["rows"]:
        assert row["differs"] == (len(set(row["values"])) > 1), row
    assert [row["differs"] for row in comparison["rows"]] == sorted((row["differs"] for row in comparison["rows"]), reverse=True)


def test_behind_an_open_breaker_there_is_no_voltage(call, tmp_path):
    sound = (EXAMPLES / "bow-36v.toml").read_text()
    (tmp_path / "open.toml").write_text(sound.replace('rating = "60 A", interrupts', 'state = "open", rating = "60 A", interrupts'))
    (tmp_path / "heavy.toml").write_text(sound.replace('voltage = "12 V", capacity', 'mass = "31.8 kg", price = "210.50 USD", voltage = "12 V", capacity'))
    files = [tmp_path / "open.toml", tmp_path / "heavy.toml"]
    opened, heavy = json.loads(call("compare", *files, "--format", "json")[1])["banks"]
    assert opened["voltages"] == {} and opened["runtime"] is None and heavy["voltages"]["troll"] > 36
    assert heavy["mass"] == pytest.approx(95.4) and heavy["prices"] == [{"amount": 631.5, "currency": "USD"}]
    out = call("compare", *files)[1]
    assert "nan" not in out and "31.8 kg a battery, 95.4 kg in all" in out and "631.50 USD in all" in out


def test_compare_as_a_page(call, tmp_path):
    page = tmp_path / "both.html"
    assert call("compare", "data/examples/skiff-24v.toml", "data/examples/tender-12v.toml", "--format", "html", "-o", page) == (0, "", "")
    text = page.read_text()
    assert text.count("<svg") == 2 and "What differs" in text and "http://" not in text.replace("http://www.w3.org", "")
    ids = re.findall(r' id="([^"]+)"', text)
    assert len(ids) == len(set(ids))


def test_compare_needs_two_files_that_can_be_read(call, tmp_path):
    assert call("compare", "data/examples/skiff-24v.toml")[0] == 2
    assert call("compare", "data/examples/skiff-24v.toml", tmp_path / "none.toml")[0] == 2
    assert call("compare", "-", "-", input="")[0] == 2


def test_one_label_an_end(call):
    bank = EXAMPLES / "bow-36v.toml"
    rows = list(csv.DictReader(io.StringIO(call("labels", bank, "--format", "csv")[1])))
    assert len(rows) == 14  # seven conductors
    by_end = {(row["conductor"], row["at"]): row for row in rows}
    assert by_end["main", "bow+"]["side"] == "plus" and by_end["main", "bow+"]["color"] == "red"
    assert by_end["return", "A-"]["side"] == "minus" and by_end["return", "A-"]["shape"] == "disk"
    assert by_end["J1", "A+"]["side"] == "between" and by_end["J1", "A+"]["to"] == "B-"
    assert all(row["size"] == "6 AWG" for row in rows)
    labels = json.loads(call("labels", bank, "--format", "json")[1])
    assert labels["bankwright"] == "labels" and labels["version"] == 1
    ends = {(end["conductor"], end["at"]): end["above_negative"] for end in labels["ends"]}
    assert ends["J1", "A+"] == pytest.approx(12) and ends["J2", "C-"] == pytest.approx(24)
    assert labels["box"]["system"] == "36 V DC" and labels["box"]["arrangement"] == "3S1P"


def test_the_box_says_what_protects_it(call):
    lines = json.loads(call("labels", EXAMPLES / "houseboat-12v.toml", "--format", "json")[1])["box"]["lines"]
    assert lines == ["3 x 12 V AGM 100 Ah", "fuse FA, FB, FC: 100 A", "fuse MAIN: 80 A", "fuse F1, F2: 15 A", "fuse F3: 60 A"]


@pytest.mark.parametrize("sheet, label", [("210 x 297 mm", "90 x 14 mm"), ("216 x 279 mm", "60 x 10 mm"), ("100 x 150 mm", "80 x 20 mm"),
                                          ("62 x 100 mm", "58 x 12 mm")])
def test_every_label_lies_on_a_sheet_and_on_no_other(call, sheet, label):
    text = call("labels", EXAMPLES / "houseboat-12v.toml", "--format", "svg", "--sheet", sheet, "--label", label)[1]
    root = ET.fromstring(text)
    width, height = (float(side) for side in re.findall(r"[\d.]+", sheet))
    wide, high = (float(side) for side in re.findall(r"[\d.]+", label))
    assert float(root.attrib["viewBox"].split()[2]) == width
    boxes = []
    for group in root:
        if not group.tag.endswith("}g"):
            continue
        down = float(group.attrib["transform"].split()[1].rstrip(")"))
        for one in group:
            if one.tag.endswith("}rect") and (float(one.attrib["width"]), float(one.attrib["height"])) == (wide, high):
                x, y = float(one.attrib["x"]), float(one.attrib["y"])
                assert x >= 0 and y >= 0 and x + wide <= width and y + high <= height
                boxes.append((x, y + down))
    conductors = (EXAMPLES / "houseboat-12v.toml").read_text().count("from = ")
    assert len(boxes) == 2 * conductors
    for i, (x, y) in enumerate(boxes):
        assert all(abs(x - a) >= wide or abs(y - b) >= high for a, b in boxes[:i])


def test_the_format_is_that_of_the_file_s_name(call, tmp_path):
    for ending, begins in (("svg", "<svg"), ("csv", "conductor,"), ("html", "<!doctype html>"), ("json", "{")):
        file = tmp_path / f"labels.{ending}"
        assert call("labels", EXAMPLES / "bow-36v.toml", "-o", file) == (0, "", "")
        assert file.read_text().startswith(begins)


def test_a_wrong_wiring_gets_no_labels(call):
    status, out, err = call("labels", EXAMPLES / "bow-36v-miswired.toml")
    assert status == 1 and "<svg" not in out and "wiring/" in out + err


@pytest.mark.parametrize("options", [["--sheet", "big"], ["--sheet", "10 x 10 mm"], ["--label", "300 x 14 mm"], ["--label", "90 mm"]])
def test_a_sheet_on_which_nothing_fits_is_refused(call, options):
    assert call("labels", EXAMPLES / "bow-36v.toml", *options)[0] == 2
