"""Is every header in the habit of the house: short, opened by its question, safe to include twice in one program?"""
import re

import pytest
from make_umbrella import SOURCES, sources, umbrella
from project import UMBRELLA, folder_of, includes, library_headers, project_files, read

LINE_CAP = 600
GENERATED = ("tables",)  # written by a script from data/tables


def bare(text):
    """The code without comments, preprocessor lines and the contents of strings."""
    text = re.sub(r'R"(\w*)\(.*?\)\1"', '""', text, flags=re.S)
    text = re.sub(r'"(?:\\.|[^"\\\n])*"', '""', text)
    text = re.sub(r"'(?:\\.|[^'\\\n])'", "' '", text)
    text = re.sub(r"//[^\n]*|/\*.*?\*/", "", text, flags=re.S)
    return re.sub(r"(?m)^[ \t]*#(?:.*\\\n)*.*$", "", text)


def statements(text):
    """(statement, `;` or `{`) for each at namespace scope: what ends it tells a declaration from a definition."""
    statement, body, parentheses = "", 0, 0
    for char in bare(text):
        if body:
            body += (char == "{") - (char == "}")
            continue
        parentheses += (char == "(") - (char == ")")
        if parentheses or char not in "{};":
            statement += char
            continue
        words = " ".join(statement.split())
        if char == "{" and not re.search(r"\bnamespace\b", words):
            body = 1
        if words and char != "}":
            yield words, char
        statement = ""


def test_no_file_is_too_long_to_read():
    long = []
    for path in project_files(".hpp", ".cpp", ".py", ".sh", ".txt", ".mjs", ".js"):
        lines = read(path).count("\n")
        generated = path.is_relative_to("lib/include") and folder_of(path) in GENERATED
        if lines > LINE_CAP and not generated:
            long.append(f"{path}: {lines} lines, at most {LINE_CAP}")
    assert not long, "\n".join(long)


@pytest.mark.parametrize("header", library_headers(), ids=lambda path: str(path.relative_to("lib/include/bankwright")))
def test_header(header):
    text = read(header)
    opened = text.startswith("//") or header.stem.endswith("_inl")
    assert opened, "a header opens with a comment that says which question it answers"
    assert text.count("#pragma once") == 1
    assert not re.search(r"\bnamespace\s*\{", bare(text)), "an unnamed namespace gives each file its own copy"
    for statement, end in statements(text):
        marked = re.search(r"\b(inline|template|BANKWRIGHT_INLINE)\b", statement)
        declares = re.sub(r"operator\s*[^\s(]+", "operator", statement)
        function = end == "{" and "(" in declares and "=" not in declares
        constant = re.match(r"(constexpr|const)\b", declares) and not function
        assert not re.match(r"static\b", statement), f"its own copy in each file: {statement}"
        assert not re.match(r"using namespace\b", statement), f"a header decides nothing for its reader's names: {statement}"
        assert marked or "constexpr" in statement or not function, f"inline is missing: {statement}"
        assert marked or not constant, f"inline is missing: {statement}"
    macros = re.findall(r"^\s*#\s*define\s+(\w+)", text, re.M)
    if header.name not in ("linkage.hpp", "version.hpp", "toml.hpp"):
        assert not macros, f"macros live in linkage.hpp and version.hpp only: {macros}"


def test_a_header_includes_where_its_types_are_defined():
    """By itself or through others: tests/package compiles a share of the headers alone, this reads all of them."""
    code = {f"bankwright/{path.relative_to('lib/include/bankwright')}": bare(read(path)) for path in library_headers()}
    # Bodies come last in a header and not at all in compiled mode: what they include is nothing to lean on.
    direct = {name: [other for _, other in includes(f"lib/include/{name}")
                     if name.endswith("_inl.hpp") or not other.endswith("_inl.hpp")] for name in code}

    def reached(name):
        found, ahead = set(), [name]
        while ahead:
            if (one := ahead.pop()) not in found:
                found.add(one)
                ahead += direct.get(one, [])
        return found

    homes = {}
    for name, text in code.items():
        for defined in re.findall(r"\b(?:struct|class|enum|using|concept) ([A-Z]\w+)\s*(?:final\s*)?[:={]", text):
            homes.setdefault(defined, set()).add(name)
    strangers = []
    for name, text in code.items():
        own = set(re.findall(r"\b(?:class|struct|typename|auto|size_t|enum)(?:\s*\.\.\.)? ([A-Z]\w+)", text))
        near = reached(name)
        strangers += [f"{name} uses {word}, of {' or '.join(sorted(homes[word]))}, and does not include it"
                      for word in sorted(set(re.findall(r"(?<![\w:])[A-Z]\w+", text)) & homes.keys() - own) if not homes[word] & near]
    assert not strangers, "\n".join(strangers)


def test_the_umbrella_includes_every_public_header_in_the_order_of_the_road():
    assert UMBRELLA.read_text(encoding="utf-8") == umbrella(), "run tests/structure/make_umbrella.py"


def test_each_room_has_its_source_and_no_other_is_there():
    written = {path.name: path.read_text(encoding="utf-8") for path in SOURCES.glob("*.cpp")}
    assert written == sources(), "run tests/structure/make_umbrella.py"
