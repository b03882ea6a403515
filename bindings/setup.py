"""Builds the module from the header-only library beside this folder; the version is the library's."""
import os
import re
from pathlib import Path

from pybind11.setup_helpers import Pybind11Extension, build_ext
from setuptools import setup

here = Path(__file__).resolve().parent
library = here.parent / "lib/include"
version = re.search(r'BANKWRIGHT_VERSION "([^"]+)"', (library / "bankwright/version.hpp").read_text()).group(1)
eigen = os.environ.get("EIGEN3_INCLUDE_DIR", "/usr/include/eigen3")

# One translation unit: the header-only library is read once for all rooms.
everything = here / "build/everything.cpp"
everything.parent.mkdir(exist_ok=True)
everything.write_text("".join(f'#include "{path.name}"\n' for path in sorted(here.glob("src/*.cpp"))))

setup(
    version=version,
    ext_modules=[
        Pybind11Extension(
            "bankwright._core",
            [str(everything.relative_to(here))],
            depends=[str(path.relative_to(here)) for path in here.glob("src/*")],
            include_dirs=[str(here / "src"), str(library), eigen],
            define_macros=[("FMT_HEADER_ONLY", "1")],
            cxx_std=20,
        )
    ],
    cmdclass={"build_ext": build_ext},
)
