"""Does the measure by which pictures are held see what it is there to see?"""
import pytest

FILLER = "".join(f"<p>line {number}</p>" for number in range(30))
FAULTS = {
    "leaves": '<div style="width: 60px; white-space: nowrap">much too long for sixty pixels</div>',
    "lies on": '<p>under</p><p style="margin-top: -34px">over it all</p>',
    "leaves what": '<svg viewBox="0 0 50 20" width="50" height="20" style="overflow: visible"><text x="0" y="15">outside</text></svg>',
    "lies": '<svg viewBox="0 0 90 40" width="90" height="40"><text x="0" y="15">one</text><text x="5" y="18">two</text></svg>',
}


@pytest.fixture
def shown(browser, tmp_path):
    def show(body):
        path = tmp_path / "page.html"
        path.write_text(f'<!doctype html><meta charset="utf-8"><link rel="icon" href="data:,"><body>{FILLER}{body}', encoding="utf-8")
        return browser.open(path, 360, 740)

    return show


@pytest.mark.parametrize("fault, body", FAULTS.items())
def test_a_fault_is_seen(shown, text_faults, fault, body):
    assert any(fault in found for found in text_faults(shown(body)))


def test_a_sound_page_has_none(shown, text_faults):
    assert text_faults(shown("<p>all is well, and long enough to be broken over more than one line of a telephone's screen</p>")) == []


def test_what_a_page_asks_for_and_complains_of_is_noted(shown):
    page = shown('<img src="missing.png" alt=""><script>console.log("said"); nowhere()</script>')
    assert len(page.requests) == 2 and page.requests[1].endswith("missing.png")
    assert len(page.complaints) >= 2
