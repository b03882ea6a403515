"""Does every report read well on a phone, at a desk and on paper, by eye, by ear and in gray, and does it ask for nothing?"""
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
# name -> pages, with fonts a little larger or smaller (the hook-up, with its dead checks, is half of them; `--only` prints less). One of each kind is printed; with BANKWRIGHT_EVERY_PAGE=1, all are.
PRINTED = {"bow-36v": range(10, 19), "bow-36v-miswired": range(5, 10)}
USUAL, WITH_LONG_NAMES = range(4, 41), range(30, 91)  # every step of the hook-up says several names, of a few lines each

# The rules of accessibility are dear, that of contrast most of all, and what they look at is the same in every report: unless
# asked for all, they see the examples and the hostile one, and contrast on a page of each color.
CONTRAST = ("bow-36v", "bow-36v-miswired", "skiff-24v-tapped-off")
EVERY_PAGE = os.environ.get("BANKWRIGHT_EVERY_PAGE") == "1"

# What a sheet of either paper surely holds within its margins, in pixels of 1/96 in; and what may not be broken over two, but
# would be, because nothing forbids it or because it is higher than a sheet.
SHEET = (697, 940)
CUT = f"""[...document.querySelectorAll("tr, figure, .finding, .steps > li, .verdict, .cautions, .figures > div")].filter(element => {{
    const height = element.getBoundingClientRect().height;
    return height > {SHEET[1]} || height > 0 && getComputedStyle(element).breakInside !== "avoid";
}}).map(element => element.textContent.trim().slice(0, 60))"""

# Folded text that paper would not show.
UNSEEN = """[...document.querySelectorAll("details:not([open]) > :not(summary)")].filter(element =>
    element.textContent.trim() && !element.checkVisibility({contentVisibilityAuto: true})).length"""

HOSTILE_NAME = '"<script>alert(1)</script> & \' \\" --> </title> ]]> \\u202e\\u05d0\\u05d1 <img src=x onerror=alert(2)>"'
HOSTILE_COLOR = '"red\\u0022 onmouseover=\\u0022alert(3)"'
LONG_ID = "J" * 200  # as long as an id may be


@pytest.fixture(scope="session")
def reports(make, banks, long_names, tmp_path_factory):
    """name -> HTML: every example, every miswire of the catalog, one with hostile words wherever words may stand, one with long ones."""
    made = {path.stem: make("report", path.relative_to(ROOT)) for path in banks}
    text = (ROOT / "data/examples/bow-36v.toml").read_text()
    text = re.sub(r'^name = ".*"$', lambda _: "name = " + HOSTILE_NAME, text, flags=re.M)
    text = text.replace('color = "red"', "color = " + HOSTILE_COLOR).replace("J1 =", LONG_ID + " =")
    hostile = tmp_path_factory.mktemp("hostile") / "<b onclick='alert(4)'>&amp;.toml"
    hostile.write_text(text, encoding="utf-8")
    made["hostile"] = make("report", hostile)
    made["long-names"] = make("report", "-", text=long_names.encode())
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
    found, page = {}, browser.open(next(iter(pages.values())), *PHONE)
    for name, path in pages.items():
        page.go(path, *PHONE)
        scripts = page.evaluate("document.scripts.length")
        folded = page.evaluate("document.documentElement.scrollHeight")
        page.media("print")
        page.evaluate("new Promise(shown => requestAnimationFrame(() => requestAnimationFrame(shown)))")  # a new medium holds from the next frame on
        unopened = page.evaluate(UNSEEN)
        page.media("")
        page.evaluate("document.querySelectorAll('details').forEach(fold => fold.open = true)")
        heard = EVERY_PAGE or name == "hostile" or (ROOT / f"data/examples/{name}.toml").exists()
        violations = violations_on(page, axe, EVERY_PAGE or name in CONTRAST) if heard else None
        faults, widths = {}, {}
        for size in (PHONE, DESK):
            page.resize(*size)
            faults[size] = text_faults(page)
            widths[size] = page.evaluate("document.documentElement.scrollWidth")
        found[name] = {"screens": folded / PHONE[1], "unopened": unopened, "requests": page.requests, "complaints": page.complaints, "violations": violations, "faults": faults,
                       "widths": widths, "scripts": scripts,
                       "heading": page.evaluate("document.querySelector('h1').textContent"),
                       "handlers": page.evaluate("[...document.querySelectorAll('*')].flatMap(element => "
                                                 "element.getAttributeNames()).filter(name => name.startsWith('on'))")}
        if heard or name == "long-names":
            page.media("print")
            page.resize(*SHEET)
            found[name]["cut"], widths["paper"] = page.evaluate(CUT), page.evaluate("document.documentElement.scrollWidth")
            page.media("")
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


def test_a_phone_shows_one_boat_in_eight_screens_before_anything_unfolds(seen):
    long = {name: round(page["screens"], 1) for name, page in seen.items() if page["screens"] > 8 and name not in ("long-names", "hostile")}
    assert not long


def test_paper_unfolds_everything(seen):
    assert {name: page["unopened"] for name, page in seen.items() if page["unopened"]} == {}


def test_a_short_report_has_the_chapters_that_were_asked_for(make):
    text = make("report", "data/examples/bow-36v.toml", "--only", "hookup,drawing")
    assert re.findall(r'id="(verdict|cautions|hookup|drawing|findings|readings|run|shorts|cut|sources)"', text) == ["verdict", "cautions", "hookup", "drawing"]
    assert len(text) < 0.7 * len(make("report", "data/examples/bow-36v.toml"))


def test_a_report_shows_what_was_read_beside_what_was_expected(make, tmp_path):
    log = tmp_path / "log.toml"
    log.write_text('bankwright-log = 1\n[[read]]\nwhen = "alone"\npart = "A"\nreads = "12.8 V"\ntime = "2026-05-02 09:15"\n'
                   '[[read]]\nwhen = "alone"\npart = "B"\nreads = "-12.8 V"\ntime = "2026-05-02 09:16"\n')
    text = html.unescape(re.sub(r"\s+", " ", re.sub(r"<[^>]+>", " ", make("report", "data/examples/bow-36v.toml", "--log", log))))
    assert "Read: 12.80 V , 2026-05-02 09:15" in text and "Stop. Read: -12.80 V , 2026-05-02 09:16" in text
    assert "B is the wrong way around" in text


def test_on_paper_nothing_is_cut_off_at_the_side_and_no_row_step_or_picture_falls_on_two_sheets(seen):
    printed = {name: page for name, page in seen.items() if "cut" in page}
    assert {"hostile", "long-names", *PRINTED} <= set(printed)
    # A step in names as long as they may be fills more than a sheet.
    faults = [f"{name}: {words}" for name, page in printed.items() if name != "long-names" for words in page["cut"]]
    faults += [f"{name}: {page['widths']['paper']} px wide" for name, page in printed.items() if page["widths"]["paper"] > SHEET[0]]
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
    for asked in ("report", "draw"):
        done = subprocess.run([command, asked, "-"], capture_output=True, input=text.encode(), timeout=60)
        assert done.returncode == 2 and done.stdout == b"", asked
        assert b"a name of 10000 bytes; allowed are 200 [file/too-large]" in done.stderr
        assert max(map(len, done.stderr.splitlines())) < 250, "what is refused for its length is not told in full"


def test_a_long_name_comes_out_as_text_in_full_where_there_is_room_for_it(reports):
    text = html.unescape(reports["long-names"])
    assert "Heron" * 2000 in text and "red" * 300 in text and "J1-" + "long" * 49 in text


def test_every_finding_tells_where_its_limit_comes_from_and_how_sure_that_is(reports):
    marks = re.compile(r"\[(from )?(read|quoted|recalled|memory|derived)|[Cc]ommon practice|own |computed|what a rating means")
    assert re.search(r"the text itself was\s+read", reports["bow-36v-miswired"])
    for name, text in reports.items():
        said = re.findall(r"<dt>Where the limit comes from</dt>\s*<dd>(.*?)</dd>", text, flags=re.S)
        assert len(said) == text.count("<article "), name
        assert all(marks.search(html.unescape(words)) for words in said), (name, said)


def pages_of(pdf):
    """(width, height) in points of each page."""
    return [tuple(map(float, box.split())) for box in re.findall(rb"/MediaBox\s*\[\s*0\s+0\s+([\d.]+\s+[\d.]+)", pdf)]


@pytest.mark.parametrize("paper", PAPERS)
def test_a_report_prints_on_few_pages_with_the_drawing_on_one_of_its_own_across(browser, pages, paper):
    width, height = PAPERS[paper]
    names = list(pages if EVERY_PAGE else PRINTED)
    page = browser.open(pages[names[0]], *DESK)
    for name in names:
        page.go(pages[name], *DESK)
        sheets = pages_of(page.pdf(paperWidth=width, paperHeight=height))
        across = [(w, h) for w, h in sheets if w > h]
        assert across == [pytest.approx((height * 72, width * 72), abs=1)], name
        assert all((w, h) == pytest.approx((width * 72, height * 72), abs=1) for w, h in sheets if w < h), name
        assert len(sheets) in PRINTED.get(name, WITH_LONG_NAMES if name == "long-names" else USUAL), name
    page.close()
