"""Files as they are read here: never more of one than the library's reader takes."""
from __future__ import annotations

import os

from . import _core

__all__ = ["read_bytes"]


def read_bytes(path: str | os.PathLike[str]) -> bytes:
    """What is in the file, or as much of it as tells the reader that it is too long. OSError if there is none."""
    with open(path, "rb") as file:
        return file.read(_core.most_bytes + 1)
