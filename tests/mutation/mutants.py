"""Where could solver/, network/ and rules/ be wrong by one sign? Finds such places with clang's parser and writes them all into one copy
of the headers, each behind a switch: one build serves every mutant.

A mutant is one change: a comparison turned around, a sum into a difference, a product into a quotient, `and` into `or`, `+=` into `-=`, a
call or an increment left out. Constant expressions are passed over: they are evaluated while compiling, when no switch can be asked. So is
room that is only reserved, which changes no answer. A comparison made strict or loose is none: it differs at one value of a real number,
which no measurement meets.
"""
from __future__ import annotations

import functools
import hashlib
import re
from collections import Counter
from dataclasses import dataclass
from pathlib import Path

from clang.cindex import Cursor, CursorKind, Index, TranslationUnit, TypeKind

SWAPPED = {"<": ">", "<=": ">=", ">": "<", ">=": "<=", "==": "!=", "!=": "==", "+": "-", "-": "+", "*": "/", "/": "*", "&&": "||",
           "||": "&&", "+=": "-=", "-=": "+=", "*=": "/=", "/=": "*="}
NUMBERS = {TypeKind.BOOL, TypeKind.INT, TypeKind.UINT, TypeKind.LONG, TypeKind.ULONG, TypeKind.DOUBLE, TypeKind.FLOAT, TypeKind.LONGLONG,
           TypeKind.ULONGLONG}
FUNCTIONS = {CursorKind.FUNCTION_DECL, CursorKind.CXX_METHOD, CursorKind.CONSTRUCTOR, CursorKind.FUNCTION_TEMPLATE,
             CursorKind.CONVERSION_FUNCTION, CursorKind.DESTRUCTOR}


@dataclass
class Mutant:
    file: Path
    line: int
    begin: int  # offsets in the file's bytes
    end: int
    was: str
    becomes: str
    is_statement: bool
    number: int = 0

    def text(self) -> str:
        """What replaces the place: the old code or the new one, as the switch says."""
        if self.is_statement:
            return f"if (!bankwright_mutant({self.number})) {self.was}"
        return f"(bankwright_mutant({self.number}) ? ({self.becomes}) : ({self.was}))"

    def words(self, root: Path) -> str:
        """Without the line, which every edit moves."""
        was = " ".join(self.was.split())
        becomes = "nothing" if self.is_statement else " ".join(self.becomes.split())
        return f"{self.file.relative_to(root / 'lib/include/bankwright')}: `{was}` becomes `{becomes}`"

    def describe(self, root: Path) -> str:
        return f"line {self.line} of {self.words(root)}"


def parse(root: Path, source: Path, flags: list[str]) -> TranslationUnit:
    unit = Index.create().parse(str(source), args=["-std=c++20", "-DBANKWRIGHT_COMPILED", f"-I{root}/lib/include", *flags])
    errors = [d for d in unit.diagnostics if d.severity >= 3]
    if errors:
        raise SystemExit(f"{source} does not parse: {errors[0]}")
    return unit


def operator_between(left: Cursor, right: Cursor, text: bytes) -> str:
    between = text[left.extent.end.offset:right.extent.start.offset].decode()
    return re.sub(r"//.*|/\*.*?\*/", "", between).strip(" \n()")


def is_number(cursor: Cursor) -> bool:
    return cursor.type.get_canonical().kind in NUMBERS


def is_constant(function: Cursor) -> bool:
    words = []
    for token in function.get_tokens():
        if token.spelling in ("{", "("):
            break
        words.append(token.spelling)
    return "constexpr" in words or "consteval" in words


def expression_mutants(cursor: Cursor, file: Path, text: bytes) -> list[Mutant]:
    sides = list(cursor.get_children())
    if len(sides) != 2 or not all(is_number(side) for side in sides):
        return []
    sign = operator_between(*sides, text)
    begin, end = cursor.extent.start.offset, cursor.extent.end.offset
    left = text[begin:sides[0].extent.end.offset].decode()
    middle = text[sides[0].extent.end.offset:sides[1].extent.start.offset].decode()
    right = text[sides[1].extent.start.offset:end].decode()
    if middle.count(sign) != 1:
        return []
    if sign not in SWAPPED:
        return []
    changed = left + middle.replace(sign, SWAPPED[sign]) + right
    return [Mutant(file, cursor.extent.start.line, begin, end, left + middle + right, changed, False)]


def statement_mutants(cursor: Cursor, file: Path, text: bytes) -> list[Mutant]:
    begin, end = cursor.extent.start.offset, cursor.extent.end.offset
    if text[end:end + 1] != b";" or b".reserve(" in text[begin:end]:  # in a template a call has no name yet
        return []
    return [Mutant(file, cursor.extent.start.line, begin, end + 1, text[begin:end + 1].decode(), "", True)]


def find(root: Path, folders: list[str], sources: list[Path], flags: list[str]) -> list[Mutant]:
    """Every mutant there is, each place once, in the order of files and lines."""
    include = root / "lib/include/bankwright"
    wanted = tuple(str(include / folder) + "/" for folder in folders)
    resolved = functools.cache(lambda name: str(Path(name).resolve()))
    texts: dict[str, bytes] = {}
    found: dict[tuple, Mutant] = {}

    def visit(cursor: Cursor, parent: Cursor | None, inside: bool) -> None:
        place = cursor.location.file
        name = resolved(place.name) if place else ""
        if parent is not None and not name.startswith(wanted):
            return
        if cursor.kind in FUNCTIONS:
            if is_constant(cursor):
                return
            inside = True
        if cursor.kind in (CursorKind.STATIC_ASSERT, CursorKind.ENUM_DECL):
            return
        if inside and cursor.kind == CursorKind.CALL_EXPR and cursor.spelling == "reserve":
            return
        if inside:
            text = texts.setdefault(name, Path(name).read_bytes())
            if cursor.kind in (CursorKind.BINARY_OPERATOR, CursorKind.COMPOUND_ASSIGNMENT_OPERATOR):
                new = expression_mutants(cursor, Path(name), text)
            elif parent is not None and parent.kind == CursorKind.COMPOUND_STMT and cursor.kind in (
                    CursorKind.CALL_EXPR, CursorKind.UNARY_OPERATOR, CursorKind.COMPOUND_ASSIGNMENT_OPERATOR):
                new = statement_mutants(cursor, Path(name), text)
            else:
                new = []
            for mutant in new:
                found[(name, mutant.begin, mutant.end, mutant.becomes)] = mutant
        for child in cursor.get_children():
            visit(child, cursor, inside)

    for source in sources:
        visit(parse(root, source, flags).cursor, None, False)
    return sorted(found.values(), key=lambda m: (str(m.file), m.begin, m.end, m.becomes))


def draw(mutants: list[Mutant], count: int, seed: int) -> list[Mutant]:
    """So many of them, none inside another, numbered from 1. What is drawn hangs on each mutant's own words, so that an edit
    elsewhere draws no others."""
    again: Counter[tuple[str, str, str]] = Counter()
    places = {}
    for mutant in mutants:
        key = (mutant.file.name, mutant.was, mutant.becomes)
        places[id(mutant)] = hashlib.sha256(repr((seed, again[key], *key)).encode()).digest()
        again[key] += 1
    order = sorted(mutants, key=lambda mutant: places[id(mutant)])
    taken: list[Mutant] = []
    for mutant in order:
        if len(taken) == count:
            break
        if all(m.file != mutant.file or m.end <= mutant.begin or mutant.end <= m.begin for m in taken):
            taken.append(mutant)
    taken.sort(key=lambda m: (str(m.file), m.begin))
    for number, mutant in enumerate(taken, 1):
        mutant.number = number
    return taken


def mutated(file: Path, mutants: list[Mutant]) -> bytes:
    """The file with all of them in it, each behind its switch."""
    text = file.read_bytes()
    for mutant in sorted((m for m in mutants if m.file == file), key=lambda m: -m.begin):
        text = text[:mutant.begin] + mutant.text().encode() + text[mutant.end:]
    return text
