#!/usr/bin/env python3
"""Turns data/tables/*.toml into lib/include/bankwright/tables/*.hpp.

    make_tables.py            write the headers
    make_tables.py --check    exit 1 if a header is not what its table would give

A table file holds `title`, one or more [source.NAME] (document, clause, edition, confidence) and [[table]] with
    name      of the array in C++
    about     what a row is, and how the table came to be
    source    NAME of its source
    columns   ["gauge", "amperes_60", ...]
    units     ["AWG", "A", ...], one a column; "" for words
    marks     optional, one a column, where confidence differs from column to column
    row       optional: the name of the row's type, where several tables of the file share it
    row_count how many rows the source has
    rows      an array of arrays that holds just as many
Where confidence differs from row to row, the row says so itself in a column `mark`.
"""
import pathlib
import re
import sys
import tomllib

ROOT = pathlib.Path(__file__).resolve().parents[2]
TABLES = ROOT / "data" / "tables"
HEADERS = ROOT / "lib" / "include" / "bankwright" / "tables"
SOURCE_KEYS = ("document", "clause", "edition", "confidence")
TABLE_KEYS = {"name", "row", "about", "source", "columns", "units", "marks", "row_count", "rows"}
IDENTIFIER = re.compile(r"[a-z][a-z0-9_]*")


class BadTable(Exception):
    pass


def quoted(text):
    return '"' + text.replace("\\", "\\\\").replace('"', '\\"') + '"'


def comment(text, indent=""):
    lines, line = [], ""
    for word in text.split():
        if len(line) + len(word) > 108:
            lines.append(line)
            line = ""
        line += (" " if line else "") + word
    return [f"{indent}// {part}" for part in lines + [line]]


def cpp_type(values, where):
    kinds = {type(value) for value in values}
    if kinds == {str}:
        return "std::string_view"
    if kinds == {int}:
        return "int"
    if kinds <= {int, float}:
        return "double"
    raise BadTable(f"{where}: a column mixes words and numbers")


def literal(value, kind):
    if kind == "std::string_view":
        return quoted(value)
    if kind == "int":
        return str(value)
    if value == float("inf"):
        return "std::numeric_limits<double>::infinity()"
    return repr(float(value))


def row_type(table):
    return table.get("row", camel(table["name"]) + "Row")


def camel(name):
    return "".join(part.capitalize() for part in name.split("_"))


def one_table(table, sources, siblings, where):
    """The lines of one table; siblings are the tables that share its row type, itself included."""
    unknown = set(table) - TABLE_KEYS
    if unknown:
        raise BadTable(f"{where}: unknown keys {sorted(unknown)}")
    columns, units, rows = table["columns"], table["units"], table["rows"]
    if not all(IDENTIFIER.fullmatch(word) for word in [table["name"], *columns]):
        raise BadTable(f"{where}: a name is not an identifier")
    if len(set(columns)) != len(columns) or len(units) != len(columns):
        raise BadTable(f"{where}: every column needs a name of its own and a unit")
    marks = table.get("marks", [])
    if marks and len(marks) != len(columns):
        raise BadTable(f"{where}: marks, if any, are one a column")
    if len(rows) != table["row_count"]:
        raise BadTable(f"{where}: {len(rows)} rows, the source has {table['row_count']}")
    for number, row in enumerate(rows):
        if len(row) != len(columns):
            raise BadTable(f"{where}: row {number + 1} has {len(row)} cells, not {len(columns)}")
    if table["source"] not in sources:
        raise BadTable(f"{where}: no [source.{table['source']}]")

    if any((other["columns"], other["units"]) != (columns, units) for other in siblings):
        raise BadTable(f"{where}: shares a row type with a table of other columns")
    together = [row for other in siblings for row in other["rows"]]
    kinds = [cpp_type([row[i] for row in together], where) for i in range(len(columns))]
    out = []
    if table is siblings[0]:
        out.append(f"struct {row_type(table)} {{")
        for i, column in enumerate(columns):
            note = ", ".join(part for part in (f"[{units[i]}]" if units[i] else "", marks[i] if marks else "") if part)
            out.append(f"    {kinds[i]} {column};" + (f" // {note}" if note else ""))
        out += ["};"]
    out += comment(table["about"])
    out += [f"inline constexpr std::array<{row_type(table)}, {len(rows)}> {table['name']}{{{{"]
    for row in rows:
        out.append("    {" + ", ".join(literal(value, kind) for value, kind in zip(row, kinds)) + "},")
    out += ["}};", f"inline constexpr Source {table['name']}_source = source_{table['source']};"]
    if marks:
        out.append(f"inline constexpr std::array<std::string_view, {len(marks)}> {table['name']}_marks{{")
        out.append("    " + ", ".join(quoted(mark) for mark in marks) + "};")
    return out + [""]


def header(path):
    with path.open("rb") as file:
        data = tomllib.load(file)
    name = path.name
    unknown = set(data) - {"title", "source", "table"}
    if unknown:
        raise BadTable(f"{name}: unknown keys {sorted(unknown)}")
    body = []
    for key, source in data["source"].items():
        if set(source) != set(SOURCE_KEYS):
            raise BadTable(f"{name}: [source.{key}] needs exactly {', '.join(SOURCE_KEYS)}")
        if not all(source.values()):
            raise BadTable(f"{name}: [source.{key}] leaves something empty")
        body.append(f"inline constexpr Source source_{key}{{")
        body += [f"    {quoted(source[part])}," for part in SOURCE_KEYS]
        body += ["};", ""]
    names = [table["name"] for table in data["table"]]
    if len(set(names)) != len(names):
        raise BadTable(f"{name}: two tables bear one name")
    used = {table["source"] for table in data["table"]}
    if used != set(data["source"]):
        raise BadTable(f"{name}: sources {sorted(set(data['source']) - used)} belong to no table")
    for table in data["table"]:
        siblings = [other for other in data["table"] if row_type(other) == row_type(table)]
        body += one_table(table, data["source"], siblings, f"{name}, {table['name']}")
    text = "\n".join(body)
    includes = ["#include <array>"]
    if "numeric_limits" in text:
        includes.append("#include <limits>")
    if "std::string_view" in text:
        includes.append("#include <string_view>")
    space = path.stem
    lines = comment(data["title"]) + [f"// Generated from data/tables/{name} by tests/structure/make_tables.py; do not edit.",
             "#pragma once", "", '#include "bankwright/tables/source.hpp"', "", *includes, "", "// clang-format off",
             f"namespace bankwright::tables::{space} {{", "", text, f"}} // namespace bankwright::tables::{space}",
             "// clang-format on", ""]
    return "\n".join(lines)


def main(arguments):
    check = arguments == ["--check"]
    if arguments and not check:
        print(__doc__, file=sys.stderr)
        return 2
    stale = []
    paths = sorted(TABLES.glob("*.toml"))
    for path in paths:
        try:
            text = header(path)
        except (BadTable, KeyError, tomllib.TOMLDecodeError) as trouble:
            print(f"{path.name}: {trouble}", file=sys.stderr)
            return 1
        target = HEADERS / (path.stem + ".hpp")
        if check:
            if not target.exists() or target.read_text(encoding="utf-8") != text:
                stale.append(target.name)
        else:
            target.write_text(text, encoding="utf-8")
    made = {path.stem for path in paths}
    for orphan in sorted(HEADERS.glob("*.hpp")):
        if orphan.stem not in made and "do not edit" in orphan.read_text(encoding="utf-8"):
            stale.append(f"{orphan.name} (its table is gone)")
    for name in stale:
        print(f"stale: {name}", file=sys.stderr)
    if not stale:
        print(f"{len(paths)} tables, headers {'fresh' if check else 'written'}")
    return 1 if stale else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
