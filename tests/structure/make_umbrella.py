#!/usr/bin/env python3
"""Writes lib/include/bankwright/bankwright.hpp: every public header, in the order of the road. Run it after adding a header."""
from project import UMBRELLA, folder_of, library_headers, road

TOP = """// All of bankwright, in the order of its road; each header also stands alone.
// Written by tests/structure/make_umbrella.py from the headers that exist.
#pragma once

#include "bankwright/linkage.hpp"
#include "bankwright/version.hpp"
"""


NOT_PUBLIC = {"toml.hpp"}  # the wrapper around toml++, for bodies only


def umbrella():
    text = TOP
    for folder in road():
        names = [path.relative_to("lib/include") for path in library_headers()
                 if folder_of(path) == folder and path.name not in NOT_PUBLIC and not path.stem.endswith("_inl")]
        if names:
            text += "\n" + "".join(f'#include "{name.as_posix()}"\n' for name in names)
    return text


if __name__ == "__main__":
    UMBRELLA.write_text(umbrella(), encoding="utf-8")
