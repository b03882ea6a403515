"""Do the compiled library and the header-only one show the same names?

The bodies in an x_inl.hpp are seen by whoever takes the library as headers, and by nobody else. So what stands there is
what x.hpp has declared (marked BANKWRIGHT_INLINE), a member of a type that x.hpp has declared, or a matter of that file
alone, and then inside `namespace internal`.
"""
import re
from pathlib import Path

import pytest
from project import library_headers, read
from test_headers import bare

ROOM = Path("lib/include/bankwright")


def definitions(text):
    """(names of the namespaces around it, statement) for each at namespace scope."""
    spaces, statement, body, parentheses = [], "", 0, 0
    for char in bare(text):
        if body:
            body += (char == "{") - (char == "}")
            continue
        parentheses += (char == "(") - (char == ")")
        if parentheses or char not in "{};":
            statement += char
            continue
        words, statement = " ".join(statement.split()), ""
        if opened := char == "{" and re.fullmatch(r"(?:inline )?namespace ([\w:]+)", words):
            spaces.append(opened[1].split("::"))
            continue
        if char == "}" and not words and spaces:
            spaces.pop()
        body = char == "{"
        if words:
            yield {name for space in spaces for name in space}, words


def declared_elsewhere(statement):
    """A member of a type that the door declares, or an instance of its template."""
    statement = re.sub(r"__attribute__\(\(.*?\)\)", "", statement)
    kind = re.search(r"\b(?:class|struct|enum) \w+::\w+", statement)
    function = re.match(r"[^(=]*?(\S+)\s*\(", statement)
    return bool(kind) or bool(function and "::" in function[1]) or statement.startswith(("template class", "template struct"))


def strays(text):
    return [statement for spaces, statement in definitions(text)
            if "internal" not in spaces and "BANKWRIGHT_INLINE" not in statement and not declared_elsewhere(statement)]


@pytest.mark.parametrize("text, stray", [
    ("namespace a { BANKWRIGHT_INLINE int f() { return g(); } }", 0),
    ("namespace a { namespace internal { inline int g() { return 1; } class C { int c; }; } }", 0),
    ("namespace a { namespace internal::b { inline constexpr int c = 1; } }", 0),
    ("namespace a { struct Door::Room { int i; }; template <class T> int Door<T>::f(int) { return 0; } }", 0),
    ("namespace a { namespace internal { int i; } inline int g() { return 1; } }", 1),
    ("namespace a { inline std::string g(int) { return {}; } class C { int c; }; inline constexpr int c = 1; }", 3),
    ("namespace a::b { template <int n> struct Kernel; using V = Kernel<1>; }", 2),
])
def test_a_stray_is_known_when_seen(text, stray):
    assert len(strays(text)) == stray


@pytest.mark.parametrize("path", [path for path in library_headers() if path.stem.endswith("_inl")],
                         ids=lambda path: str(path.relative_to(ROOM)))
def test_what_only_a_body_needs_is_internal(path):
    found = strays(read(path))
    assert not found, "into `namespace internal`:\n" + "\n".join(line[:150] for line in found)
