#!/usr/bin/env python3
"""Writes what follows from the headers that exist: lib/include/bankwright/bankwright.hpp, the doors for programs in the order of the road, and
lib/src/*.cpp, the bodies of each room and of each room within it, one source each. Run it after adding or moving a header."""
from project import ROOT, UMBRELLA, doors, layers, library_headers, listed_doors, road, room_of

TOP = """// All of bankwright, in the order of its road; each header also stands alone.
// Written by tests/structure/make_umbrella.py from the doors that layers.txt names.
#pragma once

#include "bankwright/linkage.hpp"
#include "bankwright/version.hpp"
"""
SOURCES = ROOT / "lib/src"
# Instantiated once for the compiled library; room -> its lines.
INSTANTIATED = {"solver/linear": ["template class bankwright::solver::StarMeshOf<double>;",
                                  "template class bankwright::solver::StarMeshOf<long double>;"]}


def umbrella():
    text = TOP
    ground = " ".join(layers()["ground"]).split()
    between = listed_doors("between rooms")
    for folder in road():
        if folder in ground:
            continue
        names = [f"bankwright/{folder}/{name}.hpp" for name in sorted(doors(folder) - between.get(folder, set()))]
        text += "\n" + "".join(f'#include "{name}"\n' for name in names)
    return text


def sources():
    """name of a source -> its text."""
    rooms = {}
    for header in library_headers():
        if header.stem.endswith("_inl"):
            rooms.setdefault(room_of(header), []).append(header.relative_to("lib/include").as_posix())
    return {room.replace("/", "_") + ".cpp":
            f"// The bodies of {room}/, built once. Written by tests/structure/make_umbrella.py.\n"
            + "".join(f'#include "{name}"\n' for name in sorted(names))
            + "".join(f"\n{line}" for line in INSTANTIATED.get(room, [])) + ("\n" if room in INSTANTIATED else "")
            for room, names in rooms.items()}


def write():
    UMBRELLA.write_text(umbrella(), encoding="utf-8")
    wanted = sources()
    for source in SOURCES.glob("*.cpp"):
        if source.name not in wanted:
            source.unlink()
    for name, text in wanted.items():
        path = SOURCES / name
        if not path.exists() or path.read_text(encoding="utf-8") != text:
            path.write_text(text, encoding="utf-8")


if __name__ == "__main__":
    write()
