"""Does every report read well on a phone, at a desk and on paper, by eye, by ear and in grey, and does it ask for nothing?"""
import html
import json
import os
import re
import shutil
import subprocess
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]
HERE = Path(__file__).resolve().parent
PHONE, DESK = (360, 740), (1280, 900)
PAPERS = {"A4": (8.27, 11.69), "Letter": (8.5, 11.0)}  # [in]
PRINTED = {"bow-36v": range(8, 15), "bow-36v-miswired": range(5, 10)}  # name -> pages, with fonts a little larger or smaller

# The rules of accessibility are dear, that of contrast most of all, and what they look at is the same in every report: unless
# asked for all, they see the examples and the hostile one, and contrast on a page of each colour.
CONTRAST = ("bow-36v", "bow-36v-miswired", "skiff-24v-tapped-off")
EVERY_PAGE = os.environ.get("BANKWRIGHT_EVERY_PAGE") == "1"

HOSTILE_NAME = '"<script>alert(1)</script> & \' \\" --> </title> ]]> \\u202e\\u05d0\\u05d1 <img src=x onerror=alert(2)>"'
HOSTILE_COLOUR = '"red\\u0022 onmouseover=\\u0022alert(3)"'
LONG_ID = "J" * 200  # as long as an id may be


@pytest.fixture(scope="session")
def reports(make, banks, tmp_path_factory):
    """name -> HTML: every example, every miswire of the catalogue, and one with hostile words wherever words may stand."""
    made = {path.stem: make("report", path.relative_to(ROOT)) for path in banks}
    text = (ROOT / "data/examples/bow-36v.toml").read_text()
    text = re.sub(r'^name = ".*"$', lambda _: "name = " + HOSTILE_NAME, text, flags=re.M)
    text = text.replace('color = "red"', "color = " + HOSTILE_COLOUR).replace("J1 =", LONG_ID + " =")
    hostile = tmp_path_factory.mktemp("hostile") / "<b onclick='alert(4)'>&amp;.toml"
    hostile.write_text(text, encoding="utf-8")
    made["hostile"] = make("report", hostile)
    return made


@pytest.fixture(scope="session")
def pages(reports, tmp_path_factory):
    folder = tmp_path_factory.mktemp("reports")
    for name, text in reports.items():
        (folder / f"{name}.html").write_text(text, encoding="utf-8")
    return {name: folder / f"{name}.html" for name in reports}


@pytest.fixture(scope="session")
def axe():
    """The rules of axe-core as a script, of the version that package-lock.json names, installed once into build/."""
    npm = shutil.which("npm")
    assert npm, "npm is not installed; tests/run.sh installs it"
    folder = ROOT / "build/axe"
    wanted = json.loads((HERE / "package-lock.json").read_text())["packages"]["node_modules/axe-core"]["version"]
    there = folder / "node_modules/axe-core/package.json"
    if not there.exists() or json.loads(there.read_text())["version"] != wanted:
        folder.mkdir(parents=True, exist_ok=True)
        for file in ("package.json", "package-lock.json"):
            shutil.copy(HERE / file, folder)
        subprocess.run([npm, "ci", "--ignore-scripts", "--no-audit", "--no-fund"], cwd=folder, check=True, timeout=300)
    return (folder / "node_modules/axe-core/axe.min.js").read_text(encoding="utf-8")


def violations_on(page, axe, contrast):
    page.evaluate(axe)
    options = {"resultTypes": ["violations"], "preload": False, "rules": {"color-contrast": {"enabled": contrast}}}
    return page.evaluate(f"axe.run(document, {json.dumps(options)}).then(found => found.violations.map("
                         "rule => rule.id + ': ' + rule.nodes.map(node => node.html.slice(0, 120)).join(' | ')))")


@pytest.fixture(scope="session")
def seen(browser, pages, axe, text_faults):
    """name -> what a browser makes of the report, looked at once: as a phone shows it, then as a desk does."""
    found = {}
    for name, path in pages.items():
        page = browser.open(path, *PHONE)
        scripts = page.evaluate("document.scripts.length")
        heard = EVERY_PAGE or name == "hostile" or (ROOT / f"data/examples/{name}.toml").exists()
        violations = violations_on(page, axe, EVERY_PAGE or name in CONTRAST) if heard else None
        faults, widths = {}, {}
        for size in (PHONE, DESK):
            page.resize(*size)
            faults[size] = text_faults(page)
            widths[size] = page.evaluate("document.documentElement.scrollWidth")
        found[name] = {"requests": page.requests, "complaints": page.complaints, "violations": violations, "faults": faults,
                       "widths": widths, "scripts": scripts,
                       "heading": page.evaluate("document.querySelector('h1').textContent"),
                       "handlers": page.evaluate("[...document.querySelectorAll('*')].flatMap(element => "
                                                 "element.getAttributeNames()).filter(name => name.startsWith('on'))")}
        page.close()
    return found


def test_a_report_asks_for_nothing_and_the_console_stays_empty(seen, pages):
    for name, page in seen.items():
        assert page["requests"] == [pages[name].as_uri()] and page["complaints"] == [], name


@pytest.mark.parametrize("size", [PHONE, DESK], ids=["phone", "desk"])
def test_no_text_lies_on_another_or_leaves_its_box_and_the_page_does_not_move_sideways(seen, size):
    faults = [f"{name}: {fault}" for name, page in seen.items() for fault in page["faults"][size]]
    faults += [f"{name}: {page['widths'][size]} px wide" for name, page in seen.items() if page["widths"][size] > size[0]]
    assert not faults, "\n".join(faults[:40])


def test_those_who_hear_the_page_are_served_as_well(seen):
    heard = {name: page["violations"] for name, page in seen.items() if page["violations"] is not None}
    assert set(CONTRAST) | {"hostile"} <= set(heard)
    violations = [f"{name}: {violation}" for name, found in heard.items() for violation in found]
    assert not violations, "\n".join(violations[:40])


def test_what_the_user_wrote_is_text(seen, reports):
    assert all(page["scripts"] == 0 and page["handlers"] == [] for page in seen.values())
    heading = seen["hostile"]["heading"]
    assert heading.startswith("<script>alert(1)</script> & ' \" --> </title> ]]> ") and "<img src=x onerror=alert(2)>" in heading
    assert "\u202e" not in reports["hostile"] and LONG_ID in reports["hostile"]
    assert "&lt;b onclick=&#39;alert(4)&#39;&gt;&amp;amp;.toml" in reports["hostile"]
    assert 'red" onmouseover="alert(3)' in html.unescape(reports["hostile"])


def test_an_id_of_ten_thousand_letters_is_refused_in_words(command):
    text = (ROOT / "data/examples/bow-36v.toml").read_text().replace("J1 =", "J" * 10_000 + " =")
    done = subprocess.run([command, "report", "-"], capture_output=True, input=text.encode(), timeout=60)
    assert done.returncode == 2 and done.stdout == b"" and b"[file/" in done.stderr


def pages_of(pdf):
    """(width, height) in points of each page."""
    return [tuple(map(float, box.split())) for box in re.findall(rb"/MediaBox\s*\[\s*0\s+0\s+([\d.]+\s+[\d.]+)", pdf)]


@pytest.mark.parametrize("paper", PAPERS)
@pytest.mark.parametrize("name", PRINTED)
def test_a_report_prints_on_few_pages_with_the_drawing_on_one_of_its_own_across(browser, pages, name, paper):
    page = browser.open(pages[name], *DESK)
    width, height = PAPERS[paper]
    sheets = pages_of(page.pdf(paperWidth=width, paperHeight=height))
    page.close()
    across = [(w, h) for w, h in sheets if w > h]
    assert across == [pytest.approx((height * 72, width * 72), abs=1)]
    assert all((w, h) == pytest.approx((width * 72, height * 72), abs=1) for w, h in sheets if w < h)
    assert len(sheets) in PRINTED[name]
