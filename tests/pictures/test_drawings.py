"""Is each drawing as sound in a browser as it is on paper? Headless Chromium measures every text with its own fonts."""
import html
import json
import re
import shutil
import subprocess
import tomllib
import xml.etree.ElementTree as xml
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]
EXAMPLES = sorted((ROOT / "data/examples").glob("*.toml"))
SVG = "{http://www.w3.org/2000/svg}"

# Of every text of every drawing: its words and its box, in pixels from the drawing's upper left corner. Each drawing is
# also loaded as a picture of its own, as a page that shows the file would.
MEASURE = """
const answer = {problems: [], drawings: {}};
window.addEventListener("error", event => answer.problems.push(String(event.message)));
window.addEventListener("load", async () => {
  for (const frame of document.querySelectorAll("figure")) {
    const svg = frame.querySelector("svg"), page = svg.getBoundingClientRect();
    const texts = [...svg.querySelectorAll("text")].map(text => {
      const box = text.getBoundingClientRect();
      return [text.textContent, box.left - page.left, box.top - page.top, box.right - page.left, box.bottom - page.top];
    });
    const picture = frame.querySelector("img");
    await picture.decode().catch(error => answer.problems.push(frame.id + ": " + error));
    answer.drawings[frame.id] = {texts, width: page.width, height: page.height, picture: picture.naturalWidth};
  }
  const ids = [...document.querySelectorAll("[id]")].map(element => element.id);
  answer.twice = ids.filter((id, i) => ids.indexOf(id) !== i);
  document.getElementById("answer").textContent = JSON.stringify(answer);
});
"""

# What a person meets on the dock, as changes of one line of an example.
MISWIRES = {
    "turned": ("bow-36v.toml", 'J1 = { model = "no6", from = "A+", to = "B-"', 'J1 = { model = "no6", from = "A-", to = "B-"'),
    "short": ("tender-12v.toml", 'from = "stern-", to = "A-"', 'from = "A+", to = "A-"'),
    "parallel": ("skiff-24v.toml", 'from = "A+", to = "B-"', 'from = "A+", to = "B+"'),
    "tie": ("launch-36v-diagonal.toml", 'from = "A3+", to = "B3+"', 'from = "A2+", to = "B3+"'),
    "to-the-plug": ("skiff-24v.toml", 'from = "CB.load", to = "bow+"', 'from = "CB.load", to = "bow.plug-"'),
    "on-one-bar": ("houseboat-12v.toml", 'from = "panel-n", to = "minus"', 'from = "panel-n", to = "plus"'),
}
HOSTILE = '"<script>alert(1)</script> \\u202e& ' + "long " * 400 + '"'


def drawn(command, *arguments, text=None):
    done = subprocess.run([command, "draw", *arguments], capture_output=True, input=text, timeout=60)
    assert done.returncode == 0, done.stderr.decode()
    return done.stdout.decode()


@pytest.fixture(scope="session")
def drawings(command):
    """name -> SVG: every example, some miswires of them, and one with a hostile name."""
    made = {path.stem: drawn(command, path) for path in EXAMPLES}
    for name, (example, before, after) in MISWIRES.items():
        text = (ROOT / "data/examples" / example).read_text()
        assert before in text
        made[name] = drawn(command, "-", text=text.replace(before, after, 1).encode())
    text = (ROOT / "data/examples/bow-36v.toml").read_text()
    made["hostile"] = drawn(command, "-", text=re.sub(r'^name = ".*"$', lambda _: "name = " + HOSTILE, text, flags=re.M).encode())
    return made


@pytest.fixture(scope="session")
def measured(drawings, tmp_path_factory):
    chromium = shutil.which("chromium") or shutil.which("chromium-browser")
    assert chromium, "chromium is not installed; tests/packages.txt names it"
    folder = tmp_path_factory.mktemp("drawings")
    figures = ""
    for name, svg in drawings.items():
        (folder / f"{name}.svg").write_text(svg, encoding="utf-8")
        shared = svg.replace("bankwright-title", f"{name}-title").replace("bankwright-desc", f"{name}-desc")
        figures += f'<figure id="{name}">{shared}<img src="{name}.svg" alt=""></figure>\n'
    page = folder / "page.html"
    page.write_text(f'<!doctype html><html lang="en"><meta charset="utf-8"><title>drawings</title><link rel="icon" href="data:,">'
                    f'<body>{figures}<pre id="answer"></pre><script>{MEASURE}</script></body></html>', encoding="utf-8")
    done = subprocess.run([chromium, "--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run",
                           "--disable-background-networking", "--disable-component-update", "--disable-sync",
                           "--enable-logging=stderr", f"--user-data-dir={folder / 'profile'}", "--virtual-time-budget=20000",
                           "--dump-dom", page.as_uri()], capture_output=True, text=True, timeout=180)
    found = re.search(r'<pre id="answer">(.+?)</pre>', done.stdout, re.S)
    assert found, done.stderr[-2000:]
    answer = json.loads(html.unescape(found.group(1)))
    answer["console"] = [line for line in done.stderr.splitlines() if "CONSOLE" in line]
    return answer


def test_the_browser_has_nothing_to_complain_of(measured):
    assert measured["problems"] == [] and measured["console"] == [] and measured["twice"] == []


def test_no_text_overlaps_another_or_leaves_the_page(measured):
    slack = 1.5  # [px] a box of text is a little higher than its letters
    faults = []
    for name, drawing in measured["drawings"].items():
        texts = drawing["texts"]
        assert len(texts) > 20
        for i, (words, left, top, right, bottom) in enumerate(texts):
            if left < 0 or top < 0 or right > drawing["width"] or bottom > drawing["height"]:
                faults.append(f"{name}: {words!r} leaves the page")
            for other, l, t, r, b in texts[i + 1:]:
                if left < r - slack and l < right - slack and top < b - slack and t < bottom - slack:
                    faults.append(f"{name}: {words!r} overlaps {other!r}")
    assert not faults, "\n".join(faults)


def test_each_file_is_a_picture_by_itself(measured, drawings):
    assert set(measured["drawings"]) == set(drawings)
    for name, drawing in measured["drawings"].items():
        assert drawing["picture"] == pytest.approx(drawing["width"], abs=1.0), name


def test_each_file_is_well_formed_and_described(drawings):
    for name, svg in drawings.items():
        root = xml.fromstring(svg)
        assert root.tag == SVG + "svg" and root.get("role") == "img"
        named = {element.get("id") for element in root.iter() if element.get("id")}
        assert set(root.get("aria-labelledby").split()) <= named, name
        assert root[0].tag == SVG + "title" and root[0].text and root[1].tag == SVG + "desc" and root[1].text
        assert not {element.tag.removeprefix(SVG) for element in root.iter()} & {"script", "style", "image", "use", "a"}


def test_every_conductor_of_an_example_is_labelled_and_every_battery_named(drawings):
    for path in EXAMPLES:
        bank = tomllib.loads(path.read_text())
        shown = {text.text for text in xml.fromstring(drawings[path.stem]).iter(SVG + "text")}
        wanted = {id for section in ("batteries", "jumpers", "cables", "breakers", "fuses", "switches", "busbars", "connectors",
                                     "motors", "loads", "chargers") for id in bank.get(section, {})}
        assert wanted <= shown, f"{path.stem}: {wanted - shown}"


def test_what_the_user_wrote_is_text(drawings):
    title = xml.fromstring(drawings["hostile"])[0].text
    assert "<script>alert(1)</script>" in title and "long " * 400 in title + " "
    assert "\u202e" not in drawings["hostile"]
