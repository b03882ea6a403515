"""Is each drawing as sound in a browser as it is on paper? Headless Chromium measures every text with its own fonts."""
import re
import tomllib
import xml.etree.ElementTree as xml
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]
SVG = "{http://www.w3.org/2000/svg}"

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


@pytest.fixture(scope="session")
def drawings(make, banks, long_names):
    """name -> SVG: every example and miswire of the catalog, some more miswires, one with a hostile name and one with long ones."""
    made = {path.stem: make("draw", path) for path in banks}
    for name, (example, before, after) in MISWIRES.items():
        text = (ROOT / "data/examples" / example).read_text()
        assert before in text
        made[name] = make("draw", "-", text=text.replace(before, after, 1).encode())
    text = (ROOT / "data/examples/bow-36v.toml").read_text()
    made["hostile"] = make("draw", "-", text=re.sub(r'^name = ".*"$', lambda _: "name = " + HOSTILE, text, flags=re.M).encode())
    made["long-names"] = make("draw", "-", text=long_names.encode())
    return made


@pytest.fixture(scope="session")
def gallery(browser, drawings, tmp_path_factory):
    """All drawings on one page: inside it, where their ids must not clash, and each again as a picture of its own."""
    folder = tmp_path_factory.mktemp("drawings")
    figures = ""
    for name, svg in drawings.items():
        (folder / f"{name}.svg").write_text(svg, encoding="utf-8")
        shared = svg.replace("bankwright-title", f"{name}-title").replace("bankwright-desc", f"{name}-desc")
        figures += f'<figure id="{name}">{shared}<img src="{name}.svg" alt=""></figure>\n'
    page = folder / "page.html"
    page.write_text('<!doctype html><html lang="en"><meta charset="utf-8"><title>drawings</title><link rel="icon" href="data:,">'
                    f"<body>{figures}</body></html>", encoding="utf-8")
    return browser.open(page, 2400, 1200)


def test_the_browser_has_nothing_to_complain_of(gallery):
    assert gallery.complaints == []
    ids = gallery.evaluate('[...document.querySelectorAll("[id]")].map(element => element.id)')
    assert len(ids) == len(set(ids))


def test_no_text_overlaps_another_or_leaves_the_drawing(gallery, text_faults):
    assert not (faults := text_faults(gallery)), "\n".join(faults)


def test_each_file_is_a_picture_by_itself(gallery, drawings):
    shown = gallery.evaluate("""Promise.all([...document.images].map(async image => {
        await image.decode();
        return [image.parentElement.id, image.naturalWidth, image.previousElementSibling.getBoundingClientRect().width];
    }))""")
    assert {name for name, *_ in shown} == set(drawings)
    for name, alone, inside in shown:
        assert alone == pytest.approx(inside, abs=1.0), name


def test_each_file_is_well_formed_and_described(drawings):
    for name, svg in drawings.items():
        root = xml.fromstring(svg)
        assert root.tag == SVG + "svg" and root.get("role") == "img"
        named = {element.get("id") for element in root.iter() if element.get("id")}
        assert set(root.get("aria-labelledby").split()) <= named, name
        assert root[0].tag == SVG + "title" and root[0].text and root[1].tag == SVG + "desc" and root[1].text
        assert not {element.tag.removeprefix(SVG) for element in root.iter()} & {"script", "style", "image", "use", "a"}


def test_every_conductor_of_an_example_is_labelled_and_every_battery_named(drawings, banks):
    for path in banks:
        bank = tomllib.loads(path.read_text())
        shown = {text.text for text in xml.fromstring(drawings[path.stem]).iter(SVG + "text")}
        wanted = {id for section in ("batteries", "jumpers", "cables", "breakers", "fuses", "switches", "busbars", "connectors",
                                     "motors", "loads", "chargers") for id in bank.get(section, {})}
        assert wanted <= shown, f"{path.stem}: {wanted - shown}"


def test_what_the_user_wrote_is_text(drawings):
    title = xml.fromstring(drawings["hostile"])[0].text
    assert "<script>alert(1)</script>" in title and "long " * 400 in title + " "
    assert "\u202e" not in drawings["hostile"]
