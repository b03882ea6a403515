"""Do the documents tell the truth? What they show is run, and what they name exists. Are they short?"""
import json
import os
import re
import shlex
import subprocess
from pathlib import Path

import pytest
from console import DOCUMENTS, PICTURES, blocks, printed, shown
from project import ROOT, project_files, read, road

SHOWN = [pytest.param(typed, output, id=f"{document}:{line}: {typed}") for document in DOCUMENTS
         for line, block in blocks(document, "console") for typed, output in shown(block)]


def without_rounding(text):
    """What is left over in a balance is rounding, which is the processor's own."""
    return re.sub(r"-?\b\d(\.\d+)?e-1\d\b", "0", text)


@pytest.mark.parametrize("typed, output", SHOWN)
def test_shown_output_is_what_the_command_prints(command, typed, output):
    now = without_rounding(printed(command, typed))
    assert now == without_rounding(output), "run tests/structure/refresh_docs.py and read the difference"


@pytest.mark.parametrize("picture, typed", PICTURES.items())
def test_pictures_are_what_the_command_draws(command, picture, typed):
    assert printed(command, typed) + "\n" == read(picture), "run tests/structure/refresh_docs.py and look at the difference"


def test_the_readme_shows_a_verdict():
    assert any(typed.startswith("bankwright check") for _, block in blocks("README.md", "console") for typed, _ in shown(block))


def test_the_readme_names_every_family_of_rules(command):
    listed = subprocess.run([command, "rules"], capture_output=True, text=True, check=True).stdout
    table = read("README.md").partition("## What it checks")[2].partition("\n## ")[0]
    assert set(re.findall(r"^\| `([a-z]+)` \|", table, re.M)) == set(re.findall(r"^([a-z]+)/", listed, re.M))


@pytest.mark.parametrize("text", [pytest.param(text, id=f"{document}:{line}") for document in ("README.md", "apps/README.md")
                                  for line, text in blocks(document, "toml")])
def test_a_bank_shown_is_one_of_the_examples(text):
    examples = {path: read(path) for path in project_files(".toml") if path.is_relative_to("data/examples")}
    assert any(text.strip() in whole for whole in examples.values()), "show an example, or a part of one, word for word"


@pytest.mark.parametrize("text", [pytest.param(text, id=f"{document}:{line}") for document in DOCUMENTS for line, text in blocks(document, "cpp")])
def test_cpp_shown_is_a_part_of_the_stranger_s_project(text):
    """tests/package compiles and runs that project."""
    strangers = [read(path) for path in project_files(".cpp") if path.is_relative_to("tests/package/stranger")]
    assert any(text.strip() in whole for whole in strangers)


@pytest.mark.parametrize("text", [pytest.param(text, id=f"{document}:{line}") for document in DOCUMENTS for line, text in blocks(document, "python")])
def test_python_shown_runs(text, tmp_path):
    where = os.environ.get("PYTHONPATH", str(ROOT / "build/release/python"))
    (tmp_path / "data").symlink_to(ROOT / "data")  # what is written is not written here
    subprocess.run(["/usr/bin/python3", "-c", text], cwd=tmp_path, check=True,
                   env=os.environ | {"PYTHONPATH": where, "MPLBACKEND": "agg"})


def command_lines():
    for document in DOCUMENTS:
        for line, text in blocks(document, "sh"):
            for words in text.splitlines():
                yield pytest.param(words, id=f"{document}:{line}: {words}")


@pytest.mark.parametrize("words", command_lines())
def test_command_lines_name_what_exists(words):
    presets = {entry["name"] for entry in json.loads(read("CMakePresets.json"))["configurePresets"]}
    typed = shlex.split(words, comments=True)
    for before, word in zip(["", *typed], typed):
        if before == "--preset":
            assert word in presets, f"no preset {word}"
        elif "/" in word and not word.startswith(("-", "build/", "/")) and "=" not in word:
            assert (ROOT / word).exists(), f"{word} does not exist"


def test_links_lead_somewhere():
    broken = [f"{document}: {target}" for document in DOCUMENTS
              for target in re.findall(r"\]\(([^)#:\s]+)(?:#[^)]*)?\)", read(document))
              if not (ROOT / document).parent.joinpath(target).exists()]
    assert not broken, "\n".join(broken)


CAPS = {"README.md": 12_000, "DEVELOPERS.md": 12_000}  # bytes
MOST_WORDS = 120  # in a paragraph or an item of a list


@pytest.mark.parametrize("document, cap", CAPS.items())
def test_the_two_front_pages_are_short(document, cap):
    assert len(read(document).encode()) <= cap, "what is longer than that stands beside its code"


def paragraphs(document):
    prose = re.sub(r"^```.*?^```$", "", read(document), flags=re.M | re.S)
    for paragraph in re.split(r"\n\s*\n", prose):
        yield from re.split(r"(?m)^\s*(?=(?:[*|-]|\d+\.) )", paragraph)


def test_no_paragraph_is_a_wall():
    walls = [f"{document}: {len(words)} words: {' '.join(words[:10])} ..." for document in DOCUMENTS
             for paragraph in paragraphs(document) if len(words := paragraph.split()) > MOST_WORDS]
    assert not walls, "\n".join(walls)


def test_folders_and_files_named_in_the_documents_exist():
    """Paths in backquotes, from the project's root, the library's include folder, tests/ or the document's own folder."""
    missing = []
    for document in DOCUMENTS:
        roots = (ROOT, ROOT / "lib/include/bankwright", ROOT / "tests", (ROOT / document).parent)
        for name in re.findall(r"`([\w.-]+/(?:[\w./-]*))`", re.sub(r"^```.*?^```", "", read(document), flags=re.M | re.S)):
            if not name.startswith("build/") and not any((root / name).exists() for root in roots):
                missing.append(f"{document}: {name}")
    assert not missing, "\n".join(missing)


def test_every_folder_is_explained_to_developers():
    named = set(re.findall(r"`([\w./-]+)/`", read("DEVELOPERS.md") + read("tests/README.md")))
    folders = {path.parts[0] for path in project_files() if len(path.parts) > 1 and not path.parts[0].startswith(".")}
    folders |= {path.parts[1] for path in project_files() if path.parts[0] == "tests" and len(path.parts) > 2}
    folders |= {Path(path).parts[3] for path in project_files(".hpp") if path.is_relative_to("lib/include") and len(path.parts) > 4}
    unexplained = {folder for folder in folders if folder not in {name.split("/")[-1] for name in named}}
    assert not unexplained, f"DEVELOPERS.md does not name {sorted(unexplained)}"


def test_the_road_in_the_documents_is_the_road_that_is_checked():
    table = re.findall(r"^\| `(\w+)/` \| (.*?) \|", read("DEVELOPERS.md"), re.M)
    written = {folder: sorted(re.findall(r"`(\w+)`", allowed)) for folder, allowed in table if folder in road()}
    assert written == {folder: sorted(allowed) for folder, allowed in road().items()}
